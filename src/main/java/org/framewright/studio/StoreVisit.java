package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.job.JobException;
import org.framewright.job.JobMirror;

/** A connection with the store of a person's settings, for one job. */
record StoreVisit(Store store, OwnSet set, StoreHints hints) implements SetFollower.Visit {
  /** Empty where this computer goes by no store, or the job was not added to it. */
  static Optional<SetFollower.Visit> open(
      StudioSettings settings, Path job, DayHours hours, Clock clock, Runnable hint)
      throws IOException, JobException {
    var kept = settings.read();
    if (kept.isEmpty() || !kept.get().jobs().contains(job)) {
      return Optional.empty();
    }
    var store = Store.open(kept.get());
    try {
      var set = OwnSet.open(store, job, hours, clock);
      var id = set.id().toString();
      var hints =
          StoreHints.listen(
              store,
              of -> {
                if (of.equals(id)) {
                  hint.run();
                }
              });
      return Optional.of(new StoreVisit(store, set, hints));
    } catch (IOException | JobException | RuntimeException e) {
      store.close();
      throw e;
    }
  }

  @Override
  public JobMirror.Exchanged exchange() throws IOException {
    return set.follow();
  }

  @Override
  public List<Text> told() {
    return set.told();
  }

  @Override
  public void close() {
    hints.close();
    store.close();
  }
}
