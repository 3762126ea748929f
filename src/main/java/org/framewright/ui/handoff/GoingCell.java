package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** A frame in two lines: its name here and there, and how much it is or why it stays. */
final class GoingCell extends LineCell<GoingLine> {
  private final Texts texts;
  private final LineMark mark = new LineMark();
  private final Label names = new Label();
  private final Label more = new Label();
  private final CellRow box;

  GoingCell(Texts texts) {
    this.texts = texts;
    names.getStyleClass().addAll("code", "line-names");
    names.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    names.setMinWidth(0);
    more.setMinWidth(0);
    var both = new CellBox(names, more);
    HBox.setHgrow(both, Priority.ALWAYS);
    box = new CellRow(mark, both);
    box.getStyleClass().add("two-line-box");
  }

  @Override
  protected void showLine(GoingLine line) {
    mark.show(line.kind());
    names.setText(line.to().isEmpty() ? line.from() : line.from() + "  →  " + line.to());
    more.setText(said(line));
    more.getStyleClass()
        .setAll("label", "line-more", line.kind() == GoingLine.Kind.HELD ? "needs" : "quiet");
    setGraphic(box);
    setTooltip(new Tooltip(texts.apart(names.getText(), line.more(), line.remedy())));
    var word =
        switch (line.kind()) {
          case GOES -> "";
          case AGAIN -> texts.get("handoff.line.again");
          case HELD -> texts.get("handoff.line.held");
        };
    setAccessibleText(texts.apart(word, line.from(), line.to(), said(line)));
  }

  private String said(GoingLine line) {
    return Optional.of(line.remedy())
        .filter(remedy -> !remedy.isEmpty())
        .map(remedy -> texts.get("handoff.line.why", line.more(), remedy))
        .orElse(line.more());
  }
}
