package org.framewright.ui.sets;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.collections.ListChangeListener;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.ContextMenu;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.job.OtherJob;
import org.framewright.studio.MoveDescription;
import org.framewright.studio.Moves;
import org.framewright.studio.SetupMove;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.ListWalk;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.task.Repeating;

/** The page of all sets of the studio. It needs no job, and changes none. */
public final class SetsScreen implements Screen {
  /** Its id. */
  public static final String ID = "sets";

  /** How often it is worded anew: how long something is on set changes by itself. */
  private static final Duration LOOK = Duration.ofSeconds(15);

  /**
   * A line of the list, in em of its letters: of three rows of text, where it is narrow of five.
   */
  private static final double LINE = 5.2;

  private static final double LINE_WHERE_NARROW = 6.8;

  /** From so many em on, names and titles fit into one row. */
  private static final double ROOMY = 80;

  private final Desk desk;
  private final Texts texts;
  private final Consumer<Path> open;
  private final SetsModel model;
  private final TextField find = new TextField();
  private final WrappedText summary = new WrappedText("sets-summary");
  private final WrappedText away = new WrappedText("sets-away", "needs");
  private final ListView<SetLine> list = new ListView<>();
  private final WrappedText instead = new WrappedText("sets-instead");
  private final VBox join = new VBox();
  private final VBox empty = new VBox(instead, join);
  private final VBox node = new VBox();
  private final ListChangeListener<SetLine> changed = _ -> showChosen();
  private final Repeating clock;
  private final Command openJob;
  private final Command moveSetups;
  private final Subscription following;
  private boolean choosing;

  /**
   * @param open opens the job of a folder
   */
  public SetsScreen(Desk desk, SetsSource source, Consumer<Path> open) {
    this(desk, open, new SetsModel(source, desk.texts(), desk.clock(), desk.tasks().ui()));
  }

  private SetsScreen(Desk desk, Consumer<Path> open, SetsModel model) {
    this.desk = desk;
    this.texts = desk.texts();
    this.open = open;
    this.model = model;
    this.clock = new Repeating(LOOK, desk.tasks().ui(), model::show);
    this.openJob = openCommand();
    this.moveSetups = moveCommand();
    makeField();
    makeList();
    summary.setId("sets-summary");
    summary.setMostLines(1);
    summary.setMinWidth(0);
    HBox.setHgrow(summary, Priority.ALWAYS);
    var head = new HBox(summary, find);
    head.getStyleClass().add("sets-head");
    head.setMinHeight(Region.USE_PREF_SIZE);
    away.setId("sets-away");
    instead.setId("sets-instead");
    join.getStyleClass().add("sets-join");
    join.getChildren().setAll(step("sets.join.store"), step("sets.join.add"));
    empty.getStyleClass().add("sets-empty");
    empty.setFocusTraversable(true);
    empty.setAccessibleRole(AccessibleRole.TEXT);
    var sheet = new StackPane(list, empty);
    StackPane.setAlignment(empty, Pos.TOP_LEFT);
    sheet.getStyleClass().addAll("paper-sheet", "sets-sheet");
    sheet.setMinHeight(0);
    VBox.setVgrow(sheet, Priority.ALWAYS);
    node.getStyleClass().add("sets-page");
    node.setMinHeight(0);
    node.getChildren().addAll(head, away, sheet, actions());
    model.lines().addListener(changed);
    following =
        Subscription.combine(
            model.said().subscribe(this::show),
            model.chosen().subscribe(_ -> showChosen()),
            list.getSelectionModel().selectedItemProperty().subscribe(this::chosen));
  }

  private void makeField() {
    find.setId("sets-find");
    find.setPromptText(texts.get("sets.find"));
    find.setAccessibleText(texts.get("sets.find"));
    find.textProperty().bindBidirectional(model.typed());
    find.addEventFilter(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            model.typed().set("");
            takeKeys();
            event.consume();
          } else if (event.getCode() == KeyCode.ENTER) {
            openChosen();
            event.consume();
          }
        });
    ListWalk.of(find, list);
    find.fontProperty().subscribe(_ -> fitLines());
    node.widthProperty().subscribe(_ -> fitLines());
  }

  private void fitLines() {
    double em = find.getFont().getSize();
    list.setFixedCellSize(em * (node.getWidth() >= ROOMY * em ? LINE : LINE_WHERE_NARROW));
  }

  private Node actions() {
    var row = new FlowPane();
    row.getStyleClass().addAll("set-actions", "sets-actions");
    for (var command : List.of(openJob, moveSetups)) {
      row.getChildren()
          .add(CommandControls.act(command, texts.get("sets.act." + command.word()), texts));
    }
    return row;
  }

  private void makeList() {
    list.setId("sets");
    list.getStyleClass().add("sets-list");
    list.setAccessibleText(texts.get("sets.page"));
    list.setCellFactory(_ -> new SetCell(texts));
    list.setPlaceholder(new Region());
    list.setOnMouseClicked(
        event -> {
          if (event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            openChosen();
          }
        });
    list.setContextMenu(
        new ContextMenu(CommandControls.item(openJob), CommandControls.item(moveSetups)));
    list.setItems(model.lines());
  }

  private VBox step(String key) {
    var command = new WrappedText("code", "sets-command");
    command.setText(texts.get(key));
    var step = new VBox(WrappedText.of(texts.get(key + ".what")), command);
    step.getStyleClass().add("sets-step");
    return step;
  }

  private void show(SetsModel.Said said) {
    summary.setText(said.summary());
    away.setText(said.away());
    shown(away, !said.away().isEmpty());
    instead.setText(said.instead());
    empty.setAccessibleText(said.instead());
    shown(empty, !said.instead().isEmpty());
    shown(join, said.join());
    list.setVisible(said.instead().isEmpty());
    find.setDisable(model.lines().isEmpty() && model.typed().get().isEmpty());
  }

  private static void shown(Node part, boolean now) {
    part.setVisible(now);
    part.setManaged(now);
  }

  private void chosen(SetLine line) {
    // A list that is filled anew chooses by itself; only what a person chose counts.
    if (!choosing && line != null) {
      model.chosen().set(Optional.of(line.job()));
    }
  }

  private void showChosen() {
    choosing = true;
    try {
      int at = model.chosenLine().map(model.lines()::indexOf).orElse(-1);
      if (at < 0) {
        list.getSelectionModel().clearSelection();
      } else if (list.getSelectionModel().getSelectedIndex() != at) {
        list.getSelectionModel().clearAndSelect(at);
        list.getFocusModel().focus(at);
      }
    } finally {
      choosing = false;
    }
  }

  /** Asks which setups of the chosen set are to be shot by which other one. */
  private void move() {
    model
        .moving()
        .ifPresent(
            moving ->
                line()
                    .ifPresent(
                        line ->
                            desk.tasks()
                                .run(
                                    texts.get("sets.move.asking"),
                                    _ -> moving.toShoot(line.job()),
                                    setups -> ask(moving, line, setups),
                                    desk::trouble)));
  }

  /** The chosen set, else the first. */
  private Optional<SetLine> line() {
    return model.chosenLine().or(() -> model.lines().stream().findFirst());
  }

  private void ask(SetupMoving moving, SetLine from, List<Moves.ToShoot> setups) {
    var dialog = new MoveDialog(setups, model.others(from.job()), texts);
    desk.dialogs().show(dialog.spec(from.name(), (codes, to) -> move(moving, from, to, codes)));
  }

  private void move(SetupMoving moving, SetLine from, SetLine to, List<String> codes) {
    desk.tasks()
        .run(
            texts.get("sets.move.moving"),
            _ -> moving.move(other(from), other(to), codes),
            moves -> desk.say(outcome(moves)),
            desk::trouble);
  }

  private static OtherJob other(SetLine line) {
    return new OtherJob(line.job(), line.name());
  }

  /** What a person has to know first: what stays, then what is not there yet. */
  private String outcome(List<SetupMove> moves) {
    var said =
        moves.stream()
            .filter(move -> MoveDescription.remedy(move).isPresent())
            .findFirst()
            .orElse(moves.getFirst());
    if (moves.size() > 1 && moves.stream().allMatch(this::arrived)) {
      return texts.get("sets.move.arrived", moves.size(), said.to().name());
    }
    var sentence = texts.say(MoveDescription.said(said)) + ".";
    return MoveDescription.remedy(said)
        .map(remedy -> sentence + " " + texts.say(remedy))
        .orElse(sentence);
  }

  private boolean arrived(SetupMove move) {
    return move.outcome() instanceof SetupMove.Outcome.Arrived;
  }

  private void takeKeys() {
    focus().requestFocus();
    if (model.chosenLine().isEmpty() && !model.lines().isEmpty()) {
      model.chosen().set(Optional.of(model.lines().getFirst().job()));
    }
  }

  private void openChosen() {
    line()
        .ifPresent(
            line ->
                line.folder()
                    .ifPresentOrElse(
                        open, () -> desk.say(texts.get("sets.noFolder", line.name()))));
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("sets.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    // Where there is no list, the keys are at what is said instead: they are never nowhere.
    return list.isVisible() ? list : empty;
  }

  private Command openCommand() {
    return new Command(
        ID + ".open",
        texts.get("command.sets.open"),
        Keys.plain(KeyCode.ENTER),
        this::openChosen,
        Bindings.createBooleanBinding(
            () -> model.chosenLine().isPresent(), model.chosen(), model.lines()));
  }

  private Command moveCommand() {
    return new Command(
        ID + ".move",
        texts.get("command.sets.move"),
        Keys.plain(KeyCode.M),
        this::move,
        Bindings.createBooleanBinding(
            () -> !model.lines().isEmpty() && model.moving().isPresent(), model.lines()));
  }

  @Override
  public List<Command> commands() {
    return List.of(
        openJob,
        moveSetups,
        Command.of(
            ID + ".find",
            texts.get("command.sets.find"),
            Keys.plain(KeyCode.SLASH),
            find::requestFocus));
  }

  @Override
  public void onShown() {
    model.follow();
    clock.start();
  }

  @Override
  public void onHidden() {
    clock.stop();
    model.pause();
  }

  @Override
  public Screen anew() {
    leave();
    return new SetsScreen(desk, open, model);
  }

  @Override
  public void dispose() {
    leave();
    model.pause();
  }

  private void leave() {
    clock.stop();
    following.unsubscribe();
    model.lines().removeListener(changed);
    find.textProperty().unbindBidirectional(model.typed());
    list.setItems(null);
  }
}
