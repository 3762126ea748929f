package org.framewright.renaming;

import java.nio.file.Path;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.framewright.base.NameKey;

/**
 * Which renames of a batch meet another in a name. A swap, a cycle, a chain and a change of case
 * are all the same: a name that is left is a name that is taken, so that the order would matter.
 */
final class Conflicts {
  /** By folder, which rename was the first to leave or take a name. */
  private final Map<String, Map<String, Integer>> uses = new HashMap<>();

  private final Map<Path, Map<String, Integer>> folders = new HashMap<>();
  private final BitSet conflicted = new BitSet();

  private Conflicts() {}

  /** The indices of the ready renames that are conflicted. */
  static BitSet of(List<PlannedRename> renames) {
    var conflicts = new Conflicts();
    for (int i = 0; i < renames.size(); i++) {
      var rename = renames.get(i);
      if (rename.status() == Status.READY) {
        conflicts.use(rename.from(), i);
        conflicts.use(rename.to(), i);
      }
    }
    return conflicts.conflicted;
  }

  private void use(Path path, int index) {
    var first = in(path).putIfAbsent(NameKey.of(path.getFileName().toString()), index);
    if (first != null) {
      conflicted.set(first);
      conflicted.set(index);
    }
  }

  private Map<String, Integer> in(Path path) {
    return folders.computeIfAbsent(
        path.getParent(),
        folder ->
            uses.computeIfAbsent(
                folder == null ? "" : NameKey.of(folder.toString()), any -> new HashMap<>()));
  }
}
