package org.framewright.ui.naming;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.control.TextFormatter;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.ui.Desk;
import org.framewright.ui.Screen;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;

/** The page on which a convention is written, with its proof beside it. */
public final class ConventionScreen implements Screen {
  private static final double FINDING_HEIGHT = 52;
  private static final double EXAMPLE_HEIGHT = 46;
  private static final int EXAMPLES_SHOWN = 5;
  private static final int FINDINGS_SHOWN = 6;

  private final Desk desk;
  private final Texts texts;
  private final ConventionModel model;
  private final Runnable whenEmpty;

  private final HBox node = new HBox();
  private final TextArea area = new TextArea();
  private final Gutter gutter = new Gutter(area);
  private final ListView<Finding> findings = new ListView<>();
  private final ListView<Checked.Example> examples = new ListView<>();
  private final WitnessPane witness;
  private final VBox shown = new VBox();
  private final Label verdict = new Label();
  private final Label said = new Label();
  private final Button save = new Button();

  /**
   * @param saved told which file was written
   * @param whenEmpty asked to open a convention when the page is shown without one
   */
  public ConventionScreen(Desk desk, Consumer<Path> saved, Runnable whenEmpty) {
    this.desk = desk;
    this.whenEmpty = whenEmpty;
    this.texts = desk.texts();
    this.model = new ConventionModel(desk.tasks(), texts, desk::trouble, saved);
    this.witness = new WitnessPane(texts);
    node.getStyleClass().add("convention");
    node.getChildren().addAll(writing(), proof());
    model.checked().addListener((_, _, now) -> show(now));
    model.said().addListener((_, _, now) -> say(now));
    show(Checked.NOTHING);
    say(Optional.empty());
  }

  /**
   * Opens a convention's file.
   *
   * @param asDraft whether a new one begins there, to be saved elsewhere
   */
  public void open(Path file, boolean asDraft) {
    model.open(file, asDraft);
  }

  private Region writing() {
    var title = new Label();
    title.getStyleClass().add("sheet-title");
    title
        .textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model
                        .file()
                        .get()
                        .map(file -> file.getFileName().toString())
                        .orElse(texts.get("naming.draft")),
                model.file()));
    var unsaved = new Label(texts.get("naming.unsaved"));
    unsaved.getStyleClass().add("unsaved");
    unsaved.visibleProperty().bind(model.changed());
    var head = new HBox(title, unsaved);
    head.getStyleClass().add("in-line");

    area.setId("convention-text");
    area.getStyleClass().add("code-area");
    area.setWrapText(false);
    area.textProperty().bindBidirectional(model.text());
    area.setAccessibleText(texts.get("naming.text"));
    HBox.setHgrow(area, Priority.ALWAYS);
    var paper = new HBox(gutter, area);
    paper.getStyleClass().add("paper");
    VBox.setVgrow(paper, Priority.ALWAYS);

    save.setId("save");
    save.getStyleClass().add("does-it");
    save.setMnemonicParsing(false);
    save.textProperty()
        .bind(
            Bindings.createStringBinding(
                () ->
                    model
                        .file()
                        .get()
                        .map(file -> texts.get("naming.save", file.getFileName().toString()))
                        .orElse(texts.get("naming.saveNot")),
                model.file()));
    save.disableProperty().bind(model.canSave().not());
    save.setOnAction(_ -> model.save());
    var saveAs = new Button(texts.get("naming.saveAs"));
    saveAs.setId("save-as");
    saveAs.setOnAction(_ -> saveAs());
    var back = new Button(texts.get("naming.revert"));
    back.disableProperty().bind(model.changed().not());
    back.setOnAction(_ -> model.revert());
    said.setWrapText(true);
    said.setId("said");
    said.setMinWidth(0);
    said.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(said, Priority.ALWAYS);
    var buttons = new HBox(save, saveAs, back);
    buttons.getStyleClass().add("in-line");

    var sheet = new VBox(head, paper, said, buttons);
    sheet.getStyleClass().addAll("paper-sheet", "writing");
    HBox.setHgrow(sheet, Priority.ALWAYS);
    return sheet;
  }

  private Region proof() {
    verdict.getStyleClass().add("verdict");
    verdict.setId("verdict");
    verdict.setWrapText(true);
    verdict.setMinHeight(Region.USE_PREF_SIZE);

    var planned = new TextField();
    planned.setId("frames-planned");
    planned.setPrefColumnCount(6);
    planned.setTextFormatter(
        new TextFormatter<>(
            change -> change.getControlNewText().matches("\\d{0,9}") ? change : null));
    planned
        .textProperty()
        .addListener(
            (_, _, now) -> model.framesPlanned().set(now.isEmpty() ? 0 : Long.parseLong(now)));
    var plannedWord = new Label(texts.get("naming.planned"));
    plannedWord.setLabelFor(planned);
    plannedWord.getStyleClass().add("quiet");
    var plannedRow = new HBox(plannedWord, planned);
    plannedRow.getStyleClass().add("in-line");

    examples.setFixedCellSize(EXAMPLE_HEIGHT);
    examples.setCellFactory(_ -> new ExampleCell());
    examples.getStyleClass().addAll("on-table", "examples");
    examples.setFocusTraversable(false);
    examples.setAccessibleText(texts.get("naming.examples"));
    examples.setMinHeight(EXAMPLE_HEIGHT);

    findings.setId("findings");
    findings.setFixedCellSize(FINDING_HEIGHT);
    findings.setCellFactory(_ -> new FindingCell());
    findings.setAccessibleText(texts.get("naming.findings"));
    findings.setPlaceholder(new Label(texts.get("naming.noFindings")));
    findings.setMinHeight(FINDING_HEIGHT * 2);
    findings
        .getSelectionModel()
        .selectedItemProperty()
        .addListener((_, _, now) -> witness.show(now));
    findings.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            goTo(findings.getSelectionModel().getSelectedItem());
            event.consume();
          }
        });
    findings.setOnMouseClicked(_ -> goTo(findings.getSelectionModel().getSelectedItem()));

    var scroll = new ScrollPane(witness);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("witness-scroll");
    VBox.setVgrow(scroll, Priority.ALWAYS);
    shown.getChildren().setAll(word("naming.shown"), scroll);
    shown.getStyleClass().add("shown");
    VBox.setVgrow(shown, Priority.ALWAYS);

    var column = new VBox(word("naming.examples"), examples, verdict, plannedRow, findings, shown);
    column.getStyleClass().add("proof");
    return column;
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("table-word");
    return label;
  }

  private void show(Checked now) {
    var chosen = findings.getSelectionModel().getSelectedItem();
    findings.getItems().setAll(now.findings());
    examples.getItems().setAll(now.examples());
    examples.setPrefHeight(
        EXAMPLE_HEIGHT * Math.clamp(now.examples().size(), 1, EXAMPLES_SHOWN) + 2);
    shown.setVisible(!now.findings().isEmpty());
    shown.setManaged(shown.isVisible());
    gutter.mark(now.findings());
    findings.setPrefHeight(
        FINDING_HEIGHT * Math.clamp(now.findings().size(), 2, FINDINGS_SHOWN) + 2);
    var errors = model.count(Severity.ERROR);
    var warnings = model.count(Severity.WARNING);
    verdict.setText(
        errors > 0
            ? texts.get("naming.verdictErrors", errors)
            : warnings > 0
                ? texts.get("naming.verdictWarnings", warnings)
                : now.title().isPresent() ? texts.get("naming.verdictSound") : "");
    verdict.getStyleClass().setAll("label", "verdict", errors > 0 ? "needs" : "fine");
    var again =
        now.findings().stream()
            .filter(
                finding ->
                    chosen != null
                        && finding.rule() == chosen.rule()
                        && finding.where().equals(chosen.where()))
            .findFirst()
            .or(() -> now.findings().stream().findFirst());
    again.ifPresent(findings.getSelectionModel()::select);
    witness.show(again.orElse(null));
  }

  private void say(Optional<ConventionModel.Said> now) {
    said.setText(now.map(ConventionModel.Said::what).orElse(""));
    said.setVisible(now.isPresent());
    said.setManaged(now.isPresent());
    said.getStyleClass()
        .setAll(
            "label", now.filter(ConventionModel.Said::needsAPerson).isPresent() ? "needs" : "fine");
  }

  /** Puts the keys at the finding's place in the text. */
  private void goTo(Finding finding) {
    if (finding == null || finding.line() <= 0) {
      return;
    }
    var text = area.getText();
    var from = 0;
    for (var line = 1; line < finding.line() && from >= 0; line++) {
      from = text.indexOf('\n', from) + 1;
    }
    var end = text.indexOf('\n', from);
    var last = end < 0 ? text.length() : end;
    area.requestFocus();
    area.selectRange(last, Math.min(from + Math.max(0, finding.column() - 1), last));
  }

  private void nextFinding() {
    if (findings.getItems().isEmpty()) {
      return;
    }
    var at = findings.getSelectionModel().getSelectedIndex();
    findings.getSelectionModel().select((at + 1) % findings.getItems().size());
    findings.scrollTo(findings.getSelectionModel().getSelectedIndex());
    goTo(findings.getSelectionModel().getSelectedItem());
  }

  private void saveAs() {
    desk.files()
        .save(
            texts.get("naming.saveAsTitle"),
            model.file().get().map(Path::getParent),
            model.file().get().map(file -> file.getFileName().toString()).orElse("convention.yaml"))
        .ifPresent(model::saveAs);
  }

  @Override
  public String id() {
    return "convention";
  }

  @Override
  public String title() {
    return texts.get("naming.page");
  }

  @Override
  public Node node() {
    return node;
  }

  @Override
  public Node focus() {
    return area;
  }

  @Override
  public void onShown() {
    if (model.text().get().isEmpty()) {
      whenEmpty.run();
    }
  }

  @Override
  public List<Command> commands() {
    return List.of(
        new Command(
            "naming.save",
            texts.get("command.naming.save"),
            Keys.shortcut(KeyCode.S),
            model::save,
            model.canSave()),
        Command.of(
            "naming.saveAs", texts.get("command.naming.saveAs"), Keys.alt(KeyCode.S), this::saveAs),
        Command.of(
            "naming.next",
            texts.get("command.naming.next"),
            Keys.alt(KeyCode.DOWN),
            this::nextFinding),
        Command.of(
            "naming.findings",
            texts.get("command.naming.findings"),
            Keys.shortcut(KeyCode.J),
            findings::requestFocus),
        Command.of(
            "naming.text",
            texts.get("command.naming.text"),
            Keys.shortcut(KeyCode.L),
            area::requestFocus));
  }

  @Override
  public void dispose() {
    gutter.dispose();
    area.textProperty().unbindBidirectional(model.text());
    save.textProperty().unbind();
  }

  private final class FindingCell extends ListCell<Finding> {
    private final FindingLine line = FindingLine.brief(texts);

    FindingCell() {
      line.setPrefWidth(1);
      line.setMaxHeight(FINDING_HEIGHT - 6);
    }

    @Override
    protected void updateItem(Finding finding, boolean empty) {
      super.updateItem(finding, empty);
      if (empty || finding == null) {
        setGraphic(null);
        return;
      }
      line.show(finding);
      setGraphic(line);
      setAccessibleText(line.getAccessibleText());
    }
  }

  /** A kind of name and one that it makes. */
  private static final class ExampleCell extends ListCell<Checked.Example> {
    private final Label kind = new Label();
    private final Label pattern = new Label();
    private final Label name = new Label();
    private final HBox head = new HBox(kind, pattern);
    private final VBox box = new VBox(head, name);

    ExampleCell() {
      kind.getStyleClass().add("example-kind");
      kind.setMinWidth(Region.USE_PREF_SIZE);
      pattern.getStyleClass().add("example-pattern");
      name.getStyleClass().add("code");
      head.getStyleClass().add("in-line");
      box.setPrefWidth(1);
      box.setMinWidth(0);
    }

    @Override
    protected void updateItem(Checked.Example example, boolean empty) {
      super.updateItem(example, empty);
      if (empty || example == null) {
        setGraphic(null);
        setAccessibleText("");
        return;
      }
      kind.setText(example.kind());
      pattern.setText(example.pattern());
      name.setText(example.name());
      name.getStyleClass().setAll("label", example.made() ? "code" : "needs");
      setGraphic(box);
      setAccessibleText(example.kind() + ": " + example.name());
    }
  }
}
