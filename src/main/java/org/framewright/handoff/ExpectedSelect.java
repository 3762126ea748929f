package org.framewright.handoff;

import java.io.IOException;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.framewright.base.NameKey;

/**
 * A select that was handed off, once or several times.
 *
 * @param original the frame's name at the time of the last one
 * @param copies all that it was handed off as
 */
record ExpectedSelect(
    String select, String setup, String original, List<HandOffRecord.Copy> copies) {
  static SortedMap<String, ExpectedSelect> of(List<HandOffRecord> records) {
    return of(records, false);
  }

  /** The slates that went along: they need not come back, and may. */
  static SortedMap<String, ExpectedSelect> slates(List<HandOffRecord> records) {
    return of(records, true);
  }

  private static SortedMap<String, ExpectedSelect> of(List<HandOffRecord> records, boolean slates) {
    var all = new TreeMap<String, ExpectedSelect>();
    for (var one : records) {
      for (var entry : one.selects()) {
        if (entry.slate() != slates) {
          continue;
        }
        all.merge(
            NameKey.of(entry.select()),
            new ExpectedSelect(
                entry.select(), entry.setup(), entry.original(), entry.all().toList()),
            (before, now) ->
                new ExpectedSelect(
                    now.select,
                    now.setup,
                    now.original,
                    Stream.concat(before.copies.stream(), now.copies.stream()).toList()));
      }
    }
    return all;
  }

  /** Whether a file is one of the copies; files of other sizes are not read. */
  boolean has(FolderFiles.Found file) throws IOException {
    var candidates =
        copies.stream()
            .filter(copy -> copy.bytes().orElse(file.bytes()) == file.bytes())
            .map(HandOffRecord.Copy::sha256)
            .collect(Collectors.toSet());
    return !candidates.isEmpty() && candidates.contains(Checksum.of(file.path()));
  }
}
