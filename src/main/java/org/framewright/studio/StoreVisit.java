package org.framewright.studio;

import java.io.IOException;
import java.time.Clock;
import java.util.Optional;
import org.framewright.day.DayHours;
import org.framewright.live.LiveJob;

/** A connection with the store of a person's settings, for one job. */
record StoreVisit(Store store, OwnSet set, StoreHints hints)
    implements StoreRounds.Visit<SetFollower.Exchange> {
  /** Empty where this computer goes by no store, or the job was not added to it. */
  static Optional<StoreVisit> open(
      StudioSettings settings, LiveJob live, DayHours hours, Clock clock, Runnable hint)
      throws IOException {
    var kept = settings.read();
    if (kept.isEmpty() || !kept.get().jobs().contains(live.job().folder())) {
      return Optional.empty();
    }
    var store = Store.open(kept.get());
    try {
      return Optional.of(of(store, OwnSet.of(store, live, hours, clock), hint));
    } catch (IOException | RuntimeException e) {
      store.close();
      throw e;
    }
  }

  /** The same with a set that is open already. */
  static StoreVisit of(Store store, OwnSet set, Runnable hint) {
    var id = set.id().toString();
    var hints =
        StoreHints.listen(
            store,
            of -> {
              if (of.equals(id)) {
                hint.run();
              }
            });
    return new StoreVisit(store, set, hints);
  }

  @Override
  public SetFollower.Exchange ask() throws IOException {
    return new SetFollower.Exchange(set.follow(), set.told());
  }

  @Override
  public void close() {
    hints.close();
    store.close();
  }
}
