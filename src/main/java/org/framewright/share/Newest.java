package org.framewright.share;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The newest of something, for all who wait for it. Whoever was busy meanwhile gets the newest and
 * none of those between. Safe from any thread.
 */
final class Newest<T> {
  private final ReentrantLock lock = new ReentrantLock();
  private final Condition changed = lock.newCondition();
  private T now;

  Newest(T first) {
    now = first;
  }

  T now() {
    lock.lock();
    try {
      return now;
    } finally {
      lock.unlock();
    }
  }

  /**
   * Puts another in its place.
   *
   * @param next makes it of the one before; nothing where all stays
   */
  void change(Function<T, Optional<T>> next) {
    lock.lock();
    try {
      next.apply(now)
          .ifPresent(
              it -> {
                now = it;
                changed.signalAll();
              });
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
   * Waits for news.
   *
   * @param news whether it is what somebody waits for
   * @param most how long to wait
   * @param over whether there is nothing more to wait for
   * @return nothing where there was none in time, or it is over
   */
  Optional<T> after(Predicate<T> news, Duration most, BooleanSupplier over)
      throws InterruptedException {
    lock.lockInterruptibly();
    try {
      long left = most.toNanos();
      while (!news.test(now) && !over.getAsBoolean() && left > 0) {
        left = changed.awaitNanos(left);
      }
      return news.test(now) && !over.getAsBoolean() ? Optional.of(now) : Optional.empty();
    } finally {
      lock.unlock();
    }
  }
}
