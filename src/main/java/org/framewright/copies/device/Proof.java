package org.framewright.copies.device;

import java.io.Closeable;
import java.io.IOException;

/** Tells whether reads of one thread reached a disk. */
interface Proof extends Closeable {
  /** Nothing is proved; reads go through the memory of the system. */
  Proof NONE =
      new Proof() {
        @Override
        public long delivered() {
          return 0;
        }

        @Override
        public void close() {}
      };

  /** Makes one, on the thread that will read. */
  @FunctionalInterface
  interface Maker {
    Proof make() throws IOException;
  }

  /** The bytes that disks have delivered to this thread so far. */
  long delivered() throws IOException;

  @Override
  void close() throws IOException;
}
