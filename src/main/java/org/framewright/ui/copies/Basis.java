package org.framewright.ui.copies;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.framewright.copies.WaivedFile;
import org.framewright.ui.look.Texts;

/**
 * What answers rest on that a person can say otherwise.
 *
 * @param needed on how many disks besides the card each file has to be
 * @param kinds what each place is taken for
 * @param waived the files that need not be kept
 */
record Basis(int needed, Map<Path, PlaceLine.Kind> kinds, List<WaivedFile> waived) {
  Basis {
    kinds = Map.copyOf(kinds);
    waived = List.copyOf(waived);
  }

  /** Whether the answer about a card holds no more. What is said of a file is about its card. */
  boolean isPast(Path card, Basis now) {
    return needed != now.needed
        || isTurned(now)
        || Stream.concat(added(waived, now.waived), added(now.waived, waived))
            .anyMatch(one -> one.file().startsWith(card));
  }

  /** A place that came since, or is gone, is no reason. */
  private boolean isTurned(Basis now) {
    return kinds.entrySet().stream()
        .anyMatch(one -> now.kinds.getOrDefault(one.getKey(), one.getValue()) != one.getValue());
  }

  private static Stream<WaivedFile> added(List<WaivedFile> before, List<WaivedFile> after) {
    return after.stream().filter(one -> !before.contains(one));
  }

  /** What is otherwise now, a sentence each. */
  List<String> changes(Basis now, Texts texts) {
    var changes = new ArrayList<String>();
    if (needed != now.needed) {
      changes.add(texts.get("copies.again.needed", now.needed));
    }
    if (isTurned(now)) {
      changes.add(texts.get("copies.again.turned"));
    }
    var more = added(waived, now.waived).toList();
    if (!more.isEmpty()) {
      var persons = more.stream().map(WaivedFile::by).distinct().toList();
      changes.add(texts.get("copies.again.waived", more.size(), texts.formats().list(persons)));
    }
    if (added(now.waived, waived).findAny().isPresent()) {
      changes.add(texts.get("copies.again.kept"));
    }
    return List.copyOf(changes);
  }
}
