package org.framewright.ui.sets;

import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Consumer;
import org.framewright.studio.OverviewFollower;
import org.framewright.studio.OverviewFollower.Heard;

/** Who tells of the sets of the studio. */
@FunctionalInterface
public interface SetsSource {
  /**
   * Begins to tell.
   *
   * @param listener called on any thread
   */
  Following follow(Consumer<Heard> listener);

  /** Who has setups shot by another set; empty where nobody does. */
  default Optional<SetupMoving> moving() {
    return Optional.empty();
  }

  /** What was begun, until it is closed. */
  @FunctionalInterface
  interface Following extends AutoCloseable {
    @Override
    void close();
  }

  /**
   * The store of a person's settings.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   */
  static SetsSource of(Path settings, Clock clock) {
    return new SetsSource() {
      @Override
      public Following follow(Consumer<Heard> listener) {
        return OverviewFollower.begin(settings, clock, listener)::close;
      }

      @Override
      public Optional<SetupMoving> moving() {
        return Optional.of(SetupMoving.of(settings));
      }
    };
  }
}
