package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import org.framewright.base.FileProblems;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.RealPaths;
import org.framewright.job.Job;

/** Where a command may write a file that a person named. */
final class OutputFile {
  /** The folder in which a program of ours keeps what it must not lose: of this job or another. */
  private static final String OURS = ".framewright";

  private OutputFile() {}

  /**
   * Refuses a place where a file would harm a job: its own folder, the frames, and, unless asked to
   * replace it, anything that is there already.
   */
  static void check(Path file, Job job, boolean replace) throws CommandFailure {
    try {
      if (file.getFileName() == null || Files.isDirectory(file, LinkOption.NOFOLLOW_LINKS)) {
        protect(file, job);
        throw CommandFailure.badInput(
            file + ": this is a folder, a file was meant", "Give a file.");
      }
      var parent = file.toAbsolutePath().getParent();
      if (Files.exists(parent) && !Files.isDirectory(parent)) {
        throw new NotDirectoryException(parent.toString());
      }
      protect(file, job);
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

  private static void protect(Path file, Job job) throws IOException, CommandFailure {
    if (file.getFileName() == null) {
      return;
    }
    if (RealPaths.isInside(file, job.framesFolder())) {
      throw protectedPlace(file, "the frames folder holds frames alone");
    }
    if (RealPaths.isInside(file, job.folder().resolve(OURS))) {
      throw protectedPlace(file, OURS + " holds the job itself");
    }
    var real = file.toAbsolutePath().getParent().toRealPath();
    for (var name : real.resolve(file.getFileName())) {
      if (NameKey.of(name.toString()).equals(OURS)) {
        throw protectedPlace(file, name + " holds a job itself");
      }
    }
  }

  private static CommandFailure protectedPlace(Path file, String why) {
    return new CommandFailure(
        ExitStatus.REFUSED,
        new Problem(
            why + ", nothing else is written there", file.toString(), "Give another folder."));
  }
}
