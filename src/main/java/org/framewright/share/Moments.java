package org.framewright.share;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import org.framewright.live.JobView;

/**
 * The newest moment, for all who wait for one. Whoever was busy meanwhile gets the newest and none
 * of those between. Safe from any thread.
 */
final class Moments {
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private Moment newest;

  Moments(JobView view, boolean lost) {
    newest = new Moment(1, view, lost, DayNow.NONE);
  }

  Moment newest() {
    lock.lock();
    try {
      return newest;
    } finally {
      lock.unlock();
    }
  }

  /** The job is as in this view; one that is older than what is known changes nothing. */
  void show(JobView view) {
    lock.lock();
    try {
      if (view.revision() > newest.view().revision()) {
        newest = new Moment(newest.number() + 1, view, newest.lost(), newest.day());
        changed.signalAll();
      }
    } finally {
      lock.unlock();
    }
  }

  void show(DayNow day) {
    lock.lock();
    try {
      if (!day.equals(newest.day())) {
        newest = new Moment(newest.number() + 1, newest.view(), newest.lost(), day);
        changed.signalAll();
      }
    } finally {
      lock.unlock();
    }
  }

  void lost(boolean lost) {
    lock.lock();
    try {
      if (lost != newest.lost()) {
        newest = new Moment(newest.number() + 1, newest.view(), lost, newest.day());
        changed.signalAll();
      }
    } finally {
      lock.unlock();
    }
  }

  /** Lets all who wait look at why they do. */
  void wake() {
    lock.lock();
    try {
      changed.signalAll();
    } finally {
      lock.unlock();
    }
  }

  /**
   * Waits for a moment later than one.
   *
   * @param number of the moment that is known
   * @param most how long to wait
   * @param over whether there is nothing more to wait for
   * @return nothing where there was none in time, or it is over
   */
  Optional<Moment> after(long number, Duration most, BooleanSupplier over)
      throws InterruptedException {
    lock.lockInterruptibly();
    try {
      long left = most.toNanos();
      while (newest.number() <= number && !over.getAsBoolean() && left > 0) {
        left = changed.awaitNanos(left);
      }
      return newest.number() > number && !over.getAsBoolean()
          ? Optional.of(newest)
          : Optional.empty();
    } finally {
      lock.unlock();
    }
  }
}
