package org.framewright.ui.handoff;

import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** Which files would get which names, before they get them. */
final class RenameDialog {
  private final RenameQuestion question;
  private final Texts texts;
  private final ListView<RenameQuestion.Line> list = new ListView<>();
  private final VBox node = new VBox();

  RenameDialog(RenameQuestion question, Texts texts) {
    this.question = question;
    this.texts = texts;
    list.setId("right-names");
    list.getItems().setAll(question.lines());
    list.setCellFactory(_ -> new Cell());
    list.setAccessibleText(texts.get("handoff.rename.list"));
    list.getStyleClass().add("two-lines");
    node.getStyleClass().add("rename-question");
    node.getChildren().addAll(list, WrappedText.of(texts.get("handoff.rename.safe"), "quiet"));
  }

  /** The question; where nothing can be renamed, only why. */
  DialogSpec spec(Runnable answer) {
    int ready = question.plan().ready();
    var title = texts.get("handoff.rename.title", ready);
    return ready == 0
        ? DialogSpec.reading(title, node, list)
        : DialogSpec.asking(title, node, list, texts.get("handoff.rename.do", ready), answer);
  }

  private static final class Cell extends LineCell<RenameQuestion.Line> {
    private final Label from = new Label();
    private final Label to = new Label();
    private final CellBox box = new CellBox(from, to);

    Cell() {
      from.getStyleClass().add("code");
      from.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
      from.setMinWidth(0);
      to.setMinWidth(0);
      box.getStyleClass().add("two-line-words");
    }

    @Override
    protected void showLine(RenameQuestion.Line line) {
      from.setText(line.from());
      boolean goes = line.why().isEmpty();
      to.setText(goes ? "→  " + line.to() : line.why());
      to.getStyleClass().setAll("label", goes ? "code" : "needs");
      setGraphic(box);
      setTooltip(new Tooltip(line.from() + "\n" + to.getText()));
      setAccessibleText(line.from() + "\n" + to.getText());
    }
  }
}
