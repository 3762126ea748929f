package org.framewright.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.handoff.spec.SpecFinding;
import org.framewright.handoff.spec.Specification;
import org.framewright.job.Job;

/** Delivery specifications as commands take them, and what is not as they ask. */
final class SpecificationFiles {
  private SpecificationFiles() {}

  /** Reads one that must be usable for a job. */
  static Specification read(Path file, Job job) throws CommandFailure {
    return switch (Specification.read(file)) {
      case Specification.Parsed.Sound(Specification sound) -> {
        require(sound.problems(job.convention()), file);
        yield sound;
      }
      case Specification.Parsed.Faulty(List<Problem> problems) -> {
        require(problems, file);
        throw new IllegalStateException("a specification that is faulty for no reason");
      }
    };
  }

  private static void require(List<Problem> problems, Path file) throws CommandFailure {
    if (problems.size() == 1) {
      throw new CommandFailure(ExitStatus.BAD_INPUT, problems.getFirst());
    }
    if (!problems.isEmpty()) {
      throw CommandFailure.badInput(
          problems.getFirst().sentence(),
          "framewright check "
              + PlainText.line(file.toString())
              + " shows all "
              + problems.size()
              + " faults.");
    }
  }

  static Map<String, Object> document(SpecFinding finding) {
    var one = new LinkedHashMap<String, Object>();
    one.put("file", finding.file());
    one.put("rule", finding.rule().word());
    one.put("asked", finding.asked().english());
    one.put("has", finding.has().english());
    one.put("remedy", finding.fix().english());
    return one;
  }
}
