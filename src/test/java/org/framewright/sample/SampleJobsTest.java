package org.framewright.sample;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.SetupStatus;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("slow")
class SampleJobsTest {
  private static final Instant NOW = Instant.parse("2027-02-03T10:15:00Z");

  @TempDir private Path folder;

  private static SampleFiles files() throws Exception {
    return SampleFiles.below(Path.of(""));
  }

  private static Job open(Path path) throws Exception {
    return Job.open(path, Clock.fixed(NOW, ZoneOffset.ofHours(1)));
  }

  @Test
  void theJobInTheMiddleHasAGarmentOnSetNow() throws Exception {
    var job = open(SampleDay.untilNoonOfTheSecondDay(files(), folder, SampleCamera.Size.TINY, NOW));
    assertThat(job.state().onSet())
        .hasValueSatisfying(onSet -> assertThat(onSet.setup()).isEqualTo("015"));
    assertThat(job.tally().bySetup().get("015").frames()).isEqualTo(3);
    assertThat(job.shotList().setup("015").orElseThrow().day()).contains("2027-02-03");
    assertThat(job.state().spans()).allSatisfy(span -> assertThat(span.from()).isBefore(NOW));
  }

  @Test
  void theLargeJobHasItsSetupsFramesAndEveryState() throws Exception {
    var job = open(SampleJobs.large(files(), folder, 60, 90, NOW));
    var tally = job.tally();
    assertThat(job.shotList().setups()).hasSize(60);
    assertThat(tally.frames()).isEqualTo(90);
    assertThat(tally.unassigned()).isEmpty();
    assertThat(tally.bySetup()).hasSize(30);
    assertThat(
            job.state().setups().values().stream()
                .map(SetupStatus::state)
                .collect(Collectors.toSet()))
        .containsExactlyInAnyOrder(SetupState.values());
  }

  @Test
  void thousandsOfSetupsGetCodesOfFourDigits() throws Exception {
    var job = open(SampleJobs.large(files(), folder, 1200, 20, NOW));
    assertThat(job.shotList().codes()).hasSize(1200).startsWith("0001").endsWith("1200");
    assertThat(job.tally().unassigned()).isEmpty();
  }
}
