package org.framewright.frames;

import java.util.Collection;
import java.util.Optional;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import org.framewright.frames.slate.SlateReading;

/**
 * Looks for slates in new frames, out of the way of whoever watches for them: in one thread of low
 * priority, a frame at a time. Which frame is next, {@link SlateOrder} says. Safe for several
 * threads.
 */
public final class SlateQueue implements AutoCloseable {
  /** Takes what was found, in the queue's own thread. */
  @FunctionalInterface
  public interface Taker {
    void take(Frame frame, SlateReading reading);
  }

  private final Function<Frame, SlateReading> search;
  private final Taker taker;
  private final boolean ownThread;
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();

  /** Touched under the lock only. */
  private final SlateOrder order = new SlateOrder();

  /** Touched under the lock only. */
  private boolean looking;

  /** Touched under the lock only. */
  private boolean closed;

  private SlateQueue(Function<Frame, SlateReading> search, Taker taker, boolean ownThread) {
    this.search = search;
    this.taker = taker;
    this.ownThread = ownThread;
  }

  /** One that works in a thread of its own until it is closed. */
  public static SlateQueue inBackground(Taker taker) {
    return inBackground(new SlateSearch()::read, taker);
  }

  @SuppressWarnings("ThreadPriorityCheck") // A courtesy: nothing relies on it.
  static SlateQueue inBackground(Function<Frame, SlateReading> search, Taker taker) {
    var queue = new SlateQueue(search, taker, true);
    Thread.ofPlatform().daemon().name("slates").priority(Thread.MIN_PRIORITY).start(queue::work);
    return queue;
  }

  /** One that has looked at all frames, put off or not, once {@link #add} returns: for tests. */
  public static SlateQueue atOnce(Function<Frame, SlateReading> search, Taker taker) {
    return new SlateQueue(search, taker, false);
  }

  /**
   * Takes frames in; those that are not whole yet, that are waiting, or that were looked at are
   * passed over. Returns at once, so all frames of a scan can be handed in each time.
   */
  public void add(Collection<Frame> frames) {
    lock.lock();
    try {
      if (closed) {
        return;
      }
      order.add(frames, System.nanoTime());
      changed.signalAll();
    } finally {
      lock.unlock();
    }
    if (!ownThread) {
      atOnce();
    }
  }

  /** How many frames wait or are looked at just now. */
  public int waiting() {
    lock.lock();
    try {
      return order.size() + (looking ? 1 : 0);
    } finally {
      lock.unlock();
    }
  }

  /** Ends; what is looked at just now is not handed out any more. */
  @Override
  public void close() {
    lock.lock();
    try {
      closed = true;
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  private void atOnce() {
    for (var frame = next(Long.MAX_VALUE / 2);
        frame.isPresent();
        frame = next(Long.MAX_VALUE / 2)) {
      look(frame.get());
    }
  }

  private Optional<Frame> next(long now) {
    lock.lock();
    try {
      return closed ? Optional.empty() : order.next(now);
    } finally {
      lock.unlock();
    }
  }

  private void work() {
    for (var frame = await(); frame.isPresent(); frame = await()) {
      try {
        look(frame.get());
      } catch (RuntimeException e) {
        // Whoever takes readings failed with this one; the others are still to be had.
        var thread = Thread.currentThread();
        thread.getUncaughtExceptionHandler().uncaughtException(thread, e);
      }
    }
  }

  /** The next frame, once there is one; none when it was closed. */
  private Optional<Frame> await() {
    lock.lock();
    try {
      looking = false;
      while (!closed) {
        long now = System.nanoTime();
        var next = order.next(now);
        if (next.isPresent()) {
          looking = true;
          return next;
        }
        if (order.size() > 0) {
          changed.awaitNanos(order.untilNext(now));
        } else {
          changed.await();
        }
      }
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    } finally {
      lock.unlock();
    }
  }

  private void look(Frame frame) {
    var reading = search.apply(frame);
    lock.lock();
    try {
      if (closed) {
        return;
      }
      if (reading instanceof SlateReading.NoPicture) {
        order.hadNothing(frame);
      } else {
        order.looked(frame);
      }
    } finally {
      lock.unlock();
    }
    taker.take(frame, reading);
  }
}
