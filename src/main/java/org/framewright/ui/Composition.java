package org.framewright.ui;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.util.Subscription;
import org.framewright.frames.Thumbnails;
import org.framewright.job.Elsewhere;
import org.framewright.job.Job;
import org.framewright.renaming.Renamer;
import org.framewright.ui.board.BoardScreen;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.KeySheet;
import org.framewright.ui.command.Keys;
import org.framewright.ui.frames.FramesScreen;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Look;
import org.framewright.ui.look.Texts;
import org.framewright.ui.naming.ConventionScreen;
import org.framewright.ui.renaming.RenamesScreen;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.session.Notices;
import org.framewright.ui.settings.LogFile;
import org.framewright.ui.settings.Places;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.Trouble;
import org.framewright.ui.settings.Troubles;
import org.framewright.ui.start.StartScreen;
import org.framewright.ui.task.Tasks;

/** The composition root: the only place that knows every part and puts them together. */
final class Composition implements Desk, AutoCloseable {
  private static final double SMALLEST = 0.8;
  private static final double LARGEST = 2.0;
  private static final double STEP = 0.1;
  private static final Duration OTHER_STATIONS = Duration.ofSeconds(2);
  private static final String LOOK = "look";
  private static final String SCALE = "scale";
  private static final String REMINDED = "safety.reminded";
  private static final String NEVER = "never again";

  private static final KeyCodeCombination NOTICES = Keys.plain(KeyCode.F8);

  private final Stage stage;
  private final Clock clock;
  private final Background background;
  private final FileChoosers files;
  private final Texts texts;
  private final Troubles troubles;
  private final Preferences preferences;
  private final WindowPlace place;
  private final Tasks tasks;
  private final Commands commands = new Commands();
  private final Shell shell;
  private final Places places;
  private final Scene scene;
  private final SimpleBooleanProperty jobOpen = new SimpleBooleanProperty(false);
  private JobSession session;
  private FramePictures pictures;
  private StartScreen start;
  private ConventionScreen convention;
  private BoardScreen board;
  private ClientWindow client;
  private AutoCloseable otherStations;
  private Notices notices;
  private Subscription hearing = Subscription.EMPTY;

  Composition(
      Stage stage,
      Places places,
      Clock clock,
      Locale locale,
      Background background,
      Executor ui,
      FileChoosers files)
      throws IOException {
    this.stage = stage;
    this.places = places;
    this.clock = clock;
    this.background = background;
    this.files = files;
    this.texts = Texts.in(locale);
    this.troubles = new Troubles(texts, new LogFile(places.log(), clock));
    this.preferences = Preferences.read(places.preferences(), background.settings());
    this.tasks = new Tasks(background.work(), ui);
    this.shell = new Shell(texts, commands, tasks);
    this.place = new WindowPlace(preferences, "window");
    this.scene = new Scene(shell.root(), place.width(1180), place.height(820));
  }

  /** Shows the window with the page on which a job is started or opened. */
  void open() {
    commands.listenTo(scene, shell.dialogs().open()::get);
    shell.appCommands(appCommands());
    dress();
    convention =
        new ConventionScreen(
            this,
            file -> start.conventionSaved(file),
            () -> start.convention().ifPresent(this::openConvention));
    start = new StartScreen(this, List.of(places.templates()), this::editConvention);
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    stage.setScene(scene);
    leaveJob();
    place.find(stage, scene);
    stage.setOnHiding(_ -> place.keep(stage, scene));
    onceLaidOut(shell::showWork);
    stage.show();
  }

  /** The pages while no job is open. */
  private List<Screen> startPages() {
    return List.of(start, convention);
  }

  private void editConvention(Path file) {
    openConvention(file);
    show(convention.id());
  }

  /** A convention that came with the program is where one of your own begins. */
  private void openConvention(Path file) {
    convention.open(file, file.startsWith(places.templates()));
  }

  private List<Command> appCommands() {
    return List.of(
        Command.of(
            "app.keys", texts.get("command.app.keys"), Keys.plain(KeyCode.F1), this::keySheet),
        Command.of(
            "app.look", texts.get("command.app.look"), Keys.plain(KeyCode.F9), this::otherLook),
        Command.of(
            "app.larger",
            texts.get("command.app.larger"),
            Keys.shortcut(KeyCode.EQUALS),
            () -> scale(STEP)),
        Command.of(
            "app.smaller",
            texts.get("command.app.smaller"),
            Keys.shortcut(KeyCode.MINUS),
            () -> scale(-STEP)),
        Command.of(
            "app.fullScreen",
            texts.get("command.app.fullScreen"),
            Keys.plain(KeyCode.F11),
            () -> stage.setFullScreen(!stage.isFullScreen())),
        new Command(
            "app.notices", texts.get("command.app.notices"), NOTICES, this::showNotices, jobOpen),
        new Command(
            "app.closeJob",
            texts.get("command.app.closeJob"),
            Keys.shortcut(KeyCode.W),
            this::leaveJob,
            jobOpen),
        Command.of(
            "app.quit", texts.get("command.app.quit"), Keys.shortcut(KeyCode.Q), stage::close));
  }

  private void keySheet() {
    var sheet = new KeySheet(commands.all(), texts);
    shell
        .dialogs()
        .show(
            DialogSpec.asking(
                texts.get("keys.title"),
                sheet.node(),
                sheet.focus(),
                texts.get("keys.do"),
                sheet::fire));
  }

  Stage stage() {
    return stage;
  }

  Scene scene() {
    return scene;
  }

  Scene clientScene() {
    return client.scene();
  }

  JobSession session() {
    return session;
  }

  List<String> pageIds() {
    return shell.pageIds();
  }

  private Look look() {
    return Look.of(preferences.get(LOOK).orElse(""));
  }

  private void dress() {
    look().dress(scene, preferences.number(SCALE, 1));
    if (client != null) {
      client.dress(look(), preferences.number(SCALE, 1));
    }
  }

  private void otherLook() {
    preferences.put(LOOK, look().other().word());
    dress();
    tell(texts.get("look." + look().word()));
  }

  private void scale(double by) {
    var next = Math.clamp(preferences.number(SCALE, 1) + by, SMALLEST, LARGEST);
    preferences.put(SCALE, Math.round(next * 10) / 10.0);
    dress();
  }

  @Override
  public Texts texts() {
    return texts;
  }

  @Override
  public Tasks tasks() {
    return tasks;
  }

  @Override
  public Preferences preferences() {
    return preferences;
  }

  @Override
  public FileChoosers files() {
    return files;
  }

  @Override
  public Clock clock() {
    return clock;
  }

  @Override
  public Dialogs dialogs() {
    return shell.dialogs();
  }

  /** From now on, whatever nobody caught on any thread is told and logged. */
  void hearTheUncaught() {
    Thread.setDefaultUncaughtExceptionHandler((_, failure) -> trouble(failure));
  }

  @Override
  public void trouble(Throwable failure) {
    tasks.ui().execute(() -> tellTrouble(troubles.explain(failure)));
  }

  private void tellTrouble(Trouble trouble) {
    var what = new Label(trouble.what());
    what.setWrapText(true);
    var remedy = new Label(trouble.remedy());
    remedy.setWrapText(true);
    var box = new VBox(what, remedy);
    box.getStyleClass().add("trouble");
    Node keys = box;
    if (!trouble.detail().isEmpty()) {
      var detail = new Label(trouble.detail());
      detail.setWrapText(true);
      var more = new TitledPane(texts.get("trouble.detail"), detail);
      more.setExpanded(false);
      more.setAnimated(false);
      box.getChildren().add(more);
      keys = more;
    }
    shell.dialogs().show(DialogSpec.telling(texts.get("trouble.title"), box, keys));
  }

  @Override
  public void tell(String text) {
    shell.tell(text);
  }

  @Override
  public void openJob(Path folder) {
    var title = texts.get("app.opening", folder.getFileName().toString());
    tasks.run(
        title,
        steps -> {
          var job = Job.open(folder, clock);
          return steps.cancelled() ? Optional.<Job>empty() : Optional.of(job);
        },
        opened -> opened.ifPresent(job -> read(title, job)),
        this::trouble);
  }

  /**
   * The job that is open goes before the frames of the next are read: memory has one at a time. No
   * other page comes in between, which would have to be styled and laid out for a second.
   */
  private void read(String title, Job job) {
    if (session != null) {
      closeJob();
      stage.setTitle(texts.get("app.title", job.name()));
      shell.pages(job.name(), List.of());
    }
    // Reading takes all processors: what the window shows now is drawn before.
    var room = new CompletableFuture<Bounds>();
    onceLaidOut(
        () -> {
          var size = shell.pageSize();
          // The queue comes to it when the watcher of the job before has ended.
          background.job().execute(() -> room.complete(size));
        });
    tasks.run(
        title,
        room,
        (size, steps) -> {
          var next = JobSession.begin(job, steps, background.job(), tasks.ui());
          return steps.cancelled() ? Optional.<Opened>empty() : next.map(it -> pages(it, size));
        },
        next -> next.ifPresentOrElse(this::opened, this::notOpened),
        failure -> {
          trouble(failure);
          notOpened();
        });
  }

  /** Where the job before went already, the page on which another is opened comes. */
  private void notOpened() {
    if (shell.pageIds().isEmpty()) {
      leaveJob();
    }
  }

  /** Does something in a turn of its own, once the window has laid out what it shows now. */
  private void onceLaidOut(Runnable then) {
    scene.addPostLayoutPulseListener(
        new Runnable() {
          @Override
          public void run() {
            scene.removePostLayoutPulseListener(this);
            tasks.ui().execute(then);
          }
        });
    Platform.requestNextPulse();
  }

  /** A job with its pages. */
  private record Opened(
      JobSession session,
      FramePictures pictures,
      BoardScreen board,
      FramesScreen frames,
      RenamesScreen names) {}

  /** Makes the pages of a job away from the interface, which no window shows yet. */
  private Opened pages(JobSession next, Bounds size) {
    // What is decoded is kept once, as it is shown.
    var shown = new FramePictures(background.pictures(), tasks.ui(), Thumbnails::of);
    var page = new BoardScreen(this, next, shown, this::turnClient);
    fit(page.node(), size);
    page.takeApart();
    fit(page.firstLines(), size);
    return new Opened(next, shown, page, new FramesScreen(this, next, shown), names(next));
  }

  /** Gives a page its styles and its places once, so that the window has less to do with it. */
  private void fit(Node page, Bounds size) {
    var room = new StackPane(page);
    look().dress(new Scene(room, size.getWidth(), size.getHeight()), preferences.number(SCALE, 1));
    room.applyCss();
    room.layout();
    room.getChildren().clear();
  }

  private void opened(Opened next) {
    closeJob();
    session = next.session();
    jobOpen.set(true);
    pictures = next.pictures();
    board = next.board();
    var job = session.job();
    preferences.remember(StartScreen.RECENT_JOBS, job.folder().toString());
    stage.setTitle(texts.get("app.title", job.name()));
    otherStations = background.again().every(OTHER_STATIONS, session::refresh);
    notices =
        new Notices(
            job.folder(),
            texts,
            session.view(),
            session.failures(),
            failure -> {
              var told = troubles.explain(failure);
              return new Notices.Notice(told.what(), told.remedy());
            });
    shell.notices(notices.shown(), NOTICES.getName());
    hearing = session.elsewhere().subscribe((_, now) -> now.ifPresent(this::tellElsewhere));
    // In a turn of its own: the window has enough to do with the pages.
    tasks.ui().execute(() -> front(next));
  }

  private void front(Opened next) {
    var pages = List.of(next.board(), next.frames(), next.names());
    if (!next.session().equals(session)) {
      pages.forEach(Screen::dispose); // Closed in the meantime.
      return;
    }
    // Both look at all that there is: they begin when the page is there.
    board.whenThere(
        () -> {
          if (next.session().equals(session)) {
            next.names().begin();
            session.watch();
          }
        });
    shell.pages(
        session.job().name(), Stream.concat(pages.stream(), startPages().stream()).toList());
    tasks.ui().execute(() -> showBoard(next));
  }

  private void showBoard(Opened next) {
    if (next.session().equals(session)) {
      shell.show(next.board());
      remind();
    }
  }

  private void closeJob() {
    if (session == null) {
      return;
    }
    closeClient();
    try {
      otherStations.close();
    } catch (Exception e) {
      trouble(e);
    }
    hearing.unsubscribe();
    notices.dispose();
    notices = null;
    shell.noNotices();
    session.close();
    session = null;
    pictures.close();
    pictures = null;
    board = null;
    jobOpen.set(false);
  }

  /** Closes the job; the page on which another is started or opened comes to the front. */
  private void leaveJob() {
    closeJob();
    stage.setTitle(texts.get("app.name"));
    shell.pages(texts.get("app.name"), startPages());
    shell.show(start);
  }

  private RenamesScreen names(JobSession open) {
    return new RenamesScreen(
        this,
        () -> Renamer.in(open.job().folder(), clock),
        () -> open.job().frameNames(open.job().scan()),
        open::look);
  }

  void turnClient() {
    if (client != null && client.showing().get()) {
      closeClient();
      return;
    }
    closeClient();
    var clientPlace = new WindowPlace(preferences, "client");
    client = new ClientWindow(session, pictures, texts, stage, clientPlace, board::askWhoAgrees);
    client.dress(look(), preferences.number(SCALE, 1));
    client.show();
  }

  private void closeClient() {
    if (client != null) {
      client.dispose();
      client = null;
    }
  }

  private void tellElsewhere(Elsewhere did) {
    tell(
        did.tick()
            .map(
                tick ->
                    texts.get(
                        "elsewhere.tick",
                        did.station(),
                        tick.setup(),
                        texts.get("state." + tick.state().word())))
            .orElseGet(() -> texts.get("elsewhere.list", did.station())));
  }

  private void showNotices() {
    if (notices.shown().get().isEmpty()) {
      return;
    }
    var body = new NoticeList(notices.shown().get());
    shell
        .dialogs()
        .show(
            DialogSpec.asking(
                texts.get("notice.title"),
                body.node(),
                body.node(),
                texts.get("notice.do"),
                notices::putAway));
  }

  /** Once a day, until it is dismissed for good. */
  private void remind() {
    var today = LocalDate.now(clock).toString();
    if (preferences
        .get(REMINDED)
        .filter(kept -> kept.equals(today) || kept.equals(NEVER))
        .isPresent()) {
      return;
    }
    preferences.put(REMINDED, today);
    var reminder = new SafetyReminder(texts);
    shell
        .dialogs()
        .show(
            DialogSpec.asking(
                texts.get("safety.title"),
                reminder.node(),
                reminder.focus(),
                texts.get("safety.do"),
                () -> {
                  if (reminder.neverAgain()) {
                    preferences.put(REMINDED, NEVER);
                  }
                }));
  }

  @Override
  public String wayTo(String screenId) {
    return shell.wayTo(screenId);
  }

  @Override
  public void show(String screenId) {
    shell.screen(screenId).ifPresent(shell::show);
  }

  @Override
  public void close() {
    closeJob();
    shell.pages("", List.of());
    background.close();
  }
}
