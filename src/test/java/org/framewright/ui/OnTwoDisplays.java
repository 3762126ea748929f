package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;
import javafx.scene.input.KeyCode;
import javafx.stage.Screen;
import javafx.stage.Stage;
import javafx.stage.Window;
import org.framewright.job.Job;
import org.framewright.ui.settings.Places;

/**
 * The app on the display of {@code DISPLAY}, a second monitor of which is plugged in and out by
 * xrandr while the client's screen is on it. A program of its own, as {@link OnRealDisplay}.
 */
final class OnTwoDisplays {
  /** The second monitor, as Xorg's driver without a device calls it. */
  static final String SECOND = "DUMMY1";

  /** Of the first monitor and of the second one. */
  static final String MODE = "1280x800";

  static final int ONE_DISPLAY = 79;

  static final String FIRST = "DUMMY0";
  private static final int TIMES = 3;

  private final OpenApp app;

  private OnTwoDisplays(OpenApp app) {
    this.app = app;
  }

  public static void main(String[] args) throws Exception {
    var folder = Path.of(args[0]);
    var clock = Clock.system(ZoneId.systemDefault());
    var job =
        FreshJob.titled(folder, clock, List.of("Wool coat", "Felt hat", "Scarf", "Belt", "Glove"));
    OpenApp app;
    try {
      app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(OnRealDisplay.NO_TOOLKIT);
      return;
    }
    if (displays().size() != 2) {
      System.out.println("The toolkit sees " + displays());
      System.exit(ONE_DISPLAY);
    }
    // The toolkit's threads would keep the run alive.
    try (var uncaught = new Uncaught()) {
      new OnTwoDisplays(app).run(job);
      uncaught.assertNone();
      assertThat(Places.in(folder.resolve("settings")).log())
          .as("the file that takes what nobody foresaw")
          .doesNotExist();
      System.out.println(OnRealDisplay.DONE);
      System.exit(0);
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private void run(Job job) throws Exception {
    app.openJob(job);
    app.press(KeyCode.SPACE);
    app.awaitReading(".set-code", "001");
    turnClient();
    awaitClientOnTheSecond();
    for (int time = 0; time < TIMES; time++) {
      pull();
      app.await(() -> client().isEmpty());
      app.awaitReading(
          "#status", "The client\u2019s display is gone; their screen comes back with it.");
      theKeysGoToTheApp();
      plugIn();
      awaitClientOnTheSecond();
      app.awaitReading("#status", "The client\u2019s screen is back on its display.");
    }
    // Asked for without its display it comes up beside the list; closed, it stays closed.
    pull();
    app.await(() -> client().isEmpty());
    turnClient();
    app.await(() -> client().isPresent());
    turnClient();
    app.await(() -> client().isEmpty());
    plugIn();
    app.await(() -> displays().size() == 2);
    app.press(KeyCode.F2);
    assertThat(client()).isEmpty();
    app.close();
  }

  private void theKeysGoToTheApp() throws Exception {
    var set = app.reads(".set-code");
    app.press(KeyCode.SPACE);
    app.await(() -> !app.reads(".set-code").equals(set));
  }

  private void turnClient() throws Exception {
    onInterface(
        () -> {
          app.app().turnClient();
          return app;
        });
  }

  private Optional<Stage> client() throws Exception {
    return onInterface(
        () ->
            Window.getWindows().stream()
                .filter(window -> window.isShowing() && !window.equals(app.app().stage()))
                .map(Stage.class::cast)
                .findFirst());
  }

  private void awaitClientOnTheSecond() throws Exception {
    try {
      app.await(() -> client().filter(OnTwoDisplays::fillsTheSecond).isPresent());
    } catch (AssertionError e) {
      throw new AssertionError(
          "displays %s, client %s, app %s"
              .formatted(
                  displays(), client().map(OnTwoDisplays::bounds), bounds(app.app().stage())),
          e);
    }
  }

  private static Rectangle2D bounds(Stage stage) {
    // What it shows: on some systems a stage that fills a display still adds its frame.
    return new Rectangle2D(
        stage.getX(), stage.getY(), stage.getScene().getWidth(), stage.getScene().getHeight());
  }

  private static boolean fillsTheSecond(Stage client) {
    return displays().stream()
        .anyMatch(
            display ->
                display.getMinX() > 0 && client.isFullScreen() && display.equals(bounds(client)));
  }

  private static List<Rectangle2D> displays() {
    return Screen.getScreens().stream().map(Screen::getBounds).toList();
  }

  private static void pull() throws Exception {
    xrandr("--output", SECOND, "--off");
  }

  private static void plugIn() throws Exception {
    xrandr("--output", SECOND, "--mode", MODE, "--right-of", FIRST);
  }

  private static void xrandr(String... words) throws Exception {
    var command = new ArrayList<>(List.of("xrandr"));
    command.addAll(List.of(words));
    assertThat(new ProcessBuilder(command).inheritIO().start().waitFor()).isZero();
  }
}
