package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.input.KeyCode;
import javafx.stage.Screen;
import javafx.stage.Window;
import org.framewright.job.Job;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The app's window: where it comes up, and how it tells what nobody foresaw. */
@Tag("slow")
class WindowTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private Path settings() {
    return folder.resolve("settings");
  }

  private Rectangle2D place() throws Exception {
    return onInterface(() -> place(app.app().stage()));
  }

  @Test
  void comesUpAgainWhereItWas() throws Exception {
    app = OpenApp.open(settings(), clock, new Answers(folder));
    onInterface(
        () -> {
          app.app().stage().setX(60);
          app.app().stage().setY(40);
          app.app().stage().setWidth(800);
          app.app().stage().setHeight(600);
          return app;
        });
    app.await(() -> app.app().scene().getWidth() == 800);
    var left = place();
    app.close();
    assertThat(settings().resolve("preferences.json")).content().contains("window.x");

    app = OpenApp.again(settings(), clock, new Answers(folder));
    assertThat(place()).isEqualTo(left);
  }

  @Test
  void comesBackFromADisplayThatIsGone() throws Exception {
    Files.createDirectories(settings());
    Files.writeString(
        settings().resolve("preferences.json"),
        """
        {"window.x": 5000, "window.y": -3000, "window.width": 900, "window.height": 600}
        """);
    app = OpenApp.again(settings(), clock, new Answers(folder));
    var display = onInterface(() -> Screen.getPrimary().getVisualBounds());
    assertThat(display.contains(place())).as("%s on %s", place(), display).isTrue();
  }

  @Test
  void theClientsWindowComesUpAgainWhereItWas() throws Exception {
    var job = FreshJob.in(Files.createDirectory(folder.resolve("jobs")), clock);
    app = OpenApp.open(settings(), clock, new Answers(folder));
    openClient(job);
    var left =
        onInterface(
            () -> {
              var window = clientWindow();
              window.setX(70);
              window.setY(50);
              window.setWidth(700);
              window.setHeight(500);
              return window;
            });
    app.await(() -> app.app().clientScene().getWidth() == 700);
    var place = onInterface(() -> place(left));
    app.close();

    app = OpenApp.again(settings(), clock, new Answers(folder));
    openClient(job);
    assertThat(onInterface(() -> place(clientWindow()))).isEqualTo(place);
  }

  private void openClient(Job job) throws Exception {
    app.openJob(job);
    onInterface(
        () -> {
          app.app().turnClient();
          return job;
        });
    app.await(() -> clientWindow().isShowing());
  }

  private Window clientWindow() {
    return app.app().clientScene().getWindow();
  }

  private static Rectangle2D place(Window window) {
    return new Rectangle2D(window.getX(), window.getY(), window.getWidth(), window.getHeight());
  }

  @Test
  void whatNobodyCaughtOnTheInterfaceThreadIsReportedAndLogged() throws Exception {
    saysAndLogs(() -> Platform.runLater(() -> fail("a nut is loose")), "a nut is loose");
  }

  @Test
  void whatNobodyCaughtInTheBackgroundIsReportedAndLogged() throws Exception {
    saysAndLogs(() -> Thread.ofPlatform().start(() -> fail("a bolt is loose")), "a bolt is loose");
  }

  private static void fail(String how) {
    throw new IllegalStateException(how);
  }

  private void saysAndLogs(Runnable work, String message) throws Exception {
    app = OpenApp.open(settings(), clock, new Answers(folder));
    var before = Thread.getDefaultUncaughtExceptionHandler();
    try {
      onInterface(
          () -> {
            app.app().hearTheUncaught();
            return app;
          });
      work.run();
      app.awaitReading(".dialog-title", "That did not work");
      var log = settings().resolve("framewright.log");
      assertThat(app.readsAll(".trouble .label")).anyMatch(text -> text.contains(log.toString()));
      assertThat(app.readsAll(".trouble .label"))
          .noneMatch(text -> text.contains("\tat ") || text.contains("Exception"))
          .as("the detail is a key away")
          .doesNotContain(message);
      app.press(KeyCode.SPACE);
      app.awaitReading(".trouble .label", message);
      assertThat(log).content().contains(message).contains("at org.framewright");
      app.press(KeyCode.ESCAPE);
      app.await(() -> app.reads(".dialog-title").isEmpty());
    } finally {
      Thread.setDefaultUncaughtExceptionHandler(before);
    }
  }
}
