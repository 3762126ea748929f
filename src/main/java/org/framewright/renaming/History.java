package org.framewright.renaming;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Which batch undo and redo mean, where none is named. */
final class History {
  private final List<Batch> batches;

  /** The batches that take back one that is no undo; one whose origin was pruned counts as one. */
  private final Set<String> undos = new HashSet<>();

  /** Oldest first. */
  History(List<Batch> batches) {
    this.batches = batches;
    for (var batch : batches) {
      // A batch can only take back an earlier one.
      if (batch.undoes().isPresent() && !undos.contains(batch.undoes().get())) {
        undos.add(batch.id());
      }
    }
  }

  /** The latest batch that is done, not taken back, and itself no undo (a redo is none). */
  Optional<Batch> undo() {
    return batches.reversed().stream()
        .filter(batch -> batch.undoable() && !isUndo(batch))
        .findFirst();
  }

  /** The latest undo that was not taken back, if nothing new was done after it. */
  Optional<Batch> redo() {
    for (var batch : batches.reversed()) {
      if (batch.undoable() && isUndo(batch)) {
        return Optional.of(batch);
      }
      if (batch.state() == BatchState.DONE && batch.undoes().isEmpty()) {
        return Optional.empty();
      }
    }
    return Optional.empty();
  }

  private boolean isUndo(Batch batch) {
    return undos.contains(batch.id());
  }
}
