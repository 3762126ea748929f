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
import org.framewright.job.JobException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads what the retoucher sent back against what was handed off. */
@Command(
    name = "returns",
    description = "Says which selects came back retouched, and what else came.",
    mixinStandardHelpOptions = true)
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

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (!Files.isDirectory(returned)) {
      throw CommandFailure.badInput(
          "there is no folder " + returned, "Check the path; nothing was changed.");
    }
    var job = JobFolder.open(folder, output);
    var returns =
        Returns.of(job, returned, number == null ? OptionalInt.empty() : OptionalInt.of(number));
    for (var problem : returns.problems()) {
      output.err().println("Note: " + problem.sentence());
      output.err().println("  " + problem.remedy());
    }
    if (output.json()) {
      output.write(json(returns));
    } else {
      HandOffDescription.returned(returns).forEach(output.out()::println);
    }
    return (returns.complete() ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON).code();
  }

  private static Map<String, Object> json(Returns returns) {
    var document = new LinkedHashMap<String, Object>();
    document.put("complete", returns.complete());
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
                  return one;
                })
            .toList());
    document.put(
        "extra",
        returns.extras().stream()
            .map(extra -> Map.of("file", extra.file(), "why", extra.why()))
            .toList());
    returns
        .bag()
        .ifPresent(
            bag ->
                document.put(
                    "manifest",
                    Map.of(
                        "files", bag.files(),
                        "faults", bag.faults().stream().map(Problem::sentence).toList(),
                        "different", bag.different(),
                        "missing", bag.missing(),
                        "unlisted", bag.unlisted())));
    return document;
  }
}
