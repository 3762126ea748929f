package org.framewright.ui.copies;

import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Subscription;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.Texts;

/** A place: what it is, its disk, and how much of what it should have it has. */
final class PlaceCell extends ListCell<PlaceLine> {
  private static final PseudoClass NEEDS = PseudoClass.getPseudoClass("needs");

  private final Texts texts;
  private final Label kind = new Label();
  private final Label name = new Label();
  private final Label figure = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final Label device = new Label();
  private final Label established = new Label();
  private final Label size = new Label();
  private final CellBox box;
  private Subscription following = Subscription.EMPTY;

  PlaceCell(Texts texts) {
    this.texts = texts;
    kind.getStyleClass().add("place-kind");
    kind.setMinWidth(Region.USE_PREF_SIZE);
    name.getStyleClass().add("place-name");
    name.setMinWidth(0);
    name.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(name, Priority.ALWAYS);
    figure.getStyleClass().add("place-figure");
    figure.setMinWidth(Region.USE_PREF_SIZE);
    var first = new HBox(kind, name, figure);
    first.getStyleClass().add("place-line");
    bar.setMaxWidth(Double.MAX_VALUE);
    bar.getStyleClass().add("place-bar");
    bar.setFocusTraversable(false);
    device.getStyleClass().add("quiet");
    device.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
    established.getStyleClass().add("place-established");
    established.setMinWidth(0);
    established.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(established, Priority.ALWAYS);
    size.getStyleClass().add("quiet");
    size.setMinWidth(Region.USE_PREF_SIZE);
    var last = new HBox(established, size);
    last.getStyleClass().add("place-line");
    box = new CellBox(first, device, last, bar);
    box.getStyleClass().add("place-box");
  }

  @Override
  protected void updateItem(PlaceLine line, boolean empty) {
    super.updateItem(line, empty);
    following.unsubscribe();
    if (empty || line == null) {
      following = Subscription.EMPTY;
      setGraphic(null);
      setTooltip(null);
      setAccessibleText("");
      return;
    }
    following = line.shown().subscribe(this::show);
    setTooltip(new Tooltip(line.folder().toString()));
    setGraphic(box);
  }

  private void show(PlaceLine.Shown shown) {
    kind.setText(texts.get("copies.kind." + shown.kind().word()));
    name.setText(shown.name());
    figure.setText(shown.figure());
    bar.setProgress(Math.max(0, shown.part()));
    // Its place is kept, so that no line jumps when work begins.
    bar.setVisible(shown.part() >= 0);
    device.setText(shown.device());
    established.setText(shown.established());
    size.setText(shown.size());
    box.pseudoClassStateChanged(NEEDS, shown.needs());
    setAccessibleText(
        texts.apart(
            kind.getText(),
            shown.name(),
            shown.figure(),
            shown.device(),
            shown.established(),
            shown.size()));
  }
}
