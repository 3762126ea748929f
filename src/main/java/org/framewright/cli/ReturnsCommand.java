package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.framewright.base.Problem;
import org.framewright.handoff.HandOffDescription;
import org.framewright.handoff.Returns;
import org.framewright.handoff.spec.Specification;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.renaming.Renamer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads what the retoucher sent back against what was handed off. */
@Command(
    name = "returns",
    description =
        "Says which selects came back retouched, which files are none of them and what they likely"
            + " are; a file counts if it is a whole picture. Where the job has a delivery"
            + " specification, delivery.yaml, it says which pictures are not as it asks.",
    addMethodSubcommands = false)
final class ReturnsCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Parameters(index = "1", paramLabel = "FOLDER", description = "The folder that came back.")
  private Path returned;

  @Option(
      names = "--hand-off",
      paramLabel = "N",
      description = "Only the selects of hand-off N; all of them where it is not given.")
  private Integer number;

  @Option(
      names = "--spec",
      paramLabel = "FILE",
      description = "Another delivery specification in place of the job's own.")
  private Path specification;

  @Option(
      names = "--rename",
      description =
          "Gives wrongly named files the names that they should have, where their own names say"
              + " of which select they are; framewright undo FOLDER takes it back.")
  private boolean rename;

  @Option(names = "--preview", description = "With --rename: show the names; change nothing.")
  private boolean preview;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (!Files.isDirectory(returned)) {
      throw CommandFailure.badInput(
          "there is no folder " + returned, "Check the path; nothing was changed.");
    }
    if (preview && !rename) {
      throw CommandFailure.badInput("--preview is of renames", "Use it with --rename.");
    }
    var job = JobFolder.open(folder, output);
    var handOff = number == null ? OptionalInt.empty() : OptionalInt.of(number);
    var returns = read(job, returned, handOff, specification, output);
    if (rename) {
      return rename(returns).code();
    }
    for (var problem : returns.problems()) {
      output.err().println("Note: " + problem.sentence());
      output.err().println("  " + problem.remedy());
    }
    if (output.json()) {
      output.write(json(returns));
    } else {
      HandOffDescription.returned(returns).forEach(output.out()::println);
    }
    return (returns.complete() && returns.findings().isEmpty()
            ? ExitStatus.DONE
            : ExitStatus.NEEDS_A_PERSON)
        .code();
  }

  /**
   * Reads what came back; whoever interrupts it is told.
   *
   * @param specification in place of the job's own; may be null
   */
  static Returns read(
      Job job, Path returned, OptionalInt handOff, Path specification, Output output)
      throws IOException, JobException, CommandFailure {
    var other = specification == null ? null : SpecificationFiles.read(specification, job);
    try (var interruption = new Interruption()) {
      var progress = new ReadProgress(output.err(), interruption);
      return (other == null
              ? Returns.read(job, returned, handOff, progress)
              : Returns.read(job, returned, handOff, other, progress))
          .orElseThrow(
              () ->
                  new CommandFailure(
                      ExitStatus.FAILED,
                      "stopped before all that came back was read; nothing was written",
                      "Ask again."));
    }
  }

  private static Map<String, Object> json(Returns.Extra extra) {
    var one = new LinkedHashMap<String, Object>();
    one.put("file", extra.file());
    one.put("why", extra.why());
    extra
        .likely()
        .ifPresent(
            likely -> {
              one.put("likely", likely.select());
              one.put("reason", likely.reason());
              one.put("name", likely.name().orElse(null));
            });
    return one;
  }

  private ExitStatus rename(Returns returns) throws IOException, CommandFailure {
    if (returns.bag().isPresent() && !returns.renames().isEmpty()) {
      throw CommandFailure.refused(
          returned + " has a manifest that lists its files by name",
          "Copy the pictures out of it and rename them there.");
    }
    var run = new RenameRun(Renamer.in(returned), output);
    return preview ? run.preview(returns.renames(), false) : run.apply(returns.renames());
  }

  private static Map<String, Object> json(Returns returns) {
    var document = new LinkedHashMap<String, Object>();
    document.put("complete", returns.complete());
    document.put("specification", returns.specification().map(Specification::title).orElse(null));
    document.put("asAsked", returns.findings().isEmpty());
    document.put("problems", returns.problems().stream().map(Problem::sentence).toList());
    document.put(
        "selects",
        returns.answers().stream()
            .map(
                answer -> {
                  var one = new LinkedHashMap<String, Object>();
                  one.put("select", answer.select());
                  one.put("setup", answer.setup());
                  one.put("state", answer.state().word());
                  one.put("files", answer.files());
                  one.put(
                      "version", answer.newest().isPresent() ? answer.newest().getAsInt() : null);
                  one.put("newest", answer.newestFiles());
                  one.put("missingVersions", answer.missing());
                  one.put("frame", answer.frame().stream().map(Path::toString).toList());
                  one.put(
                      "findings",
                      answer.findings().stream().map(SpecificationFiles::document).toList());
                  return one;
                })
            .toList());
    document.put("extra", returns.extras().stream().map(ReturnsCommand::json).toList());
    returns.bag().ifPresent(bag -> document.put("manifest", VerifyCommand.json(bag)));
    return document;
  }
}
