package org.framewright.ui.day;

import java.util.function.Consumer;
import javafx.css.PseudoClass;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Something to look at: its tick, its mark, what it is, and where one goes about it. */
final class LookCell extends LineCell<LookLine> {
  private static final PseudoClass LOOKED = PseudoClass.getPseudoClass("looked");

  private final Texts texts;
  private final CheckBox tick = new CheckBox();
  private final GroupMark mark = new GroupMark();
  private final WrappedText what = new WrappedText("look-what");
  private final WrappedText more = new WrappedText("look-more");
  private final Button way = new Button();
  private final CellRow row;

  /**
   * @param turn ticks a line or takes its tick back
   * @param go goes where a line leads
   */
  LookCell(Texts texts, Consumer<LookLine> turn, Consumer<LookLine> go) {
    this.texts = texts;
    what.setMostLines(2);
    more.setMostLines(1);
    tick.setFocusTraversable(false);
    tick.setMinWidth(Region.USE_PREF_SIZE);
    tick.setOnAction(
        _ -> {
          if (getItem() != null) {
            turn.accept(getItem());
          }
        });
    way.getStyleClass().addAll("slight", "look-way");
    way.setMnemonicParsing(false);
    way.setFocusTraversable(false);
    way.setMinWidth(Region.USE_PREF_SIZE);
    way.setOnAction(
        _ -> {
          if (getItem() != null) {
            go.accept(getItem());
          }
        });
    var said = new CellBox(what, more);
    said.getStyleClass().add("look-said");
    HBox.setHgrow(said, Priority.ALWAYS);
    row = new CellRow(tick, mark, said, way);
    row.getStyleClass().add("look-row");
  }

  @Override
  protected void showLine(LookLine line) {
    tick.setSelected(line.looked());
    tick.setAccessibleText(texts.get("day.tick"));
    mark.show(line.group(), line.looked());
    what.setText(line.what());
    more.setText(line.more());
    more.setVisible(!line.more().isEmpty());
    more.setManaged(!line.more().isEmpty());
    way.setText(line.way().map(one -> texts.get("day.way." + one.word())).orElse(""));
    way.setVisible(line.way().isPresent());
    way.setManaged(line.way().isPresent());
    row.pseudoClassStateChanged(LOOKED, line.looked());
    setGraphic(row);
    setTooltip(new Tooltip(texts.apart(line.what(), line.more())));
    setAccessibleText(
        texts.apart(
            texts.get("day.group." + line.group().word()),
            line.what(),
            line.more(),
            line.looked() ? texts.get("day.looked") : ""));
  }
}
