package org.framewright.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javafx.application.Platform;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.stage.Stage;
import org.framewright.base.PlainText;
import org.framewright.frames.FinishedPictures;
import org.framewright.frames.Thumbnails;
import org.framewright.job.Job;
import org.framewright.job.JobProgress;
import org.framewright.renaming.Renamer;
import org.framewright.share.DeviceNews;
import org.framewright.ui.board.BoardScreen;
import org.framewright.ui.copies.CardWatch;
import org.framewright.ui.copies.CopiesScreen;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.day.DayScreen;
import org.framewright.ui.frames.FramesScreen;
import org.framewright.ui.handoff.HandOffScreen;
import org.framewright.ui.lists.ListScreen;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Screen;
import org.framewright.ui.renaming.RenamesScreen;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.session.Notices;
import org.framewright.ui.settings.ComputerName;
import org.framewright.ui.settings.Troubles;
import org.framewright.ui.share.ShareDialog;
import org.framewright.ui.share.ShareModel;
import org.framewright.ui.start.StartScreen;

/**
 * The job in the window, and how one gives way to the next: the folder is opened, the pages of the
 * job before go, the frames are read and the new pages made in the background, then they come to
 * the front part by part.
 */
final class Jobs {
  private final Desk desk;
  private final Shell shell;
  private final Stage stage;
  private final Background background;
  private final Appearance appearance;
  private final Troubles troubles;
  private final String noticesKey;
  private final Disks disks;
  private final ClientWindow.Scanned scans;
  private final Path settings;
  private final Network network;
  private final ReadOnlyBooleanWrapper cardIsOffered = new ReadOnlyBooleanWrapper(false);
  private final ReadOnlyBooleanWrapper isOpen = new ReadOnlyBooleanWrapper(false);
  private Optional<OpenJob> open = Optional.empty();

  /**
   * @param noticesKey the key that shows all notices, for people
   * @param disks those of this computer
   * @param scans hears scanners in a window
   * @param settings the folder of the user's settings
   * @param network that devices are on
   */
  Jobs(
      Desk desk,
      Shell shell,
      Stage stage,
      Background background,
      Appearance appearance,
      Troubles troubles,
      String noticesKey,
      Disks disks,
      ClientWindow.Scanned scans,
      Path settings,
      Network network) {
    this.desk = desk;
    this.shell = shell;
    this.stage = stage;
    this.background = background;
    this.appearance = appearance;
    this.troubles = troubles;
    this.noticesKey = noticesKey;
    this.disks = disks;
    this.scans = scans;
    this.settings = settings;
    this.network = network;
  }

  /** Whether a card was put in and is offered. */
  ReadOnlyBooleanProperty cardIsOffered() {
    return cardIsOffered.getReadOnlyProperty();
  }

  /** Asks about the card that is offered. */
  void takeCard() {
    open.ifPresent(OpenJob::takeCard);
  }

  /** Offers it no more. */
  void leaveCard() {
    open.ifPresent(job -> job.cards().putAway());
  }

  /** Whether a job is open. */
  ReadOnlyBooleanProperty isOpen() {
    return isOpen.getReadOnlyProperty();
  }

  Optional<OpenJob> current() {
    return open;
  }

  /** Opens a job folder in the background and shows its list. */
  void open(Path folder) {
    var name = String.valueOf(folder.getFileName());
    var title = desk.texts().get("app.opening", name);
    // A job that is open stays until the next one was found to be one.
    if (open.isEmpty()) {
      lay(name);
    }
    desk.tasks()
        .run(
            title,
            steps -> {
              var job = Job.open(folder, desk.clock());
              return steps.cancelled() ? Optional.<Job>empty() : Optional.of(job);
            },
            opened -> opened.ifPresentOrElse(job -> read(title, job), this::notOpened),
            failure -> {
              desk.trouble(failure);
              notOpened();
            });
  }

  /** The window is as bare as a table from which all was taken, but for the job's name. */
  private OpeningCard lay(String name) {
    stage.setTitle(desk.texts().get("app.title", name));
    shell.clear(name);
    var card = new OpeningCard(desk.texts(), name);
    shell.lay(card.node());
    return card;
  }

  /**
   * The job that is open goes before the frames of the next are read: memory has one at a time. No
   * other page comes in between, which would have to be styled and laid out for a second.
   */
  private void read(String title, Job job) {
    close();
    lay(job.name()).show(JobProgress.of(job));
    // Reading takes all processors: what the window shows now is drawn before.
    var turn = new CompletableFuture<Job>();
    // The queue comes to it when the watcher of the job before has ended.
    onceLaidOut(() -> background.job().execute(() -> turn.complete(job)));
    desk.tasks()
        .run(
            title,
            turn,
            (it, steps) -> {
              it.callThisStation(ComputerName.kept(desk.preferences()).value());
              var next = JobSession.begin(it, steps, background.job(), desk.tasks().ui());
              return steps.cancelled() ? Optional.<OpenJob>empty() : next.map(this::pages);
            },
            next -> next.ifPresentOrElse(this::opened, this::notOpened),
            failure -> {
              desk.trouble(failure);
              notOpened();
            });
  }

  /** Where the job before went already, the page on which another is opened comes. */
  private void notOpened() {
    if (shell.pageIds().isEmpty()) {
      leave();
    }
  }

  /** Does something in a turn of its own, once the window has laid out what it shows now. */
  void onceLaidOut(Runnable then) {
    var scene = stage.getScene();
    scene.addPostLayoutPulseListener(
        new Runnable() {
          @Override
          public void run() {
            scene.removePostLayoutPulseListener(this);
            desk.tasks().ui().execute(then);
          }
        });
    Platform.requestNextPulse();
  }

  /**
   * Makes the pages of a job away from the interface, which no window shows yet. None gets its
   * styles there: what the toolkit keeps of them is made for one thread.
   */
  private OpenJob pages(JobSession next) {
    // What is decoded is kept once, as it is shown.
    var shown = new FramePictures(background.pictures(), desk.tasks().ui(), Thumbnails::of);
    var lists = new ListScreen(desk, next);
    var returned =
        new FramePictures(background.pictures(), desk.tasks().ui(), FinishedPictures::of);
    var handOff = new HandOffScreen(desk, next, returned);
    var frames =
        new FramesScreen(
            desk,
            next,
            shown,
            new FramesScreen.HandOffs(handOff::handOffSelects, handOff::handOffByList));
    var client = new ClientDisplay(desk, next, shown, stage, appearance, scans);
    var board =
        new BoardScreen(
            desk, next, shown, client, lists::ask, frames::lookAtLoose, this::showSharing);
    client.signOff(board::askWhoAgrees);
    board.takeApart();
    return new OpenJob(
        desk,
        next,
        shown,
        board,
        frames,
        names(next),
        new CopiesScreen(desk, next, disks),
        handOff,
        new DayScreen(desk, next, waysFromTheDay(board, frames)),
        CardWatch.of(next.job(), disks, desk.tasks().ui()),
        lists,
        client,
        sharing(next));
  }

  private ShareModel sharing(JobSession session) {
    return new ShareModel(
        network.of(session, settings, desk.preferences()),
        desk.tasks(),
        this::sayOfDevice,
        desk::trouble);
  }

  /** That a device sleeps or wakes up is seen in the foot line, and said nowhere. */
  private void sayOfDevice(DeviceNews news) {
    var texts = desk.texts();
    var name = PlainText.line(news.device().name());
    switch (news) {
      case DeviceNews.Paired(var device) ->
          desk.say(
              texts.get(
                  "share.said.paired", name, texts.get("share.role." + device.role().word())));
      case DeviceNews.Unpaired _ -> desk.say(texts.get("share.said.unpaired", name));
      case DeviceNews.Came _, DeviceNews.Left _ -> {}
    }
  }

  /** Asks about phones and tablets. */
  void showSharing() {
    open.ifPresent(
        job ->
            desk.dialogs().show(new ShareDialog(job.sharing(), desk.texts(), desk.clock()).spec()));
  }

  private DayScreen.Ways waysFromTheDay(BoardScreen board, FramesScreen frames) {
    return new DayScreen.Ways() {
      @Override
      public void onTheList(String setup) {
        board.goTo(setup);
      }

      @Override
      public void framesOf(String setup) {
        frames.lookAtSetup(setup);
      }

      @Override
      public void looseFrames() {
        frames.lookAtLoose();
      }

      @Override
      public void allFrames() {
        desk.show(frames.id());
      }

      @Override
      public void slates() {
        frames.lookAtSlates();
      }

      @Override
      public void copies() {
        desk.show(CopiesScreen.ID);
      }
    };
  }

  private RenamesScreen names(JobSession session) {
    return new RenamesScreen(
        desk,
        () -> Renamer.in(session.job().folder(), desk.clock()),
        () -> session.job().frameNames(session.job().scan()),
        session::look);
  }

  private void opened(OpenJob next) {
    close();
    open = Optional.of(next);
    isOpen.set(true);
    var job = next.session().job();
    desk.preferences().remember(StartScreen.RECENT_JOBS, job.folder().toString());
    stage.setTitle(desk.texts().get("app.title", job.name()));
    var notices = next.follow(background.again(), troubles);
    next.joinStudio(settings);
    shell.notices().follow(notices.shown(), noticesKey);
    shell.card().follow(next.cards().offered());
    cardIsOffered.bind(next.cards().offered().map(Optional::isPresent));
    shell.alarm().follow(notices.alarm(), waysOutOf(next.session()));
    shell.foot().followDevices(next.sharing(), this::showSharing);
    // In a turn of its own: the window has enough to do with the pages.
    desk.tasks().ui().execute(() -> front(next));
  }

  /** What can be done about a job whose folder cannot be read or written. */
  private AlarmBand.Ways waysOutOf(JobSession session) {
    return new AlarmBand.Ways() {
      @Override
      public void lookAgain() {
        session.refresh();
        session.look();
      }

      @Override
      public void openElsewhere() {
        desk.files()
            .folder(
                desk.texts().get("start.openFolderTitle"),
                Optional.ofNullable(session.job().folder().getParent()))
            .ifPresent(desk::openJob);
      }
    };
  }

  private boolean isStillOpen(OpenJob job) {
    return open.filter(job::equals).isPresent();
  }

  private void front(OpenJob next) {
    if (!isStillOpen(next)) {
      next.pages().forEach(Screen::dispose);
      return;
    }
    next.board()
        .whenThere(
            () -> {
              if (isStillOpen(next)) {
                next.lookAtAll();
              }
            });
    shell.openJob(next.session().job().name(), next.pages());
    desk.tasks().ui().execute(() -> showBoard(next));
  }

  private void showBoard(OpenJob next) {
    if (isStillOpen(next)) {
      shell.show(next.board().id());
      new DailyReminder(desk).remind();
    }
  }

  private void close() {
    open.ifPresent(
        job -> {
          shell.notices().clear();
          shell.card().clear();
          cardIsOffered.unbind();
          cardIsOffered.set(false);
          shell.alarm().clear();
          shell.foot().clearDevices();
          open = Optional.empty();
          isOpen.set(false);
          job.close();
        });
  }

  /** Closes the job; the page on which another is started or opened comes to the front. */
  void leave() {
    close();
    stage.setTitle(desk.texts().get("app.name"));
    shell.withoutJob(desk.texts().get("app.name"));
    shell.show(StartScreen.ID);
  }

  /** Closes the job; the window goes. */
  void end() {
    close();
    shell.dispose();
  }

  /** What this computer is called from now on, for the others that work on the job. */
  void callComputer(String name) {
    open.ifPresent(job -> job.session().callComputer(name));
  }

  /** Opens or closes the client's window. */
  void turnClient() {
    open.ifPresent(job -> job.client().turn());
  }

  /** Makes the client's window anew, if there is one. */
  void renewClient() {
    open.ifPresent(job -> job.client().renew());
  }

  void closeClient() {
    open.ifPresent(job -> job.client().close());
  }

  /** Dresses the client's window, if there is one. */
  void dress() {
    open.ifPresent(job -> job.client().dress());
  }

  /** All there is to know of the folder. */
  void showNotices() {
    open.flatMap(OpenJob::notices)
        .filter(notices -> !notices.shown().get().isEmpty())
        .ifPresent(this::show);
  }

  private void show(Notices notices) {
    var body = new NoticeList(List.copyOf(notices.shown().get()));
    desk.dialogs()
        .show(
            DialogSpec.asking(
                    desk.texts().get("notice.title"),
                    body.node(),
                    body.node(),
                    desk.texts().get("notice.do"),
                    notices::putAway)
                .about("notices"));
  }
}
