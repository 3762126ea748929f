package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person says of slates on the page of frames, by keys and by mouse. */
@Tag("slow")
class SlatePageTest {
  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  /** Three frames that came while nothing was on set. */
  private Job job() throws Exception {
    var job = FreshJob.titled(folder, clock, List.of("Wool coat", "Felt hat"));
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (int i = 0; i < 3; i++) {
      clock.pass(Duration.ofSeconds(10));
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
    }
    return job;
  }

  @Test
  void aFrameIsSaidToBeASlateAndWhatItPlacedLeadsToIt() throws Exception {
    var job = job();
    var app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.await(() -> app.exists("#setups"));
      app.pressUntil(() -> app.exists("#grid"), KeyCode.F3);
      app.awaitReading(".grid-title", "3 frames, 0 selects");
      app.press(KeyCode.HOME);
      app.awaitReading("#why", "IMG_0001, no setup yet: no setup was on set so far");
      app.press(KeyCode.I);
      app.awaitReading("#status", "IMG_0001 is no slate, as far as is known.");

      app.press(KeyCode.T);
      app.awaitReading(".dialog-title", "Which setup is IMG_0001 the slate of?");
      app.type("hat");
      app.press(KeyCode.ENTER);
      app.awaitReading("#status", "IMG_0001 is the slate of 002 Felt hat now.");
      app.awaitReading(".heading-what", "Slates");
      app.awaitReading(".grid-title", "2 frames, 0 selects");
      app.press(KeyCode.HOME);
      app.awaitReading("#why", "IMG_0002 in 002: by slate IMG_0001");
      app.press(KeyCode.G);
      app.awaitReading(".grid-title", "1 slate");
      app.awaitReading("#why", "IMG_0001: a slate, of 002, 2 frames go by it");

      app.robot().clickOn("#act-slate");
      app.robot().clickOn("#act-slateNone");
      app.awaitReading("#status", "IMG_0001 is no slate.");
      app.press(KeyCode.BACK_SPACE);
      app.awaitReading("#status", "Undone: IMG_0001 is no slate.");
      app.press(KeyCode.BACK_SPACE);
      app.awaitReading("#status", "Undone: IMG_0001 is the slate of 002 Felt hat now.");
      app.await(() -> app.reads(".grid-title").startsWith("3 frames"));
      assertThat(Job.open(job.folder(), clock).state().slates().words()).isEmpty();
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }
}
