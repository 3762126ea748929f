package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.job.Comment;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.Preferences;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CommentsModelTest {
  private static final String ADA = "page-0a1b2c3d";

  @TempDir private Path folder;
  private final JobViews job = JobViews.of(9);

  /** At the computer {@code here}, which keeps nothing. */
  static CommentsModel comments() {
    return comments(Preferences.read(Path.of("none", "none.json"), _ -> {}, _ -> {}), "a job");
  }

  private static CommentsModel comments(Preferences preferences, String job) {
    return new CommentsModel(
        "here",
        new SeenComments(preferences, job),
        ZoneOffset.UTC,
        Texts.in(Locale.UK),
        view -> view.equals("F") ? "front" : view);
  }

  private Preferences preferences() {
    return Preferences.read(folder.resolve("preferences.json"), Runnable::run, _ -> {});
  }

  private static Frame frame(String stem) {
    var path = Path.of("/job/01_frames", stem + ".CR3");
    return new Frame(
        new FrameId(stem),
        path.getParent(),
        stem,
        List.of(new FrameFile(path, 1, Instant.EPOCH, FileRole.RAW)),
        Capture.UNKNOWN,
        true);
  }

  private static List<String> texts(CommentsModel comments, String setup, JobViews job) {
    return comments.said(setup, job.build()).stream().map(Said::text).toList();
  }

  @Test
  void theNewestIsFirstWithWhoAndWhen() {
    var comments = comments();
    job.said(ADA, "002", "Ada", "collar lower").said("here", "002", "Timo", "done");
    comments.begin(job.build());
    assertThat(comments.said("002", job.build()))
        .containsExactly(
            new Said("done", "Timo, 12:00", "", false),
            new Said("collar lower", "Ada, 12:00", "", true));
    assertThat(comments.said("003", job.build())).isEmpty();
  }

  @Test
  void whereNobodyIsNamedTheDeviceIs() {
    var comments = comments();
    job.said(ADA, "002", "", "collar lower");
    comments.begin(job.build());
    assertThat(comments.said("002", job.build()).getFirst().who()).startsWith("Ada's tablet");
  }

  @Test
  void aCommentOnAFrameSaysWhichByItsViewAndName() {
    var frames = List.of(frame("IMG_0002"), frame("IMG_0001"));
    job.arrived("002", "F", frames);
    job.said(ADA, "002", "Ada", "collar lower", frames.getLast().id());
    job.said(ADA, "002", "Ada", "gone", new FrameId("no frame of this job"));
    var comments = comments();
    comments.begin(job.build());
    assertThat(comments.said("002", job.build()).stream().map(Said::of))
        .containsExactly("a frame that is not there any more", "front IMG_0001");
  }

  @Test
  void theSetupIsFoundByWhateverItsCodeIsCalledNow() {
    var comments = comments();
    job.said(ADA, "2", "Ada", "collar lower");
    comments.begin(job.build());
    assertThat(texts(comments, "002", job)).containsExactly("collar lower");
  }

  @Test
  void whatWasSaidHereIsNeverNew() {
    var comments = comments();
    comments.begin(job.build());
    job.said("here", "002", "Timo", "done");
    assertThat(comments.take(job.build())).isEmpty();
    assertThat(comments.count("002")).isEqualTo(new SaidCount(1, 0));
  }

  @Test
  void aCommentIsHeardOfOnceAndNotWhereItWasThereWhenTheJobWasOpened() {
    job.said(ADA, "002", "Ada", "before");
    var comments = comments();
    comments.begin(job.build());
    assertThat(comments.take(job.build())).isEmpty();
    job.said(ADA, "003", "Ada", "after");
    assertThat(comments.take(job.build()).stream().map(Comment::text)).containsExactly("after");
    assertThat(comments.take(job.build())).isEmpty();
  }

  @Test
  void oneThatWasTakenBackIsNotWaitedFor() {
    var comments = comments();
    comments.begin(job.build());
    job.said(ADA, "002", "Ada", "collar lower");
    comments.take(job.build());
    job.takeBackComment();
    comments.take(job.build());
    assertThat(comments.count("002")).isEqualTo(SaidCount.NONE);
    assertThat(comments.see(List.of("002"))).isFalse();
  }

  @Test
  void whatWasSeenIsNotNewWhenTheJobIsOpenedAgain() {
    job.said(ADA, "002", "Ada", "collar lower").said(ADA, "003", "Ada", "once more");
    var before = comments(preferences(), "a job");
    before.begin(job.build());
    assertThat(before.see(List.of("002", "003"))).isTrue();
    assertThat(before.see(List.of("002", "003"))).isFalse();

    job.said(ADA, "003", "Ada", "and the belt");
    var after = comments(preferences(), "a job");
    after.begin(job.build());
    assertThat(after.count("002")).isEqualTo(new SaidCount(1, 0));
    assertThat(after.count("003")).isEqualTo(new SaidCount(2, 1));
  }

  @Test
  void whatWasNotSeenIsNewStillWhenTheJobIsOpenedAgain() {
    job.said(ADA, "002", "Ada", "collar lower").said(ADA, "003", "Ada", "once more");
    var before = comments(preferences(), "a job");
    before.begin(job.build());
    before.see(List.of("003"));
    var after = comments(preferences(), "a job");
    after.begin(job.build());
    assertThat(after.count("002")).isEqualTo(new SaidCount(1, 1));
  }

  @Test
  void whatWasSeenIsKeptForEachOfTheLastJobs() {
    var kept = preferences();
    new SeenComments(kept, "one").keep(Instant.parse("2026-11-23T12:00:00Z"));
    new SeenComments(kept, "two").keep(Instant.parse("2026-11-24T12:00:00Z"));
    new SeenComments(kept, "one").keep(Instant.parse("2026-11-25T12:00:00Z"));
    assertThat(new SeenComments(preferences(), "one").until())
        .contains(Instant.parse("2026-11-25T12:00:00Z"));
    assertThat(new SeenComments(preferences(), "two").until())
        .contains(Instant.parse("2026-11-24T12:00:00Z"));
    assertThat(kept.recent("comments.seen")).hasSize(2);
    for (int i = 0; i < 20; i++) {
      new SeenComments(kept, "other " + i).keep(Instant.EPOCH);
    }
    assertThat(new SeenComments(kept, "two").until()).isEmpty();
    assertThat(kept.recent("comments.seen")).hasSize(8);
  }

  @Test
  void whatSomebodyElseWroteIntoThePreferencesIsNoTime() {
    var kept = preferences();
    kept.put("comments.seen", List.of("a job yesterday"));
    assertThat(new SeenComments(kept, "a job").until()).isEmpty();
  }
}
