package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitFor;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.stage.Stage;
import javafx.stage.Window;
import org.framewright.base.OperatingSystem;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;
import org.framewright.ui.copies.Disks;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FileChoosers;
import org.framewright.ui.sets.SetsSource;
import org.framewright.ui.settings.Places;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** The real app, opened headless for a test; what a test does to it, it does by keys. */
final class OpenApp {
  /** The key of commands on this system. */
  static final KeyCode SHORTCUT =
      OperatingSystem.current() == OperatingSystem.MACOS ? KeyCode.COMMAND : KeyCode.CONTROL;

  /** What leads to the end of a text on this system. */
  static final KeyCode[] TO_THE_END =
      OperatingSystem.current() == OperatingSystem.MACOS
          ? new KeyCode[] {KeyCode.COMMAND, KeyCode.DOWN}
          : new KeyCode[] {KeyCode.CONTROL, KeyCode.END};

  private static final int PATIENCE_SECONDS = 30;
  private static final int MANY = 60;

  private final FxRobot robot = new FxRobot();
  private final Composition app;

  private OpenApp(Composition app) {
    this.app = app;
  }

  /**
   * Opened with the day's reminder seen already.
   *
   * @param settings where its preferences are kept
   * @param choosers what answers when it asks for a file
   */
  static OpenApp open(Path settings, Clock clock, FileChoosers choosers) throws Exception {
    return open(settings, clock, choosers, Locale.UK, 1);
  }

  /** The same on a system of that language, everything so much larger. */
  static OpenApp open(
      Path settings, Clock clock, FileChoosers choosers, Locale system, double scale)
      throws Exception {
    Files.createDirectories(settings);
    Files.writeString(
        settings.resolve("preferences.json"),
        "{\"safety.reminded\": \"" + LocalDate.now(clock) + "\", \"scale\": " + scale + "}");
    return again(settings, clock, choosers, system);
  }

  /** Opened with the preferences as they are. */
  static OpenApp again(Path settings, Clock clock, FileChoosers choosers) throws Exception {
    return again(settings, clock, choosers, Locale.UK);
  }

  private static OpenApp again(Path settings, Clock clock, FileChoosers choosers, Locale system)
      throws Exception {
    return again(settings, clock, choosers, system, new Disks(Volumes.ofThisSystem(), List::of));
  }

  /** Opened on a computer with those disks. */
  static OpenApp again(
      Path settings, Clock clock, FileChoosers choosers, Locale system, Disks disks)
      throws Exception {
    return shown(stage -> composed(stage, settings, clock, choosers, system, disks));
  }

  /** Opened where the studio has those sets. */
  static OpenApp withSets(Path settings, Clock clock, FileChoosers choosers, SetsSource sets)
      throws Exception {
    var disks = new Disks(Volumes.ofThisSystem(), List::of);
    var here = JobOnDevices.at(InetAddress.getLoopbackAddress());
    return shown(stage -> composed(stage, settings, clock, choosers, Locale.UK, disks, here, sets));
  }

  /** Puts the app together on a stage. */
  @FunctionalInterface
  private interface Composing {
    Composition on(Stage stage) throws IOException;
  }

  private static OpenApp shown(Composing composing) throws Exception {
    Toolkit.start();
    var made = new CompletableFuture<Composition>();
    FxToolkit.setupStage(
        stage -> {
          try {
            var composition = composing.on(stage);
            // One stage serves all tests: a size that another set must not outlive it.
            stage.sizeToScene();
            composition.open();
            made.complete(composition);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
    waitForFxEvents();
    return new OpenApp(made.get());
  }

  /** The app with its real threads, on a stage and with the settings of a folder. */
  static Composition composed(Stage stage, Path settings, Clock clock, FileChoosers choosers)
      throws IOException {
    return composed(stage, settings, clock, choosers, Locale.UK);
  }

  /** The same on a system of that language. */
  static Composition composed(
      Stage stage, Path settings, Clock clock, FileChoosers choosers, Locale system)
      throws IOException {
    // No card that whoever runs a test has put in comes up in it.
    return composed(
        stage, settings, clock, choosers, system, new Disks(Volumes.ofThisSystem(), List::of));
  }

  /** The same on a computer with those disks. */
  static Composition composed(
      Stage stage, Path settings, Clock clock, FileChoosers choosers, Locale system, Disks disks)
      throws IOException {
    // Devices that a test plays are on this computer.
    var here = JobOnDevices.at(InetAddress.getLoopbackAddress());
    var sets = SetsSource.of(settings, clock);
    return composed(stage, settings, clock, choosers, system, disks, here, sets);
  }

  /** The same in that network, and with those sets of a studio. */
  static Composition composed(
      Stage stage,
      Path settings,
      Clock clock,
      FileChoosers choosers,
      Locale system,
      Disks disks,
      Network network,
      SetsSource sets)
      throws IOException {
    return new Composition(
        stage,
        Places.in(settings),
        clock,
        system,
        Background.threads(),
        Platform::runLater,
        choosers,
        // What a test shows there must not come up on the screen of whoever runs it.
        new FileManager(OperatingSystem.LINUX, _ -> OptionalInt.of(0)),
        new AwakeDisplay(OperatingSystem.LINUX, 0, _ -> () -> {}),
        disks,
        network,
        sets);
  }

  Composition app() {
    return app;
  }

  FxRobot robot() {
    return robot;
  }

  void close() throws Exception {
    FxToolkit.setupFixture(
        () -> {
          app.stage().close();
          app.close();
        });
  }

  /** Opens a job; returns once its pages are there, and all parts of the list's. */
  void openJob(Job job) throws Exception {
    onInterface(
        () -> {
          app.openJob(job.folder());
          return job;
        });
    awaitReading(".job-title", job.name());
    await(() -> app.pageIds().contains("board") && isWhole(app.scene().lookup("#setups")));
  }

  private static boolean isWhole(Node setups) {
    return setups instanceof ListView<?> list && list.getMaxHeight() == Region.USE_COMPUTED_SIZE;
  }

  /** Waits until something holds, asked on the interface thread. */
  void await(Callable<Boolean> condition) throws Exception {
    try {
      waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition).get());
    } catch (TimeoutException e) {
      throw new AssertionError("Waited in vain; " + onInterface(this::state), e);
    }
  }

  /** Where the app stands and where keys go, for a test that waited in vain. */
  private String state() {
    return "windows: %s, keys go to: %s, dialog: %s, convention: %s, said: %s"
        .formatted(
            Window.getWindows().stream()
                .map(
                    window ->
                        window.getClass().getSimpleName() + (window.isFocused() ? " focused" : ""))
                .toList(),
            app.scene().getFocusOwner(),
            seen(".dialog .label"),
            seen("#convention"),
            seen("#said"));
  }

  /** Presses keys together and lets them go. */
  void press(KeyCode... keys) {
    robot.push(keys);
    waitForFxEvents();
    untilNoKeyIsHeld();
  }

  /** Types where the keys go. */
  void type(String text) {
    robot.write(text, 0);
    waitForFxEvents();
    untilNoKeyIsHeld();
  }

  /** A person is slower than a robot, whose typing is not to be taken for a scan. */
  void untilNoKeyIsHeld() {
    try {
      await(() -> !app.isHoldingKeys());
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
    waitForFxEvents();
  }

  /** Presses a key until something holds, a few times at most. */
  void pressUntil(Callable<Boolean> holds, KeyCode... keys) throws Exception {
    for (var i = 0; i < MANY && !onInterface(holds); i++) {
      press(keys);
    }
    await(holds);
  }

  /** Whether the keys go to the node of that selector or to one inside it. */
  boolean holdsTheKeys(String selector) throws Exception {
    return onInterface(
        () -> {
          var node = app.scene().getFocusOwner();
          while (node != null && !("#" + node.getId()).equals(selector)) {
            node = node.getParent();
          }
          return node != null;
        });
  }

  boolean exists(String selector) throws Exception {
    return onInterface(() -> app.scene().getRoot().lookup(selector) != null);
  }

  /** The text of the first thing on the screen that fits the selector; empty if there is none. */
  String reads(String selector) throws Exception {
    return onInterface(() -> seen(selector).stream().findFirst().orElse(""));
  }

  /** The texts of all things on the screen that fit the selector, from top to bottom. */
  List<String> readsAll(String selector) throws Exception {
    return onInterface(() -> seen(selector));
  }

  /** Waits until something on the screen reads so. */
  void awaitReading(String selector, String text) throws Exception {
    await(() -> seen(selector).contains(text));
  }

  private List<String> seen(String selector) {
    return app.scene().getRoot().lookupAll(selector).stream()
        .filter(OpenApp::isShown)
        .sorted(
            Comparator.comparingDouble(
                node -> node.localToScene(node.getBoundsInLocal()).getMinY()))
        .map(
            node ->
                switch (node) {
                  case WrappedText wrapped -> wrapped.getText();
                  case Labeled labeled when labeled.getParent() instanceof WrappedText wrapped ->
                      wrapped.getText();
                  case Labeled labeled when labeled.isMnemonicParsing() ->
                      // Its first underscore is not shown: it marks a key.
                      labeled.getText().replaceFirst("_(?=.)", "");
                  case Labeled labeled -> labeled.getText();
                  case TextInputControl field -> field.getText();
                  case ComboBox<?> combo -> combo.getButtonCell().getText();
                  default -> node.getAccessibleText();
                })
        .map(text -> Objects.requireNonNullElse(text, ""))
        .toList();
  }

  private static boolean isShown(Node node) {
    for (var at = node; at != null; at = at.getParent()) {
      if (!at.isVisible()) {
        return false;
      }
    }
    return true;
  }
}
