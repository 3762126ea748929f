package org.framewright.ui.sets;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.framewright.job.OtherJob;
import org.framewright.studio.Moves;
import org.framewright.studio.SetupMove;
import org.framewright.studio.Store;
import org.framewright.studio.StudioSettings;

/** Who has setups shot by another set. Waits for the store, so never on the interface thread. */
public interface SetupMoving {
  /** What is to be shot at a set and goes nowhere. */
  List<Moves.ToShoot> toShoot(UUID set) throws IOException;

  /** Asks for moves, and says what became of them so far. */
  List<SetupMove> move(OtherJob from, OtherJob to, List<String> codes) throws IOException;

  /**
   * The store of a person's settings.
   *
   * @param settings the folder of the user's settings, which say by which store this computer goes
   */
  static SetupMoving of(Path settings) {
    var kept = new StudioSettings(settings);
    return new SetupMoving() {
      @Override
      public List<Moves.ToShoot> toShoot(UUID set) throws IOException {
        try (var store = Store.open(kept.read().orElseThrow())) {
          return Moves.of(store).toShoot(set);
        }
      }

      @Override
      public List<SetupMove> move(OtherJob from, OtherJob to, List<String> codes)
          throws IOException {
        try (var store = Store.open(kept.read().orElseThrow())) {
          var moves = Moves.of(store);
          var asked = new ArrayList<SetupMove>();
          for (var code : codes) {
            asked.add(moves.ask(from, to, code, ""));
          }
          return moves.answered(asked, PATIENCE);
        }
      }
    };
  }

  /** How long somebody waits for the answer: computers that are there give it within a second. */
  Duration PATIENCE = Duration.ofSeconds(4);
}
