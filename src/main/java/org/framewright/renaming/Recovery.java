package org.framewright.renaming;

import java.util.List;
import org.framewright.base.Problem;

/** How a recovery ended. */
public sealed interface Recovery {
  /** No batch was interrupted. */
  record Nothing() implements Recovery {}

  /** Every file of the batch has its old name. */
  record RolledBack(String batch, int renames, Evidence evidence) implements Recovery {}

  /** Every file of the batch has its new name. */
  record Finished(String batch, int renames, Evidence evidence) implements Recovery {}

  /** The batch stands still until a person has looked at these files. */
  record Stuck(String batch, List<StuckFile> files) implements Recovery {
    public Stuck {
      files = List.copyOf(files);
    }
  }

  /** It was not begun; nothing was changed. */
  record Refused(Problem problem) implements Recovery {
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
