package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import org.framewright.job.MarkDetails;
import org.framewright.report.ReportFiles;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page of the day on the real app, by keys. */
@Tag("slow")
class DayPageTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);

  @Test
  void whatIsToBeLookedAtIsWorkedOffAndTheEveningIsWrittenInOneKey() throws Exception {
    var job = FreshJob.withFrames(folder, clock, 3);
    job.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    job.mark(
        "001",
        SetupState.PICKUP,
        new MarkDetails(Optional.empty(), Optional.empty(), Optional.of("creased")));
    var app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.press(KeyCode.F7);
      app.await(() -> app.readsAll(".look-what").contains("001 is to be shot again: creased"));
      assertThat(app.reads("#day-shot .day-number")).isEqualTo("0 of 40");
      assertThat(onInterface(() -> app.app().scene().lookup("#day-hours").getAccessibleText()))
          .startsWith("No setup was finished on this day.");

      app.press(KeyCode.A);
      app.press(KeyCode.SPACE);
      app.await(() -> app.reads("#look-counts").endsWith("1 looked at (until the job is closed)"));
      app.press(KeyCode.UP);
      app.press(KeyCode.ENTER);
      app.awaitReading(".set-code", "002");
      app.await(() -> app.holdsTheKeys("#setups"));
      app.press(KeyCode.F7);
      app.await(() -> app.reads("#look-counts").contains("1 looked at"));

      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      var at = ReportFiles.eveningFolder(job);
      app.awaitReading("#report-said", "2 reports written: " + at);
      app.awaitReading("#status", "2 reports written: " + at);
      app.press(KeyCode.O);
      app.await(() -> app.reads("#status").contains("day-report.pdf"));
      app.press(KeyCode.D);
      app.await(() -> app.reads("#report-said").endsWith("_day-report.pdf"));

      var away = folder.resolve("unplugged");
      Files.move(job.folder(), away);
      app.press(OpenApp.SHORTCUT, KeyCode.ENTER);
      app.await(() -> !app.reads("#report-said").contains("reports written"));
      Files.move(away, job.folder());
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }
}
