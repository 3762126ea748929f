package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import javafx.beans.value.ObservableValue;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleAttribute;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.live.ViewCount;
import org.framewright.ui.look.StateMark;
import org.framewright.ui.look.Texts;

/**
 * One line of the list. Views stand in places of their own, so that they make columns; only a view
 * that lacks frames is marked, not the line.
 */
final class SetupCell extends ListCell<Line> {
  /** How much a line says. */
  enum Room {
    /** In two lines: the title above its state and views. */
    TWO_LINES,
    /** In one line. */
    ONE_LINE,
    /** With day, rack and model. */
    WIDE
  }

  private static final double MARK = 20;

  /** Views that have a place of their own, at most. */
  static final int PLACES = 4;

  private static final PseudoClass HEADING = PseudoClass.getPseudoClass("heading");
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");
  private static final PseudoClass MISSING = PseudoClass.getPseudoClass("missing");
  private static final PseudoClass WIDE = PseudoClass.getPseudoClass("wide");
  private static final PseudoClass TWO_LINES = PseudoClass.getPseudoClass("two-lines");

  private final Texts texts;
  private final Function<Grouping, String> groupWord;
  private final StateMark mark = new StateMark(MARK);
  private final Label code = label("line-code");
  private final Label title = label("line-what");
  private final Label next = label("line-next");
  private final Label where = label("line-where");
  private final List<Label> places = new ArrayList<>();
  private final HBox views = new HBox();
  private final Label said = label("line-said");
  private final Label frames = label("line-frames");
  private final Label state = label("line-state");
  private final Region gap = new Region();
  private final HBox row = new HBox();
  private final HBox above = new HBox();
  private final HBox below = new HBox();
  private final VBox lines = new VBox(above, below);
  private final Label heading = label("line-group");
  private Room room = Room.ONE_LINE;

  /**
   * A line that shows nothing.
   *
   * @param room how much it says
   * @param viewPlaces how many views have a place: as many as some line of the list needs
   */
  SetupCell(
      Texts texts,
      ObservableValue<Room> room,
      ObservableValue<Integer> viewPlaces,
      Function<Grouping, String> groupWord) {
    this.texts = texts;
    this.groupWord = groupWord;
    row.getStyleClass().add("setup-row");
    above.getStyleClass().add("setup-part");
    below.getStyleClass().add("setup-part");
    lines.getStyleClass().add("setup-lines");
    lines.setMinWidth(0);
    HBox.setHgrow(lines, Priority.ALWAYS);
    HBox.setHgrow(title, Priority.ALWAYS);
    HBox.setHgrow(gap, Priority.ALWAYS);
    title.setMaxWidth(Double.MAX_VALUE);
    title.setMinWidth(0);
    next.setText(texts.get("board.row.next"));
    next.setMinWidth(Region.USE_PREF_SIZE);
    said.setMinWidth(Region.USE_PREF_SIZE);
    state.setMinWidth(0);
    views.getStyleClass().add("line-views");
    for (int i = 0; i < PLACES; i++) {
      places.add(label("view-place"));
    }
    views.getChildren().setAll(places);
    room.subscribe(this::fit);
    viewPlaces.subscribe(this::showPlaces);
    setPrefWidth(0);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    return label;
  }

  private void showPlaces(int wanted) {
    for (int i = 0; i < PLACES; i++) {
      shown(places.get(i), i < wanted);
    }
  }

  /** Puts the parts where they belong at that width. */
  private void fit(Room now) {
    room = now;
    row.getChildren().clear();
    above.getChildren().clear();
    below.getChildren().clear();
    row.pseudoClassStateChanged(TWO_LINES, now == Room.TWO_LINES);
    row.pseudoClassStateChanged(WIDE, now == Room.WIDE);
    switch (now) {
      case TWO_LINES -> {
        above.getChildren().setAll(title, said, next, frames);
        below.getChildren().setAll(state, gap, views);
        row.getChildren().setAll(mark, code, lines);
      }
      case ONE_LINE ->
          row.getChildren().setAll(mark, code, title, said, next, views, frames, state);
      case WIDE ->
          row.getChildren().setAll(mark, code, title, said, next, where, views, frames, state);
    }
    if (getItem() instanceof SetupRow setup) {
      show(setup);
    }
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
          texts.apart(
              texts.get(
                  "board.row.spoken",
                  line.code(),
                  line.title(texts),
                  state.getText(),
                  line.frames(),
                  texts.apart(line.views().stream().map(this::token).toArray(String[]::new))),
              spoken(line.said()));
    };
  }

  private void show(SetupRow line) {
    mark.show(line.state());
    code.setText(line.code());
    title.setText(line.title(texts));
    shown(next, line.comesNext());
    showSaid(line.said());
    where.setText(line.where());
    showViews(line);
    frames.setText(line.frames() == 0 ? "" : texts.formats().number(line.frames()));
    state.setText(state(line));
    state.pseudoClassStateChanged(NEEDS, line.status().changedSinceSignOff());
    setGraphic(row);
  }

  private static void shown(Node part, boolean shown) {
    part.setVisible(shown);
    part.setManaged(shown);
  }

  private void showSaid(SaidCount count) {
    shown(said, count.all() > 0);
    said.setText(texts.formats().number(count.all()));
    said.pseudoClassStateChanged(NEEDS, count.fresh() > 0);
  }

  private String spoken(SaidCount count) {
    if (count.all() == 0) {
      return "";
    }
    return count.fresh() == 0
        ? texts.get("comment.count", count.all())
        : texts.get("comment.countNew", count.all(), count.fresh());
  }

  private void showViews(SetupRow line) {
    var all = line.views();
    for (int i = 0; i < PLACES; i++) {
      var place = places.get(i);
      if (i == PLACES - 1 && all.size() > PLACES) {
        place.setText(texts.get("board.row.moreViews", all.size() - PLACES + 1));
        place.pseudoClassStateChanged(
            MISSING,
            line.state().done()
                && all.stream().skip(PLACES - 1).anyMatch(view -> !view.complete()));
      } else if (i < all.size()) {
        place.setText(token(all.get(i), line));
        place.pseudoClassStateChanged(MISSING, line.state().done() && !all.get(i).complete());
      } else {
        place.setText("");
        place.pseudoClassStateChanged(MISSING, false);
      }
    }
  }

  /** A view that nobody has begun is its letter only. */
  private String token(ViewCount view, SetupRow line) {
    boolean begun = line.state().done() || line.frames() > 0;
    return begun ? token(view) : name(view);
  }

  private String token(ViewCount view) {
    return name(view)
        + " "
        + view.frames()
        + (view.wanted().orElse(0) > 0 ? "/" + view.wanted().getAsInt() : "");
  }

  private String name(ViewCount view) {
    return view.code().isEmpty() ? texts.get("board.noView") : view.code();
  }

  private String state(SetupRow line) {
    var word = texts.get("state." + line.state().word());
    if (line.status().changedSinceSignOff()) {
      return texts.get(room == Room.ONE_LINE ? "board.changed" : "board.changedSince");
    }
    // Who and why need room; a mark and a word say the rest.
    return line.status()
        .signedOffBy()
        .or(() -> line.status().reason())
        .filter(_ -> room != Room.ONE_LINE)
        .map(more -> word + " · " + more)
        .orElse(word);
  }
}
