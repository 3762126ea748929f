package org.framewright.ui.lists;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.shotlist.Heading;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.session.JobSession;

/**
 * The page on which a client's list is looked at before it is taken: its columns at one side, what
 * comes of them at the other; in a small window one behind the other.
 */
public final class ListScreen implements Screen {
  private static final String ID = "lists";
  private static final String BOARD = "board";
  private static final String FOLDER = "board.listFolder";
  private static final List<String> ENDINGS = List.of("csv", "tsv", "txt", "xlsx");

  /** From this width, in ems, what comes of the list stands beside its columns. */
  private static final double BESIDE_EMS = 88;

  private static final double COLUMNS_SHARE = 0.58;

  private final Desk desk;
  private final Texts texts;
  private final JobSession session;
  private final ListModel model;
  private final HowPane how;
  private final ColumnsPane columns;
  private final ResultsPane results;
  private final ToggleButton columnsStep = new ToggleButton();
  private final ToggleButton resultsStep = new ToggleButton();
  private final HBox steps = new HBox(columnsStep, resultsStep);
  private final HBox parts = new HBox();
  private final Button take = new Button();
  private final VBox node = new VBox();
  private final List<Command> commands;
  private final Subscription following;

  /** A menu or a list of choices was closed by the key that is being read now. */
  private boolean menuGone;

  /** The file that was shown last: of another one the step to begin with is chosen anew. */
  private Optional<Path> stepOf = Optional.empty();

  /** The lists of a job. */
  public ListScreen(Desk desk, JobSession session) {
    this(desk, session, new ListModel(session, desk.tasks(), desk.texts(), desk::trouble));
  }

  private ListScreen(Desk desk, JobSession session, ListModel model) {
    this.desk = desk;
    this.texts = desk.texts();
    this.session = session;
    this.model = model;
    this.how = new HowPane(model, texts, this::askAnother, this::menuIsGone);
    this.columns = new ColumnsPane(model, texts, this::menuIsGone);
    this.results = new ResultsPane(model, texts);
    build();
    this.commands = makeCommands();
    this.following =
        Subscription.combine(
            model.looked().subscribe(_ -> show()), model.accepted().subscribe(_ -> showTake()));
  }

  private void build() {
    var group = new ToggleGroup();
    columnsStep.setId("step-columns");
    resultsStep.setId("step-results");
    for (var step : List.of(columnsStep, resultsStep)) {
      step.setToggleGroup(group);
      step.getStyleClass().add("step");
      step.setMnemonicParsing(false);
    }
    columnsStep.setText(texts.get("lists.columns"));
    columnsStep.setSelected(true);
    columnsStep.setOnAction(_ -> goTo(true));
    resultsStep.setOnAction(_ -> goTo(false));
    steps.getStyleClass().add("steps");
    parts.getStyleClass().add("list-parts");
    VBox.setVgrow(parts, Priority.ALWAYS);
    parts.setMinHeight(0);
    HBox.setHgrow(columns, Priority.ALWAYS);
    HBox.setHgrow(results, Priority.ALWAYS);
    take.setId("take-list");
    take.getStyleClass().add("does-it");
    take.setMnemonicParsing(false);
    take.setMinWidth(Region.USE_PREF_SIZE);
    take.disableProperty().bind(model.canTake().not());
    take.setOnAction(_ -> take());
    var cancel = new Button(texts.get("lists.cancel"));
    cancel.setId("cancel-list");
    cancel.setMinWidth(Region.USE_PREF_SIZE);
    cancel.setOnAction(_ -> cancel());
    var does = new HBox(cancel, take);
    does.getStyleClass().addAll("in-line", "does-row");
    node.getStyleClass().addAll("paper-sheet", "list-import");
    node.getChildren().addAll(how, steps, parts, does);
    node.widthProperty().addListener(_ -> arrange());
    // In a turn of its own: while styles are given, no part may leave or join.
    take.fontProperty().addListener(_ -> desk.tasks().ui().execute(this::arrange));
    node.setOnDragOver(ListScreen::dragOver);
    node.setOnDragDropped(this::dropped);
    arrange();
  }

  private List<Command> makeCommands() {
    return List.of(
        command("take", Keys.shortcut(KeyCode.ENTER), this::take, model.canTake()),
        command("cancel", Keys.plain(KeyCode.ESCAPE), this::cancelByKey),
        command("columns", Keys.alt(KeyCode.DIGIT1), () -> goTo(true)),
        command("results", Keys.alt(KeyCode.DIGIT2), () -> goTo(false)),
        command("sheet", Keys.alt(KeyCode.S), () -> open(how.sheet())),
        command("encoding", Keys.alt(KeyCode.E), () -> open(how.encoding())),
        command("oneSetupPer", Keys.alt(KeyCode.P), () -> open(how.oneSetupPer())),
        command("afresh", Keys.alt(KeyCode.F), model::readAfresh),
        command("again", Keys.shortcut(KeyCode.R), model::readAgain),
        command("another", Keys.shortcut(KeyCode.O), this::askAnother));
  }

  private Command command(String id, KeyCodeCombination key, Runnable action) {
    return Command.of("lists." + id, texts.get("command.lists." + id), key, action);
  }

  private Command command(
      String id, KeyCodeCombination key, Runnable action, ObservableBooleanValue enabled) {
    return new Command("lists." + id, texts.get("command.lists." + id), key, action, enabled);
  }

  /** Opens a list of choices, where there is one. */
  private static void open(ComboBox<String> choices) {
    if (choices.getParent().isVisible()) {
      choices.requestFocus();
      choices.show();
    }
  }

  // Which list

  /** Shows the list that is looked at; where there is none, asks for one. */
  public void ask() {
    if (model.looked().get().file().isPresent()) {
      desk.show(ID);
    } else {
      askAnother();
    }
  }

  private void askAnother() {
    desk.files()
        .file(texts.get("lists.choose"), desk.preferences().path(FOLDER), ENDINGS)
        .ifPresent(this::open);
  }

  private void open(Path file) {
    desk.preferences().put(FOLDER, file.toAbsolutePath().getParent().toString());
    stepOf = Optional.empty();
    model.open(file);
    desk.show(ID);
  }

  private static void dragOver(DragEvent event) {
    if (event.getDragboard().hasFiles()) {
      event.acceptTransferModes(TransferMode.COPY);
    }
    event.consume();
  }

  private void dropped(DragEvent event) {
    var files = event.getDragboard().getFiles();
    if (files != null && !files.isEmpty()) {
      open(files.getFirst().toPath());
      event.setDropCompleted(true);
    }
    event.consume();
  }

  // What is shown

  private void show() {
    how.show();
    columns.show();
    results.show();
    resultsStep.setText(texts.get(model.needsAPerson() ? "lists.wrong" : "lists.results"));
    showTake();
    var looked = model.looked().get();
    if (looked.isRead() && !stepOf.equals(looked.file())) {
      stepOf = looked.file();
      begin(looked);
    }
  }

  /** Where the setup is not known, its column is asked for; else what comes of the list is. */
  private void begin(Looked looked) {
    boolean isAsked =
        looked.refused().isPresent()
            && looked.reading().stream()
                .flatMap(reading -> reading.columns().stream())
                .noneMatch(column -> column.taken() == Heading.SETUP);
    select(isAsked);
    if (node.getScene() != null) {
      focus().requestFocus();
    }
  }

  private void showTake() {
    take.setText(
        model.accepted().get() == 0 && model.isReordered()
            ? texts.get("lists.takeOrder")
            : texts.get("lists.take", model.accepted().get()));
  }

  private boolean isBeside() {
    return node.getWidth() >= BESIDE_EMS * take.getFont().getSize();
  }

  private void arrange() {
    var beside = isBeside();
    steps.setVisible(!beside);
    steps.setManaged(!beside);
    columns.showTitle(beside);
    results.showTitle(beside);
    var width = node.getWidth();
    columns.setPrefWidth(beside ? width * COLUMNS_SHARE : width);
    results.setPrefWidth(beside ? width * (1 - COLUMNS_SHARE) : width);
    var shown =
        beside
            ? List.<Node>of(columns, results)
            : List.<Node>of(columnsStep.isSelected() ? columns : results);
    if (!parts.getChildren().equals(shown)) {
      parts.getChildren().setAll(shown);
    }
  }

  private void select(boolean ofColumns) {
    columnsStep.setSelected(ofColumns);
    resultsStep.setSelected(!ofColumns);
    arrange();
  }

  private void goTo(boolean ofColumns) {
    select(ofColumns);
    focus().requestFocus();
  }

  // What is done

  private void take() {
    model.take(
        taken -> {
          desk.say(texts.get("lists.done", taken));
          desk.show(BOARD);
        });
  }

  private void cancel() {
    model.cancel();
    desk.say(texts.get("lists.cancelled"));
    desk.show(BOARD);
  }

  /** Escape closes a menu first. */
  private void cancelByKey() {
    if (!menuGone) {
      cancel();
    }
  }

  private void menuIsGone() {
    menuGone = true;
    desk.tasks().ui().execute(() -> menuGone = false);
  }

  @Override
  public String id() {
    return ID;
  }

  @Override
  public String title() {
    return texts.get("lists.page");
  }

  @Override
  public Optional<String> within() {
    return Optional.of(BOARD);
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return columnsStep.isSelected() ? columns.list() : results.list();
  }

  @Override
  public List<Command> commands() {
    return commands;
  }

  @Override
  public Screen anew() {
    following.unsubscribe();
    return new ListScreen(desk, session, model);
  }

  @Override
  public void dispose() {
    following.unsubscribe();
    model.dispose();
  }
}
