package org.framewright.ui.board;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.function.IntConsumer;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.look.Formats;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Repeating;

/** The board's controls. */
final class BoardView {
  /** From this width of the list, in ems, a line is one line; and from this, it says where. */
  private static final double ONE_LINE_EMS = 35;

  private static final double WIDE_EMS = 62;

  /** The height of a line of the list, in ems. */
  private static final double ONE_LINE = 2.5;

  private static final double TWO_LINES = 3.4;

  /** Sizes that call each other end here. */
  private static final int MOST_TIMES = 3;

  private static final int MOST_COMMENTS = 2;

  /** What is shown of the day is worked out anew as often, where nothing is on set. */
  private static final Duration A_MINUTE = Duration.ofMinutes(1);

  private final BoardModel model;
  private final Texts texts;
  private final Supplier<Instant> now;
  private final OutlookModel outlook;
  private final OnSetBand band;
  private final NextNameModel nextName;
  private final PictureLine pictureLine;
  private final SheetHead head;
  private final TextField filter;
  private final SetupList list;
  private final GivenLine given;
  private final LooseLine loose;
  private final DoubtLine doubt;
  private final CommentsPane comments;
  private final VBox rest = new VBox();
  private final BorderPane root = new BorderPane();
  private final ObjectProperty<SetupCell.Room> room =
      new SimpleObjectProperty<>(SetupCell.Room.ONE_LINE);
  private final ObjectProperty<Integer> viewPlaces = new SimpleObjectProperty<>(1);
  private final Repeating clock =
      new Repeating(this::timeStays, Platform::runLater, this::showTime);
  private final AnimationTimer coming =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          come();
        }
      };
  private final ComingParts parts = new ComingParts();
  private boolean pictureOnly;
  private boolean styled;
  private boolean arranging;
  private boolean arrangeAgain;
  private Runnable whenThere = () -> {};
  private Subscription listening = Subscription.EMPTY;

  BoardView(
      BoardModel model,
      Texts texts,
      FramePictures pictures,
      UnaryOperator<String> viewWord,
      Supplier<Instant> now,
      OutlookModel outlook,
      NextNameModel nextName,
      IntConsumer lookAt,
      PictureLine pictureLine,
      SetActions actions,
      List<Command> onLine,
      Runnable importList,
      Command showLoose,
      Command followSlate,
      Command seeComments,
      Runnable share) {
    this.model = model;
    this.texts = texts;
    this.now = now;
    this.outlook = outlook;
    this.band =
        new OnSetBand(
            texts, pictures, viewWord, model::bringView, lookAt, pictureLine, actions, seeComments);
    this.nextName = nextName;
    this.pictureLine = pictureLine;
    this.head = new SheetHead(texts, model::select, importList, share);
    this.filter = head.filter();
    this.list = new SetupList(model, texts);
    this.given = new GivenLine(texts);
    this.loose = new LooseLine(texts, showLoose);
    this.doubt = new DoubtLine(texts, followSlate);
    this.comments = new CommentsPane(texts, MOST_COMMENTS, seeComments);
    comments.setId("comments-chosen");
    list.offer(onLine);
    build();
    fill();
  }

  private void build() {
    filter.addEventFilter(KeyEvent.KEY_PRESSED, this::filterKey);
    list.setCellFactory(_ -> RowDrag.on(cell(room), model::moveBeside));
    list.addEventFilter(KeyEvent.KEY_TYPED, this::typedOnList);
    VBox.setVgrow(list, Priority.ALWAYS);
    rest.getStyleClass().add("rest");
    rest.getChildren().setAll(head, doubt, list, comments, given, loose);
    rest.setMinSize(0, 0);
    root.getStyleClass().add("board");
    root.widthProperty().addListener((_, _, _) -> arrange());
    root.heightProperty().addListener((_, _, _) -> arrange());
    // The same width has room for less when everything is larger.
    filter.fontProperty().addListener((_, _, _) -> arrange());
    arrange();
  }

  private SetupCell cell(ObservableValue<SetupCell.Room> roomy) {
    return new SetupCell(texts, roomy, viewPlaces, _ -> texts.get("board.group.none"));
  }

  /** Shows what there is before anybody listens, so that it is styled with the rest. */
  private void fill() {
    var first = model.now().get();
    band.describe(first);
    list.show(first);
    show(model.standing().get());
    show(model.said().get());
    head.show(model.grouping().get());
  }

  private void listen() {
    filter.textProperty().bindBidirectional(model.filter());
    list.follow();
    listening =
        Subscription.combine(
            model.now().subscribe(this::showNow),
            model.looked().look().subscribe(band::show),
            nextName.obstacle().subscribe(pictureLine::showObstacle),
            model.standing().subscribe(this::show),
            model.said().subscribe(this::show),
            model.grouping().subscribe(grouping -> head.show(grouping)),
            outlook.outlook().subscribe(head::show));
  }

  Node node() {
    return root;
  }

  Node focus() {
    return list;
  }

  /** Where one looks for a setup; whoever does so does not wait for the page to come by itself. */
  TextField filter() {
    while (!parts.areAllThere()) {
      parts.bringNext();
    }
    return filter;
  }

  /** From now on on the interface thread; before, the view was made on any. */
  void run() {
    list.front(true);
    if (list.isUnrolled()) {
      follow();
    } else {
      coming.start();
    }
  }

  /**
   * The page comes in many pulses, so that there are many short holds, not a long one: part after
   * part gets its styles, then it begins to listen, then its list unrolls.
   */
  private void come() {
    if (!styled) {
      styled = true;
    } else if (!parts.areAllThere()) {
      parts.bringNext();
    } else if (listening.equals(Subscription.EMPTY)) {
      listen();
      follow();
    } else {
      list.unroll();
      if (list.isUnrolled()) {
        coming.stop();
        there();
      }
    }
  }

  /** Leaves the picture only, or brings the rest back; says which. */
  boolean turnPictureOnly() {
    showPictureOnly(!pictureOnly);
    return pictureOnly;
  }

  /** The paper of the list, beside the pictures; it is there from now on. */
  Region sheet() {
    showPictureOnly(false);
    return rest;
  }

  private void showPictureOnly(boolean only) {
    if (only != pictureOnly) {
      pictureOnly = only;
      band.showPictureOnly(only);
      arrange();
      if (!only) {
        list.requestFocus();
      }
    }
  }

  /** Takes out its parts until the page is shown; the list, which has the keys, stays. */
  void takeApart() {
    parts.takeFrom(rest, list);
    head.takeApart(parts);
    band.takeApart(parts);
  }

  /** Does something once the page is there, or gives way to another before it is. */
  void whenThere(Runnable action) {
    whenThere = action;
  }

  private void there() {
    var then = whenThere;
    whenThere = () -> {};
    then.run();
  }

  private void follow() {
    clock.start();
    showTime();
    list.showChoice();
  }

  void pause() {
    list.front(false);
    coming.stop();
    clock.stop();
    there();
  }

  void dispose() {
    pause();
    listening.unsubscribe();
    list.dispose();
    filter.textProperty().unbindBidirectional(model.filter());
  }

  /**
   * Puts each part in its place. A part that leaves or joins gets other styles and with them
   * another size of letters, which calls this again in the middle: it is then done once more
   * afterwards.
   */
  private void arrange() {
    arrangeAgain = true;
    if (arranging) {
      return;
    }
    arranging = true;
    try {
      for (var times = 0; arrangeAgain && times < MOST_TIMES; times++) {
        arrangeAgain = false;
        arrangeOnce();
      }
    } finally {
      arranging = false;
    }
  }

  private void arrangeOnce() {
    var em = filter.getFont().getSize();
    var ems = root.getWidth() / em;
    var widths = Widths.of(ems);
    var sheet = pictureOnly ? 0 : widths.sheetOf(ems);
    room.set(
        sheet >= WIDE_EMS
            ? SetupCell.Room.WIDE
            : sheet >= ONE_LINE_EMS ? SetupCell.Room.ONE_LINE : SetupCell.Room.TWO_LINES);
    head.showWords(room.get() != SetupCell.Room.TWO_LINES);
    list.setFixedCellSize((room.get() == SetupCell.Room.TWO_LINES ? TWO_LINES : ONE_LINE) * em);
    rest.setPrefWidth(sheet * em);
    rest.setMinWidth(sheet * em);
    rest.setMaxWidth(sheet * em);
    band.arrange(root.getWidth() - sheet * em, root.getHeight(), em, widths);
    var right = pictureOnly ? null : rest;
    if (root.getCenter() == null || !Objects.equals(root.getRight(), right)) {
      root.setCenter(band.node());
      root.setRight(right);
    }
  }

  private void showNow(BoardModel.Now shown) {
    band.describe(shown);
    showTime();
    clock.again();
    list.show(shown);
  }

  private void show(BoardModel.Standing standing) {
    head.show(standing);
    given.show(standing);
    loose.show(standing);
    doubt.show(standing);
    viewPlaces.set(
        standing.rows().stream()
            .mapToInt(row -> Math.clamp(row.views().size(), 1, SetupCell.PLACES))
            .max()
            .orElse(1));
  }

  private void show(BoardModel.SaidNow said) {
    band.showComments(said.onSet());
    comments.show(said.chosen());
  }

  /** Nothing is woken up for a time that would read the same. */
  private Duration timeStays() {
    return model.timeOnSet(now.get()).map(Formats::stopwatchStays).orElse(A_MINUTE);
  }

  private void showTime() {
    var at = now.get();
    band.showTime(model.timeOnSet(at));
    outlook.look(model.job(), at);
  }

  /** Digits are what setups are called by: typed on the list, they begin a search. */
  private void typedOnList(KeyEvent event) {
    var typed = event.getCharacter();
    if (typed.length() == 1 && Character.isDigit(typed.charAt(0)) && !event.isShortcutDown()) {
      filter().requestFocus();
      filter.setText(typed);
      filter.end();
      event.consume();
    }
  }

  private void filterKey(KeyEvent event) {
    switch (event.getCode()) {
      case DOWN, UP -> {
        model.step(event.getCode() == KeyCode.DOWN ? 1 : -1);
        event.consume();
      }
      case ENTER -> {
        if (model.selectedIndex() < 0) {
          model.step(0);
        }
        list.requestFocus();
        event.consume();
      }
      case ESCAPE -> {
        filter.clear();
        list.requestFocus();
        event.consume();
      }
      default -> {}
    }
  }
}
