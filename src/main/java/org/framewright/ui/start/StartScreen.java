package org.framewright.ui.start;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.input.DragEvent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.job.JobException;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.Desk;
import org.framewright.ui.page.Screen;
import org.framewright.ui.start.StartModel.KnownConvention;

/** The page on which a job is started or opened. */
public final class StartScreen implements Screen {
  /** What other parts of the app call this page by. */
  public static final String ID = "start";

  /** Under which key the preferences keep the folders of the jobs opened lately. */
  public static final String RECENT_JOBS = "recent.jobs";

  private static final double BRANCH_HEIGHT = 26;

  private final Desk desk;
  private final Texts texts;
  private final StartModel model;
  private final Consumer<Path> editConvention;
  private final Runnable proposeConvention;
  private final StartForm form;
  private final NameRuler ruler = new NameRuler();
  private final ListView<Branch> tree = new ListView<>();
  private final RecentJobsModel recent;
  private final RecentJobs jobs;
  private final VBox recently = new VBox();
  private final HBox node;
  private final Subscription following;

  /**
   * @param conventionFolders where conventions lie that can be chosen
   * @param editConvention opens a convention for editing
   * @param proposeConvention shows the page on which one is proposed from names in use
   */
  public StartScreen(
      Desk desk,
      List<Path> conventionFolders,
      Consumer<Path> editConvention,
      Runnable proposeConvention) {
    this(
        desk,
        new StartModel(
            desk.tasks(),
            desk.texts(),
            desk.preferences(),
            desk.clock(),
            desk::trouble,
            desk::openJob),
        new RecentJobsModel(desk.tasks(), desk.clock(), failure -> inWords(failure, desk.texts())),
        editConvention,
        proposeConvention);
    model.gather(conventionFolders);
  }

  private StartScreen(
      Desk desk,
      StartModel model,
      RecentJobsModel recent,
      Consumer<Path> editConvention,
      Runnable proposeConvention) {
    this.desk = desk;
    this.texts = desk.texts();
    this.model = model;
    this.editConvention = editConvention;
    this.proposeConvention = proposeConvention;
    this.form =
        new StartForm(model, texts, this::editConvention, proposeConvention, this::choosePlace);
    this.recent = recent;
    this.jobs = new RecentJobs(recent, texts, desk.clock().getZone(), desk::openJob);
    this.node = new HBox(form, outcome());
    node.getStyleClass().add("start");
    node.setOnDragOver(StartScreen::dragOver);
    node.setOnDragDropped(this::dropped);
    following = model.preview().subscribe(this::show);
  }

  private Region outcome() {
    tree.setFixedCellSize(BRANCH_HEIGHT);
    tree.setCellFactory(_ -> new BranchCell(texts));
    tree.getStyleClass().addAll("on-table", "tree-of-folders");
    tree.setFocusTraversable(false);
    tree.setAccessibleText(texts.get("start.made"));
    var folder = new Button(texts.get("start.openFolder"));
    folder.setId("open-folder");
    folder.setMinWidth(Region.USE_PREF_SIZE);
    folder.setOnAction(_ -> openFolder());
    var openRow = new HBox(folder, WrappedText.of(texts.get("start.drop"), "quiet"));
    openRow.getStyleClass().add("in-line");
    var column =
        new VBox(word("start.jobName"), ruler, word("start.made"), tree, recently, openRow);
    recently.getChildren().setAll(word("start.openTitle"), jobs);
    recently.getStyleClass().add("recently");
    VBox.setVgrow(jobs, Priority.ALWAYS);
    VBox.setVgrow(recently, Priority.ALWAYS);
    column.getStyleClass().add("start-outcome");
    HBox.setHgrow(column, Priority.ALWAYS);
    return column;
  }

  /** Why a job cannot be read, for its line. */
  private static Problem inWords(Throwable failure, Texts texts) {
    return switch (failure) {
      case JobException e -> e.problem();
      case IOException e -> FileProblems.of(e);
      default -> new Problem(texts.get("start.job.unreadable"), "");
    };
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("table-word");
    return label;
  }

  private void show(Optional<JobPreview> preview) {
    var labels = new HashMap<String, String>();
    model.entries().forEach(entry -> labels.put(entry.name(), entry.label()));
    ruler.show(preview.map(JobPreview::ruler).orElse(List.of()), labels);
    tree.getItems().setAll(preview.map(JobPreview::tree).orElse(List.of()));
    preview.ifPresent(now -> form.showRefused(now.findings().getOrDefault("", List.of())));
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

  private void chooseConvention() {
    desk.files()
        .file(texts.get("start.chooseConventionTitle"), Optional.empty(), List.of("yaml", "yml"))
        .ifPresent(model::use);
  }

  private void editConvention() {
    convention().ifPresent(editConvention);
  }

  /** The convention in use. */
  public Optional<Path> convention() {
    return Optional.ofNullable(model.chosen().get()).map(KnownConvention::file);
  }

  /** A convention was written: it is at hand and in use. */
  public void conventionSaved(Path file) {
    model.use(file);
  }

  private static void dragOver(DragEvent event) {
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
    return ID;
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
    return recent.jobs().isEmpty() ? form.focus() : jobs;
  }

  @Override
  public void onShown() {
    model.offerSettings();
    var folders = desk.preferences().recentPaths(RECENT_JOBS);
    recently.setVisible(!folders.isEmpty());
    recently.setManaged(!folders.isEmpty());
    VBox.setVgrow(tree, folders.isEmpty() ? Priority.ALWAYS : Priority.SOMETIMES);
    recent.show(folders);
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
            this::editConvention),
        Command.of(
            "start.fromNames",
            texts.get("command.start.fromNames"),
            Keys.shortcut(KeyCode.N),
            proposeConvention));
  }

  @Override
  public Screen anew() {
    dispose();
    return new StartScreen(desk, model, recent, editConvention, proposeConvention);
  }

  @Override
  public void dispose() {
    following.unsubscribe();
    form.dispose();
    jobs.dispose();
  }
}
