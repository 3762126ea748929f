package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.framewright.job.JobException;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rename}: plans new names and applies them. */
@Command(
    name = "rename",
    description =
        "Gives a job's frames their names, or renames files by a map; every batch can be undone.",
    addMethodSubcommands = false)
final class RenameCommand implements Callable<Integer> {
  @Mixin private Output output;

  @ArgGroup(exclusive = true, multiplicity = "1")
  private What what;

  @Option(names = "--preview", description = "Show what would be done; change nothing.")
  private boolean preview;

  @Option(
      names = "--csv",
      description = "With --preview: write the plan as CSV, which --map reads again.")
  private boolean csv;

  /** A job's frames, or a map. */
  static final class What {
    @Parameters(index = "0", paramLabel = "JOB", description = "The job folder.")
    private Path job;

    @ArgGroup(exclusive = false)
    private ByMap byMap;
  }

  /** The form {@code --map FILE --in DIR}. */
  static final class ByMap {
    @Option(
        names = "--map",
        required = true,
        paramLabel = "FILE",
        description = "CSV with the columns from and to, and group if files belong together.")
    private Path map;

    @Option(
        names = "--in",
        required = true,
        paramLabel = "DIR",
        description = "The folder that the paths of the map are relative to.")
    private Path folder;
  }

  @Override
  public Integer call() throws IOException, JobException, CommandFailure {
    return (what.byMap == null ? byConvention() : byMap(what.byMap)).code();
  }

  private ExitStatus byMap(ByMap map) throws IOException, CommandFailure {
    return run(Renamer.in(map.folder), RenameMap.read(map.map));
  }

  private ExitStatus byConvention() throws IOException, JobException, CommandFailure {
    var job = JobFolder.open(what.job, output);
    var scan = job.scan();
    FramesReport.remarkOnNotUnderstood(scan, "They keep their names", output);
    var names = job.frameNames(scan);
    for (var left : names.leftOut()) {
      output
          .err()
          .println(
              "Left out: "
                  + job.folder().relativize(left.frame().folder().resolve(left.frame().stem()))
                  + ": "
                  + left.why()
                  + ". "
                  + left.remedy());
    }
    var status = run(Renamer.in(job.folder()), names.requests());
    return names.leftOut().isEmpty() ? status : ExitStatus.NEEDS_A_PERSON;
  }

  private ExitStatus run(Renamer renamer, List<RenameRequest> requests)
      throws IOException, CommandFailure {
    if (csv && (!preview || output.json())) {
      throw CommandFailure.badInput(
          "--csv writes a preview", "Use it with --preview, and without --json.");
    }
    var run = new RenameRun(renamer, output);
    return preview ? run.preview(requests, csv) : run.apply(requests);
  }
}
