package org.framewright.renaming;

import java.util.List;

/** How an apply or an undo ended. */
public sealed interface Outcome {
  /**
   * The batch is done and can be undone.
   *
   * @param batch its id
   * @param renames every line: done, unchanged, blocked or skipped
   * @param guarantee what the volume could promise
   */
  record Applied(String batch, List<PlannedRename> renames, Guarantee guarantee)
      implements Outcome {
    public Applied {
      renames = List.copyOf(renames);
    }

    /** How many files have their new name. */
    public int done() {
      return (int) renames.stream().filter(rename -> rename.status() == Status.DONE).count();
    }

    /** Whether a line was blocked or skipped. */
    public boolean needsAPerson() {
      return renames.stream()
          .anyMatch(
              rename -> rename.status() == Status.BLOCKED || rename.status() == Status.SKIPPED);
    }
  }

  /** There was nothing that could be done; nothing was changed and there is no batch. */
  record Nothing(List<PlannedRename> renames) implements Outcome {
    public Nothing {
      renames = List.copyOf(renames);
    }
  }

  /** Somebody cancelled; every file has its old name. */
  record Cancelled(String batch) implements Outcome {}

  /** It failed half-way and every file has its old name again. */
  record RolledBack(String batch, String why, String remedy) implements Outcome {}

  /** It failed half-way and stands still; {@link Renamer#recover} goes on from here. */
  record Halted(String batch, String why, String remedy) implements Outcome {}

  /** It was not begun; nothing was changed. */
  record Refused(String why, String remedy) implements Outcome {}
}
