package org.framewright.cli;

import java.io.IOException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.copies.Copier;
import org.framewright.copies.CopyDescription;
import org.framewright.copies.CopyOutcome;
import org.framewright.copies.CopyPlan;
import org.framewright.copies.CopyReport;
import org.framewright.copies.device.Volumes;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Copies a card or the job, and proves the copies. */
@Command(
    name = "copy",
    description = {
      "Copies all files of a folder, such as a card, to one or more places: read once, written to"
          + " all of them, flushed, read back and compared. Nothing is ever replaced, and the"
          + " source is only read.",
      "What is there already with the same content is not copied again, so an interrupted copy is"
          + " finished by the same command."
    },
    addMethodSubcommands = false)
final class CopyCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(
      index = "0",
      paramLabel = "JOB",
      description = "The job folder, in whose log the copy is written down.")
  private Path folder;

  @Option(
      names = "--from",
      paramLabel = "FOLDER",
      required = true,
      description = "What is copied: a card, or a folder of the job.")
  private Path from;

  @Option(
      names = "--to",
      paramLabel = "FOLDER",
      required = true,
      description =
          "Where to; may be given several times. The folder is made if the one that it is to be in"
              + " exists.")
  private List<Path> to;

  @Option(
      names = "--mhl",
      description =
          "Adds a generation to the ASC MHL (media hash list) at the top of each place, with XXH128"
              + " hashes.")
  private boolean mhl;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var job = JobFolder.open(folder, output);
    CopyOutcome outcome;
    CopyPlan plan;
    try {
      plan = CopyPlan.of(from, to).besides(job);
      outcome = copied(job, plan);
    } catch (NotDirectoryException e) {
      throw new CommandFailure(ExitStatus.BAD_INPUT, FileProblems.of(e));
    }
    return switch (outcome) {
      case CopyOutcome.Done done -> {
        report(plan, done.report());
        boolean clear =
            done.report().isWhole()
                && plan.leftOut().isEmpty()
                && done.report().targets().stream().allMatch(one -> one.failed().isEmpty());
        yield (clear ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
      }
      case CopyOutcome.Refused refused ->
          throw new CommandFailure(ExitStatus.REFUSED, refused.problem());
      case CopyOutcome.Stopped stopped -> {
        report(plan, stopped.report());
        throw new CommandFailure(ExitStatus.FAILED, stopped.problem());
      }
    };
  }

  private CopyOutcome copied(Job job, CopyPlan plan) throws IOException {
    try (var interruption = new Interruption()) {
      var copier = new Copier(Volumes.ofThisSystem());
      return (mhl ? copier.withMhl() : copier)
          .copy(job, plan, new ReadProgress(output.err(), interruption));
    }
  }

  private void report(CopyPlan plan, CopyReport report) {
    report.remarks().forEach(remark -> say("Note: ", remark));
    plan.leftOut().forEach(one -> say("left out: ", one));
    report.unreadable().forEach(one -> say("not copied: ", one));
    for (var target : report.targets()) {
      target.blocked().forEach(one -> say("not copied: ", one));
      target.failed().forEach(one -> say("failed: ", one));
    }
    if (output.json()) {
      output.write(json(plan, report));
    } else {
      CopyDescription.of(report).forEach(output.out()::println);
      CopyDescription.litter(plan).ifPresent(output.out()::println);
    }
  }

  private void say(String kind, Problem problem) {
    output.err().println(kind + problem.sentence());
    if (!problem.remedy().isEmpty()) {
      output.err().println("  " + problem.remedy());
    }
  }

  private static Map<String, Object> json(CopyPlan plan, CopyReport report) {
    var document = new LinkedHashMap<String, Object>();
    document.put("from", report.from().toString());
    document.put("files", report.files());
    document.put("bytes", plan.bytes());
    document.put("whole", report.isWhole());
    document.put("places", report.targets().stream().map(CopyCommand::json).toList());
    document.put("unreadable", report.unreadable().stream().map(CopyCommand::json).toList());
    document.put("litter", plan.litter());
    document.put("leftOut", plan.leftOut().stream().map(CopyCommand::json).toList());
    document.put("remarks", report.remarks().stream().map(CopyCommand::json).toList());
    return document;
  }

  private static Map<String, Object> json(CopyReport.Target target) {
    var one = new LinkedHashMap<String, Object>();
    one.put("folder", target.folder().toString());
    one.put("device", target.device());
    one.put("copied", target.copied());
    one.put("alreadyThere", target.alreadyThere());
    one.put("unsure", target.unsure());
    one.put("blocked", target.blocked().stream().map(CopyCommand::json).toList());
    one.put("failed", target.failed().stream().map(CopyCommand::json).toList());
    one.put("list", target.list().map(Path::toString).orElse(null));
    one.put("mhl", target.mhl().map(Path::toString).orElse(null));
    one.put("bytesPerSecond", Math.round(CopyDescription.bytesPerSecond(target)));
    return one;
  }

  private static Map<String, Object> json(Problem problem) {
    return Map.of("what", problem.what(), "where", problem.where(), "remedy", problem.remedy());
  }
}
