package org.framewright.copies;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;

/**
 * Every file below a folder, hidden ones too.
 *
 * @param root the folder, real and absolute
 * @param files all regular files but litter, by name
 * @param litter what systems leave behind, below {@code root}; nobody misses it
 * @param troubles what could not be listed, and what is neither a file nor a folder. Only a listing
 *     without any is whole
 */
record Listing(Path root, List<Listed> files, List<String> litter, List<Problem> troubles) {
  boolean isWhole() {
    return troubles.isEmpty();
  }

  long bytes() {
    return files.stream().mapToLong(Listed::size).sum();
  }

  /** How a later listing of the same folder differs, in words; empty where it does not. */
  Optional<String> changeTo(Listing later) {
    var before = new HashMap<String, Listed>();
    files.forEach(file -> before.put(file.name(), file));
    var changes = new ArrayList<String>();
    for (var file : later.files) {
      var was = before.remove(file.name());
      if (was == null) {
        changes.add(file.name() + " is new");
      } else if (!was.isLike(file)) {
        changes.add(file.name() + " was changed");
      }
    }
    before.keySet().stream().sorted().forEach(name -> changes.add(name + " is gone"));
    if (changes.isEmpty() && !later.isWhole()) {
      changes.add(later.troubles.getFirst().sentence());
    }
    return changes.isEmpty()
        ? Optional.empty()
        : Optional.of(
            changes.getFirst()
                + (changes.size() > 1 ? ", and " + (changes.size() - 1) + " more" : ""));
  }
}
