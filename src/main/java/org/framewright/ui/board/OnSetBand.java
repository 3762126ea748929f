package org.framewright.ui.board;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.image.ImageView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FittingPane;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What is on set now, large: its code, what it is, its wanted views, its last frames. */
final class OnSetBand {
  private static final int LARGE_EDGE = 900;
  private static final int SMALL_EDGE = 160;
  private static final int SMALL = 5;

  private final Texts texts;
  private final FramePictures pictures;
  private final UnaryOperator<String> viewWord;
  private final Label code = label("set-code");
  private final WrappedText title = new WrappedText("set-title");
  private final Label where = label("set-where");
  private final WrappedText note = new WrappedText("set-note");
  private final Label time = label("set-time");
  private final FlowPane views = new FlowPane();
  private final ImageView large = new ImageView();
  private final Pane largeBox = new FittingPane(large);
  private final HBox strip = new HBox();
  private final Label lastName = label("set-frame");
  private final VBox words = new VBox();
  private final VBox pictureSide = new VBox();
  private final HBox beside = new HBox();
  private final VBox stacked = new VBox();
  private final VBox band = new VBox();
  private Optional<Boolean> arranged = Optional.empty();

  OnSetBand(Texts texts, FramePictures pictures, UnaryOperator<String> viewWord) {
    this.texts = texts;
    this.pictures = pictures;
    this.viewWord = viewWord;
    code.setMinWidth(Region.USE_PREF_SIZE);
    time.setMinWidth(Region.USE_PREF_SIZE);
    views.getStyleClass().add("set-views");
    strip.getStyleClass().add("strip");
    strip.setMinWidth(0);
    for (var i = 0; i < SMALL; i++) {
      var small = new ImageView();
      small.setFitHeight(54);
      small.setFitWidth(80);
      small.setPreserveRatio(true);
      strip.getChildren().add(small);
    }
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    var first = new HBox(code, gap, time);
    first.setAlignment(Pos.BASELINE_LEFT);
    words.getChildren().setAll(first, title, where, views, note);
    words.getStyleClass().add("set-words");
    words.setMinSize(0, 0);
    views.setMinHeight(0);
    largeBox.setMinSize(0, 0);
    VBox.setVgrow(largeBox, Priority.ALWAYS);
    pictureSide.getStyleClass().add("set-pictures");
    pictureSide.setMinSize(0, 0);
    pictureSide.getChildren().setAll(largeBox, strip, lastName);
    beside.getStyleClass().add("set-beside");
    stacked.getStyleClass().add("set-stacked");
    band.getStyleClass().add("on-set-band");
    band.setAccessibleRole(AccessibleRole.PARENT);
    band.setMinSize(0, 0);
    describe(BoardModel.Now.NOTHING);
    arrange(false);
  }

  private static Label label(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(0);
    return label;
  }

  Region node() {
    return band;
  }

  /** Pictures below the words where there is height, beside them where there is not. */
  void arrange(boolean tall) {
    if (arranged.filter(before -> before == tall).isPresent()) {
      return;
    }
    arranged = Optional.of(tall);
    beside.getChildren().clear();
    stacked.getChildren().clear();
    HBox.setHgrow(words, Priority.ALWAYS);
    words.setPrefWidth(tall ? Region.USE_COMPUTED_SIZE : 0);
    pictureSide.setPrefWidth(0);
    if (tall) {
      stacked.getChildren().setAll(words, pictureSide);
      VBox.setVgrow(pictureSide, Priority.ALWAYS);
      VBox.setVgrow(stacked, Priority.ALWAYS);
      band.getChildren().setAll(stacked);
    } else {
      HBox.setHgrow(pictureSide, Priority.SOMETIMES);
      pictureSide.setPrefWidth(360);
      beside.getChildren().setAll(words, pictureSide);
      VBox.setVgrow(beside, Priority.ALWAYS);
      band.getChildren().setAll(beside);
    }
  }

  void show(BoardModel.Now shown) {
    describe(shown);
    pictures(shown.latest());
  }

  /** All but the pictures, which come on the interface only. */
  void describe(BoardModel.Now shown) {
    var row = shown.onSet();
    code.setText(row.map(SetupRow::code).orElse(texts.get("board.nothing")));
    title.setText(row.map(now -> now.setup().title()).orElseGet(() -> beforeAnySetup(shown)));
    where.setText(row.map(SetupRow::where).orElse(""));
    note.setText(row.flatMap(now -> now.setup().note()).orElse(""));
    shown(where, !where.getText().isEmpty());
    shown(note, !note.getText().isEmpty());
    views(row.map(this::lines).orElse(List.of()));
    lastName.setText(
        shown.latest().stream()
            .findFirst()
            .map(frame -> frame.primary().path().getFileName().toString())
            .orElse(row.isPresent() ? texts.get("board.noFrameYet") : ""));
    strip.setVisible(shown.latest().size() > 1);
    strip.setManaged(strip.isVisible());
    band.setAccessibleText(
        row.map(
                now ->
                    texts.get("board.onSet.spoken", now.code(), now.setup().title(), now.frames()))
            .orElse(code.getText()));
  }

  private static void shown(Region part, boolean shown) {
    part.setVisible(shown);
    part.setManaged(shown);
  }

  private String beforeAnySetup(BoardModel.Now shown) {
    if (shown.noList()) {
      return texts.get("board.list.none");
    }
    return shown.next().stream()
        .findFirst()
        .map(then -> texts.get("board.nothing.next", then.code()))
        .orElse(texts.get("board.nothing.left"));
  }

  void showTime(Optional<Duration> onSet) {
    time.setText(
        onSet
            .map(
                span ->
                    texts.get(
                        "board.onSet.time",
                        "%d:%02d".formatted(span.toMinutes(), span.toSecondsPart())))
            .orElse(""));
  }

  /** The blocks stay and change: new ones would have to be styled each time. */
  private void views(List<ViewLine> lines) {
    var blocks = views.getChildren();
    while (blocks.size() < lines.size()) {
      blocks.add(new ViewBlock(texts));
    }
    blocks.remove(lines.size(), blocks.size());
    for (var i = 0; i < lines.size(); i++) {
      ((ViewBlock) blocks.get(i)).show(lines.get(i).word(), lines.get(i).count());
    }
  }

  private record ViewLine(String word, ViewCount count) {}

  private List<ViewLine> lines(SetupRow row) {
    var lines = new ArrayList<ViewLine>();
    if (row.views().isEmpty() || row.setup().wanted().isPresent()) {
      lines.add(
          new ViewLine(
              texts.get("board.frames"),
              new ViewCount("", row.frames(), row.setup().wanted(), false)));
    }
    for (var view : row.views()) {
      var noView = view.code().isEmpty();
      lines.add(
          new ViewLine(noView ? texts.get("board.noView") : viewWord.apply(view.code()), view));
    }
    return lines;
  }

  private void pictures(List<Frame> latest) {
    if (latest.isEmpty()) {
      pictures.clear(large);
    } else {
      pictures.show(latest.getFirst(), LARGE_EDGE, large);
      large.setAccessibleText(texts.get("board.lastFrame", lastName.getText()));
    }
    for (var i = 0; i < SMALL; i++) {
      var view = (ImageView) strip.getChildren().get(i);
      if (i + 1 < latest.size()) {
        pictures.show(latest.get(i + 1), SMALL_EDGE, view);
      } else {
        pictures.clear(view);
      }
    }
  }
}
