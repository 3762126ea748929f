package org.framewright.share;

import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;

/** What one device hears, message after message; it knows what the device has already. */
interface Hearing {
  /**
   * Waits for something to tell.
   *
   * @param most how long to wait
   * @param over whether there is nothing more to wait for
   * @return a whole event of the stream; nothing where there is none in time, or it is over
   */
  Optional<String> next(Duration most, BooleanSupplier over) throws InterruptedException;
}
