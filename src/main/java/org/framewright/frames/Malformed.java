package org.framewright.frames;

import java.io.IOException;

/** A file does not hold together; the message says why, in words that fit after its name. */
final class Malformed extends IOException {
  private static final long serialVersionUID = 1L;

  Malformed(String message) {
    super(message);
  }
}
