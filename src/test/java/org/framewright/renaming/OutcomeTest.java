package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

/** What a person is told of a plan, a batch and a recovery. */
class OutcomeTest {
  private static final Problem FULL = new Problem("the disk is full", "Make room.");

  @Test
  void whatWentWrongIsSaidWithItsRemedy() {
    assertThat(
            List.of(new Outcome.RolledBack("1", FULL).why(), new Outcome.Halted("1", FULL).why()))
        .containsOnly(FULL.sentence());
    assertThat(new Outcome.Refused(FULL).why()).isEqualTo(FULL.sentence());
    assertThat(new Recovery.Refused(FULL).why()).isEqualTo(FULL.sentence());
    assertThat(new Outcome.RolledBack("1", FULL).remedy()).isEqualTo("Make room.");
    assertThat(new Outcome.Halted("1", FULL).remedy()).isEqualTo("Make room.");
    assertThat(new Outcome.Refused(FULL).remedy()).isEqualTo("Make room.");
    assertThat(new Recovery.Refused(FULL).remedy()).isEqualTo("Make room.");
    assertThat(new StuckFile(Path.of("a"), Text.of("it is gone"), Text.of("Put it back.")).remedy())
        .isEqualTo("Put it back.");
  }

  @Test
  void onlyOfACopyIsSaidHowItsFilesWereRecognised() {
    assertThat(Evidence.SAME_FILES.words()).isEmpty();
    assertThat(Evidence.COPIES_BY_HASH.words().orElseThrow()).contains("name, size and hash");
    assertThat(Evidence.COPIES_BY_TIME.words().orElseThrow()).contains("name, size and time");
    assertThat(Evidence.COPIES_BY_SIZE.words().orElseThrow()).contains("Look at some of them");
  }

  @Test
  void aPlanCountsItsRenames() {
    var plan =
        new Plan(
            "0123abcd",
            Path.of("/job"),
            Instant.EPOCH,
            List.of(
                rename(Status.READY),
                rename(Status.READY),
                rename(Status.READY),
                rename(Status.UNCHANGED),
                rename(Status.UNCHANGED),
                rename(Status.BLOCKED)));
    assertThat(plan.ready()).isEqualTo(3);
    assertThat(plan.unchanged()).isEqualTo(2);
    assertThat(plan.blocked()).isEqualTo(1);
  }

  private static PlannedRename rename(Status status) {
    return new PlannedRename(
        Path.of("a"), Path.of("b"), "", status, Text.NONE, Text.NONE, Seen.NOTHING);
  }
}
