package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import javafx.scene.Parent;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import org.framewright.frames.Frame;
import org.framewright.job.Job;
import org.framewright.job.JobState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Frames rated, compared and chosen, by keys and by mouse, on the real app. */
@Tag("slow")
class ComparePageTest {
  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);

  @Test
  void framesAreRatedComparedAndChosen() throws Exception {
    var job = FreshJob.withFrames(folder, clock, 4);
    var frames = job.inOrder(job.scan());
    var app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      app.await(() -> app.exists("#setups"));
      app.pressUntil(() -> app.exists("#grid"), KeyCode.F3);
      app.awaitReading(".grid-title", "4 frames, 0 selects");
      app.press(KeyCode.HOME);
      app.press(KeyCode.DIGIT3);
      app.awaitReading("#status", frames.getFirst().stem() + " is rated 3.");
      app.press(KeyCode.SHIFT, KeyCode.RIGHT);
      app.press(KeyCode.SHIFT, KeyCode.RIGHT);
      app.awaitReading("#act-closer", "Compare 3");
      app.press(KeyCode.ENTER);
      app.await(() -> app.exists("#compared"));
      app.press(KeyCode.LEFT);
      app.press(KeyCode.NUMPAD5);
      app.awaitReading("#status", frames.get(1).stem() + " is rated 5.");
      app.press(KeyCode.ENTER);
      app.awaitReading("#status", frames.get(1).stem() + " is the select, the other 2 are not.");
      assertThat(state(job).selects()).containsExactly(frames.get(1).id());

      app.press(KeyCode.F);
      app.await(() -> sharpPicture(app).isPresent());
      assertThat(sharpPicture(app)).contains(List.of(true, true, true));
      app.press(KeyCode.F);
      app.await(() -> sharpPicture(app).isEmpty());

      app.press(KeyCode.MINUS);
      app.await(() -> app.readsAll(".compared-name").size() == 2);
      app.robot().clickOn(".compared"); // the first of the two
      app.robot().clickOn("#act-select");
      app.awaitReading("#status", frames.getFirst().stem() + " is a select.");
      app.press(KeyCode.BACK_SPACE);
      app.awaitReading("#status", "Undone: " + frames.getFirst().stem() + " is a select.");
      app.press(KeyCode.ESCAPE);
      app.await(() -> app.exists("#grid"));
      app.press(KeyCode.BACK_SPACE);
      app.await(() -> state(job).selects().isEmpty());
      var now = state(job);
      assertThat(frames.stream().map(frame -> rating(now, frame))).containsExactly(3, 5, 0, 0);
      uncaught.assertNone();
    } finally {
      app.close();
    }
  }

  private JobState state(Job job) {
    try {
      return Job.open(job.folder(), clock).state();
    } catch (Exception e) {
      throw new AssertionError(e);
    }
  }

  private static int rating(JobState state, Frame frame) {
    return state.rating(frame).orElse(0);
  }

  /** For each picture at full size whether all of it has come; nothing while one is seen whole. */
  private static Optional<List<Boolean>> sharpPicture(OpenApp app) {
    var panes =
        app.robot().lookup(".full-size").queryAll().stream().filter(pane -> pane.isVisible());
    var sharp =
        panes
            .map(pane -> (ImageView) ((Parent) pane).getChildrenUnmodifiable().get(1))
            .map(view -> view.getImage() != null)
            .toList();
    return sharp.isEmpty() || sharp.contains(false) ? Optional.empty() : Optional.of(sharp);
  }
}
