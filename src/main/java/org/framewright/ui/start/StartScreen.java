package org.framewright.ui.start;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.InvalidationListener;
import javafx.beans.binding.Bindings;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.naming.Finding;
import org.framewright.ui.Desk;
import org.framewright.ui.Screen;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.CellBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.naming.FindingLine;
import org.framewright.ui.start.StartModel.ConventionFile;

/** The page on which a job is started or opened. */
public final class StartScreen implements Screen {
  /** Under which key the preferences keep the folders of the jobs opened lately. */
  public static final String RECENT_JOBS = "recent.jobs";

  private static final double BRANCH_HEIGHT = 26;
  private static final double JOB_HEIGHT = 44;

  private final Desk desk;
  private final Texts texts;
  private final StartModel model;
  private final Consumer<Path> editConvention;

  private final HBox node = new HBox();
  private final ComboBox<ConventionFile> convention = new ComboBox<>();
  private final VBox fields = new VBox();
  private final VBox conventionFindings = new VBox();
  private final VBox refused = new VBox();
  private final NameRuler ruler = new NameRuler();
  private final ListView<Branch> tree = new ListView<>();
  private final ListView<Path> jobs = new ListView<>();
  private final Label place = new Label();
  private final Button start = new Button();
  private final List<FieldRow> rows = new ArrayList<>();

  /**
   * @param conventionFolders where conventions lie that can be chosen
   * @param editConvention opens a convention for editing
   */
  public StartScreen(Desk desk, List<Path> conventionFolders, Consumer<Path> editConvention) {
    this.desk = desk;
    this.texts = desk.texts();
    this.editConvention = editConvention;
    this.model =
        new StartModel(
            desk.tasks(), texts, desk.preferences(), desk.clock(), desk::trouble, desk::openJob);
    node.getStyleClass().add("start");
    node.getChildren().addAll(form(), outcome());
    node.setOnDragOver(this::dragOver);
    node.setOnDragDropped(this::dropped);
    model.entries().addListener((InvalidationListener) _ -> showFields());
    model.preview().addListener(_ -> showPreview());
    model.conventionFindings().addListener((_, _, now) -> showFindings(conventionFindings, now));
    model.refused().addListener((_, _, now) -> showFindings(refused, now));
    model.gather(conventionFolders);
    showFields();
    showPreview();
  }

  private Region form() {
    var title = new Label(texts.get("start.title"));
    title.getStyleClass().add("sheet-title");

    convention.setId("convention");
    convention.setItems(model.conventions());
    convention.valueProperty().bindBidirectional(model.chosen());
    convention.setCellFactory(_ -> new ConventionCell());
    convention.setButtonCell(new ConventionCell());
    convention.setMaxWidth(Double.MAX_VALUE);
    convention.setAccessibleText(texts.get("start.convention"));
    HBox.setHgrow(convention, Priority.ALWAYS);
    var change = new Button(texts.get("start.changeConvention"));
    change.setMinWidth(Region.USE_PREF_SIZE);
    change.setOnAction(_ -> editConvention());
    change.disableProperty().bind(model.chosen().isNull());
    var conventionRow = new HBox(convention, change);
    conventionRow.getStyleClass().add("in-line");

    fields.getStyleClass().add("fields");
    conventionFindings.getStyleClass().add("findings");
    refused.getStyleClass().add("findings");

    place.setId("place");
    place.getStyleClass().add("place");
    place.setMaxWidth(Double.MAX_VALUE);
    place.setMinWidth(0);
    place.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    place
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model.place().get() == null
                        ? texts.get("start.noPlace")
                        : model.place().get().toString(),
                model.place()));
    HBox.setHgrow(place, Priority.ALWAYS);
    var choose = new Button(texts.get("start.choosePlace"));
    choose.setId("choose-place");
    choose.setMinWidth(Region.USE_PREF_SIZE);
    choose.setOnAction(_ -> choosePlace());
    var placeRow = new HBox(place, choose);
    placeRow.getStyleClass().add("in-line");

    var inside =
        new VBox(
            word("start.convention"),
            conventionRow,
            conventionFindings,
            fields,
            word("start.place"),
            placeRow);
    inside.getStyleClass().add("start-form");
    var scroll = new ScrollPane(inside);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
    VBox.setVgrow(scroll, Priority.ALWAYS);

    start.setId("start");
    start.getStyleClass().add("does-it");
    // Names have underscores of their own.
    start.setMnemonicParsing(false);
    start.setMaxWidth(Double.MAX_VALUE);
    start.textProperty().bind(model.startText());
    start.disableProperty().bind(model.canStart().not());
    start.setOnAction(_ -> model.start());
    var sheet = new VBox(title, scroll, refused, start);
    sheet.getStyleClass().addAll("paper-sheet", "start-sheet");
    return sheet;
  }

  private Region outcome() {
    var name = tableWord("start.jobName");
    var made = tableWord("start.made");
    tree.setFixedCellSize(BRANCH_HEIGHT);
    tree.setCellFactory(_ -> new BranchCell(texts));
    tree.getStyleClass().addAll("on-table", "tree-of-folders");
    tree.setFocusTraversable(false);
    tree.setAccessibleText(texts.get("start.made"));
    VBox.setVgrow(tree, Priority.ALWAYS);

    var open = tableWord("start.openTitle");
    jobs.setId("recent-jobs");
    jobs.setFixedCellSize(JOB_HEIGHT);
    jobs.setCellFactory(_ -> new JobCell());
    jobs.getStyleClass().addAll("on-table", "recent-jobs");
    jobs.setAccessibleText(texts.get("start.openTitle"));
    jobs.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            openChosen();
            event.consume();
          }
        });
    jobs.setOnMouseClicked(
        event -> {
          if (event.getClickCount() == 2) {
            openChosen();
          }
        });
    var folder = new Button(texts.get("start.openFolder"));
    folder.setId("open-folder");
    folder.setOnAction(_ -> openFolder());
    var drop = new Label(texts.get("start.drop"));
    drop.getStyleClass().add("quiet");
    drop.setWrapText(true);
    var openRow = new HBox(folder, drop);
    openRow.getStyleClass().add("in-line");

    var column = new VBox(name, ruler, made, tree, open, jobs, openRow);
    column.getStyleClass().add("start-outcome");
    HBox.setHgrow(column, Priority.ALWAYS);
    return column;
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("field-word");
    return label;
  }

  private Label tableWord(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("table-word");
    return label;
  }

  private void showFields() {
    var typing = holdsTheKeys();
    rows.forEach(FieldRow::dispose);
    rows.clear();
    fields.getChildren().clear();
    var later = false;
    for (var entry : model.entries()) {
      if (!entry.ofTheJob() && !later) {
        later = true;
        var label = new Label(texts.get("start.later"));
        label.getStyleClass().add("field-group");
        label.setWrapText(true);
        fields.getChildren().add(label);
      }
      var row = new FieldRow(entry, texts);
      rows.add(row);
      fields.getChildren().add(row);
    }
    if (typing) {
      focus().requestFocus();
    }
  }

  /** Whether the keys go to a field, which is about to be replaced. */
  private boolean holdsTheKeys() {
    var owner = fields.getScene() == null ? null : fields.getScene().getFocusOwner();
    while (owner != null && !owner.equals(fields)) {
      owner = owner.getParent();
    }
    return owner != null;
  }

  private void showPreview() {
    var labels = new HashMap<String, String>();
    model.entries().forEach(entry -> labels.put(entry.name(), entry.label()));
    var preview = model.preview().get();
    ruler.show(preview.map(Preview::ruler).orElse(List.of()), labels);
    tree.getItems().setAll(preview.map(Preview::tree).orElse(List.of()));
    if (preview.isPresent()) {
      showFindings(refused, preview.get().findings().getOrDefault("", List.of()));
    }
  }

  private void showFindings(VBox into, List<Finding> findings) {
    into.getChildren()
        .setAll(findings.stream().map(finding -> FindingLine.beside(texts, finding)).toList());
    into.setVisible(!findings.isEmpty());
    into.setManaged(!findings.isEmpty());
  }

  private void choosePlace() {
    desk.files()
        .folder(texts.get("start.choosePlaceTitle"), Optional.ofNullable(model.place().get()))
        .ifPresent(model.place()::set);
  }

  private void openFolder() {
    desk.files()
        .folder(texts.get("start.openFolderTitle"), Optional.ofNullable(model.place().get()))
        .ifPresent(desk::openJob);
  }

  private void openChosen() {
    var job = jobs.getSelectionModel().getSelectedItem();
    if (job != null) {
      desk.openJob(job);
    }
  }

  private void chooseConvention() {
    desk.files()
        .file(texts.get("start.chooseConventionTitle"), Optional.empty(), List.of("yaml", "yml"))
        .ifPresent(model::use);
  }

  private void editConvention() {
    if (model.chosen().get() != null) {
      editConvention.accept(model.chosen().get().file());
    }
  }

  /** The convention in use. */
  public Optional<Path> convention() {
    return Optional.ofNullable(model.chosen().get()).map(ConventionFile::file);
  }

  /** A convention was written: it is at hand and in use. */
  public void conventionSaved(Path file) {
    model.use(file);
  }

  private void dragOver(DragEvent event) {
    if (dropFolder(event) != null) {
      event.acceptTransferModes(TransferMode.LINK, TransferMode.COPY);
    }
    event.consume();
  }

  private void dropped(DragEvent event) {
    var folder = dropFolder(event);
    if (folder != null) {
      desk.openJob(folder);
    }
    event.setDropCompleted(folder != null);
    event.consume();
  }

  /** What is dropped, if it is one thing; whether it is a job is seen when it is opened. */
  private static Path dropFolder(DragEvent event) {
    var files = event.getDragboard().getFiles();
    return files.size() == 1 ? files.getFirst().toPath() : null;
  }

  @Override
  public String id() {
    return "start";
  }

  @Override
  public String title() {
    return texts.get("start.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return rows.stream()
        .filter(row -> row.lookup(".text-field") != null)
        .findFirst()
        .map(FieldRow::focus)
        .orElse(convention);
  }

  @Override
  public void onShown() {
    jobs.setItems(
        FXCollections.observableArrayList(
            desk.preferences().recent(RECENT_JOBS).stream().map(Path::of).toList()));
    if (!jobs.getItems().isEmpty()) {
      jobs.getSelectionModel().selectFirst();
    }
  }

  @Override
  public List<Command> commands() {
    return List.of(
        new Command(
            "start.start",
            texts.get("command.start.start"),
            Keys.shortcut(KeyCode.ENTER),
            model::start,
            model.canStart()),
        Command.of(
            "start.place",
            texts.get("command.start.place"),
            Keys.shortcut(KeyCode.P),
            this::choosePlace),
        Command.of(
            "start.open",
            texts.get("command.start.open"),
            Keys.shortcut(KeyCode.O),
            this::openFolder),
        Command.of(
            "start.recent",
            texts.get("command.start.recent"),
            Keys.shortcut(KeyCode.J),
            jobs::requestFocus),
        Command.of(
            "start.convention",
            texts.get("command.start.convention"),
            Keys.shortcut(KeyCode.L),
            this::chooseConvention),
        Command.of(
            "start.edit",
            texts.get("command.start.edit"),
            Keys.shortcut(KeyCode.E),
            this::editConvention));
  }

  @Override
  public void dispose() {
    rows.forEach(FieldRow::dispose);
    convention.valueProperty().unbindBidirectional(model.chosen());
  }

  /** A convention by its title, with the file's name beneath where there is room. */
  private static final class ConventionCell extends ListCell<ConventionFile> {
    @Override
    protected void updateItem(ConventionFile file, boolean empty) {
      super.updateItem(file, empty);
      setText(empty || file == null ? "" : file.title());
    }
  }

  /** A job by its folder's name, and where it lies. */
  private static final class JobCell extends ListCell<Path> {
    private final Label name = new Label();
    private final Label where = new Label();
    private final CellBox box = new CellBox(name, where);

    JobCell() {
      name.getStyleClass().add("job-name");
      where.getStyleClass().add("job-where");
      where.setTextOverrun(OverrunStyle.LEADING_ELLIPSIS);
    }

    @Override
    protected void updateItem(Path folder, boolean empty) {
      super.updateItem(folder, empty);
      if (empty || folder == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      name.setText(String.valueOf(folder.getFileName()));
      where.setText(String.valueOf(folder.getParent()));
      setGraphic(box);
      setAccessibleText(folder.toString());
    }
  }
}
