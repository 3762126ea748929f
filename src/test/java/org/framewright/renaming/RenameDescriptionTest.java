package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

class RenameDescriptionTest {
  private static PlannedRename rename(String from, String to, Status status, String why) {
    return new PlannedRename(
        Path.of(from),
        Path.of(to),
        "",
        status,
        Text.of(why),
        Text.of(why.isEmpty() ? "" : "Move it."),
        Seen.NOTHING);
  }

  private static final PlannedRename READY = rename("IMG_1.jpg", "A_1.jpg", Status.READY, "");
  private static final PlannedRename BLOCKED =
      rename("a/IMG_2.jpg", "a/A_2.jpg", Status.BLOCKED, "the name a/A_2.jpg is taken");
  private static final PlannedRename DONE = rename("x", "y", Status.DONE, "");

  @Test
  void namesStandInColumnsAndReasonsBelowThem() {
    assertThat(RenameDescription.table(List.of(READY, BLOCKED)))
        .containsExactly(
            "ready      IMG_1.jpg    A_1.jpg",
            "blocked    a/IMG_2.jpg  a/A_2.jpg",
            "           the name a/A_2.jpg is taken. Move it.");
    assertThat(RenameDescription.table(List.of())).isEmpty();
  }

  @Test
  void aPlanAndABatchAreCounted() {
    var plan = new Plan("0123abcd", Path.of("/job"), Instant.EPOCH, List.of(READY, BLOCKED));
    assertThat(RenameDescription.counts(plan))
        .isEqualTo("1 file can be renamed, 0 unchanged, 1 blocked.");
    var applied =
        new Outcome.Applied(
            "0001-0123abcd", List.of(DONE, DONE, BLOCKED), null, Evidence.SAME_FILES);
    assertThat(RenameDescription.applied(applied))
        .isEqualTo("Renamed 2 files as batch 0001-0123abcd.");
  }
}
