package org.framewright.ui.help;

import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.DialogSpec;

/** What the program is: its version, what it runs on, and what it is made of, with licences. */
public final class AboutSheet {
  private final Texts texts;
  private final ListView<AboutModel.Line> list = new ListView<>();
  private final WrappedText does = new WrappedText("about-does");
  private final WrappedText licence = new WrappedText("quiet");
  private final TextArea text = new TextArea();
  private final HBox node;

  /** The sheet with its first line, the program itself, chosen. */
  public AboutSheet(AboutModel model, Texts texts) {
    this.texts = texts;
    list.setId("about-parts");
    list.getStyleClass().add("two-lines");
    list.getItems().setAll(model.lines());
    list.setCellFactory(_ -> new PartCell());
    list.setAccessibleText(texts.get("about.parts"));
    list.getSelectionModel().selectedItemProperty().subscribe(this::show);
    text.setId("about-licence");
    text.setEditable(false);
    text.setAccessibleText(texts.get("about.licence"));
    KeyFocus.leaveByTab(text);
    VBox.setVgrow(text, Priority.ALWAYS);
    VBox.setVgrow(list, Priority.ALWAYS);
    var right = new VBox(does, licence, text);
    right.getStyleClass().add("about-right");
    HBox.setHgrow(right, Priority.ALWAYS);
    var runsOn = WrappedText.of(texts.get("about.runsOn", model.java(), model.toolkit()), "quiet");
    var version = WrappedText.of(texts.get("about.version", model.version()), "about-version");
    for (var said : List.of(version, runsOn, does, licence)) {
      said.setMinHeight(Region.USE_PREF_SIZE);
    }
    var left = new VBox(version, runsOn, list);
    left.getStyleClass().add("about-left");
    node = new HBox(left, right);
    node.getStyleClass().add("about-sheet");
    list.getSelectionModel().selectFirst();
  }

  /** The sheet over the page. */
  public DialogSpec spec() {
    return DialogSpec.reading(texts.get("about.title"), node, list).about("about");
  }

  private void show(AboutModel.Line line) {
    if (line != null) {
      does.setText(
          line.does().isEmpty()
              ? texts.get("about.ours")
              : texts.get("about.does", line.name(), line.does()));
      licence.setText(texts.get("about.under", line.licence()));
      text.setText(line.text());
      text.setScrollTop(0);
    }
  }

  private final class PartCell extends LineCell<AboutModel.Line> {
    private final Label name = new Label();
    private final Label version = new Label();
    private final Label does = new Label();
    private final HBox row = new HBox(name, version);
    private final VBox box = new CellBox(row, does);

    PartCell() {
      row.getStyleClass().add("about-row");
      box.getStyleClass().add("help-hit-box");
      name.getStyleClass().add("help-hit");
      does.getStyleClass().add("quiet");
      does.setMinWidth(0);
      version.getStyleClass().add("quiet");
      version.setMinWidth(Region.USE_PREF_SIZE);
      name.setMinWidth(0);
      name.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(name, Priority.ALWAYS);
      setPrefWidth(0);
    }

    @Override
    protected void showLine(AboutModel.Line line) {
      name.setText(line.name());
      version.setText(line.version());
      setAccessibleText(texts.apart(line.name(), line.version(), line.licence()));
      does.setText(line.does().isEmpty() ? texts.get("about.program") : line.does());
      setGraphic(box);
    }
  }
}
