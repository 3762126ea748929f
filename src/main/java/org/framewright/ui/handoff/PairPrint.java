package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.image.ImageView;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.base.PlainText;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.FullSizePane;
import org.framewright.ui.look.Spot;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Tasks;

/** One of the two pictures: the select's, or what came back of it. */
final class PairPrint extends VBox {
  private static final int EDGE = 1400;

  private final FramePictures pictures;
  private final ImageView picture = new ImageView();
  private final FullSizePane full;
  private final Label none = new Label();
  private final Label name = new Label();
  private final StackPane stage;
  private Optional<Frame> frame = Optional.empty();
  private Optional<Spot> spot = Optional.empty();

  /**
   * @param word which of the two it is
   * @param missing what is said where there is no picture
   * @param model hears where the pointer is
   */
  PairPrint(
      Texts texts,
      String word,
      String missing,
      FramePictures pictures,
      Tasks tasks,
      FullSizePane.Parts parts,
      ReturnsModel model) {
    this.pictures = pictures;
    this.full = new FullSizePane(tasks, parts);
    none.setText(missing);
    none.getStyleClass().add("no-picture");
    stage = new StackPane(none, new FittingPane(picture), full);
    stage.getStyleClass().add("compared-stage");
    stage.setMinSize(0, 0);
    VBox.setVgrow(stage, Priority.ALWAYS);
    picture.imageProperty().subscribe(this::showSpot);
    var which = new Label(word);
    which.getStyleClass().add("compared-where");
    which.setMinWidth(Region.USE_PREF_SIZE);
    name.getStyleClass().add("compared-name");
    name.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    name.setMinWidth(0);
    var foot = new VBox(which, name);
    foot.getStyleClass().add("compared-foot");
    getChildren().addAll(stage, foot);
    getStyleClass().add("compared");
    setMinWidth(0);
    setPrefWidth(0);
    HBox.setHgrow(this, Priority.ALWAYS);
    stage.addEventHandler(
        MouseEvent.MOUSE_CLICKED,
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            model.turnFullSize(Spot.under(event, stage));
          }
        });
    stage.addEventHandler(MouseEvent.MOUSE_MOVED, event -> model.look(Spot.under(event, stage)));
    stage.addEventHandler(MouseEvent.MOUSE_DRAGGED, event -> model.look(Spot.under(event, stage)));
    setAccessibleText(texts.apart(word, missing));
  }

  void show(Optional<Frame> now, Optional<Spot> around) {
    spot = around;
    if (!frame.equals(now)) {
      frame = now;
      none.setVisible(now.isEmpty());
      if (now.isPresent()) {
        pictures.show(now.get(), EDGE, picture, () -> none.setVisible(true));
        name.setText(PlainText.line(now.get().stem()));
      } else {
        pictures.clear(picture);
        name.setText("");
      }
    }
    showSpot();
  }

  private void showSpot() {
    picture.setVisible(spot.isEmpty());
    if (frame.isPresent() && spot.isPresent() && picture.getImage() != null) {
      full.show(frame.get(), picture.getImage(), spot.get());
    } else {
      full.hide();
    }
  }

  /** Lets go of the picture. */
  void clear() {
    frame = Optional.empty();
    pictures.clear(picture);
    full.hide();
  }
}
