package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.TestClock;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutlookTest {
  private static final Instant MORNING = Instant.parse("2026-11-23T10:00:00Z");

  @TempDir private Path folder;
  private final List<Integer> asked = new ArrayList<>();
  private final JobViews job = JobViews.of(3);
  private final OutlookModel model =
      new OutlookModel(
          view -> {
            asked.add((int) view.revision());
            return Optional.of(new Outlook(Duration.ofMinutes(5), Optional.empty(), false));
          },
          Tasks.immediate(),
          trouble -> {
            throw new AssertionError(trouble);
          });

  @Test
  void isWorkedOutAtOnceAfterATickAndAboutOnceAMinuteElse() {
    var view = job.build();
    model.look(view, MORNING);
    assertThat(model.outlook().get()).isPresent();
    model.look(view, MORNING.plusSeconds(49));
    model.look(job.build(), MORNING.plusSeconds(49));
    assertThat(asked).hasSize(1);
    model.look(view, MORNING.plusSeconds(50));
    assertThat(asked).hasSize(2);
    job.state("001", SetupState.SHOT);
    model.look(job.build(), MORNING.plusSeconds(51));
    assertThat(asked).hasSize(3);
    model.look(job.build(), MORNING.minusSeconds(3_600));
    assertThat(asked).as("a clock that was put back").hasSize(4);
  }

  @Test
  void saysWhenTheRestIsDoneAtThePaceSoFar() throws Exception {
    var clock = new TestClock(MORNING.toString());
    var fresh = FreshJob.titled(folder, clock, Collections.nCopies(12, "Coat"));
    for (var code : List.of("001", "002", "003")) {
      fresh.mark(code, SetupState.ON_SET, MarkDetails.NONE);
      clock.pass(Duration.ofMinutes(10));
      fresh.mark(code, SetupState.SHOT, MarkDetails.NONE);
    }
    // Half past ten, nine left of ten minutes each: an hour and a half.
    assertThat(outlook(fresh))
        .contains(
            new Outlook(
                Duration.ofMinutes(10),
                Optional.of(LocalDateTime.parse("2026-11-23T12:00:00")),
                true));
    clock.pass(Duration.ofHours(7));
    // Half past five: three today until six, the other six from nine the next day.
    assertThat(outlook(fresh))
        .contains(
            new Outlook(
                Duration.ofMinutes(10),
                Optional.of(LocalDateTime.parse("2026-11-24T10:00:00")),
                false));
  }

  @Test
  void saysNothingBeforeTheFirstSetupIsShotAndNoEndWhenNothingIsLeft() throws Exception {
    var clock = new TestClock(MORNING.toString());
    var fresh = FreshJob.titled(folder, clock, List.of("Coat"));
    assertThat(outlook(fresh)).isEmpty();
    fresh.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(4));
    fresh.mark("001", SetupState.SHOT, MarkDetails.NONE);
    assertThat(outlook(fresh))
        .contains(new Outlook(Duration.ofMinutes(4), Optional.empty(), false));
  }

  private static Optional<Outlook> outlook(Job job) throws Exception {
    var scan = job.scan();
    return Outlook.of(DaySummary.of(job, scan, job.standing(scan), DayHours.usual(ZoneOffset.UTC)));
  }
}
