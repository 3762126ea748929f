package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.frames.slate.Slate;
import org.framewright.job.MarkDetails;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.JobSession;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FollowSlateTest {
  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");

  @Test
  void aSlateThatContradictsWhatIsOnSetIsToldAndFollowedAndThatIsUndone() throws Exception {
    var second = Duration.ofSeconds(1);
    var job = FreshJob.in(folder, clock);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(second);
    new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 412)
        .take(Exposure.of(clock.instant(), "002", "F"))
        .writeTo(job.framesFolder());
    clock.pass(second);
    var scan = job.scan();
    job.recordArrivals(scan);
    var slate = Slate.of(job.slateKey(), "002").print();
    job.recordLooks(Map.of(scan.frames().getFirst(), Optional.of(slate)));
    clock.pass(second);
    var session = JobSession.begin(job, Progress.NONE, Runnable::run, Runnable::run).orElseThrow();
    var answers = new ArrayList<Answer>();
    var troubles = new ArrayList<Throwable>();
    var board =
        new BoardModel(
            session.view(),
            session,
            Texts.in(Locale.ENGLISH),
            CommentsModelTest.comments(),
            _ -> {},
            answers::add,
            troubles::add);

    var doubt = board.standing().get().doubt().orElseThrow();
    assertThat(doubt.frame().stem()).isEqualTo("IMG_0412");
    assertThat(doubt.says().code()).isEqualTo("002");
    assertThat(doubt.onSet()).isEqualTo("001");

    board.followSlate();
    assertThat(troubles).isEmpty();
    assertThat(board.now().get().onSet().map(SetupRow::code)).contains("002");
    assertThat(board.standing().get().doubt()).isEmpty();
    assertThat(answers).singleElement().isInstanceOf(Answer.Taken.class);

    board.undo();
    assertThat(board.now().get().onSet().map(SetupRow::code)).contains("001");
    assertThat(board.standing().get().doubt()).isPresent();
    session.close();
  }
}
