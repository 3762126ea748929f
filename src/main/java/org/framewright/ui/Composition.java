package org.framewright.ui;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Executor;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.TitledPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Commands;
import org.framewright.ui.command.KeySheet;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Look;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.LogFile;
import org.framewright.ui.settings.Places;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.Trouble;
import org.framewright.ui.settings.Troubles;
import org.framewright.ui.task.Tasks;

/** The composition root: the only place that knows every part and puts them together. */
final class Composition implements Desk, AutoCloseable {
  private static final double SMALLEST = 0.8;
  private static final double LARGEST = 2.0;
  private static final double STEP = 0.1;

  private final Stage stage;
  private final Clock clock;
  private final Background background;
  private final FileChoosers files;
  private final Texts texts;
  private final Troubles troubles;
  private final Preferences preferences;
  private final Tasks tasks;
  private final Commands commands = new Commands();
  private final Shell shell;
  private final Scene scene;

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
    this.clock = clock;
    this.background = background;
    this.files = files;
    this.texts = Texts.in(locale);
    this.troubles = new Troubles(texts, new LogFile(places.log(), clock));
    this.preferences = Preferences.read(places.preferences(), background.settings());
    this.tasks = new Tasks(background.work(), ui);
    this.shell = new Shell(texts, commands, tasks);
    this.scene =
        new Scene(
            shell.root(),
            preferences.number("window.width", 1180),
            preferences.number("window.height", 820));
  }

  /** Shows the window with the page on which a job is started or opened. */
  void open() {
    commands.listenTo(scene, shell.slips().open()::get);
    shell.appCommands(appCommands());
    dress();
    stage.setTitle(texts.get("app.name"));
    stage.setMinWidth(720);
    stage.setMinHeight(520);
    stage.setScene(scene);
    shell.pages(texts.get("app.name"), startPages());
    stage.show();
  }

  /** The pages while no job is open. */
  private List<Screen> startPages() {
    return List.of();
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
        Command.of(
            "app.quit",
            texts.get("command.app.quit"),
            new javafx.scene.input.KeyCodeCombination(KeyCode.Q, KeyCombination.SHORTCUT_DOWN),
            stage::close));
  }

  private void keySheet() {
    var sheet = new KeySheet(commands.all(), texts);
    shell
        .slips()
        .show(
            Slip.asking(
                texts.get("keys.title"),
                sheet.node(),
                sheet.focus(),
                texts.get("keys.do"),
                sheet::fire));
  }

  private void dress() {
    Look.of(preferences.get("look").orElse("")).dress(scene, preferences.number("scale", 1));
  }

  private void otherLook() {
    preferences.put("look", Look.of(preferences.get("look").orElse("")).other().word());
    dress();
  }

  private void scale(double by) {
    var next = Math.clamp(preferences.number("scale", 1) + by, SMALLEST, LARGEST);
    preferences.put("scale", Math.round(next * 10) / 10.0);
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
  public Slips slips() {
    return shell.slips();
  }

  @Override
  public void trouble(Throwable failure) {
    tasks.ui().execute(() -> tellTrouble(troubles.explain(failure)));
  }

  private void tellTrouble(Trouble trouble) {
    var what = new Label(trouble.what());
    what.setWrapText(true);
    var mend = new Label(trouble.mend());
    mend.setWrapText(true);
    var box = new VBox(what, mend);
    box.getStyleClass().add("trouble");
    if (!trouble.detail().isEmpty()) {
      var detail = new Label(trouble.detail());
      detail.setWrapText(true);
      var more = new TitledPane(texts.get("trouble.detail"), detail);
      more.setExpanded(false);
      more.setAnimated(false);
      box.getChildren().add(more);
    }
    shell.slips().show(Slip.telling(texts.get("trouble.title"), box, box));
  }

  @Override
  public void tell(String text) {
    shell.tell(text);
  }

  @Override
  public void openJob(Path folder) {
    throw new UnsupportedOperationException("not yet: " + folder);
  }

  @Override
  public void show(String screenId) {
    shell.screen(screenId).ifPresent(shell::show);
  }

  @Override
  public void close() {
    preferences.put("window.width", scene.getWidth());
    preferences.put("window.height", scene.getHeight());
    shell.pages("", List.of());
    background.close();
  }
}
