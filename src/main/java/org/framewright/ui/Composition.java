package org.framewright.ui;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.stage.Stage;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.KeySheet;
import org.framewright.ui.command.Keys;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.help.AboutModel;
import org.framewright.ui.help.AboutSheet;
import org.framewright.ui.help.Guide;
import org.framewright.ui.help.HelpSheet;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.naming.ConventionScreen;
import org.framewright.ui.naming.ProposalScreen;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.DialogSpec;
import org.framewright.ui.page.Dialogs;
import org.framewright.ui.page.FileChoosers;
import org.framewright.ui.page.Finder;
import org.framewright.ui.page.Screen;
import org.framewright.ui.preferences.SettingsScreen;
import org.framewright.ui.scan.ScanModel;
import org.framewright.ui.scan.ScanQuestions;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.sets.SetsScreen;
import org.framewright.ui.sets.SetsSource;
import org.framewright.ui.settings.Explanation;
import org.framewright.ui.settings.Language;
import org.framewright.ui.settings.LogFile;
import org.framewright.ui.settings.Places;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.Troubles;
import org.framewright.ui.start.StartScreen;
import org.framewright.ui.task.Tasks;

/** The composition root: the only place that knows every part and puts them together. */
final class Composition implements Desk, AutoCloseable {
  private static final KeyCodeCombination NOTICES = Keys.plain(KeyCode.F8);

  private final Stage stage;
  private final Clock clock;
  private final Background background;
  private final FileChoosers files;
  private final FileManager fileManager;
  private final AwakeDisplay display;
  private final Texts texts;
  private final Troubles troubles;
  private final Preferences preferences;
  private final Appearance appearance;
  private final WindowPlace place;
  private final Tasks tasks;
  private final Commands commands = new Commands();
  private final Shell shell;
  private final Places places;
  private final SetsSource sets;
  private final Scene scene;
  private final Jobs jobs;
  private final LayoutRescue rescue;
  private final ScanModel scanned;
  private final ScanWindows scans;
  private StartScreen start;
  private ConventionScreen convention;
  private ProposalScreen proposal;
  private SettingsScreen settings;
  private String beforeSettings = StartScreen.ID;

  Composition(
      Stage stage,
      Places places,
      Clock clock,
      Locale locale,
      Background background,
      Executor ui,
      FileChoosers files,
      FileManager fileManager,
      AwakeDisplay display,
      Disks disks,
      Network network,
      SetsSource sets) {
    this.stage = stage;
    this.places = places;
    this.sets = sets;
    this.clock = clock;
    this.background = background;
    this.files = files;
    this.fileManager = fileManager;
    this.display = display;
    this.preferences =
        Preferences.read(
            places.preferences(),
            background.settings(),
            failure -> ui.execute(() -> notKept(failure)));
    this.texts = Texts.in(Language.kept(preferences).on(locale));
    this.troubles = new Troubles(texts, new LogFile(places.log(), clock));
    this.appearance = new Appearance(preferences);
    this.tasks = new Tasks(background.work(), ui);
    this.shell = new Shell(texts, commands, tasks);
    this.place = new WindowPlace(preferences, "window");
    this.scene = new Scene(shell.root(), place.width(1180), place.height(820));
    this.scanned = new ScanModel(this::scanTarget);
    this.scans =
        new ScanWindows(this, scanned, new ScanQuestions(this, scanned), stage, shell.dialogs());
    this.jobs =
        new Jobs(
            this,
            shell,
            stage,
            background,
            appearance,
            troubles,
            NOTICES.getName(),
            disks,
            scans::listenTo,
            places.folder(),
            network);
    this.rescue = new LayoutRescue(scene, shell, jobs, appearance);
  }

  /** Shows the window with the page on which a job is started or opened. */
  void open() {
    commands.listenTo(scene, shell.dialogs().open()::get);
    scans.listenTo(stage, shell.dialogs());
    var all = appCommands();
    shell.appCommands(all);
    shell.card().lay(Commands.named("app.takeCard", all), Commands.named("app.leaveCard", all));
    dress();
    convention =
        new ConventionScreen(
            this,
            file -> start.conventionSaved(file),
            () -> start.convention().ifPresent(this::openConvention),
            this::proposeConvention);
    proposal =
        new ProposalScreen(this, file -> start.conventionSaved(file), () -> show(StartScreen.ID));
    start =
        new StartScreen(
            this, List.of(places.templates()), this::editConvention, this::proposeConvention);
    settings =
        new SettingsScreen(
            this,
            new WindowLooks(appearance, this::dress),
            jobs::callComputer,
            this::leaveSettings,
            this::about);
    var allSets = new SetsScreen(this, sets, this::openSet);
    shell.appPages(List.of(start, convention, proposal, allSets, settings));
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    stage.setScene(scene);
    jobs.leave();
    place.find(stage, scene);
    stage.setOnHiding(_ -> place.keep(stage, scene));
    stage.setOnCloseRequest(
        event -> {
          event.consume();
          quit();
        });
    jobs.onceLaidOut(shell::showWork);
    jobs.isOpen().addListener((_, _, open) -> background.work().execute(() -> keepAwake(open)));
    stage.show();
  }

  /** Shows the job of a folder, which may be open already. */
  private void openSet(Path folder) {
    var isOpen = jobs.current().filter(job -> job.session().job().folder().equals(folder));
    isOpen.ifPresentOrElse(job -> show(job.board().id()), () -> openJob(folder));
  }

  private void keepAwake(boolean whileJobIsOpen) {
    if (whileJobIsOpen) {
      display.keep(texts.get("app.awake"));
    } else {
      display.close();
    }
  }

  private void editConvention(Path file) {
    openConvention(file);
    show(convention.id());
  }

  private void proposeConvention() {
    show(ProposalScreen.ID);
  }

  private void showSettings() {
    Optional.ofNullable(shell.front().get())
        .map(Screen::id)
        .filter(id -> !id.equals(SettingsScreen.ID))
        .ifPresent(id -> beforeSettings = id);
    show(SettingsScreen.ID);
  }

  /** Back to the page before, where it is there still. */
  private void leaveSettings() {
    show(shell.pageIds().contains(beforeSettings) ? beforeSettings : shell.pageIds().getFirst());
  }

  /** A convention that came with the program is where one of your own begins. */
  private void openConvention(Path file) {
    convention.open(file, file.startsWith(places.templates()));
  }

  private List<Command> appCommands() {
    return List.of(
        Command.of("app.help", texts.get("command.app.help"), Keys.help(), this::help),
        Command.of("app.keys", texts.get("command.app.keys"), Keys.allKeys(), this::keySheet),
        Command.of(
            "app.find",
            texts.get("command.app.find"),
            Keys.shortcut(KeyCode.F),
            this::findAnything),
        Command.of(
            "app.settings",
            texts.get("command.app.settings"),
            Keys.shortcut(KeyCode.COMMA),
            this::showSettings),
        Command.of(
            "app.look", texts.get("command.app.look"), Keys.plain(KeyCode.F9), this::turnTheme),
        Command.of(
                "app.larger",
                texts.get("command.app.larger"),
                Keys.shortcut(KeyCode.EQUALS),
                () -> scale(appearance::enlarge))
            // Where "=" needs Shift, as on German keyboards, "+" has a key of its own.
            .orBy(Keys.shortcut(KeyCode.PLUS)),
        Command.of(
            "app.smaller",
            texts.get("command.app.smaller"),
            Keys.shortcut(KeyCode.MINUS),
            () -> scale(appearance::shrink)),
        Command.of(
            "app.fullScreen",
            texts.get("command.app.fullScreen"),
            Keys.fullScreen(),
            () -> stage.setFullScreen(!stage.isFullScreen())),
        new Command(
            "app.notices",
            texts.get("command.app.notices"),
            NOTICES,
            jobs::showNotices,
            jobs.isOpen()),
        new Command(
            "app.showJob",
            texts.get("command.app.showJob"),
            Keys.shortcutShift(KeyCode.O),
            () -> jobs.current().ifPresent(job -> showInFileManager(job.session().job().folder())),
            jobs.isOpen()),
        new Command(
            "app.closeJob",
            texts.get("command.app.closeJob"),
            Keys.shortcut(KeyCode.W),
            jobs::leave,
            jobs.isOpen()),
        new Command(
            "app.addCode",
            texts.get("command.app.addCode"),
            Keys.shortcut(KeyCode.B),
            scans::addLast,
            scanned.canAdd()),
        new Command(
            "app.share",
            texts.get("command.app.share"),
            Keys.shortcut(KeyCode.T),
            jobs::showSharing,
            jobs.isOpen()),
        new Command(
            "app.takeCard",
            texts.get("command.app.takeCard"),
            Keys.shortcut(KeyCode.K),
            jobs::takeCard,
            jobs.cardIsOffered()),
        new Command(
            "app.leaveCard",
            texts.get("command.app.leaveCard"),
            Keys.shortcutShift(KeyCode.K),
            jobs::leaveCard,
            jobs.cardIsOffered()),
        Command.of(
            "app.about",
            texts.get("command.app.about"),
            Keys.shortcutShift(KeyCode.F1),
            this::about),
        Command.of(
            "app.quit", texts.get("command.app.quit"), Keys.shortcut(KeyCode.Q), this::quit));
  }

  /** Closes the window; what is written on a page and not saved is asked about first. */
  private void quit() {
    if (!convention.isUnsaved()) {
      stage.close();
      return;
    }
    show(convention.id());
    var body = WrappedText.of(texts.get("app.quit.unsaved"));
    shell
        .dialogs()
        .show(
            DialogSpec.asking(
                texts.get("app.quit.title"), body, body, texts.get("app.quit.do"), stage::close));
  }

  /** Help on the question that is open, else on the page in front, with what can be done there. */
  private void help() {
    var asked = shell.dialogs().open().get();
    var sheet = new HelpSheet(asked ? List.of() : commands.all(), texts);
    var topic =
        Optional.of(shell.dialogs().topic())
            .filter(own -> asked && !own.isEmpty())
            .or(() -> Optional.ofNullable(shell.front().get()).map(Screen::topic))
            .orElse("");
    shell.dialogs().help(sheet.spec());
    tasks.quietly(
        () -> Guide.read(places.guide()), guide -> sheet.read(guide, topic), this::trouble);
  }

  private void about() {
    tasks.quietly(
        () -> AboutModel.read(places.licences(), places.home(), texts.get("app.name")),
        model -> shell.dialogs().show(new AboutSheet(model, texts).spec()),
        this::trouble);
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

  private void findAnything() {
    var sources = new ArrayList<FindModel.Source>();
    for (var screen : shell.pages()) {
      var finder = screen.finder();
      if (!finder.equals(Finder.NOTHING)) {
        sources.add(new FindModel.Source(texts.get("find." + screen.id()), finder));
      }
    }
    sources.add(new FindModel.Source(texts.get("find.command"), commandFinder()));
    var sheet = new FindSheet(new FindModel(sources, tasks, this::trouble), texts);
    shell
        .dialogs()
        .show(
            DialogSpec.asking(
                texts.get("find.title"),
                sheet.node(),
                sheet.focus(),
                texts.get("find.do"),
                sheet.ready(),
                sheet::go));
  }

  /** Finds what can be done here and now. */
  private Finder commandFinder() {
    var possible = commands.all().stream().filter(command -> command.enabled().get()).toList();
    return (typed, most) ->
        possible.stream()
            .filter(command -> typed.areIn(command.text()))
            .limit(most)
            .map(
                command ->
                    new Finder.Found(
                        command.text(), Keys.text(command.key(), texts), command::fire))
            .toList();
  }

  private Optional<ScanModel.Target> scanTarget() {
    return jobs.current().map(OpenJob::scans);
  }

  /** Whether keys are held that may still become a scan. */
  boolean isHoldingKeys() {
    return scans.isHolding();
  }

  Stage stage() {
    return stage;
  }

  Scene scene() {
    return scene;
  }

  Scene clientScene() {
    return jobs.current()
        .flatMap(job -> job.client().window())
        .map(ClientWindow::scene)
        .orElse(null);
  }

  JobSession session() {
    return jobs.current().map(OpenJob::session).orElse(null);
  }

  /** What can be done anywhere, on any page that one can turn to now. */
  List<Command> everyCommand() {
    var every = new ArrayList<>(commands.all());
    shell.pages().forEach(page -> every.addAll(page.commands()));
    return every;
  }

  List<String> pageIds() {
    return shell.pageIds();
  }

  void turnClient() {
    jobs.turnClient();
  }

  private void dress() {
    appearance.dress(scene);
    jobs.dress();
    if (settings != null) {
      settings.showLooks();
    }
  }

  private void turnTheme() {
    appearance.turnTheme();
    dress();
    say(texts.get("look." + appearance.theme().word()));
  }

  private void scale(Runnable step) {
    step.run();
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

  /** From now on, whatever nobody caught on any thread is reported and logged. */
  void hearTheUncaught() {
    Thread.setDefaultUncaughtExceptionHandler(
        (_, failure) -> {
          if (LayoutRescue.concerns(failure)) {
            Platform.runLater(() -> notLaidOut(failure));
          } else {
            trouble(failure);
          }
        });
  }

  private void notLaidOut(Throwable failure) {
    var explained = troubles.explain(failure);
    if (rescue.recover()) {
      report(explained);
    }
  }

  @Override
  public void trouble(Throwable failure) {
    tasks.ui().execute(() -> troubleNow(failure));
  }

  /** Where the folder of the job is gone, the window says so already over its whole width. */
  private void troubleNow(Throwable failure) {
    var session =
        jobs.current()
            .map(OpenJob::session)
            .filter(open -> mayConcern(failure, open.job().folder()));
    if (session.isEmpty()) {
      report(troubles.explain(failure));
      return;
    }
    tasks.quietly(
        session.get()::lookWhetherLost,
        lost -> {
          if (lost) {
            say(texts.get("alarm.lost.notDone"));
          } else {
            report(troubles.explain(failure));
          }
        },
        _ -> report(troubles.explain(failure)));
  }

  /** The app goes on with what it keeps in memory. */
  private void notKept(IOException failure) {
    say(texts.get("app.notKept", texts.sentence(troubles.explain(failure).problem())));
  }

  private void report(Explanation explained) {
    shell.dialogs().show(TroubleDialog.of(explained, texts));
  }

  @Override
  public void say(String text) {
    shell.say(text);
  }

  private static boolean mayConcern(Throwable failure, Path folder) {
    return switch (failure) {
      case FileSystemException e when e.getFile() != null -> e.getFile().startsWith("" + folder);
      case IOException _ -> true;
      default -> false;
    };
  }

  @Override
  public void answer(String text, String offered) {
    shell.answer(text, offered);
  }

  @Override
  public void showInFileManager(Path path) {
    tasks.quietly(() -> fileManager.show(path), outcome -> say(words(outcome)), this::trouble);
  }

  private String words(FileManager.Outcome outcome) {
    return switch (outcome) {
      case FileManager.Outcome.Shown(var path) -> texts.get("files.shown", path.toString());
      case FileManager.Outcome.NoManager(var path) -> texts.get("files.noManager", path.toString());
      case FileManager.Outcome.Gone(var path) -> texts.get("files.gone", path.toString());
    };
  }

  @Override
  public void openJob(Path folder) {
    jobs.open(folder);
  }

  @Override
  public String wayTo(String screenId) {
    return shell.wayTo(screenId);
  }

  @Override
  public void show(String screenId) {
    shell.show(screenId);
  }

  @Override
  public void close() {
    scans.close();
    jobs.end();
    display.close();
    background.close();
  }
}
