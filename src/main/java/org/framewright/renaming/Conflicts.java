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
  /** By folder, how often each name is left or taken. */
  private final Map<String, Map<String, Integer>> uses = new HashMap<>();

  private final List<PlannedRename> renames;

  Conflicts(List<PlannedRename> renames) {
    this.renames = renames;
    for (var rename : renames) {
      if (rename.status() == Status.READY) {
        in(rename.from()).merge(key(rename.from()), 1, Integer::sum);
        in(rename.to()).merge(key(rename.to()), 1, Integer::sum);
      }
    }
  }

  /** Whether a ready rename is conflicted. */
  boolean has(int index) {
    var rename = renames.get(index);
    return in(rename.from()).get(key(rename.from())) > 1
        || in(rename.to()).get(key(rename.to())) > 1;
  }

  private Map<String, Integer> in(Path path) {
    var folder = path.getParent();
    return uses.computeIfAbsent(
        folder == null ? "" : CollisionKey.of(folder.toString()), any -> new HashMap<>());
  }

  private static String key(Path path) {
    return CollisionKey.of(path.getFileName().toString());
  }
}
