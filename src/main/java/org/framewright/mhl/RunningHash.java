package org.framewright.mhl;

import java.nio.ByteBuffer;

/** A hash of what it is given piece by piece. */
interface RunningHash {
  /** Adds what remains in a piece. */
  void update(ByteBuffer piece);

  /** The hash of all; nothing may be added after it. */
  byte[] value();
}
