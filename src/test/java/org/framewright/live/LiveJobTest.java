package org.framewright.live;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletionException;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.job.Elsewhere;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LiveJobTest {
  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final ArrayDeque<Runnable> queue = new ArrayDeque<>();
  private final List<JobView> shown = new ArrayList<>();
  private final List<List<Throwable>> failures = new ArrayList<>();
  private Optional<Elsewhere> heard = Optional.empty();
  private Job job;
  private LiveJob live;
  private AutoCloseable listening;

  @BeforeEach
  void aJobThatIsFollowed() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    var set = new Station("set");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), parent, values, clock, set)).job();
    job.importList(new ShotList(List.of(new Setup("001", "Coat"), new Setup("002", "Hat"))));
    live = LiveJob.begin(job, Progress.NONE, queue::add).orElseThrow();
    listening =
        live.listen(
            new LiveJob.Listener() {
              @Override
              public void shown(JobView view) {
                shown.add(view);
              }

              @Override
              public void failing(List<Throwable> now) {
                failures.add(now);
              }

              @Override
              public void heard(Optional<Elsewhere> elsewhere) {
                heard = elsewhere;
              }
            });
  }

  private void run() {
    while (!queue.isEmpty()) {
      queue.remove().run();
    }
  }

  private static SetupState state(JobView view, String setup) {
    return view.state().of(setup).state();
  }

  @Test
  void aChangeWaitsForItsTurnAndIsShownBeforeItsOutcomeIsTold() {
    var outcome = live.ask(one -> one.mark("001", SetupState.SHOT, MarkDetails.NONE));
    assertThat(outcome.isDone()).isFalse();
    var seen = outcome.thenApply(_ -> shown.size());
    run();
    assertThat(seen.join()).isPositive();
    assertThat(state(shown.getFirst(), "001")).isEqualTo(SetupState.SHOT);
    assertThat(live.now()).isEqualTo(shown.getLast());
    assertThat(shown).extracting(JobView::revision).isSorted().doesNotHaveDuplicates();
  }

  @Test
  void whatCannotBeDoneFailsForWhoAsked() {
    var outcome = live.ask(one -> one.mark("7", SetupState.SHOT, MarkDetails.NONE));
    run();
    assertThat(outcome.isCompletedExceptionally()).isTrue();
    assertThatThrownBy(outcome::join)
        .isInstanceOf(CompletionException.class)
        .hasMessageContaining("no setup \"7\"");
  }

  @Test
  void showsWhatAnotherStationDidAndWho() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("other"));
    other.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    live.refresh();
    run();
    assertThat(state(live.now(), "002")).isEqualTo(SetupState.ON_SET);
    assertThat(heard.map(Elsewhere::station)).isEqualTo(Optional.of("other"));
    int before = shown.size();
    live.refresh();
    run();
    assertThat(shown).hasSize(before);
  }

  /** As the exchange with a studio's store does, which brings what others did and reads it. */
  @Test
  void showsWhatWasReadBesideTheQueue() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("other"));
    other.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    assertThat(job.refresh()).isTrue();
    live.refresh();
    run();
    assertThat(state(live.now(), "002")).isEqualTo(SetupState.ON_SET);
  }

  @Test
  void showsACommentOfAnotherStation() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("other"));
    other.comment("002", List.of(), "collar lower", "Ada");
    live.refresh();
    run();
    assertThat(live.now().comments()).hasSize(1);
  }

  @Test
  void tellsThatTheFolderIsNotThereUntilItIsBack() throws Exception {
    var away = Files.move(job.folder(), parent.resolve("away"));
    live.refresh();
    live.refresh();
    run();
    assertThat(live.failures()).hasSize(1).first().isInstanceOf(LostFolder.class);
    assertThat(failures).hasSize(1);
    assertThat(live.lookWhetherLost()).isTrue();
    Files.move(away, job.folder());
    live.refresh();
    run();
    assertThat(live.failures()).isEmpty();
    assertThat(failures.getLast()).isEmpty();
    assertThat(live.lookWhetherLost()).isFalse();
  }

  @Test
  void countsFramesThatCameIn() throws IOException {
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    var onSet = live.ask(one -> one.mark("001", SetupState.ON_SET, MarkDetails.NONE));
    run();
    assertThat(onSet.isDone()).isTrue();
    clock.pass(Duration.ofSeconds(1));
    camera.take(Exposure.of(clock.instant(), "", "")).writeTo(job.framesFolder());
    live.look();
    run();
    assertThat(live.now().tally().frames()).isEqualTo(1);
    assertThat(live.now().latest().get("001")).hasSize(1);
  }

  @Test
  void whoListensNoMoreHearsNothing() throws Exception {
    listening.close();
    var tick = live.ask(one -> one.mark("001", SetupState.SHOT, MarkDetails.NONE));
    run();
    assertThat(tick.isDone()).isTrue();
    assertThat(shown).isEmpty();
    live.close();
    live.refresh();
    run();
    assertThat(failures).isEmpty();
  }
}
