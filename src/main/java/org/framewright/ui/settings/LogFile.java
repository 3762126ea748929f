package org.framewright.ui.settings;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.OffsetDateTime;

/** The file that takes what nobody foresaw, with all its detail. Safe from any thread. */
public final class LogFile {
  private static final long LARGEST = 1_000_000;

  private final Path file;
  private final Clock clock;

  /** Appends to {@code file}; past a megabyte it is kept once as {@code NAME.old}. */
  public LogFile(Path file, Clock clock) {
    this.file = file;
    this.clock = clock;
  }

  /** Where it lies. */
  public Path file() {
    return file;
  }

  /** Writes a failure with its trace; says whether that worked. */
  public synchronized boolean write(Throwable failure) {
    try {
      var trace = new StringWriter();
      failure.printStackTrace(new PrintWriter(trace));
      Files.createDirectories(file.toAbsolutePath().getParent());
      if (Files.exists(file) && Files.size(file) > LARGEST) {
        Files.move(
            file, file.resolveSibling(file.getFileName() + ".old"), StandardCopyOption.ATOMIC_MOVE);
      }
      Files.writeString(
          file,
          OffsetDateTime.now(clock) + " " + trace + "\n",
          StandardCharsets.UTF_8,
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
      return true;
    } catch (IOException | RuntimeException | OutOfMemoryError _) {
      return false;
    }
  }
}
