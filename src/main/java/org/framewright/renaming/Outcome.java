package org.framewright.renaming;

import java.util.List;
import org.framewright.base.Problem;

/** How an apply or an undo ended. */
public sealed interface Outcome {
  /**
   * The batch is done and can be undone.
   *
   * @param batch its id
   * @param renames every line: done, unchanged, blocked or skipped
   * @param guarantee what the volume could promise
   * @param evidence by what an undo recognised the files
   */
  record Applied(String batch, List<PlannedRename> renames, Guarantee guarantee, Evidence evidence)
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
  record RolledBack(String batch, Problem problem) implements Outcome {
    /** What made it fail. */
    public String why() {
      return problem.sentence();
    }

    /** What to do about it. */
    public String remedy() {
      return problem.remedy();
    }
  }

  /** It failed half-way and stands still; {@link Renamer#recover} goes on from here. */
  record Halted(String batch, Problem problem) implements Outcome {
    /** What made it fail. */
    public String why() {
      return problem.sentence();
    }

    /** What to do about it, before the recovery. */
    public String remedy() {
      return problem.remedy();
    }
  }

  /** It was not begun; nothing was changed. */
  record Refused(Problem problem) implements Outcome {
    /** What keeps it from being begun. */
    public String why() {
      return problem.sentence();
    }

    /** What to do about it. */
    public String remedy() {
      return problem.remedy();
    }
  }
}
