package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntConsumer;
import javafx.beans.binding.Bindings;
import javafx.css.PseudoClass;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FramePictures;

/** The last frames of the setup on set, the newest at the left. A click looks at one. */
final class FrameStrip extends HBox {
  private static final int EDGE = 220;

  /** What the stylesheet puts around a picture, above and below, in pixels. */
  private static final double AROUND = 8;

  private static final double LEAST = 8;
  private static final PseudoClass LOOKED = PseudoClass.getPseudoClass("looked-at");

  private final FramePictures pictures;
  private final Function<Frame, String> caption;
  private final List<Print> prints = new ArrayList<>();

  private static final class Print extends VBox {
    private final ImageView view = new ImageView();
    private final Label name = new Label();

    Print(Runnable chosen) {
      view.setPreserveRatio(true);
      var box = new StackPane(view);
      view.fitHeightProperty().bind(Bindings.max(LEAST, box.heightProperty().subtract(AROUND)));
      box.getStyleClass().add("print-box");
      box.setMinHeight(0);
      VBox.setVgrow(box, Priority.ALWAYS);
      name.getStyleClass().add("print-name");
      getStyleClass().add("strip-print");
      setAlignment(Pos.BOTTOM_LEFT);
      setFillWidth(false);
      getChildren().addAll(box, name);
      setOnMouseClicked(_ -> chosen.run());
    }
  }

  /**
   * A strip without frames.
   *
   * @param most how many it shows at most
   * @param caption what stands under a frame
   * @param looked hears which one a person wants to look at
   */
  FrameStrip(
      int most, FramePictures pictures, Function<Frame, String> caption, IntConsumer looked) {
    this.pictures = pictures;
    this.caption = caption;
    getStyleClass().add("strip");
    setMinSize(0, 0);
    for (int i = 0; i < most; i++) {
      int place = i;
      prints.add(new Print(() -> looked.accept(place)));
    }
    getChildren().setAll(prints);
  }

  void show(List<Frame> latest, int looked) {
    for (int i = 0; i < prints.size(); i++) {
      var print = prints.get(i);
      boolean there = i < latest.size();
      print.setVisible(there);
      print.setManaged(there);
      if (there) {
        pictures.show(latest.get(i), EDGE, print.view);
        print.name.setText(caption.apply(latest.get(i)));
      } else {
        pictures.clear(print.view);
      }
      print.pseudoClassStateChanged(LOOKED, i == looked);
    }
  }
}
