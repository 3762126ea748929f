package org.framewright.renaming;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.stream.IntStream;

/** One step for each of many files, on all processors. */
final class Parallel {
  private Parallel() {}

  @FunctionalInterface
  interface Step {
    void take(int index) throws IOException;
  }

  /**
   * Takes the steps in any order; returns once all are taken.
   *
   * @throws IOException that of a step that failed
   */
  static void each(int count, Step step) throws IOException {
    try {
      IntStream.range(0, count)
          .parallel()
          .forEach(
              index -> {
                try {
                  step.take(index);
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              });
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }
}
