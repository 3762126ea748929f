package org.framewright.copies;

import org.framewright.base.Problem;

/** How a copy ended. In none of the cases is anything half-made left, or anything replaced. */
public sealed interface CopyOutcome {
  /** It went through all files; the report says whether something needs a person. */
  record Done(CopyReport report) implements CopyOutcome {}

  /** Nothing was written. */
  record Refused(Problem problem) implements CopyOutcome {}

  /** It ended before its time; what the report counts is there, whole. */
  record Stopped(Problem problem, CopyReport report) implements CopyOutcome {
    /** Whether it ended because what is copied cannot be read: then it is not used any more. */
    public boolean sourceFails() {
      return problem.where().equals(report.from().toString());
    }
  }
}
