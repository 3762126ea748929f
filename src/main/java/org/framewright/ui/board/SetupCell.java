package org.framewright.ui.board;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.beans.value.ObservableBooleanValue;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import org.framewright.ui.look.StateMark;
import org.framewright.ui.look.Texts;

/** One line of the list. */
final class SetupCell extends ListCell<Line> {
  private static final double MARK = 20;
  private static final PseudoClass NARROW = PseudoClass.getPseudoClass("narrow");

  private final Texts texts;
  private final Function<Grouping, String> groupWord;
  private final StateMark mark = new StateMark(MARK);
  private final Label code = label("line-code");
  private final Label title = label("line-what");
  private final Label where = label("line-where");
  private final Label views = label("line-views");
  private final Label frames = label("line-frames");
  private final Label state = label("line-state");
  private final HBox row = new HBox(mark, code, title, where, views, frames, state);
  private final Label heading = label("line-group");
  private String styled = "";

  SetupCell(Texts texts, ObservableBooleanValue narrow, Function<Grouping, String> groupWord) {
    this.texts = texts;
    this.groupWord = groupWord;
    row.getStyleClass().add("setup-row");
    HBox.setHgrow(title, Priority.ALWAYS);
    title.setMaxWidth(Double.MAX_VALUE);
    title.setMinWidth(0);
    where.visibleProperty().bind(javafx.beans.binding.Bindings.not(narrow));
    where.managedProperty().bind(where.visibleProperty());
    narrow.subscribe(now -> row.pseudoClassStateChanged(NARROW, now));
    setPrefWidth(0);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    return label;
  }

  @Override
  protected void updateItem(Line line, boolean empty) {
    super.updateItem(line, empty);
    switch (empty ? null : line) {
      case null -> {
        style("");
        setGraphic(null);
        setAccessibleText("");
      }
      case Line.Heading group -> {
        style("heading");
        var text = group.text().isEmpty() ? groupWord.apply(Grouping.NONE) : group.text();
        heading.setText(texts.get("board.group", text, group.done(), group.setups()));
        setGraphic(heading);
        setAccessibleText(heading.getText());
      }
      case SetupRow setup -> show(setup);
    }
  }

  private void show(SetupRow line) {
    mark.show(line.state());
    style(line.state().word());
    code.setText(line.code());
    title.setText(line.setup().title());
    where.setText(line.where());
    views.setText(views(line));
    var missing = line.state().done() && line.viewMissing();
    style(views, "line-views", missing ? "line-needs" : "line-enough");
    frames.setText(line.frames() == 0 ? "" : String.valueOf(line.frames()));
    state.setText(state(line));
    style(
        state,
        "line-state",
        line.status().changedSinceSignOff() ? "line-needs" : "line-" + line.state().word());
    setGraphic(row);
    setAccessibleText(
        texts.get(
            "board.row.spoken",
            line.code(),
            line.setup().title(),
            state.getText(),
            line.frames(),
            views.getText()));
  }

  /** What the line is by its style; empty for none. Each change of it costs a pass of styles. */
  private void style(String word) {
    if (!word.equals(styled)) {
      getStyleClass().remove(styled);
      styled = word;
      if (!word.isEmpty()) {
        getStyleClass().add(word);
      }
    }
  }

  private static void style(Label label, String what, String how) {
    var wanted = List.of("label", what, how);
    if (!label.getStyleClass().equals(wanted)) {
      label.getStyleClass().setAll(wanted);
    }
  }

  private String state(SetupRow line) {
    var word = texts.get("state." + line.state().word());
    if (line.status().changedSinceSignOff()) {
      return texts.get("board.changedSince");
    }
    return line.status()
        .signedOffBy()
        .or(() -> line.status().reason())
        .map(more -> word + " · " + more)
        .orElse(word);
  }

  private String views(SetupRow line) {
    return line.views().stream()
        .map(
            view ->
                view.code()
                    + " "
                    + view.frames()
                    + (view.wanted().orElse(0) > 0 ? "/" + view.wanted().getAsInt() : ""))
        .map(text -> text.startsWith(" ") ? texts.get("board.noView") + text : text)
        .collect(Collectors.joining("   "));
  }
}
