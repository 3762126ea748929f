package org.framewright.shotlist;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Carries the text of merged cells down, as a person sees it. */
final class MergedCells {
  private final Map<Integer, Map<Integer, SheetLayout.Merge>> starts = new HashMap<>();
  private final Map<Integer, Map.Entry<SheetLayout.Merge, String>> open = new HashMap<>();

  MergedCells(List<SheetLayout.Merge> merges) {
    merges.forEach(
        merge ->
            starts
                .computeIfAbsent(merge.firstRow(), _ -> new HashMap<>())
                .put(merge.column(), merge));
  }

  /** The last column of this line that an open merged cell reaches. */
  int lastColumn(int line) {
    int last = 0;
    for (var one : open.values()) {
      if (one.getKey().lastRow() >= line) {
        last = Math.max(last, Math.min(one.getKey().column(), Limits.COLUMNS));
      }
    }
    return last;
  }

  /** The cell as a person sees it; to be asked for every cell, line by line. */
  Cell carry(Cell cell) {
    var start = starts.getOrDefault(cell.line(), Map.of()).get(cell.column());
    if (start != null) {
      open.put(cell.column(), Map.entry(start, cell.text()));
      return cell;
    }
    var above = open.get(cell.column());
    return above != null && cell.line() <= above.getKey().lastRow() && cell.blank()
        ? new Cell(above.getValue(), cell.line(), cell.column(), Cell.Kind.CARRIED)
        : cell;
  }
}
