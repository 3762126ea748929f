package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import org.framewright.job.Job;
import org.framewright.job.TestClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A scanner at the app. The product numbers are examples of GS1, from memory. */
@Tag("slow")
class ScanPageTest {
  private static final String COAT = "9506000134352";
  private static final String HAT = "614141000012";

  private static final Duration HAND_AFTER_SCAN = Duration.ofMillis(200);

  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;
  private OpenApp app;

  @BeforeEach
  void openTheApp() throws Exception {
    job = FreshJob.titled(folder, clock, List.of("Wool coat", "Felt hat", "Felt hat, red", "Belt"));
    for (var ean : Map.of("001", COAT, "002", HAT, "003", HAT).entrySet()) {
      var setup = job.shotList().setup(ean.getKey()).orElseThrow();
      job.changeSetup(FreshJob.with(setup, "EAN", ean.getValue()));
    }
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    app.openJob(job);
    app.await(() -> app.exists("#setups"));
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  /** Keys that come at once belong to the end of a scan; a person's hand takes longer. */
  private void scan(String text) throws Exception {
    KeyStroke.scan(app.app().scene(), text);
    Thread.sleep(HAND_AFTER_SCAN);
  }

  @Test
  void aScanPutsASetupOnSetWhereverTheKeysGoAndIsUndoneAsATick() throws Exception {
    app.press(KeyCode.SLASH);
    app.type("coat");
    scan(COAT);
    app.awaitReading(".set-code", "001");
    assertThat(app.reads("#filter")).isEqualTo("coat");
    app.awaitReading("#status", "001 Wool coat is on set, front before the camera.");
    scan(COAT);
    app.awaitReading("#status", "001 Wool coat is on set already.");
    app.press(KeyCode.F3);
    scan("0004");
    app.await(
        () -> Job.open(job.folder(), clock).state().onSet().orElseThrow().setup().equals("004"));
    app.press(KeyCode.F2);
    app.awaitReading(".set-code", "004");
    app.press(KeyCode.ESCAPE);
    app.press(OpenApp.SHORTCUT, KeyCode.Z);
    app.awaitReading(".set-code", "001");
  }

  @Test
  void aScanIsHeardOverAnOpenMenuAndInTheClientsWindow() throws Exception {
    app.robot().clickOn("#menu");
    scan(COAT);
    app.awaitReading(".set-code", "001");
    onInterface(
        () -> {
          app.app().turnClient();
          return app;
        });
    KeyStroke.scan(app.app().clientScene(), "0004");
    app.awaitReading(".set-code", "004");
  }

  @Test
  void aCodeThatNoSetupHasIsSaidLargeAndCanBeAdded() throws Exception {
    scan("95012346");
    app.awaitReading("#scan-code", "95012346");
    assertThat(app.reads(".dialog-title")).isEqualTo("No setup has this code");
    app.press(KeyCode.ENTER);
    assertThat(app.reads(".dialog-title")).as("no setup is chosen").isNotEmpty();
    scan(COAT);
    app.await(() -> app.reads(".dialog-remark").startsWith(COAT + " was scanned."));
    assertThat(app.reads("#setup-typed")).as("where one types").isEmpty();
    app.type("red");
    app.press(KeyCode.ENTER);
    app.awaitReading("#status", "003 Felt hat, red is changed.");
    assertThat(Job.open(job.folder(), clock).shotList().setup("003").orElseThrow().columns())
        .containsEntry("EAN", HAT + ", 95012346");
    assertThat(Job.open(job.folder(), clock).state().onSet()).isEmpty();
    scan("95012346");
    app.awaitReading(".set-code", "003");
  }

  @Test
  void ofTwoSetupsWithOneCodeOneIsChosenByKeyOrByMouse() throws Exception {
    scan(HAT);
    app.awaitReading(".dialog-title", "2 setups have this code");
    app.press(KeyCode.DOWN);
    app.press(KeyCode.ENTER);
    app.awaitReading(".set-code", "003");
    scan(HAT);
    app.awaitReading(".dialog-title", "2 setups have this code");
    app.robot().clickOn(".setup-choice-row", MouseButton.PRIMARY);
    app.robot().clickOn("#dialog-confirm", MouseButton.PRIMARY);
    app.awaitReading(".set-code", "002");
  }

  @Test
  void textThatFitsNoCheckIsSaidOnly() throws Exception {
    scan("1234567");
    app.awaitReading("#status", "No setup has the code 1234567. Nothing was changed.");
    assertThat(app.reads(".dialog-title")).isEmpty();
    app.press(OpenApp.SHORTCUT, KeyCode.B);
    app.awaitReading("#scan-code", "1234567");
    app.press(KeyCode.ESCAPE);
    app.press(OpenApp.SHORTCUT, KeyCode.W);
    app.awaitReading(".job-title", "Framewright");
    scan("1234567");
    app.awaitReading("#status", "1234567 was scanned, but no job is open.");
  }
}
