package org.framewright.ui.renaming;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.job.FrameNames;
import org.framewright.renaming.Batch;
import org.framewright.renaming.Renamer;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.task.Running;

/** The page of names: the plan, old to new, and the batches that can be taken back. */
public final class RenamesScreen implements Screen {
  private static final double BATCH_HEIGHT = 58;

  private final Desk desk;
  private final Texts texts;
  private final RenamesModel model;
  private final Function<Instant, String> time;

  private final VBox node = new VBox();
  private final TextField filter = new TextField();
  private final PlanTable table;
  private final ListView<Batch> batches = new ListView<>();
  private final Callable<Renamer> renamer;
  private final Callable<FrameNames> requests;
  private final RenameNotices notices;
  private final WrappedText why = new WrappedText("why");
  private final WrappedText remedy = new WrappedText("remedy");
  private final Button rename = new Button();
  private final Button undo = new Button();
  private final ProgressBar progress = new ProgressBar();
  private final Label progressWord = new Label();
  private final Button stop = new Button();
  private final Subscription following;

  /**
   * @param renamer of the job's folder; opened in the background
   * @param requests the names that its frames shall have; asked in the background
   * @param namesChanged runs when files got other names
   */
  public RenamesScreen(
      Desk desk, Callable<Renamer> renamer, Callable<FrameNames> requests, Runnable namesChanged) {
    this(
        desk,
        new RenamesModel(desk.tasks(), desk.texts(), desk::trouble, namesChanged),
        renamer,
        requests);
  }

  private RenamesScreen(
      Desk desk, RenamesModel model, Callable<Renamer> renamer, Callable<FrameNames> requests) {
    this.desk = desk;
    this.texts = desk.texts();
    this.time =
        at -> texts.formats().dayAndTime(LocalDateTime.ofInstant(at, ZoneId.systemDefault()));
    this.model = model;
    this.renamer = renamer;
    this.requests = requests;
    this.table = new PlanTable(model, texts, filter);
    this.notices = new RenameNotices(model, texts, time);
    node.getStyleClass().add("renames");
    var middle = new HBox(plan(), history());
    middle.getStyleClass().add("renames-middle");
    VBox.setVgrow(middle, Priority.ALWAYS);
    node.getChildren().addAll(totals(), notices, middle);
    following =
        Subscription.combine(
            model.interrupted().subscribe((_, now) -> now.ifPresent(_ -> desk.show(id()))),
            model.running().subscribe(this::showWork));
  }

  /** Shows what was renamed before, and comes to the front if a crash left something behind. */
  public void begin() {
    model.open(renamer, requests);
  }

  private Region totals() {
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    filter.setId("filter");
    filter.setPromptText(texts.get("renaming.filter"));
    filter.setAccessibleText(texts.get("renaming.filter"));
    filter.textProperty().bindBidirectional(model.filter());
    filter.setPrefColumnCount(20);
    var row =
        new HBox(
            total("blocked", model.blocked()),
            total("no-name", model.nameless()),
            total("ready", model.ready()),
            total("unchanged", model.unchanged()),
            gap,
            filter);
    row.getStyleClass().add("plan-totals");
    return row;
  }

  /** A total, which filters by its state when pressed. */
  private Button total(String word, ReadOnlyIntegerProperty count) {
    var button = new Button();
    button.setId("total-" + word);
    button.getStyleClass().addAll("total", word);
    var mark = new StatusMark();
    var state = PlanLine.State.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_'));
    mark.show(state);
    button.setGraphic(mark);
    button
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> texts.get("renaming.total." + word, count.get()), count));
    button.setMinWidth(Region.USE_PREF_SIZE);
    var filtering = state.word(texts);
    button.setOnAction(
        _ -> model.filter().set(model.filter().get().equals(filtering) ? "" : filtering));
    if (word.equals("no-name") || word.equals("blocked")) {
      button.visibleProperty().bind(count.greaterThan(0));
      button.managedProperty().bind(count.greaterThan(0));
    }
    return button;
  }

  private Region plan() {
    table.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> showReason(now));
    VBox.setVgrow(table, Priority.ALWAYS);

    why.setId("why");
    var reason = new VBox(why, remedy);
    reason.getStyleClass().add("reason");
    reason.setMinHeight(Region.USE_PREF_SIZE);

    rename.setId("rename");
    rename.getStyleClass().add("does-it");
    rename
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> texts.get("renaming.rename", model.ready().get()), model.ready()));
    rename.disableProperty().bind(model.canRename().not());
    rename.setOnAction(_ -> model.rename());
    rename.setMinWidth(Region.USE_PREF_SIZE);
    stop.setId("stop");
    stop.setText(texts.get("renaming.stop"));
    stop.setOnAction(_ -> model.stop());
    stop.setMinWidth(Region.USE_PREF_SIZE);
    progress.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(progress, Priority.ALWAYS);
    progressWord.setMinWidth(Region.USE_PREF_SIZE);
    var row = new HBox(progressWord, progress, stop, rename);
    row.getStyleClass().addAll("in-line", "does-row");

    var sheet = new VBox(table, reason, row);
    sheet.getStyleClass().addAll("paper-sheet", "plan-sheet");
    HBox.setHgrow(sheet, Priority.ALWAYS);
    return sheet;
  }

  private Region history() {
    var title = new Label(texts.get("renaming.batches"));
    title.getStyleClass().add("table-word");
    batches.setId("batches");
    batches.getStyleClass().add("on-table");
    batches.setItems(model.batches());
    batches.setFixedCellSize(BATCH_HEIGHT);
    batches.setCellFactory(_ -> new BatchCell(texts, time));
    batches.setPlaceholder(new Label(texts.get("renaming.noBatches")));
    batches.setAccessibleText(texts.get("renaming.batches"));
    VBox.setVgrow(batches, Priority.ALWAYS);
    undo.setId("undo");
    undo.setMaxWidth(Double.MAX_VALUE);
    undo.setOnAction(_ -> model.undo(chosenBatch()));
    var chosen = batches.getSelectionModel().selectedItemProperty();
    undo.textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    chosenBatch() == null
                        ? texts.get("renaming.undoNone")
                        : texts.get("renaming.undo", chosenBatch().renames()),
                chosen,
                model.batches()));
    undo.disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> !model.canUndo(chosenBatch()),
                chosen,
                model.idle(),
                model.interrupted(),
                model.batches()));
    var column = new VBox(title, batches, undo);
    column.getStyleClass().add("history");
    return column;
  }

  /** The chosen batch; else the latest that can be taken back. */
  private Batch chosenBatch() {
    var chosen = batches.getSelectionModel().getSelectedItem();
    return chosen != null
        ? chosen
        : model.batches().stream().filter(Batch::undoable).findFirst().orElse(null);
  }

  private void showReason(PlanLine line) {
    why.setText(line == null ? "" : line.why());
    remedy.setText(line == null ? "" : line.remedy());
  }

  private void showWork(Optional<Running> now) {
    progress.progressProperty().unbind();
    now.ifPresent(running -> progress.progressProperty().bind(running.progress()));
    progressWord.setText(now.map(Running::title).orElse(""));
    for (var part : List.of(progress, progressWord, stop)) {
      part.setVisible(now.isPresent());
    }
    rename.setVisible(now.isEmpty());
    rename.setManaged(now.isEmpty());
    stop.setManaged(now.isPresent());
  }

  @Override
  public String id() {
    return "names";
  }

  @Override
  public String title() {
    return texts.get("renaming.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return table;
  }

  @Override
  public List<Command> commands() {
    return List.of(
        new Command(
            "renaming.rename",
            texts.get("command.renaming.rename"),
            Keys.shortcut(KeyCode.ENTER),
            model::rename,
            model.canRename()),
        new Command(
            "renaming.stop",
            texts.get("command.renaming.stop"),
            Keys.plain(KeyCode.ESCAPE),
            model::stop,
            model.idle().not()),
        new Command(
            "renaming.look",
            texts.get("command.renaming.look"),
            Keys.plain(KeyCode.L),
            model::look,
            model.idle()),
        Command.of(
            "renaming.filter",
            texts.get("command.renaming.filter"),
            Keys.plain(KeyCode.SLASH),
            filter::requestFocus),
        Command.of(
            "renaming.all",
            texts.get("command.renaming.all"),
            Keys.plain(KeyCode.A),
            () -> model.filter().set("")),
        Command.of(
            "renaming.plan",
            texts.get("command.renaming.plan"),
            Keys.plain(KeyCode.P),
            table::requestFocus),
        Command.of(
            "renaming.batches",
            texts.get("command.renaming.batches"),
            Keys.plain(KeyCode.B),
            batches::requestFocus),
        Command.of(
            "renaming.undo",
            texts.get("command.renaming.undo"),
            Keys.plain(KeyCode.BACK_SPACE),
            () -> model.undo(chosenBatch())),
        new Command(
            "renaming.recover",
            texts.get("command.renaming.recover"),
            Keys.alt(KeyCode.R),
            model::recover,
            Bindings.createBooleanBinding(
                () -> model.interrupted().get().isPresent(), model.interrupted())));
  }

  @Override
  public void onShown() {
    model.look();
  }

  @Override
  public Screen anew() {
    dispose();
    return new RenamesScreen(desk, model, renamer, requests);
  }

  @Override
  public void dispose() {
    following.unsubscribe();
    notices.dispose();
    table.dispose();
    filter.textProperty().unbindBidirectional(model.filter());
    progress.progressProperty().unbind();
  }
}
