package org.framewright.ui.sets;

import java.util.List;
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

/**
 * A set: who it is and what it needs, what is on set, what is done, what is ahead, what is told.
 */
final class SetCell extends LineCell<SetLine> {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final PseudoClass SILENT = PseudoClass.getPseudoClass("silent");
  private static final double[] PARTS = {21, 22, 13, 16, 28};
  private static final int MOST_MATTERS = 2;

  private final Texts texts;
  private final WrappedText name = new WrappedText("sets-name");
  private final NeedMark mark = new NeedMark();
  private final WrappedText need = new WrappedText("sets-need");
  private final Label code = new Label();
  private final WrappedText title = new WrappedText("sets-title");
  private final WrappedText since = new WrappedText("sets-small");
  private final WrappedText number = new WrappedText("sets-number");
  private final ProgressBar bar = new ProgressBar(0);
  private final WrappedText signedOff = new WrappedText("sets-small");
  private final WrappedText finish = new WrappedText("sets-finish");
  private final WrappedText pace = new WrappedText("sets-small");
  private final WrappedText first = new WrappedText("sets-matter");
  private final WrappedText second = new WrappedText("sets-matter");
  private final WrappedText heard = new WrappedText("sets-small");
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
    first.setMostLines(2);
    second.setMostLines(1);
    heard.setMostLines(2);
    code.getStyleClass().addAll("code", "sets-code");
    code.setMinWidth(Region.USE_PREF_SIZE);
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.setFocusTraversable(false);
    HBox.setHgrow(title, Priority.ALWAYS);
    HBox.setHgrow(need, Priority.ALWAYS);
    title.setMinWidth(0);
    need.setMinWidth(0);
    var onSet = new HBox(code, title);
    onSet.getStyleClass().add("sets-on");
    var needs = new HBox(mark, need);
    needs.getStyleClass().add("sets-needs");
    add(0, name, needs);
    add(1, onSet, since);
    add(2, number, bar, signedOff);
    add(3, finish, pace);
    add(4, first, second, heard);
    var whole = new RowConstraints();
    whole.setVgrow(Priority.ALWAYS);
    row.getRowConstraints().add(whole);
    row.getStyleClass().add("sets-row");
    row.setMinWidth(0);
    row.setPrefWidth(1);
    row.setMinHeight(0);
  }

  private void add(int column, Node... parts) {
    var box = new VBox(parts);
    box.getStyleClass().add("sets-part");
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
    showMatters(line.matters());
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

  /**
   * The most urgent has most room; where there is none for all, it says how many more there are.
   */
  private void showMatters(List<String> all) {
    say(first, all.isEmpty() ? "" : all.getFirst());
    say(
        second,
        all.size() < MOST_MATTERS
            ? ""
            : all.size() == MOST_MATTERS
                ? all.getLast()
                : texts.apart(all.get(1), texts.get("sets.more", all.size() - MOST_MATTERS)));
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
