package org.framewright.cli;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.PlainText;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import picocli.CommandLine.Option;

/**
 * What of {@code list} is about one setup: it comes into the list on the day, or the list said it
 * wrong.
 */
final class ListEdit {
  @Option(
      names = "--setup",
      paramLabel = "CODE",
      description = "Adds this setup, or changes what the list says of it.")
  private Optional<String> code = Optional.empty();

  @Option(names = "--title", paramLabel = "TEXT", description = "With --setup: its title.")
  private Optional<String> title = Optional.empty();

  @Option(
      names = "--views",
      paramLabel = "VIEWS",
      description = "With --setup: the views wanted, such as \"F:4, B:2\".")
  private Optional<String> views = Optional.empty();

  @Option(
      names = "--frames",
      paramLabel = "N",
      description = "With --setup: frames wanted in all; 0 for no number.")
  private Optional<Integer> frames = Optional.empty();

  @Option(
      names = "--set",
      paramLabel = "HEADING=TEXT",
      description = "With --setup: what another column of the list says of it.")
  private Map<String, String> columns = new LinkedHashMap<>();

  @Option(
      names = "--behind",
      paramLabel = "CODE",
      description = "With --setup: the setup that a new one comes right behind.")
  private Optional<String> behind = Optional.empty();

  boolean isAsked() {
    return code.isPresent();
  }

  /** Refuses what cannot be meant, before anything is done. */
  void check(boolean imports) throws CommandFailure {
    if (code.isPresent() && imports) {
      throw CommandFailure.badInput(
          "--setup is about one setup, --import about all of them", "Give one, then the other.");
    }
    var about =
        title.isPresent()
            || views.isPresent()
            || frames.isPresent()
            || !columns.isEmpty()
            || behind.isPresent();
    if (code.isEmpty() && about) {
      throw CommandFailure.badInput(
          "--title, --views, --frames, --set and --behind are about one setup",
          "Say which, with --setup CODE.");
    }
    if (code.isPresent() && code.get().isBlank()) {
      throw CommandFailure.badInput("--setup needs a code", "Say which setup it is.");
    }
    if (frames.isPresent() && (frames.get() < 0 || frames.get() > Setup.MOST_FRAMES)) {
      throw CommandFailure.badInput(
          "--frames " + frames.get() + " is no number of frames",
          "It goes from 0 to " + Setup.MOST_FRAMES + ".");
    }
    var twice = View.namedTwice(typedViews());
    if (twice.isPresent()) {
      throw CommandFailure.badInput(
          "the view " + twice.get() + " stands twice in --views", "Give each view once.");
    }
  }

  private List<View> typedViews() {
    return views.map(View::listOf).orElse(List.of());
  }

  /** Adds the setup or changes it. */
  void take(Job job, Output output) throws IOException, JobException, CommandFailure {
    var asked = code.orElseThrow().strip();
    var before = job.shotList().setup(asked);
    if (before.isPresent() && behind.isPresent()) {
      throw CommandFailure.badInput(
          "setup " + before.get().code() + " is in the list already; --behind is for a new one",
          "Leave --behind out.");
    }
    var setup = over(before.orElseGet(() -> new Setup(asked, "")), job.shotList());
    if (before.isEmpty()) {
      job.addSetup(setup, behind);
      say(output, setup, " is in the list.");
    } else if (job.changeSetup(setup).isPresent()) {
      say(output, setup, " is changed.");
    } else {
      say(output, setup, " is in the list just so already.");
    }
  }

  private Setup over(Setup before, ShotList list) {
    var said = new LinkedHashMap<>(before.columns());
    columns.forEach((heading, text) -> said.put(asWritten(heading, list), text.strip()));
    return new Setup(
        before.code(),
        title.map(String::strip).orElse(before.title()),
        views.isPresent() ? typedViews() : before.views(),
        frames.isEmpty()
            ? before.framesWanted()
            : frames.get() == 0 ? OptionalInt.empty() : OptionalInt.of(frames.get()),
        said);
  }

  /** A heading as the list has it, whatever its case here. */
  private static String asWritten(String heading, ShotList list) {
    return list.setups().stream()
        .flatMap(setup -> setup.columns().keySet().stream())
        .filter(heading.strip()::equalsIgnoreCase)
        .findFirst()
        .orElse(heading.strip());
  }

  private static void say(Output output, Setup setup, String what) {
    if (!output.json()) {
      output.out().println(PlainText.line((setup.code() + " " + setup.title()).strip()) + what);
    }
  }
}
