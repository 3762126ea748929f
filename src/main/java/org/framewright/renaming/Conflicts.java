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
 *
 * <p>A table of numbers instead of a map of objects: it has two entries a file.
 */
final class Conflicts {
  private static final int FREE = 0; // as a new table holds

  private final List<PlannedRename> renames;
  private final Map<Path, String> folderKeys = new HashMap<>();
  private final BitSet conflicted = new BitSet();

  /** By the hash of a name: one more than twice the rename that uses it, one more if as its new. */
  private final int[] uses;

  private final int[] hashes;

  private Conflicts(List<PlannedRename> renames) {
    this.renames = renames;
    this.uses = new int[Integer.highestOneBit(Math.max(1, renames.size())) * 8];
    this.hashes = new int[uses.length];
  }

  /** The indices of the ready renames that are conflicted. */
  static BitSet of(List<PlannedRename> renames) {
    var conflicts = new Conflicts(renames);
    for (int i = 0; i < renames.size(); i++) {
      if (renames.get(i).status() == Status.READY) {
        conflicts.use(2 * i + 1);
        conflicts.use(2 * i + 2);
      }
    }
    return conflicts.conflicted;
  }

  private void use(int use) {
    var path = path(use);
    var name = nameKey(path);
    int hash = 31 * folderKey(path).hashCode() + name.hashCode();
    hash ^= hash >>> 16;
    int at = hash & (uses.length - 1);
    while (uses[at] != FREE) {
      if (hashes[at] == hash && isOneName(path, name, path(uses[at]))) {
        conflicted.set((uses[at] - 1) / 2);
        conflicted.set((use - 1) / 2);
        return;
      }
      at = (at + 1) & (uses.length - 1);
    }
    uses[at] = use;
    hashes[at] = hash;
  }

  private Path path(int use) {
    var rename = renames.get((use - 1) / 2);
    return use % 2 == 1 ? rename.from() : rename.to();
  }

  private boolean isOneName(Path path, String name, Path other) {
    return name.equals(nameKey(other)) && folderKey(path).equals(folderKey(other));
  }

  private static String nameKey(Path path) {
    return NameKey.of(path.getFileName().toString());
  }

  private String folderKey(Path path) {
    var folder = path.getParent();
    return folder == null
        ? ""
        : folderKeys.computeIfAbsent(folder, any -> NameKey.of(any.toString()));
  }
}
