package org.framewright.base;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * Tries again what another program hinders for a moment. On Windows, indexers, virus scanners and
 * programs that synchronise open each new file, and keep it from being renamed or replaced while
 * they read it (sharing violation, access denied).
 */
public final class Patience {
  /** Two seconds in all. */
  private static final int[] PAUSES_MILLIS = {10, 20, 40, 80, 160, 320, 640, 730};

  private final Pause pause;

  /** Waits. */
  @FunctionalInterface
  interface Pause {
    void last(long millis) throws InterruptedException;
  }

  /** What is tried. */
  @FunctionalInterface
  public interface Attempt<T> {
    T make() throws IOException;
  }

  /** The usual patience: two seconds, in pauses that grow. */
  public Patience() {
    this(Thread::sleep);
  }

  Patience(Pause pause) {
    this.pause = pause;
  }

  /** One that waits for nothing, for tests of what tries again. */
  public static Patience ofTests() {
    return new Patience(_ -> {});
  }

  /**
   * Makes an attempt, and again while it fails for a moment's reason.
   *
   * @param mayPass whether such a failure may pass by itself
   * @throws IOException the last failure
   */
  public <T> T with(Predicate<IOException> mayPass, Attempt<T> attempt) throws IOException {
    for (int millis : PAUSES_MILLIS) {
      try {
        return attempt.make();
      } catch (IOException e) {
        if (!mayPass.test(e)) {
          throw e;
        }
        await(millis, e);
      }
    }
    return attempt.make();
  }

  private void await(int millis, IOException failure) throws IOException {
    try {
      pause.last(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      var stopped = new InterruptedIOException(failure.getMessage());
      stopped.initCause(failure);
      throw stopped;
    }
  }

  /** Whether a failure of {@link java.nio.file.Files} may pass by itself on a system. */
  public static boolean mayPass(OperatingSystem system, IOException failure) {
    return system == OperatingSystem.WINDOWS
        && (failure instanceof AccessDeniedException
            || (failure instanceof FileSystemException e
                && String.valueOf(e.getReason())
                    .toLowerCase(Locale.ROOT)
                    .contains("used by another process")));
  }
}
