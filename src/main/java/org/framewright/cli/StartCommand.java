package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;
import java.util.concurrent.Callable;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.Started;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Reserved;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code start}: makes a job's folder. */
@Command(
    name = "start",
    description = "Makes the folder of a new job and prints its path.",
    addMethodSubcommands = false)
final class StartCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Option(
      names = "--by",
      required = true,
      paramLabel = "CONVENTION",
      description = "The convention by which the job and its frames are named.")
  private Path convention;

  @Option(
      names = "--in",
      required = true,
      paramLabel = "DIR",
      description = "The folder that the job's folder is made in.")
  private Path parent;

  @Parameters(
      paramLabel = "field=value",
      description = "A value of the convention's fields, such as client=NORD.")
  private List<String> fields = new ArrayList<>();

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    return switch (Convention.read(convention)) {
      case Convention.Parsed.Faulty faulty -> throw refused(faulty.findings());
      case Convention.Parsed.Sound sound -> start(sound.convention());
    };
  }

  private int start(Convention sound) throws IOException, JobException, CommandFailure {
    var values = values();
    switch (Job.start(sound, parent, values, Clock.system(ZoneId.systemDefault()))) {
      case Started.Refused refused -> throw refused(refused.findings());
      case Started.Opened opened -> {
        var job = opened.job();
        if (sound.build(Reserved.JOB, values) instanceof Built.Name name) {
          name.steps().forEach(step -> output.err().println(step.description()));
        }
        if (output.json()) {
          output.write(document(job));
        } else {
          output.out().println(job.folder());
        }
        return ExitStatus.DONE.code();
      }
    }
  }

  private static SequencedMap<String, Object> document(Job job) {
    var folders = new LinkedHashMap<String, Object>();
    job.convention()
        .folders()
        .keySet()
        .forEach(role -> folders.put(role, job.folder(role).toString()));
    var document = new LinkedHashMap<String, Object>();
    document.put("job", job.folder().toString());
    document.put("name", job.name());
    document.put("folders", folders);
    return document;
  }

  private SequencedMap<String, String> values() throws CommandFailure {
    var values = new LinkedHashMap<String, String>();
    for (var field : fields) {
      int sign = field.indexOf('=');
      if (sign < 1) {
        throw CommandFailure.badInput(
            "\"" + field + "\" gives no field a value", "Write field=value, as in client=NORD.");
      }
      if (values.put(field.substring(0, sign), field.substring(sign + 1)) != null) {
        throw CommandFailure.badInput(
            "the field \"" + field.substring(0, sign) + "\" is given twice", "Give it once.");
      }
    }
    return values;
  }

  /** Every finding is printed; the last one through the failure. */
  private CommandFailure refused(List<Finding> findings) {
    var err = output.err();
    for (var finding : findings.subList(0, findings.size() - 1)) {
      err.println("framewright: " + described(finding));
      finding.remedy().ifPresent(err::println);
    }
    return CommandFailure.badInput(
        described(findings.getLast()), findings.getLast().remedy().orElse(""));
  }

  private String described(Finding finding) {
    return finding.line() > 0
        ? convention
            + ", line "
            + finding.line()
            + ", column "
            + finding.column()
            + ": "
            + finding.message()
        : finding.where() + ": " + finding.message();
  }
}
