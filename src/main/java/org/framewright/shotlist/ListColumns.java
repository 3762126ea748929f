package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The columns of a list, each understood.
 *
 * @param header the row of headings; empty where there is none
 * @param headings each column's own
 * @param meanings each column's; one of them is the setup
 * @param fields the columns that were chosen for a field of the convention's own
 * @param views the view of each column that is one
 */
record ListColumns(
    List<Cell> header,
    List<String> headings,
    List<Heading> meanings,
    Map<Integer, String> fields,
    Map<Integer, String> views) {

  /** The first column that is taken so; -1 if none is. */
  int of(Heading meaning) {
    return meanings.indexOf(meaning);
  }

  boolean isHeaded(int column) {
    return column < header.size() && !header.get(column).blank();
  }

  /** The column's name in a setup, by which the job finds what it means. */
  String name(int column) {
    var heading = headings.get(column);
    var meaning = meanings.get(column);
    if (fields.containsKey(column)) {
      return fields.get(column);
    }
    return switch (meaning) {
      // By these headings a setup finds its day and so on; a person may have chosen another.
      case DAY, RACK, MODEL, NOTE -> Heading.of(heading) == meaning ? heading : named(meaning);
      default -> heading;
    };
  }

  private static String named(Heading meaning) {
    var word = meaning.word();
    return Character.toUpperCase(word.charAt(0)) + word.substring(1);
  }

  /** The column that fills a field of the convention. */
  Optional<Integer> filling(String field, ListFit fit) {
    for (int i = 0; i < headings.size(); i++) {
      if (field.equals(fields.get(i))) {
        return Optional.of(i);
      }
    }
    var labels =
        fit.fields().entrySet().stream()
            .filter(label -> label.getValue().equals(field))
            .map(label -> Heading.plain(label.getKey()))
            .toList();
    for (int i = 0; i < headings.size(); i++) {
      if (labels.contains(Heading.plain(headings.get(i)))) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** What is told of the columns that have a heading or hold something. */
  List<Column> columns(Set<Integer> filled) {
    var columns = new ArrayList<Column>();
    for (int i = 0; i < headings.size(); i++) {
      if (isHeaded(i) || filled.contains(i)) {
        columns.add(
            new Column(
                i + 1, headings.get(i), meanings.get(i), Optional.ofNullable(fields.get(i))));
      }
    }
    return columns;
  }
}
