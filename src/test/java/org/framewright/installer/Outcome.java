package org.framewright.installer;

import java.nio.file.Path;

/** What became of a package. */
sealed interface Outcome {
  /** It is there. */
  record Made(Path file) implements Outcome {}

  /** It could not be made here. */
  record LeftOut(String why) implements Outcome {}
}
