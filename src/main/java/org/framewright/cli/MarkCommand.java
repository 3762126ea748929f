package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.MarkDetails;
import org.framewright.job.SetupRange;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code mark}: ticks a setup. */
@Command(
    name = "mark",
    description = "Ticks setups of the shot list, or takes the last tick back.",
    mixinStandardHelpOptions = true)
final class MarkCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
  private Path folder;

  @Parameters(
      index = "1..*",
      paramLabel = "SETUP... STATE",
      description = {
        "The setups, as the list calls them: one, several, or a range such as 010..015.",
        "Then the state: to-shoot, on-set, shot, signed-off, pickup or dropped."
      })
  private List<String> words = List.of();

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

  @Option(
      names = "--take-back",
      description = "Takes back the last tick that was made on this computer.")
  private boolean takeBack;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    if (takeBack && !(words.isEmpty() && by.isEmpty() && view.isEmpty() && reason.isEmpty())) {
      throw CommandFailure.badInput(
          "--take-back needs no setup and no state", "Give the job folder and --take-back only.");
    }
    if (!takeBack && words.size() < 2) {
      throw CommandFailure.badInput(
          "a setup and a state are needed", "Write: framewright mark JOB SETUP STATE");
    }
    return (takeBack ? takeBack() : tick()).code();
  }

  private ExitStatus tick() throws IOException, JobException, CommandFailure {
    var state = state(words.getLast());
    var named = words.subList(0, words.size() - 1);
    var job = JobFolder.open(folder, output);
    var setups = SetupRange.setups(job, named);
    if (state == SetupState.ON_SET && setups.size() > 1) {
      throw CommandFailure.badInput(
          "one setup is on set at a time, and " + setups.size() + " are named", "Name one.");
    }
    job.mark(setups.stream().map(Setup::code).toList(), state, new MarkDetails(by, view, reason));
    if (output.json()) {
      var documents =
          setups.stream()
              .map(setup -> SetupDescription.document(job, setup, Optional.empty()))
              .toList();
      output.write(SetupRange.isSeveral(named) ? documents : documents.getFirst());
    } else {
      setups.forEach(setup -> output.out().println(described(setup, state)));
    }
    remark(job, setups, state);
    return ExitStatus.DONE;
  }

  private static SetupState state(String word) throws CommandFailure {
    return SetupState.of(word)
        .orElseThrow(
            () ->
                CommandFailure.badInput(
                    "\"" + word + "\" is no state of a setup",
                    "The states are "
                        + Arrays.stream(SetupState.values())
                            .map(SetupState::word)
                            .collect(Collectors.joining(", "))
                        + "."));
  }

  private static String described(Setup setup, SetupState state) {
    return setup.code()
        + " "
        + state.label()
        + (setup.title().isEmpty() ? "" : ": " + setup.title());
  }

  /** What is marked all the same, but is rarely meant. */
  private void remark(Job job, List<Setup> setups, SetupState state) throws IOException {
    if (state == SetupState.PICKUP && reason.isEmpty()) {
      output.err().println("No reason is given; with --reason TEXT the evening's list says why.");
    }
    if (state == SetupState.SHOT || state == SetupState.SIGNED_OFF) {
      var counted = job.tally().bySetup();
      setups.stream()
          .filter(setup -> !counted.containsKey(setup.code()))
          .forEach(setup -> output.err().println(setup.code() + " has no frame yet."));
    }
  }

  private ExitStatus takeBack() throws IOException, JobException, CommandFailure {
    var job = JobFolder.open(folder, output);
    var last = job.lastTick();
    job.takeBack();
    // Without a tick it is the job that refuses.
    var setup = job.shotList().setup(last.orElseThrow().setup());
    if (output.json()) {
      output.write(
          setup.isPresent()
              ? SetupDescription.document(job, setup.get(), Optional.empty())
              : Map.of());
    } else {
      output
          .out()
          .println(
              last.get().setup()
                  + " "
                  + last.get().state().label()
                  + " is taken back; it is "
                  + job.state().of(last.get().setup()).state().label()
                  + " again");
    }
    return ExitStatus.DONE;
  }
}
