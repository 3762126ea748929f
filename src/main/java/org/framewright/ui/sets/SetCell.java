package org.framewright.ui.sets;

import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.RowConstraints;
import javafx.scene.layout.VBox;
import org.framewright.studio.SetRow.Need;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** A set: who it is and what it needs, what is on set, what is done, what is ahead, what is told. */
final class SetCell extends LineCell<SetLine> {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final PseudoClass SILENT = PseudoClass.getPseudoClass("silent");
  private static final double[] PARTS = {23, 20, 13, 17, 27};
  private static final int LINES_OF_MATTERS = 3;

  private final Texts texts;
  private final WrappedText name = new WrappedText("set-name");
  private final NeedMark mark = new NeedMark();
  private final WrappedText need = new WrappedText("set-need");
  private final Label code = new Label();
  private final WrappedText title = new WrappedText("set-title");
  private final WrappedText since = new WrappedText("set-small");
  private final WrappedText number = new WrappedText("set-number");
  private final ProgressBar bar = new ProgressBar(0);
  private final WrappedText signedOff = new WrappedText("set-small");
  private final WrappedText finish = new WrappedText("set-finish");
  private final WrappedText pace = new WrappedText("set-small");
  private final WrappedText matters = new WrappedText("set-matters");
  private final WrappedText heard = new WrappedText("set-small");
  private final GridPane row = new GridPane();

  SetCell(Texts texts) {
    this.texts = texts;
    name.setMostLines(2);
    need.setMostLines(2);
    title.setMostLines(2);
    since.setMostLines(2);
    number.setMostLines(1);
    signedOff.setMostLines(1);
    finish.setMostLines(3);
    pace.setMostLines(2);
    matters.setMostLines(LINES_OF_MATTERS);
    heard.setMostLines(2);
    code.getStyleClass().addAll("code", "set-code");
    code.setMinWidth(Region.USE_PREF_SIZE);
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.setFocusTraversable(false);
    HBox.setHgrow(title, Priority.ALWAYS);
    HBox.setHgrow(need, Priority.ALWAYS);
    title.setMinWidth(0);
    need.setMinWidth(0);
    var onSet = new HBox(code, title);
    onSet.getStyleClass().add("set-on");
    var needs = new HBox(mark, need);
    needs.getStyleClass().add("set-needs");
    add(0, name, needs);
    add(1, onSet, since);
    add(2, number, bar, signedOff);
    add(3, finish, pace);
    add(4, matters, heard);
    var whole = new RowConstraints();
    whole.setVgrow(Priority.ALWAYS);
    row.getRowConstraints().add(whole);
    row.getStyleClass().add("set-row");
    row.setMinWidth(0);
    row.setPrefWidth(1);
    row.setMinHeight(0);
  }

  private void add(int column, Node... parts) {
    var box = new VBox(parts);
    box.getStyleClass().add("set-part");
    box.setMinSize(0, 0);
    var width = new ColumnConstraints();
    width.setPercentWidth(PARTS[column]);
    row.getColumnConstraints().add(width);
    row.add(box, column, 0);
  }

  @Override
  protected void showLine(SetLine line) {
    name.setText(line.name());
    mark.show(line.need());
    need.setText(line.needWords());
    code.setText(line.code());
    shown(code, !line.code().isEmpty());
    title.setText(line.title());
    say(since, line.since());
    say(number, line.number());
    bar.setProgress(line.share());
    shown(bar, !line.number().isEmpty());
    say(signedOff, line.signedOff());
    say(finish, line.finish());
    say(pace, line.pace());
    say(matters, matters(line));
    say(heard, line.heard());
    row.pseudoClassStateChanged(SILENT, line.silent());
    row.pseudoClassStateChanged(NEEDS, line.need() != Need.NOTHING && line.need() != Need.SILENT);
    setGraphic(row);
    setTooltip(line.matters().isEmpty() ? null : new Tooltip(String.join("\n", line.matters())));
    setAccessibleText(
        texts.apart(
            line.name(),
            line.needWords(),
            line.code(),
            line.title(),
            line.since(),
            line.number(),
            line.signedOff(),
            line.finish(),
            line.pace(),
            texts.apart(line.matters().toArray(String[]::new)),
            line.heard()));
  }

  /** A line each while there is room; else the last line says how many more there are. */
  private String matters(SetLine line) {
    var all = line.matters();
    return all.size() <= LINES_OF_MATTERS
        ? String.join("\n", all)
        : String.join("\n", all.subList(0, LINES_OF_MATTERS - 1))
            + "\n"
            + texts.get("sets.more", all.size() - LINES_OF_MATTERS + 1);
  }

  private static void say(WrappedText part, String text) {
    part.setText(text);
    shown(part, !text.isEmpty());
  }

  private static void shown(Node part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }
}
