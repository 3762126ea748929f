package org.framewright.ui.frames;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.Tooltip;
import javafx.scene.image.ImageView;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.FullSizePane;
import org.framewright.ui.look.Spot;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;

/** One of the frames side by side: its picture, and under it a bar where it is the current one. */
final class ComparedPrint extends VBox {
  private static final int EDGE = 1600;
  private static final PseudoClass CURRENT = PseudoClass.getPseudoClass("current");
  private final Texts texts;
  private final FramePictures pictures;
  private final ImageView picture = new ImageView();
  private final FullSizePane full;
  private final GreaseMark mark = new GreaseMark();
  private final Label none = new Label();
  private final Label name = new Label();
  private final Label where = new Label();
  private final TallyStrokes strokes = new TallyStrokes();
  private final Label time = new Label();
  private final Tooltip whole = new Tooltip();
  private final StackPane stage;
  private Optional<Tile> tile = Optional.empty();
  private Optional<Spot> spot = Optional.empty();

  /**
   * @param model hears which one is chosen, and where the pointer is
   * @param place which of those side by side it is
   */
  ComparedPrint(
      Texts texts,
      FramePictures pictures,
      Tasks tasks,
      FullSizePane.Parts parts,
      CompareModel model,
      int place) {
    this.texts = texts;
    this.pictures = pictures;
    this.full = new FullSizePane(tasks, parts);
    none.setText(texts.get("frames.noPicture"));
    none.getStyleClass().add("no-picture");
    var fitting = new FittingPane(picture);
    stage = new StackPane(none, fitting, full, mark);
    stage.getStyleClass().add("compared-stage");
    stage.setMinSize(0, 0);
    VBox.setVgrow(stage, Priority.ALWAYS);
    picture.boundsInParentProperty().subscribe(this::around);
    picture.imageProperty().subscribe(this::showSpot);
    name.getStyleClass().add("compared-name");
    name.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    name.setMinWidth(0);
    name.setTooltip(whole);
    where.getStyleClass().add("compared-where");
    where.setMinWidth(Region.USE_PREF_SIZE);
    time.getStyleClass().add("compared-time");
    time.setMinWidth(0);
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    var caption = new HBox(where, strokes, gap, time);
    caption.getStyleClass().add("compared-caption");
    var foot = new VBox(caption, name);
    foot.getStyleClass().add("compared-foot");
    getChildren().addAll(stage, foot);
    getStyleClass().add("compared");
    setMinWidth(0);
    setPrefWidth(0);
    HBox.setHgrow(this, Priority.ALWAYS);
    addEventHandler(
        MouseEvent.MOUSE_CLICKED,
        event -> {
          if (event.getButton() == MouseButton.PRIMARY) {
            model.choose(place);
            if (event.getClickCount() == 2) {
              model.turnFullSize(Spot.under(event, stage));
            }
          }
        });
    stage.addEventHandler(MouseEvent.MOUSE_MOVED, event -> model.look(Spot.under(event, stage)));
    stage.addEventHandler(MouseEvent.MOUSE_DRAGGED, event -> model.look(Spot.under(event, stage)));
  }

  void show(Tile now, boolean current, Optional<Spot> around) {
    pseudoClassStateChanged(CURRENT, current);
    spot = around;
    if (tile.filter(now::equals).isEmpty()) {
      tile = Optional.of(now);
      none.setVisible(false);
      pictures.show(now.frame(), EDGE, picture, () -> none.setVisible(true));
      name.setText(now.frame().stem());
      whole.setText(now.frame().stem());
      var place = now.place().map(TileCell::shortly).or(() -> now.slate(texts)).orElse("?");
      where.setText(now.select() ? texts.get("frames.selectAt", place) : place);
      strokes.show(now.rating());
      time.setText(now.frame().capture().time().map(texts.formats()::timeToTheSecond).orElse(""));
      setAccessibleText(
          texts.apart(
              now.frame().stem(),
              place,
              texts.get(now.select() ? "frames.isSelect" : "frames.isNoSelect"),
              texts.get("frames.rated", now.rating().orElse(0))));
    }
    showSpot();
  }

  /** At full size a mark around the picture would be in the way of it. */
  private void showSpot() {
    mark.setVisible(tile.filter(Tile::select).isPresent() && spot.isEmpty());
    picture.setVisible(spot.isEmpty());
    if (tile.isPresent() && spot.isPresent()) {
      full.show(tile.get().frame(), picture.getImage(), spot.get());
    } else {
      full.hide();
    }
  }

  void clear() {
    tile = Optional.empty();
    pictures.clear(picture);
    full.hide();
  }

  private void around() {
    var bounds = picture.getBoundsInParent();
    mark.setMaxSize(bounds.getWidth() * 0.98, bounds.getHeight() * 0.98);
  }
}
