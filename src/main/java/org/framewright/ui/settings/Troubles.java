package org.framewright.ui.settings;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.InvalidPathException;
import java.nio.file.ReadOnlyFileSystemException;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ExecutionException;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.ui.look.Texts;

/**
 * Puts failures into words, the same as on the command line; what nobody foresaw is written to the
 * log file as well.
 */
public final class Troubles {
  private final Texts texts;
  private final LogFile log;

  /** Words from {@code texts}, the rest to {@code log}. */
  public Troubles(Texts texts, LogFile log) {
    this.texts = texts;
    this.log = log;
  }

  /** A failure in words. */
  public Explanation explain(Throwable failure) {
    return switch (failure) {
      case JobException e -> new Explanation(e.problem(), "");
      case UncheckedIOException e -> explain(e.getCause());
      case DirectoryIteratorException e -> explain(e.getCause());
      case CompletionException e when e.getCause() != null -> explain(e.getCause());
      case ExecutionException e when e.getCause() != null -> explain(e.getCause());
      case IOException e -> new Explanation(FileProblems.of(e), "");
      case InvalidPathException e -> new Explanation(FileProblems.of(e), "");
      case ReadOnlyFileSystemException e -> new Explanation(FileProblems.of(e), "");
      case OutOfMemoryError e -> logged(e, texts.get("trouble.memory.what"));
      default -> logged(failure, texts.get("trouble.unforeseen.what"));
    };
  }

  private Explanation logged(Throwable failure, String what) {
    var key = log.write(failure) ? "trouble.unforeseen.remedy" : "trouble.unforeseen.noLog";
    return new Explanation(
        new Problem(what, texts.get(key, log.file().toString())), plain(failure));
  }

  private static String plain(Throwable failure) {
    var message = failure.getMessage();
    return message == null || message.isBlank() ? failure.getClass().getSimpleName() : message;
  }
}
