package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.ui.command.TypedWords;

/**
 * The rows of the list as lines: those that a filter lets through, under their group's headings.
 */
final class BoardLines {
  private final ObservableList<Line> lines = FXCollections.observableArrayList();
  private final StringProperty filter = new SimpleStringProperty("");
  private final ObjectProperty<Grouping> grouping = new SimpleObjectProperty<>(Grouping.NONE);
  private List<SetupRow> rows = List.of();

  BoardLines() {
    filter.addListener((_, _, _) -> show());
    grouping.addListener((_, _, _) -> show());
  }

  ObservableList<Line> lines() {
    return lines;
  }

  StringProperty filter() {
    return filter;
  }

  ObjectProperty<Grouping> grouping() {
    return grouping;
  }

  /** The setups among the lines. */
  List<SetupRow> shownRows() {
    return lines.stream().filter(SetupRow.class::isInstance).map(SetupRow.class::cast).toList();
  }

  void show(List<SetupRow> all) {
    rows = all;
    show();
  }

  /** Groups by the next thing that the list has. */
  void regroup() {
    var wanted = grouping.get().next();
    while (wanted != Grouping.NONE && !has(wanted)) {
      wanted = wanted.next();
    }
    grouping.set(wanted);
  }

  private boolean has(Grouping wanted) {
    return rows.stream().anyMatch(row -> !wanted.of(row.setup()).isEmpty());
  }

  /** Whether the filter lets a row through. */
  boolean matches(SetupRow row) {
    return words().areIn(row.searched());
  }

  private TypedWords words() {
    return TypedWords.of(filter.get());
  }

  /** Changes the lines that differ; replaces all only when other lines are to be seen. */
  private void show() {
    var wanted = grouped();
    if (sameLines(wanted)) {
      for (var i = 0; i < wanted.size(); i++) {
        if (!Objects.equals(wanted.get(i), lines.get(i))) {
          lines.set(i, wanted.get(i));
        }
      }
    } else {
      lines.setAll(wanted);
    }
  }

  private boolean sameLines(List<Line> wanted) {
    if (wanted.size() != lines.size()) {
      return false;
    }
    for (var i = 0; i < wanted.size(); i++) {
      if (!wanted.get(i).sameAs(lines.get(i))) {
        return false;
      }
    }
    return true;
  }

  private List<Line> grouped() {
    var words = words();
    if (grouping.get() == Grouping.NONE) {
      return filter.get().isBlank()
          ? List.copyOf(rows)
          : rows.stream().filter(row -> words.areIn(row.searched())).map(Line.class::cast).toList();
    }
    var groups = new LinkedHashMap<String, List<SetupRow>>();
    for (var row : rows) {
      if (words.areIn(row.searched())) {
        groups.computeIfAbsent(grouping.get().of(row.setup()), _ -> new ArrayList<>()).add(row);
      }
    }
    var wanted = new ArrayList<Line>();
    groups.forEach(
        (text, members) -> {
          var done = (int) members.stream().filter(row -> row.state().done()).count();
          wanted.add(new Line.Heading(text, members.size(), done));
          wanted.addAll(members);
        });
    return wanted;
  }
}
