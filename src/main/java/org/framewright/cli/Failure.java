package org.framewright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.ReadOnlyFileSystemException;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.share.ShareException;
import org.framewright.studio.StoreException;

/**
 * What ended a command, for a person and for the shell.
 *
 * @param status the exit status of the contract
 */
record Failure(ExitStatus status, Problem problem) {

  /** Puts any failure into words; an error of the machine too. */
  static Failure of(Throwable failure) {
    return switch (failure) {
      case CommandFailure e -> new Failure(e.status(), e.problem());
      case ShareException e -> new Failure(ExitStatus.BAD_INPUT, e.problem());
      case StoreException e ->
          new Failure(e.reached() ? ExitStatus.BAD_INPUT : ExitStatus.FAILED, e.problem());
      case JobException e -> new Failure(ExitStatus.BAD_INPUT, e.problem());
      case NoSuchFileException e -> new Failure(ExitStatus.BAD_INPUT, FileProblems.of(e));
      case IOException e -> new Failure(ExitStatus.FAILED, FileProblems.of(e));
      case UncheckedIOException e -> of(e.getCause());
      case DirectoryIteratorException e -> of(e.getCause());
      case InvalidPathException e -> new Failure(ExitStatus.BAD_INPUT, FileProblems.of(e));
      case ReadOnlyFileSystemException e -> new Failure(ExitStatus.FAILED, FileProblems.of(e));
      case OutOfMemoryError _ ->
          new Failure(
              ExitStatus.FAILED,
              new Problem(
                  "there is not enough memory for this",
                  "Give the program more, for example with FRAMEWRIGHT_JAVA_OPTIONS=-Xmx2g; what"
                      + " was done so far is whole."));
      default -> unforeseen(failure);
    };
  }

  private static Failure unforeseen(Throwable failure) {
    var trace = new StringWriter();
    failure.printStackTrace(new PrintWriter(trace));
    System.getLogger(Failure.class.getName()).log(System.Logger.Level.DEBUG, trace.toString());
    var message = failure.getMessage();
    return new Failure(
        ExitStatus.FAILED,
        new Problem(
            failure.getClass().getSimpleName() + (message == null ? "" : ": " + message),
            "This is a fault of the program; nothing more was done."));
  }

  /** Prints it, what is wrong in one line and the remedy in the next. */
  int print(PrintWriter err) {
    err.println("framewright: " + problem.sentence());
    if (!problem.remedy().isEmpty()) {
      err.println(problem.remedy());
    }
    return status.code();
  }
}
