package org.framewright.handoff;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.NameKey;

/** Which selects went before, by their name there or by that of the frame at that time. */
final class EarlierHandOffs {
  private final Map<String, Integer> bySelect = new HashMap<>();
  private final Map<String, Integer> byOriginal = new HashMap<>();

  private EarlierHandOffs() {}

  /** Those of which a package may be out, with a retoucher. */
  static EarlierHandOffs of(Collection<HandOffRecord> records) {
    var earlier = new EarlierHandOffs();
    for (var record : records) {
      if (record.mayComeBack()) {
        for (var entry : record.selects()) {
          earlier.bySelect.merge(NameKey.of(entry.select()), record.number(), Math::max);
          earlier.byOriginal.merge(entry.original(), record.number(), Math::max);
        }
      }
    }
    return earlier;
  }

  /** The number of the last hand-off that had it. */
  Optional<Integer> last(Select select) {
    return Optional.ofNullable(
        bySelect.getOrDefault(NameKey.of(select.name()), byOriginal.get(select.original())));
  }
}
