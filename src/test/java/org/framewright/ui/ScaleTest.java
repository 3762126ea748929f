package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import javafx.scene.input.KeyCode;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every page in every size, with a setup on set. */
@Tag("slow")
class ScaleTest {
  private static final List<List<KeyCode>> PAGES =
      List.of(
          List.of(KeyCode.F2),
          List.of(KeyCode.F3),
          List.of(KeyCode.F4),
          List.of(KeyCode.F5),
          List.of(KeyCode.F6),
          List.of(KeyCode.F7),
          List.of(KeyCode.F12),
          List.of(KeyCode.SHIFT, KeyCode.F2));

  /** From the smallest size to the largest: 0.8 to 2.0, and one key more than that. */
  private static final int STEPS = 13;

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @Test
  void eachPageStaysWholeFromTheSmallestSizeToTheLargestAndBack() throws Exception {
    var job = FreshJob.in(folder, clock);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      // At this width the list stands beside what is on set in the smaller sizes only.
      onInterface(
          () -> {
            app.app().stage().setWidth(1300);
            return job;
          });
      waitForFxEvents();
      for (var page : PAGES) {
        app.press(page.toArray(KeyCode[]::new));
        for (var i = 0; i < STEPS; i++) {
          scale(page, KeyCode.EQUALS);
        }
        for (var i = 0; i < STEPS; i++) {
          scale(page, KeyCode.MINUS);
        }
        uncaught.assertNone();
      }
    }
  }

  private void scale(List<KeyCode> page, KeyCode key) throws Exception {
    app.press(OpenApp.SHORTCUT, key);
    if (page.equals(List.of(KeyCode.F2))) {
      assertThat(onInterface(() -> app.app().scene().getRoot().lookupAll(".on-set-band")))
          .as("what is on set")
          .hasSize(1)
          .allMatch(band -> band.getLayoutBounds().getHeight() > 50);
      assertThat(app.reads(".set-code")).isEqualTo("003");
    }
  }
}
