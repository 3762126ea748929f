package org.framewright.ui.frames;

import java.util.function.UnaryOperator;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import org.framewright.frames.Place;
import org.framewright.ui.look.CellRow;
import org.framewright.ui.look.Texts;

/** A heading: what it gathers, how many frames there are, and how many of them are selects. */
final class HeadingCell extends ListCell<FrameHeading> {
  private final Texts texts;
  private final UnaryOperator<String> meaning;
  private final Label what = new Label();
  private final Label more = new Label();
  private final Label count = new Label();
  private final CellRow box;

  /**
   * @param meaning what a view's code stands for
   */
  HeadingCell(Texts texts, UnaryOperator<String> meaning) {
    this.texts = texts;
    this.meaning = meaning;
    what.getStyleClass().add("heading-what");
    what.setMinWidth(Region.USE_PREF_SIZE);
    more.getStyleClass().add("heading-more");
    more.setMinWidth(0);
    more.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(more, Priority.ALWAYS);
    count.getStyleClass().add("heading-count");
    count.setMinWidth(Region.USE_PREF_SIZE);
    box = new CellRow(what, more, count);
    box.getStyleClass().add("heading-row");
  }

  @Override
  protected void updateItem(FrameHeading heading, boolean empty) {
    super.updateItem(heading, empty);
    getStyleClass().removeAll("view", "unassigned");
    if (empty || heading == null) {
      setGraphic(null);
      setAccessibleText("");
      return;
    }
    what.setText(
        switch (heading.kind()) {
          case ALL -> texts.get("frames.all");
          case SELECTS -> texts.get("frames.selects");
          case UNASSIGNED -> texts.get("frames.unassigned");
          case SLATES -> texts.get("frames.slates");
          case SETUP -> heading.place().map(Place::setup).orElse("");
          case VIEW -> heading.place().flatMap(Place::view).orElse(texts.get("frames.noView"));
        });
    more.setText(
        switch (heading.kind()) {
          case SETUP -> heading.title();
          case VIEW -> heading.place().flatMap(Place::view).map(meaning).orElse("");
          case ALL, SELECTS, UNASSIGNED, SLATES -> "";
        });
    count.setText(
        heading.selects() > 0 && heading.kind() != FrameHeading.Kind.SELECTS
            ? texts.get("frames.countOf", heading.selects(), heading.frames())
            : texts.formats().number(heading.frames()));
    switch (heading.kind()) {
      case VIEW -> getStyleClass().add("view");
      case UNASSIGNED -> getStyleClass().add("unassigned");
      case ALL, SELECTS, SETUP, SLATES -> {}
    }
    setGraphic(box);
    setAccessibleText(
        texts.get(
            "frames.headingSpoken",
            (what.getText() + " " + more.getText()).strip(),
            heading.frames(),
            heading.selects()));
  }
}
