package org.framewright.renaming;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Which renames of a batch meet another in a name. A swap, a cycle, a chain and a change of case
 * are all the same: a name that is left is a name that is taken, so that the order would matter.
 */
final class Conflicts {
  private record Spot(String folder, String name) {}

  private final Map<Spot, Integer> uses;

  Conflicts(List<PlannedRename> renames) {
    uses = HashMap.newHashMap(2 * renames.size());
    for (var rename : renames) {
      if (rename.status() == Status.READY) {
        uses.merge(spot(rename.from()), 1, Integer::sum);
        uses.merge(spot(rename.to()), 1, Integer::sum);
      }
    }
  }

  boolean has(PlannedRename rename) {
    return uses.get(spot(rename.from())) > 1 || uses.get(spot(rename.to())) > 1;
  }

  private static Spot spot(Path path) {
    var folder = path.getParent();
    return new Spot(
        folder == null ? "" : CollisionKey.of(folder.toString()),
        CollisionKey.of(path.getFileName().toString()));
  }
}
