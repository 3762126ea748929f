package org.framewright.ui.start;

import javafx.scene.control.ListCell;
import org.framewright.ui.look.Texts;

/** A line of the tree of what will be made; folders end in a stroke, names are in italics. */
final class BranchCell extends ListCell<Branch> {
  private static final int INDENT = 22;

  private final Texts texts;

  BranchCell(Texts texts) {
    this.texts = texts;
    getStyleClass().add("branch");
  }

  @Override
  protected void updateItem(Branch branch, boolean empty) {
    super.updateItem(branch, empty);
    getStyleClass().removeAll("folder", "example", "whole");
    if (empty || branch == null) {
      setText("");
      setAccessibleText("");
      return;
    }
    // Set as a style: the stylesheet would override a padding set by call.
    setStyle("-fx-padding: 0 8px 0 " + (10 + branch.depth() * INDENT) + "px;");
    getStyleClass().add(branch.kind() == Branch.Kind.FOLDER ? "folder" : "example");
    if (branch.depth() == 0) {
      getStyleClass().add("whole");
    }
    setText(branch.kind() == Branch.Kind.FOLDER ? branch.text() + " /" : branch.text());
    setAccessibleText(
        texts.get(
            branch.kind() == Branch.Kind.FOLDER ? "start.folder" : "start.exampleName",
            branch.text()));
  }
}
