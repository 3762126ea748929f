package org.framewright.handoff;

import java.nio.file.Path;

/** How a hand-off ended. */
public sealed interface Delivery {
  /**
   * The package is in its place; every file in it was read again and is what the job holds.
   *
   * @param number the hand-off's running number in the job, from 1
   * @param folder the package
   * @param bytes the size of the payload
   */
  record Delivered(int number, Path folder, int selects, int files, long bytes)
      implements Delivery {}

  /** Somebody cancelled; nothing is left of it. */
  record Cancelled() implements Delivery {}

  /** It was not begun; nothing was written. */
  record Refused(String why, String remedy) implements Delivery {}

  /** A copy was not what it was made from, or a file changed meanwhile; nothing is left of it. */
  record Failed(String why, String remedy) implements Delivery {}
}
