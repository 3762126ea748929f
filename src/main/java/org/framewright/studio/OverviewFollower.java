package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.Job;
import org.framewright.job.JobException;

/**
 * Asks the store of a person's settings for all sets, again and again, on a thread of its own, for
 * as long as somebody looks at them. It changes nothing there.
 */
public final class OverviewFollower implements AutoCloseable {
  /** What came of asking. */
  public sealed interface Heard {
    /** This computer goes by no store. */
    record NoStore() implements Heard {}

    /**
     * All sets.
     *
     * @param folders where this computer has the folders of some of them
     */
    record Sets(Overview overview, Map<UUID, Path> folders) implements Heard {
      public Sets {
        folders = Map.copyOf(folders);
      }
    }

    /** The store cannot be used, or the settings cannot be read. */
    record Away(Problem why) implements Heard {}
  }

  private record StoreVisit(Store store, StoreHints hints, Map<UUID, Path> folders)
      implements StoreRounds.Visit<Heard.Sets> {
    @Override
    public Heard.Sets ask() throws IOException {
      return new Heard.Sets(Overview.of(store), folders);
    }

    @Override
    public void close() {
      hints.close();
      store.close();
    }
  }

  private final StoreRounds<Heard.Sets> rounds;

  OverviewFollower(StoreRounds.Way<Heard.Sets> way, Consumer<Heard> listener, Duration ask) {
    this.rounds = new StoreRounds<>("all sets", way, new Hearing(listener), ask, ask);
  }

  /**
   * Begins to ask.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   * @param listener called on a thread of its own with each answer
   */
  public static OverviewFollower begin(Path settings, Clock clock, Consumer<Heard> listener) {
    var kept = new StudioSettings(settings);
    return new OverviewFollower(hint -> visit(kept, clock, hint), listener, StoreRounds.ASK)
        .started();
  }

  /** Starts it; for one that was made in another way than by {@link #begin}. */
  OverviewFollower started() {
    rounds.begin();
    return this;
  }

  private static Optional<StoreVisit> visit(StudioSettings settings, Clock clock, Runnable hint)
      throws IOException {
    var kept = settings.read();
    if (kept.isEmpty()) {
      return Optional.empty();
    }
    var store = Store.open(kept.get());
    return Optional.of(
        new StoreVisit(
            store, StoreHints.listen(store, _ -> hint.run()), folders(kept.get(), clock)));
  }

  /** A job is told by its folder; one that is not at hand cannot be opened either. */
  private static Map<UUID, Path> folders(StudioSettings.Kept kept, Clock clock) {
    var folders = new HashMap<UUID, Path>();
    for (var folder : kept.jobs()) {
      try {
        folders.putIfAbsent(OwnSet.id(Job.open(folder, clock)), folder);
      } catch (IOException | JobException e) {
        // Its drive is not plugged in, or it was put away.
      }
    }
    return folders;
  }

  private record Hearing(Consumer<Heard> listener) implements StoreRounds.Listener<Heard.Sets> {
    @Override
    public void answered(Heard.Sets sets) {
      listener.accept(sets);
    }

    @Override
    public void noStore() {
      listener.accept(new Heard.NoStore());
    }

    @Override
    public void failed(Exception why) {
      listener.accept(
          new Heard.Away(
              switch (why) {
                case StoreException away -> away.problem();
                case JobException unread -> unread.problem();
                default -> FileProblems.of((IOException) why);
              }));
    }
  }

  /** Ends it; the connection goes in a moment. */
  @Override
  public void close() {
    rounds.close();
  }
}
