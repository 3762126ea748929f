package org.framewright.ui.board;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.animation.Animation;
import javafx.animation.AnimationTimer;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ObservableBooleanValue;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Duration;
import javafx.util.Subscription;
import org.framewright.ui.look.FramePictures;
import org.framewright.ui.look.Texts;

/** The board's controls. */
final class BoardView {
  /** From this width, in ems, the list stands beside what is on set; below it, under it. */
  private static final double BESIDE_EMS = 88;

  /** Below this width, in ems, lines leave out what is least needed. */
  private static final double NARROW_EMS = 60;

  /** Sizes that call each other end here. */
  private static final int MOST_TIMES = 3;

  /** So many are styled beforehand that what styles them is compiled when the window needs it. */
  private static final int FIRST_LINES = 12;

  private final BoardModel model;
  private final Texts texts;
  private final Supplier<Instant> now;
  private final OnSetBand band;
  private final NextLine next;
  private final TextField filter = new TextField();
  private final Label grouped = new Label();
  private final Label totals = new Label();
  private final Button newList = new Button();
  private final SetupList list;
  private final VBox rest = new VBox();
  private final BorderPane root = new BorderPane();
  private final SimpleBooleanProperty narrow = new SimpleBooleanProperty(false);
  private final Timeline clock = new Timeline(new KeyFrame(Duration.seconds(1), _ -> showTime()));
  private final AnimationTimer coming =
      new AnimationTimer() {
        @Override
        public void handle(long now) {
          come();
        }
      };
  private boolean styled;
  private boolean whole = true;
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
      Runnable importList) {
    this.model = model;
    this.texts = texts;
    this.now = now;
    this.band = new OnSetBand(texts, pictures, viewWord);
    this.next = new NextLine(texts);
    this.list = new SetupList(model, texts);
    newList.setOnAction(_ -> importList.run());
    clock.setCycleCount(Animation.INDEFINITE);
    build();
    fill();
  }

  private void build() {
    filter.setId("filter");
    filter.setPromptText(texts.get("board.filter"));
    filter.setAccessibleText(texts.get("board.filter"));
    HBox.setHgrow(filter, Priority.ALWAYS);
    filter.addEventFilter(KeyEvent.KEY_PRESSED, this::filterKey);
    grouped.getStyleClass().add("grouped");
    grouped.setMinWidth(Region.USE_PREF_SIZE);
    totals.getStyleClass().add("totals");
    totals.setMinWidth(0);
    newList.setId("new-list");
    newList.setText(texts.get("board.newList"));
    newList.setMinWidth(Region.USE_PREF_SIZE);
    newList.setFocusTraversable(false);
    var find = new HBox(filter, grouped, newList);
    find.getStyleClass().add("find-line");
    list.setCellFactory(_ -> RowDrag.on(cell(narrow), model::moveBeside));
    list.addEventFilter(KeyEvent.KEY_TYPED, this::typedOnList);
    VBox.setVgrow(list, Priority.ALWAYS);
    rest.getStyleClass().add("rest");
    rest.getChildren().setAll(next, find, totals, list);
    rest.setMinSize(0, 0);
    root.getStyleClass().add("board");
    root.widthProperty().addListener((_, _, _) -> arrange());
    root.heightProperty().addListener((_, _, _) -> arrange());
    // The same width has room for less when everything is larger.
    filter.fontProperty().addListener((_, _, _) -> arrange());
    arrange();
  }

  private SetupCell cell(ObservableBooleanValue narrowed) {
    return new SetupCell(texts, narrowed, _ -> texts.get("board.group.none"));
  }

  /** The first lines in a list of their own, to be styled and thrown away. */
  Node firstLines() {
    var lines = new ListView<>(FXCollections.observableList(firstOf(model.lines())));
    lines.setId(list.getId());
    lines.setCellFactory(_ -> cell(new SimpleBooleanProperty(narrow.get())));
    return lines;
  }

  private static List<Line> firstOf(List<Line> lines) {
    return List.copyOf(lines.subList(0, Math.min(FIRST_LINES, lines.size())));
  }

  /** Shows what there is before anybody listens, so that it is styled with the rest. */
  private void fill() {
    var first = model.now().get();
    band.describe(first);
    next.show(first);
    list.show(first);
    showTotals(model.totals().get());
    showGrouping(model.grouping().get());
  }

  private void listen() {
    filter.textProperty().bindBidirectional(model.filter());
    list.follow();
    listening =
        Subscription.combine(
            model.now().subscribe(this::showNow),
            model.totals().subscribe(this::showTotals),
            model.grouping().subscribe(this::showGrouping));
  }

  Node node() {
    return root;
  }

  Node focus() {
    return list;
  }

  TextField filter() {
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
   * The page comes in some pulses, so that there are some short holds, not a long one: first it
   * gets its styles, then what is on set joins the rest, then it begins to listen, then its list
   * unrolls.
   */
  private void come() {
    if (!styled) {
      styled = true;
    } else if (!whole) {
      whole = true;
      arrange();
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

  /** Takes out what is on set until the page is shown. */
  void takeApart() {
    whole = false;
    arrange();
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
    clock.play();
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
    var beside = root.getWidth() >= BESIDE_EMS * em;
    narrow.set(beside || root.getWidth() < NARROW_EMS * em);
    band.arrange(beside);
    var width = beside ? root.getWidth() * 0.52 : 0;
    rest.setPrefWidth(beside ? width : Region.USE_COMPUTED_SIZE);
    rest.setMinWidth(width);
    band.node()
        .setPrefHeight(beside ? Region.USE_COMPUTED_SIZE : Math.max(210, root.getHeight() * 0.4));
    place(whole ? band.node() : null, beside);
  }

  /** A pane takes no node that it has in another place still. */
  private void place(Node set, boolean beside) {
    var top = beside ? null : set;
    var center = beside ? set : rest;
    var right = beside ? rest : null;
    if (!Objects.equals(root.getTop(), top)
        || !Objects.equals(root.getCenter(), center)
        || !Objects.equals(root.getRight(), right)) {
      root.setTop(null);
      root.setCenter(null);
      root.setRight(null);
      root.setTop(top);
      root.setCenter(center);
      root.setRight(right);
    }
  }

  private void showNow(BoardModel.Now shown) {
    band.show(shown);
    showTime();
    next.show(shown);
    list.show(shown);
  }

  private void showTime() {
    band.showTime(model.timeOnSet(now.get()));
  }

  private void showTotals(Totals numbers) {
    totals.setText(
        texts.get(
            "board.totals",
            numbers.setups(),
            numbers.signedOff(),
            numbers.shot(),
            numbers.toShoot(),
            numbers.pickups(),
            numbers.dropped()));
  }

  private void showGrouping(Grouping grouping) {
    grouped.setText(texts.get("board.grouped." + grouping.name().toLowerCase(Locale.ROOT)));
  }

  /** Digits are what setups are called by: typed on the list, they begin a search. */
  private void typedOnList(KeyEvent event) {
    var typed = event.getCharacter();
    if (typed.length() == 1 && Character.isDigit(typed.charAt(0)) && !event.isShortcutDown()) {
      filter.requestFocus();
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
