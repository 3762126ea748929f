package org.framewright.ui.board;

import java.time.Duration;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.frames.Frame;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.session.JobView;
import org.framewright.ui.session.ViewCount;

/**
 * What is on set now: its code, what it is and its wanted views; its last frame in all the room
 * that is left; the frames before; and what is done next.
 */
final class OnSetBand {
  private static final DateTimeFormatter CAPTURED =
      DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

  private final Texts texts;
  private final UnaryOperator<String> viewWord;
  private final Consumer<String> bringView;
  private final Label code = label("set-code");
  private final WrappedText title = new WrappedText("set-title");
  private final Label where = label("set-where");
  private final WrappedText note = new WrappedText("set-note");
  private final Label time = label("set-time");
  private final VBox views = new VBox();
  private final SetPictures large;
  private final FrameStrip strip;
  private final Label lastName = label("set-frame");
  private final Label lastTime = label("set-frame-time");
  private final VBox words = new VBox();
  private final VBox pictureSide;
  private final BorderPane middle = new BorderPane();
  private final SetActions actions;
  private final VBox band;

  private BoardModel.Now shown = BoardModel.Now.NOTHING;

  /** Which of the latest frames is looked at; 0 is the newest, to which it goes back by itself. */
  private int looked;

  private boolean above;
  private boolean wordsCramped;

  /**
   * A band with nothing on set.
   *
   * @param bringView hears the code of a view that a person wants before the camera
   */
  OnSetBand(
      Texts texts,
      FramePictures pictures,
      UnaryOperator<String> viewWord,
      Consumer<String> bringView,
      SetActions actions) {
    this.texts = texts;
    this.viewWord = viewWord;
    this.bringView = bringView;
    this.actions = actions;
    this.large = new SetPictures(texts, pictures);
    this.strip = new FrameStrip(JobView.LATEST, pictures, this::caption, this::look);
    code.setMinWidth(Region.USE_PREF_SIZE);
    time.setMinWidth(0);
    views.getStyleClass().add("set-views");
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    var first = new HBox(code, gap, time);
    first.setAlignment(Pos.BASELINE_LEFT);
    words.getChildren().setAll(first, title, where, views, note);
    words.getStyleClass().add("set-words");
    words.setMinSize(0, 0);
    views.setMinHeight(0);
    VBox.setVgrow(large, Priority.ALWAYS);
    var name = new HBox(lastName, lastTime);
    name.getStyleClass().add("set-frame-line");
    pictureSide = new VBox(large, name, strip);
    pictureSide.getStyleClass().add("set-pictures");
    pictureSide.setMinSize(0, 0);
    middle.setCenter(pictureSide);
    middle.setLeft(words);
    middle.setMinSize(0, 0);
    VBox.setVgrow(middle, Priority.ALWAYS);
    band = new VBox(middle, actions);
    band.getStyleClass().add("on-set-band");
    band.setAccessibleRole(AccessibleRole.PARENT);
    band.setMinSize(0, 0);
    describe(BoardModel.Now.NOTHING);
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

  /**
   * Takes the place that it has. The words stand beside the picture or above it, whichever makes
   * the picture larger.
   *
   * @param em the size of letters, in pixels
   */
  void arrange(double width, double height, double em, Widths widths) {
    double column = widths.band() * em;
    double shape = large.shape();
    double below = 13 * em;
    double beside = SetPictures.fitted(shape, width - column - 3 * em, height - below);
    double stacked = SetPictures.fitted(shape, width - 2 * em, height - below - 11 * em);
    boolean nowAbove = stacked > beside * 1.1;
    words.setPrefWidth(nowAbove ? Region.USE_COMPUTED_SIZE : column);
    title.setMostLines(nowAbove ? 1 : widths.titleLines());
    if (nowAbove != above) {
      above = nowAbove;
      middle.setTop(null);
      middle.setLeft(null);
      if (above) {
        middle.setTop(words);
      } else {
        middle.setLeft(words);
      }
    }
    strip.setPrefHeight(widths.strip() * em);
    strip.setMinHeight(widths.strip() * em);
    strip.setMaxHeight(widths.strip() * em);
    wordsCramped = widths.band() < 14 && !above;
    actions.showKeys(width >= 44 * em);
  }

  void show(BoardModel.Now now) {
    describe(now);
    pictures();
  }

  private String caption(Frame frame) {
    var stem = frame.stem();
    return stem.length() <= 8 ? stem : "…" + stem.substring(stem.length() - 6);
  }

  private void look(int at) {
    looked = at;
    pictures();
    nameFrame();
  }

  /** All but the pictures, which come on the interface only. */
  void describe(BoardModel.Now now) {
    var newest = now.latest().stream().findFirst().map(Frame::id);
    if (!newest.equals(shown.latest().stream().findFirst().map(Frame::id))) {
      looked = 0;
    }
    shown = now;
    var row = shown.onSet();
    code.setText(row.map(SetupRow::code).orElse(texts.get("board.nothing")));
    title.setText(row.map(set -> set.setup().title()).orElseGet(this::beforeAnySetup));
    where.setText(row.map(SetupRow::where).orElse(""));
    note.setText(row.flatMap(set -> set.setup().note()).orElse(""));
    shown(where, !where.getText().isEmpty());
    shown(note, !note.getText().isEmpty());
    views(row.map(this::lines).orElse(List.of()));
    shown(views, row.isPresent());
    nameFrame();
    strip.setVisible(!shown.latest().isEmpty());
    actions.show(shown);
    band.setAccessibleText(
        row.map(
                set ->
                    texts.get("board.onSet.spoken", set.code(), set.setup().title(), set.frames()))
            .orElse(code.getText()));
  }

  private void nameFrame() {
    var frame = looked < shown.latest().size() ? shown.latest().get(looked) : null;
    lastName.setText(frame == null ? "" : SetPictures.name(frame));
    lastTime.setText(frame == null ? "" : frame.capture().time().map(CAPTURED::format).orElse(""));
  }

  private static void shown(Region part, boolean shown) {
    part.setVisible(shown);
    part.setManaged(shown);
  }

  private String beforeAnySetup() {
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
                        wordsCramped ? "board.onSet.timeOnly" : "board.onSet.time",
                        "%d:%02d".formatted(span.toMinutes(), span.toSecondsPart())))
            .orElse(""));
  }

  /** The blocks stay and change: new ones would have to be styled each time. */
  private void views(List<ViewLine> lines) {
    var blocks = views.getChildren();
    while (blocks.size() < lines.size()) {
      blocks.add(new ViewBlock(texts, bringView));
    }
    blocks.remove(lines.size(), blocks.size());
    for (int i = 0; i < lines.size(); i++) {
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
      boolean noView = view.code().isEmpty();
      lines.add(
          new ViewLine(noView ? texts.get("board.noView") : viewWord.apply(view.code()), view));
    }
    return lines;
  }

  private void pictures() {
    large.show(shown.latest(), looked, shown.onSet().isPresent());
    strip.show(shown.latest(), looked);
  }
}
