package org.framewright.ui.session;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.FreshJob;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class StepHistoryTest {
  @TempDir private Path folder;
  private Job job;
  private StepHistory history;

  @BeforeEach
  void aJobWithThreeSetups() throws Exception {
    job = FreshJob.titled(folder, Clock.systemUTC(), List.of("Coat", "Hat", "Scarf"));
    history = new StepHistory(job);
  }

  private static Step.Mark mark(String code, SetupState state) {
    return new Step.Mark(code, state, MarkDetails.NONE);
  }

  private SetupState state(String code) {
    return job.state().of(code).state();
  }

  @Test
  void twoTicksOfOneStepAreUndoneAndDoneAgainAsOne() throws Exception {
    history.take(new Step.Ticked(List.of(mark("001", SetupState.ON_SET))));
    var step =
        new Step.Ticked(List.of(mark("001", SetupState.SHOT), mark("002", SetupState.ON_SET)));
    history.take(step);
    assertThat(history.undo()).contains(step);
    assertThat(state("001")).isEqualTo(SetupState.ON_SET);
    assertThat(state("002")).isEqualTo(SetupState.TO_SHOOT);
    assertThat(history.redo()).contains(step);
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
    assertThat(state("002")).isEqualTo(SetupState.ON_SET);
    assertThat(history.redo()).isEmpty();
  }

  @Test
  void stepsOfAllKindsAreUndoneInTurnAndDoneAgainInTurn() throws Exception {
    history.take(new Step.Added(new Setup("004", "Belt"), Optional.of("001")));
    history.take(new Step.Changed(new Setup("002", "Felt hat")));
    history.take(new Step.Ticked("004", SetupState.SHOT, MarkDetails.NONE));
    history.take(new Step.Moved(List.of("003", "001", "004", "002"), "003"));
    history.take(new Step.Ordered(List.of("002", "003", "004", "001")));
    var done = job.shotList();
    for (var i = 0; i < 5; i++) {
      assertThat(history.undo()).isPresent();
    }
    assertThat(job.shotList().codes()).containsExactly("001", "002", "003");
    assertThat(job.setup("002").title()).isEqualTo("Hat");
    for (var i = 0; i < 5; i++) {
      assertThat(history.redo()).isPresent();
    }
    assertThat(job.shotList()).isEqualTo(done);
    assertThat(state("004")).isEqualTo(SetupState.SHOT);
  }

  private static Step.Frames frames(String... ids) {
    return new Step.Frames(Stream.of(ids).map(FrameId::new).toList(), ids.length, Optional.empty());
  }

  @Test
  void stepsOnFramesAreUndoneInTurnAndDoneAgainInTurn() throws Exception {
    var a = new FrameId("a");
    var b = new FrameId("b");
    history.take(new Step.Selected(frames("a", "b"), frames(), "Timo"));
    history.take(new Step.Rated(frames("a"), 4, "Timo"));
    history.take(new Step.Selected(frames("b"), frames("a"), "Timo"));
    history.take(new Step.Placed(frames("a"), new Place("002", Optional.empty()), "Timo"));
    assertThat(job.state().selects()).containsExactly(b);
    assertThat(job.state().moves()).hasSize(1);
    history.undo();
    history.undo();
    assertThat(job.state().moves()).isEmpty();
    assertThat(job.state().selects()).containsExactlyInAnyOrder(a, b);
    history.undo();
    assertThat(job.state().ratings()).isEmpty();
    history.undo();
    assertThat(job.state().selects()).isEmpty();
    for (var i = 0; i < 4; i++) {
      assertThat(history.redo()).isPresent();
    }
    assertThat(job.state().selects()).containsExactly(b);
    assertThat(job.state().ratings()).containsExactly(Map.entry(a, 4));
    assertThat(job.state().moves()).hasSize(1);
  }

  @Test
  void aStepOnNoFramesIsNone() throws Exception {
    history.take(new Step.Selected(frames(), frames(), "Timo"));
    history.take(new Step.Rated(frames(), 4, "Timo"));
    assertThatThrownBy(history::undo).isInstanceOf(JobException.class);
  }

  @Test
  void aNewStepEndsWhatCouldBeDoneAgain() throws Exception {
    history.take(new Step.Ticked("001", SetupState.SHOT, MarkDetails.NONE));
    history.undo();
    history.take(new Step.Ticked("002", SetupState.SHOT, MarkDetails.NONE));
    assertThat(history.redo()).isEmpty();
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void aTickOfAnEarlierRunIsTakenBackToo() throws Exception {
    job.mark("001", SetupState.SHOT, MarkDetails.NONE);
    assertThat(history.undo()).isEmpty();
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
    assertThatThrownBy(history::undo).isInstanceOf(JobException.class);
  }

  @Test
  void ofAStepThatFailsHalfWayWhatWasDoneIsUndone() throws Exception {
    var half = List.of(mark("001", SetupState.SHOT), mark("no such", SetupState.SHOT));
    assertThatThrownBy(() -> history.take(new Step.Ticked(half))).isInstanceOf(JobException.class);
    assertThat(state("001")).isEqualTo(SetupState.SHOT);
    assertThat(history.undo()).contains(new Step.Ticked(half.subList(0, 1)));
    assertThat(state("001")).isEqualTo(SetupState.TO_SHOOT);
  }

  @Test
  void aListThatWasImportedMeanwhileStaysWhenAStepBeforeItIsUndone() throws Exception {
    history.take(new Step.Added(new Setup("004", "Belt"), Optional.empty()));
    job.importList(
        new ShotList(
            List.of(
                new Setup("001", "Coat, belted"),
                new Setup("004", "Belt"),
                new Setup("005", "Bag"))));
    history.undo();
    assertThat(job.shotList().codes()).contains("005");
    assertThat(job.setup("001").title()).isEqualTo("Coat, belted");
  }

  @Test
  void whatChangesNothingIsNoStep() throws Exception {
    history.take(new Step.Ticked("001", SetupState.SHOT, MarkDetails.NONE));
    history.take(new Step.Moved(List.of("001", "002", "003"), "001"));
    history.take(new Step.Changed(job.setup("002")));
    assertThat(history.undo()).containsInstanceOf(Step.Ticked.class);
  }

  @Test
  void aCommentIsUndoneAndMadeAgain() throws Exception {
    var step = new Step.Commented("002", frames("a", "b"), "collar lower", "Ada");
    history.take(step);
    assertThat(job.comments())
        .singleElement()
        .matches(
            comment ->
                comment.setup().equals("002")
                    && comment.frames().equals(step.frames().ids())
                    && comment.by().equals("Ada"));
    assertThat(history.undo()).contains(step);
    assertThat(job.comments()).isEmpty();
    assertThat(history.redo()).contains(step);
    assertThat(job.comments()).hasSize(1);
  }
}
