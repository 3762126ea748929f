package org.framewright.ui.client;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntConsumer;
import javafx.css.PseudoClass;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.session.LookedAt;

/**
 * The last frames of a setup in a row, the newest at the left, each with its words. As many as fit
 * the width, the one looked at always among them; a click turns to one.
 */
final class ClientStrip extends Region {
  private static final int EDGE = 320;
  private static final PseudoClass LOOKED = PseudoClass.getPseudoClass("looked-at");

  /** Portrait, as garments are mostly shot; until the picture is there. */
  private static final double FIRST_SHAPE = 2.0 / 3;

  private final FramePictures pictures;
  private final Function<Frame, String> words;
  private final List<Print> prints = new ArrayList<>();
  private LookedAt.Look look = LookedAt.Look.NOTHING;

  private static final class Print extends Region {
    private final ImageView view = new ImageView();
    private final StackPane box = new StackPane(view);
    private final Label words = new Label();

    Print(Runnable chosen) {
      view.setPreserveRatio(true);
      view.setSmooth(true);
      box.getStyleClass().add("client-print-box");
      words.getStyleClass().add("client-print-words");
      words.setMinWidth(0);
      getStyleClass().add("client-print");
      getChildren().addAll(box, words);
      setAccessibleRole(AccessibleRole.BUTTON);
      setOnMouseClicked(_ -> chosen.run());
    }

    double shape() {
      var image = view.getImage();
      return image == null ? FIRST_SHAPE : image.getWidth() / image.getHeight();
    }

    private double line() {
      return words.prefHeight(-1);
    }

    double width(double height) {
      var around = box.snappedLeftInset() + box.snappedRightInset();
      return Math.max(
          (height - line() - around) * shape() + around, Math.ceil(words.prefWidth(-1)));
    }

    @Override
    protected void layoutChildren() {
      var high = getHeight() - line();
      var around = box.snappedLeftInset() + box.snappedRightInset();
      var wide = (high - around) * shape() + around;
      view.setFitHeight(Math.max(1, high - around));
      box.resizeRelocate(0, 0, wide, high);
      words.resizeRelocate(0, high, getWidth(), line());
    }
  }

  /**
   * A strip without frames.
   *
   * @param most how many it shows at most
   * @param words what stands under a frame
   * @param turn hears which one somebody wants to look at
   */
  ClientStrip(int most, FramePictures pictures, Function<Frame, String> words, IntConsumer turn) {
    this.pictures = pictures;
    this.words = words;
    getStyleClass().add("client-strip");
    setMinWidth(0);
    for (var i = 0; i < most; i++) {
      var place = i;
      var print = new Print(() -> turn.accept(place));
      print.setId("client-print-" + place);
      print.view.imageProperty().subscribe(this::requestLayout);
      prints.add(print);
    }
    getChildren().setAll(prints);
  }

  void show(LookedAt.Look now) {
    look = now;
    for (var i = 0; i < prints.size(); i++) {
      var print = prints.get(i);
      if (i < now.frames().size()) {
        var frame = now.frames().get(i);
        pictures.show(frame, EDGE, print.view);
        print.words.setText(words.apply(frame));
        print.setAccessibleText(print.words.getText());
      } else {
        pictures.clear(print.view);
      }
      print.pseudoClassStateChanged(LOOKED, i == now.at());
    }
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    var gap = prints.getFirst().line() * 0.6;
    var high = getHeight();
    var widths = prints.stream().mapToDouble(print -> print.width(high)).toArray();
    var count = Math.min(look.frames().size(), prints.size());
    var first = 0;
    while (first < look.at() && width(widths, first, look.at() + 1, gap) > getWidth()) {
      first++;
    }
    var end = first;
    while (end < count && width(widths, first, end + 1, gap) <= getWidth()) {
      end++;
    }
    var x = Math.max(0, (getWidth() - width(widths, first, end, gap)) / 2);
    for (var i = 0; i < prints.size(); i++) {
      prints.get(i).setVisible(i >= first && i < end);
      if (i >= first && i < end) {
        prints.get(i).resizeRelocate(Math.rint(x), 0, widths[i], high);
        x += widths[i] + gap;
      }
    }
  }

  private static double width(double[] widths, int from, int to, double gap) {
    var sum = 0.0;
    for (var i = from; i < to; i++) {
      sum += widths[i] + (i > from ? gap : 0);
    }
    return sum;
  }

  @Override
  protected double computePrefWidth(double height) {
    return 0;
  }
}
