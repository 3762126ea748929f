package org.framewright.frames;

import java.io.IOException;
import org.framewright.base.Text;

/** A file does not hold together. */
final class Malformed extends IOException {
  private static final long serialVersionUID = 1L;

  private final transient Text said;

  Malformed(Text said) {
    super(said.english());
    this.said = said;
  }

  /** Why, in words that fit after the file's name. */
  Text said() {
    return said;
  }
}
