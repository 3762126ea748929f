package org.framewright.ui.copies;

import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import org.framewright.base.Problem;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** What is wrong with a file of a copy, and what mends it. */
final class ProblemCell extends LineCell<Problem> {
  private final Texts texts;
  private final Label where = new Label();
  private final Label what = new Label();
  private final Label remedy = new Label();
  private final CellBox box = new CellBox(where, what, remedy);

  ProblemCell(Texts texts) {
    this.texts = texts;
    where.getStyleClass().add("code");
    where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    what.getStyleClass().add("field-word");
    remedy.getStyleClass().add("quiet");
  }

  @Override
  protected void showLine(Problem problem) {
    where.setText(texts.where(problem));
    what.setText(texts.what(problem));
    remedy.setText(texts.remedy(problem));
    setGraphic(box);
    setTooltip(new Tooltip(texts.sentences(problem)));
    setAccessibleText(texts.sentences(problem));
  }
}
