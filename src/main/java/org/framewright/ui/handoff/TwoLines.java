package org.framewright.ui.handoff;

import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.CellRow;

/** What a line of a list shows: a mark, a name, and under it what there is to say. */
final class TwoLines {
  private final LineMark mark = new LineMark();
  private final Label name = new Label();
  private final Label more = new Label();
  private final CellRow row;

  TwoLines() {
    name.getStyleClass().addAll("code", "line-names");
    name.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    name.setMinWidth(0);
    more.getStyleClass().addAll("line-more", "quiet");
    more.setMinWidth(0);
    var both = new CellBox(name, more);
    HBox.setHgrow(both, Priority.ALWAYS);
    row = new CellRow(mark, both);
    row.getStyleClass().add("two-line-box");
  }

  CellRow row() {
    return row;
  }

  LineMark mark() {
    return mark;
  }

  Label name() {
    return name;
  }

  Label more() {
    return more;
  }
}
