package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code mark}: ticks a setup. */
@Command(
    name = "mark",
    description = "Ticks a setup of the shot list.",
    mixinStandardHelpOptions = true)
final class MarkCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Parameters(index = "1", paramLabel = "SETUP", description = "The setup, as the list calls it.")
  private String setup;

  @Parameters(
      index = "2",
      paramLabel = "STATE",
      description = "to-shoot, on-set, shot, signed-off, pickup or dropped.")
  private String state;

  @Option(names = "--by", paramLabel = "PERSON", description = "Who says so; a sign-off needs it.")
  private Optional<String> by = Optional.empty();

  @Option(
      names = "--view",
      paramLabel = "VIEW",
      description = "With on-set: the view before the camera.")
  private Optional<String> view = Optional.empty();

  @Option(
      names = "--reason",
      paramLabel = "TEXT",
      description = "With pickup or dropped: why, such as \"the garment is missing\".")
  private Optional<String> reason = Optional.empty();

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    var wanted = SetupState.of(state);
    if (wanted.isEmpty()) {
      throw CommandFailure.badInput(
          "\"" + state + "\" is no state of a setup",
          "The states are "
              + Arrays.stream(SetupState.values())
                  .map(SetupState::word)
                  .collect(Collectors.joining(", "))
              + ".");
    }
    var job = JobFolder.open(folder, output);
    job.mark(setup, wanted.get(), new MarkDetails(by, view, reason));
    var marked = job.shotList().setup(setup).orElseThrow();
    if (output.json()) {
      output.write(SetupDescription.document(job, marked, Optional.empty()));
    } else {
      output
          .out()
          .println(
              marked.code()
                  + " "
                  + wanted.get().label()
                  + (marked.title().isEmpty() ? "" : ": " + marked.title()));
    }
    return ExitStatus.DONE.code();
  }
}
