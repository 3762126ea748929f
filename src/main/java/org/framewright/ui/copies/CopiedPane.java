package org.framewright.ui.copies;

import java.util.List;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.base.Problem;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What became of a copy; loud where the card must not be used any more. */
final class CopiedPane extends VBox {
  private static final PseudoClass LOUD = PseudoClass.getPseudoClass("loud");

  private final Texts texts;
  private final WrappedText what = new WrappedText("copied-what");
  private final WrappedText remedy = new WrappedText("copied-remedy");
  private final VBox said = new VBox(what, remedy);
  private final VBox targets = new VBox();
  private final Label title = new Label();
  private final Button next;
  private final ListView<Problem> problems = new ListView<>();

  CopiedPane(Texts texts, Command compare, Command copy) {
    this.texts = texts;
    what.setId("copied");
    said.getStyleClass().add("copied-said");
    targets.getStyleClass().add("copied-targets");
    title.getStyleClass().add("part-title");
    problems.setId("copy-problems");
    problems.setCellFactory(_ -> new ProblemCell(texts));
    problems.getStyleClass().add("copy-problems");
    VBox.setVgrow(problems, Priority.ALWAYS);
    next = CommandControls.button(compare, texts.get("copies.act.compareNow"), texts);
    next.setId("copies-compare-now");
    next.getStyleClass().addAll("does-it", "act");
    var again = CommandControls.button(copy, texts.get("copies.act.copyAgain"), texts);
    again.getStyleClass().add("act");
    var row = new HBox(next, again);
    row.getStyleClass().add("in-line");
    var sheet = new VBox(targets, row, title, problems);
    sheet.getStyleClass().add("copied-rest");
    VBox.setVgrow(sheet, Priority.ALWAYS);
    getChildren().addAll(said, sheet);
    getStyleClass().addAll("paper-sheet", "copied-sheet");
  }

  void show(Outcome.Copied copied) {
    said.pseudoClassStateChanged(LOUD, copied.stopUsing());
    what.setText(copied.what());
    remedy.setText(copied.remedy());
    targets
        .getChildren()
        .setAll(copied.targets().stream().map(line -> WrappedText.of(line)).toList());
    // One that fails is not read once more for an answer.
    next.setVisible(!copied.stopUsing());
    next.setManaged(!copied.stopUsing());
    title.setText(texts.get("copies.problems", copied.problems().size()));
    problems.getItems().setAll(copied.problems());
    problems.setAccessibleText(title.getText());
    for (var part : List.of(title, problems)) {
      part.setVisible(!copied.problems().isEmpty());
      part.setManaged(part.isVisible());
    }
  }
}
