package org.framewright.copies;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Optional;
import java.util.Queue;
import java.util.function.Supplier;

/** The files of one disk that are still to be read, in order, and how many threads read them. */
final class DiskQueue {
  private final Queue<Waiting> waiting;
  private final Sharing sharing;
  private int readers = 1;

  /** Read by one thread. */
  DiskQueue(Collection<Waiting> waiting, Sharing sharing) {
    this.waiting = new ArrayDeque<>(waiting);
    this.sharing = sharing;
  }

  /** One file, and how far the place is that it is in. */
  record Waiting(Place place, Listed file, HowFar far) {}

  /**
   * When a disk is read by more than one thread. One that is busy for most of its time hashes more
   * slowly than the disk delivers. On cards, disks that rotate and where other programs compute, no
   * thread is, so that the disk stays with one row, which is the fastest there.
   *
   * @param most readers of one disk
   * @param enough bytes that a reader has read before it is judged
   * @param effort of the thread that asks
   */
  record Sharing(int most, long enough, Supplier<Effort> effort) {
    private static final double BUSY = 0.8;

    static Sharing usual() {
      return new Sharing(
          Runtime.getRuntime().availableProcessors(), 32 << 20, Effort::ofThisThread);
    }

    private boolean isBusy(double share) {
      return share > BUSY;
    }
  }

  synchronized Optional<Waiting> next() {
    return Optional.ofNullable(waiting.poll());
  }

  /** One that reads this disk, on the thread that asks. */
  Reader reader() {
    return new Reader(sharing.effort().get());
  }

  final class Reader {
    private final Effort effort;
    private long read;

    private Reader(Effort effort) {
      this.effort = effort;
    }

    /** Whether one more is to read the disk from now on, after this one has read so much. */
    boolean needsAnother(long bytes) {
      read += bytes;
      if (read < sharing.enough()) {
        return false;
      }
      read = 0;
      return sharing.isBusy(effort.share()) && another();
    }
  }

  private synchronized boolean another() {
    if (waiting.isEmpty() || readers >= sharing.most()) {
      return false;
    }
    readers++;
    return true;
  }
}
