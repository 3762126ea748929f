package org.framewright.handoff;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.NameKey;
import org.framewright.base.Text;

/**
 * The names that the selects of one package have already: two that some file system takes for one
 * would replace each other there.
 */
final class TakenNames {
  /** Two bodies may give two slates one name. */
  private static final String OF_SLATES =
      "Rename one of them in the file manager, or have the next job's convention name slates.";

  private final Map<String, String> taken = new HashMap<>();
  private final String remedy;

  /**
   * @param remedy for two that would have one name
   */
  TakenNames(String remedy) {
    this.remedy = remedy;
  }

  /** Takes a select's names; where one of them is taken, none is, and this is why. */
  Optional<Withheld> take(Select select) {
    var keys = keys(select);
    var clash = clash(select, keys);
    if (clash.isEmpty()) {
      keys.forEach(key -> taken.put(key, select.original()));
    }
    return clash;
  }

  private static List<String> keys(Select select) {
    var keys = new ArrayList<String>();
    keys.add(NameKey.of(select.name()));
    // A name and the same name with an ending never meet, so one map holds both.
    select.files().forEach(file -> keys.add("file " + NameKey.of(file)));
    return keys;
  }

  private Optional<Withheld> clash(Select select, List<String> keys) {
    for (int i = 0; i < keys.size(); i++) {
      var other = taken.get(keys.get(i));
      if (other != null) {
        return Optional.of(
            new Withheld(
                select.original(),
                Text.of("it would have the same name as {0}: {1}", other, select.name()),
                select.slate() ? OF_SLATES : remedy,
                select.slate() ? Withheld.Tool.NONE : Withheld.Tool.CHECKING));
      }
      if (keys.subList(0, i).contains(keys.get(i))) {
        return Optional.of(
            new Withheld(
                select.original(),
                Text.of(
                    "two of its files would have the same name: {0}", select.files().get(i - 1)),
                "Rename one of them, or move it out of the frames folder."));
      }
    }
    return Optional.empty();
  }
}
