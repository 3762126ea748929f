package org.framewright.renaming;

import java.nio.file.Path;

/**
 * One line of a plan.
 *
 * @param from the file, relative to the root
 * @param to its new path, relative to the root
 * @param group the group that it stands or falls with; empty if it stands alone
 * @param status how it stands
 * @param why why it is blocked or was skipped; else empty
 * @param remedy its remedy; else empty
 * @param seen the state that this rename is bound to
 */
public record PlannedRename(
    Path from, Path to, String group, Status status, String why, String remedy, Seen seen) {

  PlannedRename with(Status other) {
    return new PlannedRename(from, to, group, other, "", "", seen);
  }

  PlannedRename with(Status other, String because, String fixedBy) {
    return new PlannedRename(from, to, group, other, because, fixedBy, seen);
  }
}
