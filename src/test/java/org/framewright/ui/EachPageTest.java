package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import javafx.scene.input.KeyCode;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Each page once on the real app, for the quick build; the other tests of pages are slower. */
@Tag("slow")
class EachPageTest {
  @TempDir private Path folder;

  @Test
  void eachPageComesToTheFrontAndWorks() throws Exception {
    var clock = Clock.system(ZoneOffset.UTC);
    var job = FreshJob.withFrames(folder, clock, 2);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    var app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.awaitReading(".set-code", "003");
      app.press(KeyCode.SPACE);
      app.awaitReading(".set-code", "004");
      app.press(KeyCode.F3);
      app.awaitReading(".grid-title", "2 frames, 0 selects");
      app.press(KeyCode.F4);
      app.awaitReading("#rename", "Rename 2 files");
      app.press(KeyCode.F5);
      app.await(() -> app.exists("#places"));
      app.press(KeyCode.F6);
      app.await(() -> app.reads("#hand-off-going").equals("No select goes"));
      app.press(KeyCode.F7);
      app.await(() -> app.reads("#look-counts").contains("to judge"));
      app.press(KeyCode.F12);
      app.await(() -> app.exists("#field-day"));
      app.press(KeyCode.SHIFT, KeyCode.F2);
      app.await(() -> app.reads("#verdict").startsWith("Proved sound"));
      uncaught.assertNone();
      assertThat(app.readsAll(".page-word")).hasSize(6);
    } finally {
      app.close();
    }
  }
}
