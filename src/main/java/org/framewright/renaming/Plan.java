package org.framewright.renaming;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * A previewed batch of renames, bound to the state that it saw: applying it after a file changed is
 * refused. Planning changes nothing on disk.
 *
 * @param id eight characters, unique to this plan; the batch it becomes ends in them
 * @param root the folder that all paths are relative to
 * @param at when it was made
 * @param renames one for each request, in the order of the requests
 */
public record Plan(String id, Path root, Instant at, List<PlannedRename> renames) {
  public Plan {
    renames = List.copyOf(renames);
  }

  /** How many can be done. */
  public int ready() {
    return count(Status.READY);
  }

  /** How many cannot be done. */
  public int blocked() {
    return count(Status.BLOCKED);
  }

  /** How many files have their name already. */
  public int unchanged() {
    return count(Status.UNCHANGED);
  }

  private int count(Status status) {
    return (int) renames.stream().filter(rename -> rename.status() == status).count();
  }
}
