package org.framewright.renaming;

import java.time.Instant;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * A batch as its journal describes it.
 *
 * @param id a running number and the plan's id, {@code 0007-3f9c1a0b}
 * @param at when it was begun
 * @param state where it stands
 * @param renames how many files it renames
 * @param example its first rename, {@code A.jpg -> B.jpg}; empty if unreadable
 * @param undoes the batch that this one takes back
 * @param undoneBy the batch that took this one back and was not itself taken back
 * @param damage what is wrong with the journal; else empty
 */
public record Batch(
    String id,
    Instant at,
    BatchState state,
    int renames,
    String example,
    Optional<String> undoes,
    Optional<String> undoneBy,
    Text damage) {

  /** What is wrong with the journal, in English; else empty. */
  public String trouble() {
    return damage.english();
  }

  /** Whether it can be asked to be undone. */
  public boolean undoable() {
    return state == BatchState.DONE && undoneBy.isEmpty();
  }
}
