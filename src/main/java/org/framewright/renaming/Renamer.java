package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Renames files below one folder, whose {@code .framewright/renames} holds the journals. */
public final class Renamer {
  private final Path root;
  private final Clock clock;

  private Renamer(Path root, Clock clock) {
    this.root = root;
    this.clock = clock;
  }

  /** Renames below this folder. */
  public static Renamer in(Path root) {
    return in(root, Clock.systemUTC());
  }

  /** Renames below this folder, by this clock. */
  public static Renamer in(Path root, Clock clock) {
    return new Renamer(root, clock);
  }

  /** Plans without changing anything. */
  public Plan plan(List<RenameRequest> requests) throws IOException {
    return later(null);
  }

  /** Applies the ready renames of a plan. */
  public Outcome apply(Plan plan, Progress progress) throws IOException {
    return later(null);
  }

  /** Every batch of this folder, oldest first. */
  public List<Batch> batches() throws IOException {
    return later(null);
  }

  /** Takes a batch back; undoing an undo is a redo. */
  public Outcome undo(String batchId, Progress progress) throws IOException {
    return later(null);
  }

  /** The batch that undo would take back next. */
  public Optional<Batch> nextUndo() throws IOException {
    return later(null);
  }

  /** The undo that {@link #undo} would take back to redo what was undone last. */
  public Optional<Batch> nextRedo() throws IOException {
    return later(null);
  }

  /** The batch that was begun and not ended, unless somebody is working on it. */
  public Optional<Interrupted> interrupted() throws IOException {
    return later(null);
  }

  /** Finishes or rolls back the batch that was interrupted. */
  public Recovery recover() throws IOException {
    return later(null);
  }

  /** Drops journals of batches begun before a time. */
  public Pruned prune(Instant before, boolean alsoUndoable) throws IOException {
    return later(null);
  }

  private <T> T later(T nothing) {
    if (clock != null) {
      throw new UnsupportedOperationException(root.toString());
    }
    return nothing;
  }
}
