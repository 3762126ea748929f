package org.framewright.ui.handoff;

import java.io.IOException;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.ui.look.Texts;

/** What a person should know, and what can be done about it, in words; the latter may be empty. */
record Remark(String what, String remedy) {

  static Remark of(Problem problem, Texts texts) {
    return new Remark(
        PlainText.line(texts.sentence(problem)), PlainText.line(texts.remedy(problem)));
  }

  /** What is foreseen: a disk that fails, a folder that is gone, a job that cannot do it. */
  static Optional<Problem> foreseen(Throwable failure) {
    return switch (failure) {
      case JobException e -> Optional.of(e.problem());
      case IOException e -> Optional.of(FileProblems.of(e));
      default -> Optional.empty();
    };
  }
}
