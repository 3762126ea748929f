package org.framewright.ui.settings;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import org.framewright.job.JobException;
import org.framewright.ui.look.Texts;

/** Turns failures into plain words; what nobody foresaw is written to the log file as well. */
public final class Troubles {
  private final Texts texts;
  private final LogFile log;

  /** Words from {@code texts}, the rest to {@code log}. */
  public Troubles(Texts texts, LogFile log) {
    this.texts = texts;
    this.log = log;
  }

  /** What to tell about a failure. */
  public Trouble explain(Throwable failure) {
    return switch (failure) {
      case JobException e -> new Trouble(sentence(e), e.remedy(), "");
      case NoSuchFileException e -> told("trouble.missing", e);
      case AccessDeniedException e -> told("trouble.denied", e);
      case FileAlreadyExistsException e -> told("trouble.exists", e);
      case NotDirectoryException e -> told("trouble.noFolder", e);
      case FileSystemException e -> told("trouble.files", e);
      case IOException e ->
          new Trouble(texts.get("trouble.io.what"), texts.get("trouble.io.remedy"), plain(e));
      default -> unforeseen(failure);
    };
  }

  private static String sentence(JobException e) {
    return e.where().isBlank() ? e.what() : e.where() + ": " + e.what();
  }

  private Trouble told(String key, FileSystemException e) {
    var reason = e.getReason() == null ? "" : e.getReason();
    return new Trouble(
        texts.get(key + ".what", e.getFile(), reason), texts.get(key + ".remedy"), reason);
  }

  private Trouble unforeseen(Throwable failure) {
    var kept = log.write(failure);
    return new Trouble(
        texts.get("trouble.unforeseen.what"),
        kept
            ? texts.get("trouble.unforeseen.remedy", log.file().toString())
            : texts.get("trouble.unforeseen.noLog", log.file().toString()),
        plain(failure));
  }

  private static String plain(Throwable failure) {
    var message = failure.getMessage();
    return message == null || message.isBlank() ? failure.getClass().getSimpleName() : message;
  }
}
