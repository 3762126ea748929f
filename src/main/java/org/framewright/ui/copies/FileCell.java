package org.framewright.ui.copies;

import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;

/** How one file stands in one place, in one line. */
final class FileCell extends LineCell<FileLine> {
  private static final PseudoClass WAIVED = PseudoClass.getPseudoClass("waived");

  private final Texts texts;
  private final FileMark mark = new FileMark();
  private final Label state = new Label();
  private final Label from = new Label();
  private final Label file = new Label();
  private final Label place = new Label();
  private final Label more = new Label();
  private final Button waive;
  private final CellRow box;

  /**
   * @param waiving says of the chosen line's file that it need not be kept, or takes that back
   */
  FileCell(Texts texts, Command waiving) {
    this.texts = texts;
    waive = CommandControls.button(waiving, "", texts);
    waive.getStyleClass().addAll("slight", "waive");
    waive.setMinWidth(Region.USE_PREF_SIZE);
    waive.setOnAction(
        _ -> {
          getListView().getSelectionModel().clearAndSelect(getIndex());
          waiving.fire();
        });
    box = new CellRow(mark, state, from, file, place, more, waive);
    state.getStyleClass().add("file-state");
    from.getStyleClass().add("file-from");
    file.getStyleClass().addAll("code", "file-name");
    file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    file.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(file, Priority.ALWAYS);
    place.getStyleClass().add("file-place");
    more.getStyleClass().addAll("quiet", "file-more");
    box.getStyleClass().add("file-box");
  }

  @Override
  protected void showLine(FileLine line) {
    mark.show(line.state());
    var word =
        texts.get(
            line.waivedBy().isPresent()
                ? "copies.state.waived"
                : "copies.state." + line.state().word());
    state.setText(word);
    from.setText(line.from());
    file.setText(line.file());
    place.setText(line.place());
    boolean said =
        switch (line.state()) {
          case DAMAGED, DIFFERENT, TROUBLE -> true;
          case MISSING, SAME_PICTURE, EXTRA, IDENTICAL -> false;
        };
    more.setTextOverrun(said ? OverrunStyle.ELLIPSIS : OverrunStyle.LEADING_ELLIPSIS);
    more.setText(line.waivedBy().map(by -> texts.get("copies.waived", by)).orElse(line.more()));
    box.pseudoClassStateChanged(WAIVED, line.waivedBy().isPresent());
    // A file of the card itself is in no other place; that room is its button's.
    boolean own = line.damaged().isPresent();
    place.setVisible(!own);
    place.setManaged(!own);
    waive.setVisible(line.canBeWaived());
    waive.setManaged(line.canBeWaived());
    waive.setText(texts.get(line.waivedBy().isPresent() ? "copies.act.keep" : "copies.act.waive"));
    setGraphic(box);
    var waived = line.waivedBy().isPresent() ? more.getText() : "";
    setTooltip(new Tooltip(texts.apart(line.file(), line.more(), waived)));
    setAccessibleText(
        texts.apart(word, line.from(), line.file(), place.getText(), line.more(), waived));
  }
}
