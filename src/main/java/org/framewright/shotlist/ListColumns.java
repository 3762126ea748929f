package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

  /**
   * Each column's name in a setup, by which the job finds what it means: its heading, but for what
   * a person chose it to be. No two have one name, and what is kept as it is has none of an
   * export's own headings, so that an exported list reads back.
   */
  List<String> names() {
    var names = new ArrayList<String>();
    var reserved = new HashSet<>(ListWriter.HEADINGS.values());
    for (int i = 0; i < headings.size(); i++) {
      names.add(isOther(i) ? headings.get(i) : chosen(i));
      if (!isOther(i)) {
        reserved.add(names.get(i));
      }
    }
    var taken = new HashSet<>(headings);
    taken.addAll(reserved);
    for (int i = 0; i < headings.size(); i++) {
      if (isOther(i) && reserved.contains(headings.get(i))) {
        int number = 2;
        while (!taken.add(headings.get(i) + " " + number)) {
          number++;
        }
        names.set(i, headings.get(i) + " " + number);
      }
    }
    return names;
  }

  private boolean isOther(int column) {
    var meaning = meanings.get(column);
    return (meaning == Heading.OTHER || meaning == Heading.KEPT) && !fields.containsKey(column);
  }

  private String chosen(int column) {
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

  /** The field of the convention's own that a column fills. */
  private Optional<String> field(int column, ListRequest request) {
    if (fields.containsKey(column)) {
      return Optional.of(fields.get(column));
    }
    return switch (meanings.get(column)) {
      case OTHER, KEPT ->
          Optional.ofNullable(request.field(Heading.plain(headings.get(column))))
              .filter(field -> !field.equals("setup") && !field.equals("view"));
      default -> Optional.empty();
    };
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
      if (meanings.get(i) != Heading.UNUSED && labels.contains(Heading.plain(headings.get(i)))) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  /** What is told of the columns that have a heading or hold something. */
  List<Column> columns(BitSet filled, ListRequest request) {
    var columns = new ArrayList<Column>();
    for (int i = 0; i < headings.size(); i++) {
      if (isHeaded(i) || filled.get(i)) {
        columns.add(new Column(i + 1, headings.get(i), meanings.get(i), field(i, request)));
      }
    }
    return columns;
  }
}
