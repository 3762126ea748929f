package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.Tooltip;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** A frame in two lines: its name here and there, and how much it is or why it stays. */
final class GoingCell extends LineCell<GoingLine> {
  private final Texts texts;
  private final TwoLines shown = new TwoLines();

  GoingCell(Texts texts) {
    this.texts = texts;
  }

  @Override
  protected void showLine(GoingLine line) {
    shown.mark().show(line.kind());
    shown.name().setText(line.to().isEmpty() ? line.from() : line.from() + "  →  " + line.to());
    shown.more().setText(said(line));
    shown
        .more()
        .getStyleClass()
        .setAll("label", "line-more", line.kind() == GoingLine.Kind.HELD ? "needs" : "quiet");
    setGraphic(shown.row());
    setTooltip(new Tooltip(texts.apart(shown.name().getText(), line.more(), line.remedy())));
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
