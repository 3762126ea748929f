package org.framewright.ui.board;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import javafx.animation.Animation;
import javafx.animation.AnimationTimer;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.application.Platform;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.value.ObservableBooleanValue;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
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

  /** So many are styled beforehand that what styles them is compiled when the window needs it. */
  private static final int FIRST_LINES = 12;

  private final BoardModel model;
  private final Texts texts;
  private final Supplier<Instant> now;
  private final OnSetBand band;
  private final Label nextWord = nextLabel("next-word");
  private final Label nextTitle = nextLabel("next-title");
  private final Label thenWord = nextLabel("then-word");
  private final List<Label> nextCodes =
      List.of(nextLabel("next-code"), nextLabel("then-code"), nextLabel("then-code"));
  private final HBox nextLine =
      new HBox(
          nextWord,
          nextCodes.getFirst(),
          nextTitle,
          thenWord,
          nextCodes.get(1),
          nextCodes.getLast());
  private final TextField filter = new TextField();
  private final Label grouped = new Label();
  private final Label totals = new Label();
  private final Label noLines = new Label();
  private final ListView<Line> list = new ListView<>();
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
  private Runnable whenThere = () -> {};
  private final ListChangeListener<Line> linesChange = _ -> choosing = true;
  private final ListChangeListener<Line> linesChanged = _ -> showChoice();
  private Subscription listening = Subscription.EMPTY;
  private boolean choosing;
  private boolean front;

  BoardView(
      BoardModel model,
      Texts texts,
      FramePictures pictures,
      UnaryOperator<String> viewWord,
      Supplier<Instant> now) {
    this.model = model;
    this.texts = texts;
    this.now = now;
    this.band = new OnSetBand(texts, pictures, viewWord);
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
    var find = new HBox(filter, grouped);
    find.getStyleClass().add("find-line");

    list.setId("setups");
    // Heard before the list itself, which chooses another line where lines were replaced.
    model.lines().addListener(linesChange);
    list.setItems(model.lines());
    list.setCellFactory(_ -> RowDrag.on(cell(narrow), model::moveBeside));
    list.setAccessibleText(texts.get("board.list"));
    list.setAccessibleRole(AccessibleRole.LIST_VIEW);
    list.setPlaceholder(noLines);
    list.addEventFilter(KeyEvent.KEY_TYPED, this::typedOnList);
    list.setMaxHeight(0);
    VBox.setVgrow(list, Priority.ALWAYS);

    nextTitle.setMinWidth(0);
    nextTitle.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(nextTitle, Priority.ALWAYS);
    thenWord.setText(texts.get("board.then"));
    nextLine.getStyleClass().add("next-line");
    nextLine.setId("next");
    rest.getStyleClass().add("rest");
    rest.getChildren().setAll(nextLine, find, totals, list);
    rest.setMinSize(0, 0);
    root.getStyleClass().add("board");
    root.widthProperty().addListener((_, _, _) -> arrange());
    root.heightProperty().addListener((_, _, _) -> arrange());
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
    band.tell(model.now().get());
    tellNext(model.now().get());
    showTotals(model.totals().get());
    showGrouping(model.grouping().get());
  }

  private void listen() {
    filter.textProperty().bindBidirectional(model.filter());
    model.lines().addListener(linesChanged);
    listening =
        Subscription.combine(
            model.now().subscribe(this::showNow),
            model.totals().subscribe(this::showTotals),
            model.grouping().subscribe(this::showGrouping),
            model.selected().subscribe(_ -> showChoice()),
            list.getSelectionModel().selectedItemProperty().subscribe(this::chosen),
            // There are no lines to scroll to before the list was laid out at that height.
            list.heightProperty().subscribe((_, _) -> Platform.runLater(this::showChoiceInFront)));
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
    front = true;
    if (isWhole()) {
      follow();
    } else {
      coming.start();
    }
  }

  /**
   * The page comes in some pulses, so that there are some short holds, not a long one: first it
   * gets its styles, then what is on set joins the rest, then it begins to listen, then its list
   * unrolls, a line in each pulse.
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
    } else if (list.getHeight() >= list.getMaxHeight()) {
      list.setMaxHeight(list.getMaxHeight() + Math.max(1, list.getFixedCellSize()));
    } else {
      // There is no room for more lines.
      list.setMaxHeight(Region.USE_COMPUTED_SIZE);
      coming.stop();
      tellThere();
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

  private void tellThere() {
    var then = whenThere;
    whenThere = () -> {};
    then.run();
  }

  private boolean isWhole() {
    return list.getMaxHeight() == Region.USE_COMPUTED_SIZE;
  }

  private void follow() {
    clock.play();
    showTime();
    showChoice();
  }

  void pause() {
    front = false;
    coming.stop();
    clock.stop();
    tellThere();
  }

  void dispose() {
    pause();
    listening.unsubscribe();
    model.lines().removeListener(linesChange);
    model.lines().removeListener(linesChanged);
    filter.textProperty().unbindBidirectional(model.filter());
    list.setItems(null);
  }

  private void arrange() {
    var em = filter.getFont().getSize();
    var beside = root.getWidth() >= BESIDE_EMS * em;
    narrow.set(beside || root.getWidth() < 60 * em);
    band.arrange(beside);
    if (beside) {
      var width = root.getWidth() * 0.52;
      rest.setPrefWidth(width);
      rest.setMinWidth(width);
      band.node().setPrefHeight(Region.USE_COMPUTED_SIZE);
      root.setTop(null);
      root.setCenter(whole ? band.node() : null);
      root.setRight(rest);
    } else {
      rest.setPrefWidth(Region.USE_COMPUTED_SIZE);
      rest.setMinWidth(0);
      band.node().setPrefHeight(Math.max(210, root.getHeight() * 0.4));
      root.setRight(null);
      root.setTop(whole ? band.node() : null);
      root.setCenter(rest);
    }
  }

  private void showNow(BoardModel.Now shown) {
    band.show(shown);
    showTime();
    tellNext(shown);
  }

  private void showTime() {
    band.showTime(model.timeOnSet(now.get()));
  }

  /** The labels stay and change: new ones would have to be styled each time. */
  private void tellNext(BoardModel.Now shown) {
    var ahead = shown.next();
    nextWord.setText(
        shown.noList()
            ? texts.get("board.next.noList")
            : texts.get(ahead.isEmpty() ? "board.next.none" : "board.next"));
    nextTitle.setText(ahead.isEmpty() ? "" : ahead.getFirst().setup().title());
    show(nextTitle, !ahead.isEmpty());
    show(thenWord, ahead.size() > 1);
    for (var i = 0; i < nextCodes.size(); i++) {
      nextCodes.get(i).setText(i < ahead.size() ? ahead.get(i).code() : "");
      show(nextCodes.get(i), i < ahead.size());
    }
    noLines.setText(texts.get(shown.noList() ? "board.list.none" : "board.list.empty"));
  }

  private static void show(Label label, boolean shown) {
    label.setVisible(shown);
    label.setManaged(shown);
  }

  private static Label nextLabel(String styleClass) {
    var label = new Label();
    label.getStyleClass().add(styleClass);
    label.setMinWidth(Region.USE_PREF_SIZE);
    return label;
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
    grouped.setText(
        texts.get("board.grouped." + grouping.name().toLowerCase(java.util.Locale.ROOT)));
  }

  /** From the model to the list; a choice made there while lines are replaced is no person's. */
  private void showChoice() {
    var at = model.selectedIndex();
    var selection = list.getSelectionModel();
    if (at >= 0
        && selection.getSelectedIndex() == at
        && list.getFocusModel().isFocused(at)
        && model.lines().get(at).equals(selection.getSelectedItem())) {
      choosing = false;
      reveal(at);
      return;
    }
    choosing = true;
    try {
      if (at >= 0) {
        selection.clearAndSelect(at);
        list.getFocusModel().focus(at);
        reveal(at);
      } else {
        selection.clearSelection();
      }
    } finally {
      choosing = false;
    }
  }

  /** By its turn, another page may be in front and this one away from its styles. */
  private void showChoiceInFront() {
    if (front) {
      showChoice();
    }
  }

  /**
   * A list that grows moves its lines in proportion: while it unrolls, it is told each time which
   * is at its top.
   */
  private void reveal(int at) {
    var flow = list.lookup(".virtual-flow");
    if (flow instanceof javafx.scene.control.skin.VirtualFlow<?> cells) {
      var first = cells.getFirstVisibleCell();
      var last = cells.getLastVisibleCell();
      if (!isWhole()
          || first == null
          || last == null
          || at <= first.getIndex()
          || at >= last.getIndex()) {
        list.scrollTo(Math.max(0, at - 2));
      }
    }
  }

  private void chosen(Line line) {
    if (!choosing && line instanceof SetupRow row) {
      model.select(row);
    }
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

  Optional<SetupRow> choice() {
    return model.selectedRow();
  }
}
