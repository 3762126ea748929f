package org.framewright.ui.frames;

import java.util.Set;
import javafx.beans.value.ChangeListener;
import javafx.css.PseudoClass;
import javafx.geometry.Bounds;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.controlsfx.control.GridCell;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;

/** A frame in the grid: its picture, its name, where it belongs, and the mark of a select. */
final class TileCell extends GridCell<Tile> {
  private static final PseudoClass CHOSEN = PseudoClass.getPseudoClass("chosen");
  private static final PseudoClass CURSOR = PseudoClass.getPseudoClass("cursor");

  private final FramePictures pictures;
  private final Texts texts;
  private final FrameSelection<FrameId> selection;
  private final ImageView picture = new ImageView();
  private final GreaseMark mark = new GreaseMark();
  private final Label none = new Label();
  private final Label name = new Label();
  private final Label where = new Label();
  private final TallyStrokes strokes = new TallyStrokes();
  private final Tooltip whole = new Tooltip();
  private final StackPane print = new StackPane(none, picture, mark);
  private final BorderPane box = new BorderPane(print);

  TileCell(FramePictures pictures, Texts texts, FrameSelection<FrameId> selection) {
    this.pictures = pictures;
    this.texts = texts;
    this.selection = selection;
    getStyleClass().add("tile");
    print.getStyleClass().add("print");
    print.setMinSize(0, 0);
    picture.setPreserveRatio(true);
    picture.fitWidthProperty().bind(print.widthProperty().subtract(8));
    picture.fitHeightProperty().bind(print.heightProperty().subtract(8));
    // The mark goes around the picture itself, upright or not.
    picture.layoutBoundsProperty().addListener((_, _, now) -> around(now));
    none.setText(texts.get("frames.noPicture"));
    none.getStyleClass().add("no-picture");
    name.getStyleClass().add("tile-name");
    name.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    name.setMaxWidth(Double.MAX_VALUE);
    name.setMinWidth(0);
    where.getStyleClass().add("tile-where");
    where.setMaxWidth(Double.MAX_VALUE);
    where.setMinWidth(0);
    HBox.setHgrow(where, Priority.ALWAYS);
    var marks = new HBox(where, strokes);
    marks.getStyleClass().add("tile-marks");
    var foot = new VBox(marks, name);
    foot.getStyleClass().add("tile-foot");
    box.setBottom(foot);
    ChangeListener<Object> changed = (_, _, _) -> showChoice();
    selection.chosen().addListener(new javafx.beans.value.WeakChangeListener<>(changed));
    selection.cursor().addListener(new javafx.beans.value.WeakChangeListener<>(changed));
    // The cell keeps its listener as long as it lives, and no longer.
    setUserData(changed);
  }

  @Override
  protected void updateItem(Tile tile, boolean empty) {
    super.updateItem(tile, empty);
    if (empty || tile == null) {
      pictures.clear(picture);
      setGraphic(null);
      setAccessibleText("");
      return;
    }
    none.setVisible(false);
    pictures.show(tile.frame(), FramesScreen.EDGE, picture, () -> none.setVisible(true));
    mark.setVisible(tile.select());
    name.setText(tile.frame().stem());
    whole.setText(tile.frame().stem());
    setTooltip(whole);
    strokes.show(tile.rating());
    var place =
        tile.place()
            .map(TileCell::shortly)
            .or(() -> tile.slate(texts))
            .or(() -> tile.likely().map(code -> texts.get("frames.likely", code)))
            .orElse("?");
    var at = tile.inDoubt() ? texts.get("frames.inDoubtAt", place) : place;
    where.setText(
        tile.select()
            ? texts.get("frames.selectAt", at)
            : tile.rating().orElse(0) < 0 ? texts.get("frames.rejectedAt", at) : at);
    setGraphic(box);
    setAccessibleText(
        texts.apart(
            tile.frame().stem(),
            at,
            texts.get(tile.select() ? "frames.isSelect" : "frames.isNoSelect"),
            texts.get("frames.rated", tile.rating().orElse(0))));
    showChoice();
  }

  private void around(Bounds shown) {
    var width = shown.getWidth() > 0 ? shown.getWidth() : print.getWidth() - 8;
    var height = shown.getHeight() > 0 ? shown.getHeight() : print.getHeight() - 8;
    mark.setMaxSize(width + 6, height + 6);
    print.requestLayout();
  }

  static String shortly(Place place) {
    return place.view().map(view -> place.setup() + " " + view).orElse(place.setup());
  }

  private void showChoice() {
    var tile = getItem();
    Set<FrameId> chosen = selection.chosen().get();
    pseudoClassStateChanged(CHOSEN, tile != null && chosen.contains(tile.frame().id()));
    pseudoClassStateChanged(CURSOR, tile != null && getIndex() == selection.cursor().get());
  }

  @Override
  protected void layoutChildren() {
    box.setPrefSize(getWidth(), getHeight());
    super.layoutChildren();
  }
}
