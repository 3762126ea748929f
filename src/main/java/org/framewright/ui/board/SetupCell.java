package org.framewright.ui.board;

import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.beans.value.ObservableBooleanValue;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleAttribute;
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
  private static final PseudoClass HEADING = PseudoClass.getPseudoClass("heading");
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");

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
    var shown = empty ? null : line;
    StateMark.style(this, shown instanceof SetupRow setup ? setup.state() : null);
    pseudoClassStateChanged(HEADING, shown instanceof Line.Heading);
    switch (shown) {
      case null -> setGraphic(null);
      case Line.Heading group -> {
        var text = group.text().isEmpty() ? groupWord.apply(Grouping.NONE) : group.text();
        heading.setText(texts.get("board.group", text, group.done(), group.setups()));
        setGraphic(heading);
      }
      case SetupRow setup -> show(setup);
    }
    notifyAccessibleAttributeChanged(AccessibleAttribute.TEXT);
  }

  /** What the line says is put into words when somebody asks, not whenever a line is shown. */
  @Override
  public Object queryAccessibleAttribute(AccessibleAttribute attribute, Object... parameters) {
    return attribute == AccessibleAttribute.TEXT
        ? spoken()
        : super.queryAccessibleAttribute(attribute, parameters);
  }

  private String spoken() {
    return switch (getItem()) {
      case null -> "";
      case Line.Heading _ -> heading.getText();
      case SetupRow line ->
          texts.get(
              "board.row.spoken",
              line.code(),
              line.setup().title(),
              state.getText(),
              line.frames(),
              views.getText());
    };
  }

  private void show(SetupRow line) {
    mark.show(line.state());
    code.setText(line.code());
    title.setText(line.setup().title());
    where.setText(line.where());
    views.setText(views(line));
    views.pseudoClassStateChanged(NEEDS, line.state().done() && line.viewMissing());
    frames.setText(line.frames() == 0 ? "" : String.valueOf(line.frames()));
    state.setText(state(line));
    state.pseudoClassStateChanged(NEEDS, line.status().changedSinceSignOff());
    setGraphic(row);
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
