package org.framewright.renaming;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;

/**
 * What a pruning did.
 *
 * @param dropped batches whose journals are gone
 * @param kept old batches that were kept, because they could still be undone or are not ended
 * @param refused why nothing was dropped, if the pruning could not be begun
 */
public record Pruned(List<Batch> dropped, List<Batch> kept, Optional<Problem> refused) {
  public Pruned {
    dropped = List.copyOf(dropped);
    kept = List.copyOf(kept);
  }

  static Pruned refused(Problem problem) {
    return new Pruned(List.of(), List.of(), Optional.of(problem));
  }
}
