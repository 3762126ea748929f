package org.framewright.ui.renaming;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.beans.binding.Bindings;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import org.framewright.job.FrameNames;
import org.framewright.renaming.Batch;
import org.framewright.renaming.BatchState;
import org.framewright.renaming.Interrupted;
import org.framewright.renaming.Renamer;
import org.framewright.ui.Desk;
import org.framewright.ui.Screen;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Running;

/** The page of names: the plan, old to new, and the batches that can be taken back. */
public final class RenamesScreen implements Screen {
  private static final double LINE_HEIGHT = 32;
  private static final double BATCH_HEIGHT = 58;

  private final Texts texts;
  private final RenamesModel model;
  private final DateTimeFormatter time;

  private final VBox node = new VBox();
  private final TextField filter = new TextField();
  private final TableView<PlanLine> table = new TableView<>();
  private final ListView<Batch> batches = new ListView<>();
  private final Callable<Renamer> renamer;
  private final Callable<FrameNames> wishes;
  private final VBox notices = new VBox();
  private final Label why = new Label();
  private final Label remedy = new Label();
  private final Button rename = new Button();
  private final Button undo = new Button();
  private final ProgressBar progress = new ProgressBar();
  private final Label progressWord = new Label();
  private final Button stop = new Button();

  /**
   * @param renamer of the job's folder; opened in the background
   * @param wishes the names that its frames shall have; asked in the background
   * @param namesChanged told when files got other names
   */
  public RenamesScreen(
      Desk desk, Callable<Renamer> renamer, Callable<FrameNames> wishes, Runnable namesChanged) {
    this.texts = desk.texts();
    this.time =
        DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
            .withLocale(texts.locale())
            .withZone(ZoneId.systemDefault());
    this.model = new RenamesModel(desk.tasks(), texts, desk::trouble, namesChanged);
    node.getStyleClass().add("renames");
    var middle = new HBox(plan(), history());
    middle.getStyleClass().add("renames-middle");
    VBox.setVgrow(middle, Priority.ALWAYS);
    notices.getStyleClass().add("notices");
    node.getChildren().addAll(totals(), notices, middle);
    model
        .interrupted()
        .addListener(
            (_, _, now) -> {
              showNotices();
              if (now.isPresent()) {
                desk.show(id());
              }
            });
    model.told().addListener(_ -> showNotices());
    model.running().addListener((_, _, now) -> showWork(now));
    showWork(Optional.empty());
    showNotices();
    this.renamer = renamer;
    this.wishes = wishes;
  }

  /** Tells what was renamed before, and comes to the front if a crash left something behind. */
  public void begin() {
    model.open(renamer, wishes);
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
    mark.show(PlanLine.State.valueOf(word.toUpperCase(Locale.ROOT).replace('-', '_')));
    button.setGraphic(mark);
    button
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () -> texts.get("renaming.total." + word, count.get()), count));
    button.setMinWidth(Region.USE_PREF_SIZE);
    var filtering = word.replace('-', ' ');
    button.setOnAction(
        _ -> model.filter().set(model.filter().get().equals(filtering) ? "" : filtering));
    if (word.equals("no-name") || word.equals("blocked")) {
      button.visibleProperty().bind(count.greaterThan(0));
      button.managedProperty().bind(count.greaterThan(0));
    }
    return button;
  }

  private Region plan() {
    table.setId("plan");
    table.setFixedCellSize(LINE_HEIGHT);
    table.setItems(model.lines());
    table.setColumnResizePolicy(TableView.CONSTRAINED_RESIZE_POLICY_FLEX_LAST_COLUMN);
    table.setPlaceholder(new Label(texts.get("renaming.noLines")));
    table.setAccessibleText(texts.get("renaming.plan"));
    var from = column("renaming.column.from", 170, PlanLine::from, () -> new NameCell("from"));
    var way = column("renaming.column.way", 44, line -> line, MarkCell::new);
    var to = column("renaming.column.to", 290, PlanLine::to, () -> new NameCell("to"));
    var files =
        column("renaming.column.files", 130, PlanLine::together, () -> new NameCell("endings"));
    var state = column("renaming.column.state", 170, line -> line, StateCell::new);
    from.getStyleClass().add("from");
    way.setMinWidth(way.getPrefWidth());
    table.getColumns().setAll(List.of(from, way, to, files, state));
    Runnable fit =
        () -> {
          var texts = model.widest().get();
          fit(from, texts.from(), 0.25);
          fit(to, texts.to(), 0.5);
          fit(files, texts.endings(), 0.25);
        };
    model.widest().subscribe(fit);
    table.widthProperty().subscribe(fit);
    filter.fontProperty().subscribe(fit);
    table.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> showReason(now));
    VBox.setVgrow(table, Priority.ALWAYS);

    why.getStyleClass().add("why");
    why.setWrapText(true);
    why.setId("why");
    remedy.getStyleClass().add("remedy");
    remedy.setWrapText(true);
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
    batches.setCellFactory(_ -> new BatchCell());
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

  private <T> TableColumn<PlanLine, T> column(
      String title,
      double width,
      Function<PlanLine, T> value,
      Supplier<TableCell<PlanLine, T>> cell) {
    var column = new TableColumn<PlanLine, T>(texts.get(title));
    column.setPrefWidth(width);
    column.setCellValueFactory(
        line -> new ReadOnlyObjectWrapper<>(value.apply(line.getValue())).getReadOnlyProperty());
    column.setCellFactory(_ -> cell.get());
    column.setSortable(false);
    column.setReorderable(false);
    return column;
  }

  /** A column of names has room for its longest text, up to a share of the table's width. */
  private void fit(TableColumn<PlanLine, ?> column, String longest, double share) {
    var size = filter.getFont().getSize();
    var text = new Text(longest + "MM");
    text.setFont(Font.font("monospace", FontWeight.BOLD, size));
    var room = Math.ceil(text.getLayoutBounds().getWidth());
    var least = Math.max(4 * size, Math.min(room, share * table.getWidth()));
    column.setMinWidth(least);
    column.setPrefWidth(least);
  }

  private void showReason(PlanLine line) {
    why.setText(line == null ? "" : line.why());
    remedy.setText(line == null ? "" : line.remedy());
  }

  private void showNotices() {
    notices.getChildren().clear();
    model.interrupted().get().ifPresent(left -> notices.getChildren().add(recovery(left)));
    model.told().get().ifPresent(told -> notices.getChildren().add(notice(told)));
    notices.setVisible(!notices.getChildren().isEmpty());
    notices.setManaged(notices.isVisible());
  }

  private Region recovery(Interrupted left) {
    var what = new Label(texts.get("renaming.interrupted", time.format(left.at()), left.renames()));
    what.setWrapText(true);
    what.getStyleClass().add("notice-what");
    var safe = new Label(texts.get("renaming.interruptedSafe"));
    safe.setWrapText(true);
    var said = new VBox(what, safe);
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    var recover = new Button(texts.get("renaming.recover"));
    recover.setId("recover");
    recover.getStyleClass().add("does-it");
    recover.setMinWidth(Region.USE_PREF_SIZE);
    recover.setOnAction(_ -> model.recover());
    recover.disableProperty().bind(model.idle().not());
    var box = new HBox(said, recover);
    box.setId("interrupted");
    box.getStyleClass().addAll("paper-sheet", "notice", "needs");
    return box;
  }

  private Region notice(WorkResult told) {
    var said = new VBox();
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    said.getChildren().add(wrapped(told.what(), "notice-what"));
    if (!told.remedy().isEmpty()) {
      said.getChildren().add(wrapped(told.remedy(), "remedy"));
    }
    for (var file : told.files()) {
      said.getChildren()
          .add(wrapped(file.path() + ": " + file.why() + " " + file.remedy(), "code"));
    }
    var close = new Button(texts.get("dialog.close"));
    close.setMinWidth(Region.USE_PREF_SIZE);
    close.setOnAction(_ -> model.heard());
    var box = new HBox(said, close);
    box.setId("told-rename");
    box.setAccessibleRole(AccessibleRole.TEXT);
    box.setAccessibleText(told.what() + " " + told.remedy());
    box.getStyleClass().addAll("paper-sheet", "notice", told.needsAPerson() ? "needs" : "fine");
    return box;
  }

  private static Label wrapped(String text, String styleClass) {
    var label = new Label(text);
    label.setWrapText(true);
    label.getStyleClass().add(styleClass);
    return label;
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
  public void dispose() {
    filter.textProperty().unbindBidirectional(model.filter());
    progress.progressProperty().unbind();
  }

  /** The mark between the name now and the name to be. */
  private static final class MarkCell extends TableCell<PlanLine, PlanLine> {
    private final StatusMark mark = new StatusMark();

    MarkCell() {
      getStyleClass().add("mark-cell");
    }

    @Override
    protected void updateItem(PlanLine line, boolean empty) {
      super.updateItem(line, empty);
      setGraphic(empty || line == null ? null : mark);
      if (line != null) {
        mark.show(line.state());
      }
    }
  }

  /** The state's word, and why it is so. */
  private final class StateCell extends TableCell<PlanLine, PlanLine> {
    StateCell() {
      getStyleClass().add("state-cell");
    }

    @Override
    protected void updateItem(PlanLine line, boolean empty) {
      super.updateItem(line, empty);
      getStyleClass().removeAll("blocked", "no-name", "skipped");
      if (empty || line == null) {
        setText("");
        return;
      }
      var word = texts.get("renaming.state." + line.state().word());
      setText(line.why().isEmpty() ? word : texts.get("renaming.because", word, line.why()));
      getStyleClass().add(line.state().word());
    }
  }

  private static final class NameCell extends TableCell<PlanLine, String> {
    NameCell(String styleClass) {
      getStyleClass().addAll("name-cell", styleClass);
      setTextOverrun(
          styleClass.equals("from") ? OverrunStyle.LEADING_ELLIPSIS : OverrunStyle.CENTER_ELLIPSIS);
    }

    @Override
    protected void updateItem(String text, boolean empty) {
      super.updateItem(text, empty);
      setText(empty || text == null ? "" : text);
    }
  }

  private final class BatchCell extends ListCell<Batch> {
    private final Label when = new Label();
    private final Label what = new Label();
    private final Label example = new Label();
    private final CellBox box = new CellBox(when, what, example);

    BatchCell() {
      when.getStyleClass().add("batch-when");
      example.getStyleClass().add("batch-example");
    }

    @Override
    protected void updateItem(Batch batch, boolean empty) {
      super.updateItem(batch, empty);
      if (empty || batch == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      when.setText(time.format(batch.at()));
      what.setText(describe(batch));
      example.setText(batch.state() == BatchState.UNREADABLE ? batch.trouble() : batch.example());
      setGraphic(box);
      setAccessibleText(when.getText() + ", " + what.getText() + ", " + example.getText());
    }

    private String describe(Batch batch) {
      if (batch.state() == BatchState.DONE && batch.undoes().isPresent()) {
        return texts.get("renaming.batch.undo", batch.renames());
      }
      if (batch.state() == BatchState.DONE && batch.undoneBy().isPresent()) {
        return texts.get("renaming.batch.undone", batch.renames());
      }
      return texts.get(
          "renaming.batch." + batch.state().name().toLowerCase(Locale.ROOT), batch.renames());
    }
  }
}
