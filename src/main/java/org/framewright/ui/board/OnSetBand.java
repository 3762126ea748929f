package org.framewright.ui.board;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntConsumer;
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
import org.framewright.live.JobView;
import org.framewright.live.ViewCount;
import org.framewright.ui.command.Command;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.session.LookedAt;

/**
 * What is on set now: its code, what it is and its wanted views; its last frame in all the room
 * that is left; the frames before; and what is done next.
 */
final class OnSetBand {
  private static final int MOST_COMMENTS = 3;

  /** From this height on, in ems, there is room for them below a setup of many views. */
  private static final double HIGH = 50;

  private final Texts texts;
  private final UnaryOperator<String> viewWord;
  private final Consumer<String> bringView;
  private final Label code = label("set-code");
  private final WrappedText title = new WrappedText("set-title");
  private final Label where = label("set-where");
  private final WrappedText note = new WrappedText("set-note");
  private final Label time = label("set-time");
  private final CommentsPane comments;
  private final VBox views = new VBox();
  private final SetPictures large;
  private final FrameStrip strip;
  private final PictureLine pictureLine;
  private final VBox words = new VBox();
  private final VBox pictureSide;
  private final BorderPane middle = new BorderPane();
  private final SetActions actions;
  private final VBox band;

  private BoardModel.Now shown = BoardModel.Now.NOTHING;

  private LookedAt.Look look = LookedAt.Look.NOTHING;
  private boolean pictureOnly;
  private boolean above;
  private boolean wordsCramped;

  /**
   * A band with nothing on set.
   *
   * @param bringView hears the code of a view that a person wants before the camera
   * @param lookAt hears which of the last frames a person wants to look at, the newest being 0
   * @param frames what can be done with the frame looked at and the one to come
   * @param seeComments says that what was said of the setup was seen
   */
  OnSetBand(
      Texts texts,
      FramePictures pictures,
      UnaryOperator<String> viewWord,
      Consumer<String> bringView,
      IntConsumer lookAt,
      PictureLine frames,
      SetActions actions,
      Command seeComments) {
    this.texts = texts;
    this.viewWord = viewWord;
    this.bringView = bringView;
    this.actions = actions;
    this.comments = new CommentsPane(texts, MOST_COMMENTS, seeComments);
    comments.setId("comments-on-set");
    this.large = new SetPictures(texts, pictures);
    this.strip = new FrameStrip(JobView.LATEST, pictures, this::caption, lookAt);
    code.setMinWidth(Region.USE_PREF_SIZE);
    time.setMinWidth(0);
    views.getStyleClass().add("set-views");
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    var first = new HBox(code, gap, time);
    first.setAlignment(Pos.BASELINE_LEFT);
    words.getChildren().setAll(first, title, where, views, note, comments);
    words.getStyleClass().add("set-words");
    words.setMinSize(0, 0);
    views.setMinHeight(0);
    VBox.setVgrow(large, Priority.ALWAYS);
    this.pictureLine = frames;
    pictureSide = new VBox(large, frames, strip);
    pictureSide.getStyleClass().add("set-pictures");
    pictureSide.setMinSize(0, 0);
    frames.offerOn(pictureSide);
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

  /** Takes out what is on set, to come back from the words to the pictures. */
  void takeApart(ComingParts parts) {
    List.of(band, words, views, pictureSide).forEach(parts::takeFrom);
  }

  /**
   * Takes the place that it has. The words stand beside the picture or above it, whichever makes
   * the picture larger.
   *
   * @param em the size of letters, in pixels
   */
  void arrange(double width, double height, double em, Widths widths) {
    double column = pictureOnly ? 0 : widths.band() * em;
    double shape = large.shape();
    double below = pictureOnly ? 0 : 13 * em;
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
    comments.setMost(height >= HIGH * em ? MOST_COMMENTS : 1);
    wordsCramped = widths.band() < 14 && !above;
    actions.showKeys(width >= 44 * em);
    pictureLine.showKeys(width - (nowAbove ? 0 : column) >= 32 * em);
  }

  private String caption(Frame frame) {
    var stem = frame.stem();
    return stem.length() <= 8 ? stem : "…" + stem.substring(stem.length() - 6);
  }

  /** Shows the last frames and the one looked at. */
  void show(LookedAt.Look now) {
    look = now;
    pictureLine.show(now);
    pictures();
  }

  /** All but the pictures, which come on the interface only. */
  void describe(BoardModel.Now now) {
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
    strip.setVisible(!pictureOnly && !shown.latest().isEmpty());
    actions.show(shown);
    band.setAccessibleText(
        row.map(
                set ->
                    texts.get("board.onSet.spoken", set.code(), set.setup().title(), set.frames()))
            .orElse(code.getText()));
  }

  /** What was said of the setup on set. */
  void showComments(List<Said> said) {
    comments.show(said);
  }

  /** Leaves the picture only, or brings the rest back. */
  void showPictureOnly(boolean only) {
    pictureOnly = only;
    List.of(words, pictureLine, strip, actions).forEach(part -> shown(part, !only));
    strip.setVisible(!only && !shown.latest().isEmpty());
    pictures();
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
                        texts.formats().stopwatch(span)))
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
    var at = Math.max(0, look.at());
    // The picture only has no frames before it.
    var frames =
        pictureOnly
            ? look.frames().subList(0, Math.min(at + 1, look.frames().size()))
            : look.frames();
    large.show(frames, at, shown.onSet().isPresent());
    strip.show(look.frames(), look.at());
  }
}
