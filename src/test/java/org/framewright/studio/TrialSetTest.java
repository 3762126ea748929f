package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.framewright.job.Job;
import org.framewright.job.TestClock;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An invented set, without a store. */
class TrialSetTest {
  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T12:00:00Z");

  private TrialSet set(TrialSet.Story story) throws Exception {
    return TrialSet.begin(folder, 1, story, clock);
  }

  private static List<String> in(Job job, SetupState state) {
    return job.shotList().setups().stream()
        .map(setup -> setup.code())
        .filter(code -> job.state().of(code).state() == state)
        .toList();
  }

  @Test
  void halfADayIsBehindItAndNothingIsAheadOfNow() throws Exception {
    var job = set(TrialSet.Story.USUAL).job();
    assertThat(job.name()).isEqualTo("set_01");
    assertThat(job.shotList().setups()).hasSize(24);
    assertThat(in(job, SetupState.SIGNED_OFF)).hasSize(8).contains("001", "008");
    assertThat(in(job, SetupState.TO_SHOOT)).hasSize(16);
    assertThat(job.now()).isEqualTo(clock.instant());
    var last = job.state().of("008").since().orElseThrow();
    assertThat(last).isBefore(clock.instant()).isAfter(clock.instant().minusSeconds(120));
  }

  @Test
  void eachStoryHasASetupThatTellsIt() throws Exception {
    assertThat(in(set(TrialSet.Story.WAITS).job(), SetupState.SHOT)).containsExactly("008");
    var pickup = TrialSet.begin(folder, 2, TrialSet.Story.PICKUP, clock).job();
    assertThat(in(pickup, SetupState.PICKUP)).hasSize(1);
    var trouble = TrialSet.begin(folder, 3, TrialSet.Story.TROUBLE, clock).job();
    assertThat(in(trouble, SetupState.DROPPED)).hasSize(1);
    var silent = TrialSet.begin(folder, 4, TrialSet.Story.SILENT, clock).job();
    assertThat(in(silent, SetupState.SHOT)).isEmpty();
  }

  @Test
  void aSetupGoesOnSetIsShotAndSignedOffThenTheNextOne() throws Exception {
    var set = set(TrialSet.Story.USUAL);
    var job = set.job();
    assertThat(set.play(job)).isTrue();
    assertThat(job.state().of("009").state()).isEqualTo(SetupState.ON_SET);
    assertThat(set.play(job)).isTrue();
    assertThat(job.state().of("009").state()).isEqualTo(SetupState.SHOT);
    assertThat(set.play(job)).isTrue();
    assertThat(job.state().of("009").state()).isEqualTo(SetupState.SIGNED_OFF);
    assertThat(set.play(job)).isTrue();
    assertThat(job.state().of("010").state()).isEqualTo(SetupState.ON_SET);
  }

  @Test
  void whereNobodySignsOffWorkGoesOnUntilNothingIsLeft() throws Exception {
    var set = set(TrialSet.Story.WAITS);
    int ticks = 0;
    while (set.play(set.job())) {
      ticks++;
    }
    assertThat(ticks).isEqualTo(2 * 16);
    assertThat(in(set.job(), SetupState.SHOT)).hasSize(17);
  }
}
