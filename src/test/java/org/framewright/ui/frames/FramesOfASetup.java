package org.framewright.ui.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.framewright.base.Progress;
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
import org.framewright.ui.task.Tasks;

/** The frames of an open job in which one setup was shot, its front and its back. */
record FramesOfASetup(
    JobSession session, FramesModel model, List<Answer> answers, List<Throwable> troubles)
    implements AutoCloseable {

  /** Time passes between what is done: a tick and a frame of one moment belong to no one view. */
  static FramesOfASetup in(Path folder, TestClock clock, int ofEachView) throws Exception {
    var second = Duration.ofSeconds(1);
    var job = FreshJob.in(folder, clock);
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (var view : List.of("F", "B")) {
      job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView(view));
      clock.pass(second);
      for (var i = 0; i < ofEachView; i++) {
        camera.take(Exposure.of(clock.instant(), "001", view)).writeTo(job.framesFolder());
        clock.pass(second);
      }
      job.recordArrivals(job.scan());
      clock.pass(second);
    }
    var session = JobSession.begin(job, Progress.NONE, Runnable::run, Runnable::run).orElseThrow();
    var answers = new ArrayList<Answer>();
    var troubles = new ArrayList<Throwable>();
    var model =
        new FramesModel(
            session,
            Tasks.immediate(),
            Texts.in(Locale.ENGLISH),
            () -> "Timo",
            answers::add,
            troubles::add);
    model.follow();
    return new FramesOfASetup(session, model, answers, troubles);
  }

  /** Nothing that was done may have failed. */
  @Override
  public void close() {
    model.dispose();
    session.close();
    assertThat(troubles).isEmpty();
  }
}
