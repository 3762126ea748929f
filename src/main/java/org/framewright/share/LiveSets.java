package org.framewright.share;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.framewright.studio.Overview;

/**
 * All sets of a studio as they are known just now, for a page: whoever asks the store shows here
 * what it answered. Safe from any thread.
 */
public final class LiveSets {
  /**
   * What there is to tell at one moment.
   *
   * @param number larger for a later moment
   * @param lost since when the store is not reached; nothing where it is
   */
  record Moment(long number, Overview overview, Optional<Instant> lost) {}

  private final String name;
  private final Newest<Moment> newest;

  /**
   * @param name of the store, which also tells it from every other one
   */
  public LiveSets(String name, Overview first) {
    this.name = name;
    this.newest = new Newest<>(new Moment(1, first, Optional.empty()));
  }

  /** What the store answered; with it the store is reached. */
  public void show(Overview overview) {
    newest.change(now -> Optional.of(new Moment(now.number() + 1, overview, Optional.empty())));
  }

  /** The store is not reached; what was shown stays. */
  public void lost(Instant since) {
    newest.change(
        now ->
            now.lost().isPresent()
                ? Optional.empty()
                : Optional.of(new Moment(now.number() + 1, now.overview(), Optional.of(since))));
  }

  String name() {
    return name;
  }

  String identity() {
    return "studio " + name;
  }

  void wake() {
    newest.wake();
  }

  /** The newest moment; waits for one that is later than this number, but not longer than this. */
  Moment after(long number, Duration most, BooleanSupplier over) throws InterruptedException {
    return newest.after(now -> now.number() > number, most, over).orElseGet(newest::now);
  }
}
