package org.framewright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
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
import picocli.CommandLine.ParentCommand;

/** {@code mark}: ticks a setup. */
@Command(
    name = "mark",
    description = "Ticks setups of the shot list, or takes the last tick back.",
    addMethodSubcommands = false)
final class MarkCommand implements Callable<Integer> {
  @Mixin private Output output;
  @ParentCommand private Framewright framewright;

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
      names = "--code",
      paramLabel = "CODE",
      description = {
        "In place of the setups: what a scanner read, which is the setup's own code, its GTIN, or"
            + " a",
        "code in a column of the list that is headed so, such as EAN, SKU or article no."
      })
  private Optional<String> code = Optional.empty();

  @Option(
      names = "--codes",
      paramLabel = "FILE",
      description = {
        "The same for one code a line, each as soon as it is read; - reads what a scanner types.",
        "Without a state they are put on set, one after the other."
      })
  private Optional<String> codes = Optional.empty();

  @Option(
      names = "--take-back",
      description = "Takes back the last tick that was made on this computer.")
  private boolean takeBack;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    boolean scanned = code.isPresent() || codes.isPresent();
    if (takeBack
        && (scanned
            || !words.isEmpty()
            || by.isPresent()
            || view.isPresent()
            || reason.isPresent())) {
      throw CommandFailure.badInput(
          "--take-back needs no setup and no state", "Give the job folder and --take-back only.");
    }
    if (scanned) {
      return scanned().code();
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
    if (state == SetupState.SIGNED_OFF && by.isEmpty()) {
      throw CommandFailure.badInput("a sign-off needs the name of who signs off", "Add --by NAME.");
    }
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

  private ExitStatus scanned() throws IOException, JobException, CommandFailure {
    if (code.isPresent() && codes.isPresent()) {
      throw CommandFailure.badInput("--code and --codes are both given", "Give one of them.");
    }
    if (words.size() > 1) {
      throw CommandFailure.badInput(
          "setups are named, and codes are given", "Give the setups or the codes, and the state.");
    }
    var state = words.isEmpty() ? SetupState.ON_SET : state(words.getFirst());
    var scans =
        new ScannedMarks(JobFolder.open(folder, output), state, new MarkDetails(by, view, reason));
    if (code.isPresent()) {
      var setup = scans.mark(code.get());
      say(scans.job(), setup, state, output::write);
      return ExitStatus.DONE;
    }
    return each(scans, state);
  }

  private ExitStatus each(ScannedMarks scans, SetupState state)
      throws IOException, JobException, CommandFailure {
    boolean all = true;
    try (var lines = lines()) {
      for (var line = lines.readLine(); line != null; line = lines.readLine()) {
        if (line.isBlank()) {
          continue;
        }
        try {
          var setup = scans.mark(line);
          say(scans.job(), setup, state, output::writeLine);
        } catch (CommandFailure e) {
          all = false;
          Failure.of(e).print(output.err());
        }
        output.out().flush();
        output.err().flush();
      }
    }
    return all ? ExitStatus.DONE : ExitStatus.NEEDS_A_PERSON;
  }

  private BufferedReader lines() throws IOException {
    return codes.orElseThrow().equals("-")
        ? framewright.input()
        : Files.newBufferedReader(Path.of(codes.get()));
  }

  private void say(Job job, Setup setup, SetupState state, Consumer<Object> json)
      throws IOException {
    if (output.json()) {
      json.accept(SetupDescription.document(job, setup, Optional.empty()));
    } else {
      output.out().println(described(setup, state));
    }
    remark(job, List.of(setup), state);
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
