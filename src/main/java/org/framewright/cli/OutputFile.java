package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.job.OutputPlace;

/** Where a command may write a file that a person named. */
final class OutputFile {
  private OutputFile() {}

  /**
   * Refuses a place where a file would harm a job: its own folder, the frames, and, unless asked to
   * replace it, anything that is there already.
   */
  static void check(Path file, Job job, boolean replace) throws CommandFailure {
    check(file, replace, one -> OutputPlace.problem(one, job));
  }

  /** The same for what is of no single job: the folders that are jobs' own are refused. */
  static void check(Path file, boolean replace) throws CommandFailure {
    check(file, replace, OutputPlace::problem);
  }

  /** What speaks against a place. */
  @FunctionalInterface
  private interface Place {
    Optional<Problem> problem(Path file) throws IOException;
  }

  private static void check(Path file, boolean replace, Place place) throws CommandFailure {
    try {
      if (file.getFileName() == null || Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
        protect(file, place);
        throw CommandFailure.badInput(
            file + ": this is a folder, a file was meant", "Give a file.");
      }
      var parent = file.toAbsolutePath().getParent();
      if (Files.exists(parent) && !Files.isDirectory(parent)) {
        throw new NotDirectoryException(parent.toString());
      }
      protect(file, place);
    } catch (IOException e) {
      throw new CommandFailure(ExitStatus.BAD_INPUT, FileProblems.of(e));
    }
    if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    if (!replace) {
      throw exists(file);
    }
    if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new CommandFailure(
          ExitStatus.REFUSED,
          new Problem("this is a link or a device, no file", file.toString(), "Give a file."));
    }
  }

  /** What a command says of a file that is there already. */
  static CommandFailure exists(Path file) {
    return new CommandFailure(
        ExitStatus.REFUSED,
        new Problem(
            "this file exists already",
            file.toString(),
            "Give another name, or --replace to write over it."));
  }

  private static void protect(Path file, Place place) throws IOException, CommandFailure {
    var problem = place.problem(file);
    if (problem.isPresent()) {
      throw new CommandFailure(ExitStatus.REFUSED, problem.get());
    }
  }
}
