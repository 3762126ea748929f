package org.framewright.renaming;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which batch undo and redo mean, where none is named. */
final class History {
  private final List<Batch> batches;
  private final Map<String, Batch> byId = new HashMap<>();

  /** Oldest first. */
  History(List<Batch> batches) {
    this.batches = batches;
    batches.forEach(batch -> byId.put(batch.id(), batch));
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

  /** An undo takes back a batch that is no undo; a batch whose origin was pruned counts as one. */
  private boolean isUndo(Batch batch) {
    boolean undo = false;
    var at = Optional.of(batch);
    for (int steps = 0; at.isPresent() && steps <= batches.size(); steps++) {
      var undone = at.get().undoes();
      if (undone.isPresent()) {
        undo = !undo;
      }
      at = undone.flatMap(id -> Optional.ofNullable(byId.get(id)));
    }
    return undo;
  }
}
