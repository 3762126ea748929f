package org.framewright.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code open [JOB]}: the app. */
@Command(
    name = "open",
    description = "Opens the app, with the job of a folder if one is given.",
    addMethodSubcommands = false)
final class OpenCommand implements Callable<Integer> {
  @ParentCommand private Framewright program;

  @Parameters(paramLabel = "JOB", arity = "0..1", description = "The job folder.")
  private Path job;

  @Override
  public Integer call() throws CommandFailure {
    if (job != null && !Files.isDirectory(job)) {
      throw CommandFailure.badInput("there is no folder " + job, "Name a job folder.");
    }
    if (!program.window().hasDisplay()) {
      throw CommandFailure.badInput(
          "there is no display to open a window on",
          "Run it on a desktop, or use the other commands: framewright --help.");
    }
    try {
      program.window().open(Optional.ofNullable(job));
    } catch (UnsupportedOperationException e) {
      throw new CommandFailure(
          ExitStatus.FAILED,
          "no window can be opened here: " + e.getMessage(),
          "On Linux the app needs GTK 3, which desktops bring along (the package libgtk-3-0 of"
              + " Debian and Ubuntu, gtk3 of Fedora).");
    }
    return ExitStatus.DONE.code();
  }
}
