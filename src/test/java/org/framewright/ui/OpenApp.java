package org.framewright.ui;

import static org.testfx.util.WaitForAsyncUtils.waitFor;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import javafx.application.Platform;
import javafx.scene.input.KeyCode;
import org.framewright.ui.settings.Places;
import org.testfx.api.FxRobot;
import org.testfx.api.FxToolkit;
import org.testfx.util.WaitForAsyncUtils;

/** The real app, opened headless for a test, with the day's reminder seen already. */
final class OpenApp {
  private static final int PATIENCE_SECONDS = 30;

  private final FxRobot robot = new FxRobot();
  private final Composition app;

  private OpenApp(Composition app) {
    this.app = app;
  }

  /**
   * @param settings where its preferences are kept
   * @param choosers what answers when it asks for a file
   */
  static OpenApp open(Path settings, Clock clock, FileChoosers choosers) throws Exception {
    Files.createDirectories(settings);
    Files.writeString(
        settings.resolve("preferences.json"),
        "{\"safety.reminded\": \"" + LocalDate.now(clock) + "\"}");
    FxToolkit.registerPrimaryStage();
    var made = new CompletableFuture<Composition>();
    FxToolkit.setupStage(
        stage -> {
          try {
            var composition =
                new Composition(
                    stage,
                    Places.in(settings),
                    clock,
                    Locale.ENGLISH,
                    Background.threads(),
                    Platform::runLater,
                    choosers);
            composition.open();
            made.complete(composition);
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
    waitForFxEvents();
    return new OpenApp(made.get());
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

  /** Waits until something holds, asked on the interface thread. */
  void await(Callable<Boolean> condition) throws Exception {
    waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS, () -> WaitForAsyncUtils.asyncFx(condition).get());
  }

  void press(KeyCode... keys) {
    robot.push(keys);
    waitForFxEvents();
  }
}
