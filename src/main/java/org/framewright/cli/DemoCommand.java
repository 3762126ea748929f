package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.job.JobException;
import org.framewright.sample.Narration;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleDay;
import org.framewright.sample.SampleFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plays the sample job. */
@Command(
    name = "demo",
    description =
        "Plays a whole invented shoot on real files, step by step; ends with the job folder's"
            + " path.",
    addMethodSubcommands = false)
final class DemoCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Option(
      names = "--into",
      paramLabel = "DIR",
      description = "Where to make the job folder; a new temporary folder where it is not given.")
  private Path into;

  @Option(names = "--tiny", description = "Draws tiny pictures, which is faster.")
  private boolean tiny;

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    SampleFiles files;
    try {
      files = SampleFiles.find();
    } catch (NoSuchFileException e) {
      throw CommandFailure.badInput(
          "the sample is not here: there is no " + e.getFile(),
          "Run this from the project's folder, or through the program's launcher.");
    }
    var place = into == null ? Files.createTempDirectory("framewright-demo-") : into;
    var size = tiny ? SampleCamera.Size.TINY : SampleCamera.Size.SMALL;
    if (output.json()) {
      var story = new Collected();
      var folder = SampleDay.play(files, place, size, story);
      var document = new LinkedHashMap<String, Object>();
      document.put("steps", story.steps);
      document.put("folder", folder.toString());
      output.write(document);
    } else {
      SampleDay.play(files, place, size, new Printed());
    }
    return ExitStatus.DONE.code();
  }

  private final class Printed implements Narration {
    private int steps;

    @Override
    public void heading(String text) {
      if (steps > 0) {
        output.out().println("");
      }
      output.out().println(++steps + ". " + text);
      output.out().flush();
    }

    @Override
    public void line(String text) {
      output.out().println(text.isEmpty() ? "" : "   " + text);
    }
  }

  private static final class Collected implements Narration {
    private final List<Map<String, Object>> steps = new ArrayList<>();
    private List<String> lines = new ArrayList<>();

    @Override
    public void heading(String text) {
      lines = new ArrayList<>();
      var step = new LinkedHashMap<String, Object>();
      step.put("step", text);
      step.put("told", lines);
      steps.add(step);
    }

    @Override
    public void line(String text) {
      lines.add(text);
    }
  }
}
