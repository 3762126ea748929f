package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/** Says what of a sheet is hidden and was read nevertheless. */
record HiddenParts(SheetLayout layout, Grid grid, String source) {
  private static final int NAMED = 8;

  List<ListProblem> remarks() {
    var remarks = new ArrayList<ListProblem>();
    var hidden = new HashSet<>(layout.hiddenRows());
    var lines =
        grid.rows().stream().map(row -> row.getFirst().line()).filter(hidden::contains).toList();
    if (!lines.isEmpty()) {
      remarks.add(
          ListProblem.of(
              source,
              lines.getFirst(),
              0,
              lines.size() == 1
                  ? Text.of("this line is hidden in the sheet and was read")
                  : Text.of(
                      "this line and {0} more are hidden in the sheet"
                          + " and were read: lines {1}",
                      lines.size() - 1, ranges(lines)),
              Text.of("Take them out of the list if they are not to be shot.")));
    }
    var columns =
        layout.hiddenColumns().stream()
            .filter(
                column ->
                    grid.rows().stream()
                        .anyMatch(row -> column <= row.size() && !row.get(column - 1).blank()))
            .toList();
    if (!columns.isEmpty()) {
      remarks.add(
          ListProblem.ofAll(
              source,
              Text.of(
                  "columns are hidden in the sheet and were read: {0}",
                  columns.stream()
                      .limit(NAMED)
                      .map(HiddenParts::letters)
                      .collect(Collectors.joining(", "))),
              Text.of("Take them out of the list if they are not meant for the shoot.")));
    }
    return remarks;
  }

  /** {@code 3 to 5, 9}. */
  private static Text ranges(List<Integer> lines) {
    var ranges = new ArrayList<Text>();
    for (int i = 0; i < lines.size() && ranges.size() < NAMED; i++) {
      int from = lines.get(i);
      while (i + 1 < lines.size() && lines.get(i + 1) == lines.get(i) + 1) {
        i++;
      }
      ranges.add(
          from == lines.get(i) ? Text.of("{0}", from) : Text.of("{0} to {1}", from, lines.get(i)));
    }
    return ranges.stream().reduce((one, next) -> Text.of("{0}, {1}", one, next)).orElseThrow();
  }

  private static String letters(int column) {
    var letters = new StringBuilder();
    for (int rest = column; rest > 0; rest = (rest - 1) / 26) {
      letters.insert(0, (char) ('A' + (rest - 1) % 26));
    }
    return letters.toString();
  }
}
