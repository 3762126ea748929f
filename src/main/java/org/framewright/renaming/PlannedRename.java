package org.framewright.renaming;

import java.nio.file.Path;
import org.framewright.base.Text;

/**
 * One line of a plan.
 *
 * @param from the file, relative to the root
 * @param to its new path, relative to the root
 * @param group the group that it stands or falls with; empty if it stands alone
 * @param status how it stands
 * @param said why it is blocked or was skipped; else empty
 * @param fix its remedy; else empty
 * @param seen the state that this rename is bound to
 */
public record PlannedRename(
    Path from, Path to, String group, Status status, Text said, Text fix, Seen seen) {
  /** Why it is blocked or was skipped, in English; else empty. */
  public String why() {
    return said.english();
  }

  /** Its remedy, in English; else empty. */
  public String remedy() {
    return fix.english();
  }

  PlannedRename with(Status other) {
    return new PlannedRename(from, to, group, other, Text.NONE, Text.NONE, seen);
  }

  PlannedRename with(Status other, Text because, Text fixedBy) {
    return new PlannedRename(from, to, group, other, because, fixedBy, seen);
  }
}
