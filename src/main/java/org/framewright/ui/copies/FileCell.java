package org.framewright.ui.copies;

import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.Texts;

/** How one file stands in one place, in one line. */
final class FileCell extends ListCell<FileLine> {
  private final Texts texts;
  private final FileMark mark = new FileMark();
  private final Label state = new Label();
  private final Label from = new Label();
  private final Label file = new Label();
  private final Label place = new Label();
  private final Label more = new Label();
  private final HBox box = new HBox(mark, state, from, file, place, more);

  FileCell(Texts texts) {
    this.texts = texts;
    state.getStyleClass().add("file-state");
    from.getStyleClass().add("file-from");
    file.getStyleClass().addAll("code", "file-name");
    file.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    file.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(file, Priority.ALWAYS);
    place.getStyleClass().add("file-place");
    more.getStyleClass().addAll("quiet", "file-more");
    box.getStyleClass().add("file-box");
    box.setMinWidth(0);
    box.setPrefWidth(1);
  }

  @Override
  protected void updateItem(FileLine line, boolean empty) {
    super.updateItem(line, empty);
    if (empty || line == null) {
      setGraphic(null);
      setTooltip(null);
      setAccessibleText("");
      return;
    }
    mark.show(line.state());
    var word = texts.get("copies.state." + line.state().word());
    state.setText(word);
    from.setText(line.from());
    file.setText(line.file());
    place.setText(line.place());
    boolean said =
        line.state() == FileLine.State.DIFFERENT || line.state() == FileLine.State.NOT_READ;
    more.setTextOverrun(said ? OverrunStyle.ELLIPSIS : OverrunStyle.LEADING_ELLIPSIS);
    more.setText(line.more());
    setGraphic(box);
    setTooltip(new Tooltip(texts.apart(line.file(), line.more())));
    setAccessibleText(texts.apart(word, line.from(), line.file(), place.getText(), line.more()));
  }
}
