package org.framewright.renaming;

import java.util.List;

/**
 * What a pruning did.
 *
 * @param dropped batches whose journals are gone
 * @param kept old batches that were kept, because they could still be undone or are not ended
 */
public record Pruned(List<Batch> dropped, List<Batch> kept) {
  public Pruned {
    dropped = List.copyOf(dropped);
    kept = List.copyOf(kept);
  }
}
