package org.framewright.ui.naming;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.TextFormatter;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.ui.look.LineCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;

/**
 * What a convention is worth: the names it makes, the verdict, the findings and what shows them.
 */
final class ProofPane extends VBox {
  private static final double FINDING_HEIGHT = 52;
  private static final double EXAMPLE_HEIGHT = 46;
  private static final int EXAMPLES_SHOWN = 5;
  private static final int EXAMPLES_AT_LEAST = 2;
  private static final int FINDINGS_SHOWN = 6;

  private final Texts texts;
  private final ConventionModel model;
  private final Consumer<Finding> goTo;
  private final ListView<Finding> findings = new ListView<>();
  private final ListView<Checked.Example> examples = new ListView<>();
  private final WitnessPane witness;
  private final VBox shown = new VBox();
  private final WrappedText verdict = new WrappedText("verdict");

  /**
   * @param goTo goes to a finding's place in the text
   */
  ProofPane(ConventionModel model, Texts texts, Consumer<Finding> goTo) {
    this.model = model;
    this.texts = texts;
    this.goTo = goTo;
    this.witness = new WitnessPane(texts);
    verdict.setId("verdict");
    verdict.setMinHeight(USE_PREF_SIZE);
    buildExamples();
    buildFindings();
    var scroll = new ScrollPane(witness);
    scroll.setFitToWidth(true);
    scroll.setFocusTraversable(false);
    scroll.getStyleClass().add("witness-scroll");
    VBox.setVgrow(scroll, Priority.ALWAYS);
    shown.getChildren().setAll(word("naming.shown"), scroll);
    shown.getStyleClass().add("shown");
    VBox.setVgrow(shown, Priority.ALWAYS);
    getChildren().addAll(word("naming.examples"), examples, verdict, plannedRow(), findings, shown);
    getStyleClass().add("proof");
  }

  private void buildExamples() {
    examples.setFixedCellSize(EXAMPLE_HEIGHT);
    examples.setCellFactory(_ -> new ExampleCell());
    examples.getStyleClass().addAll("on-table", "examples");
    examples.setFocusTraversable(false);
    examples.setAccessibleText(texts.get("naming.examples"));
  }

  private void buildFindings() {
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
            goToChosen();
            event.consume();
          }
        });
    findings.setOnMouseClicked(_ -> goToChosen());
  }

  private HBox plannedRow() {
    var planned = new TextField();
    planned.setId("frames-planned");
    planned.setPrefColumnCount(6);
    planned.setTextFormatter(
        new TextFormatter<>(
            change -> change.getControlNewText().matches("\\d{0,9}") ? change : null));
    var before = model.framesPlanned().get();
    planned.setText(before == 0 ? "" : String.valueOf(before));
    planned
        .textProperty()
        .addListener(
            (_, _, now) -> model.framesPlanned().set(now.isEmpty() ? 0 : Long.parseLong(now)));
    var word = new Label(texts.get("naming.planned"));
    word.setLabelFor(planned);
    word.getStyleClass().add("quiet");
    var row = new HBox(word, planned);
    row.getStyleClass().add("in-line");
    return row;
  }

  private Label word(String key) {
    var label = new Label(texts.get(key));
    label.getStyleClass().add("table-word");
    return label;
  }

  ListView<Finding> findings() {
    return findings;
  }

  void show(Checked now) {
    var chosen = findings.getSelectionModel().getSelectedItem();
    findings.getItems().setAll(now.findings());
    examples.getItems().setAll(now.examples());
    examples.setPrefHeight(examplesHeight(now.examples().size(), EXAMPLES_SHOWN));
    examples.setMinHeight(examplesHeight(now.examples().size(), EXAMPLES_AT_LEAST));
    shown.setVisible(!now.findings().isEmpty());
    shown.setManaged(shown.isVisible());
    findings.setPrefHeight(
        FINDING_HEIGHT * Math.clamp(now.findings().size(), 2, FINDINGS_SHOWN) + 2);
    showVerdict(now);
    var again = likeBefore(now, chosen);
    again.ifPresent(findings.getSelectionModel()::select);
    witness.show(again.orElse(null));
  }

  private static double examplesHeight(int examples, int most) {
    return EXAMPLE_HEIGHT * Math.clamp(examples, 1, most) + 2;
  }

  private void showVerdict(Checked now) {
    var errors = model.count(Severity.ERROR);
    var warnings = model.count(Severity.WARNING);
    verdict.setText(
        errors > 0
            ? texts.get("naming.verdictErrors", errors)
            : warnings > 0
                ? texts.get("naming.verdictWarnings", warnings)
                : now.title().isPresent() ? texts.get("naming.verdictSound") : "");
    verdict.setStyleClasses("verdict", errors > 0 ? "needs" : "fine");
  }

  /** The finding that was chosen, as it is now; else the first. */
  private static Optional<Finding> likeBefore(Checked now, Finding chosen) {
    return now.findings().stream()
        .filter(
            finding ->
                chosen != null
                    && finding.rule() == chosen.rule()
                    && finding.where().equals(chosen.where()))
        .findFirst()
        .or(() -> now.findings().stream().findFirst());
  }

  private void goToChosen() {
    var chosen = findings.getSelectionModel().getSelectedItem();
    if (chosen != null) {
      goTo.accept(chosen);
    }
  }

  void nextFinding() {
    if (findings.getItems().isEmpty()) {
      return;
    }
    var at = findings.getSelectionModel().getSelectedIndex();
    findings.getSelectionModel().select((at + 1) % findings.getItems().size());
    findings.scrollTo(findings.getSelectionModel().getSelectedIndex());
    goToChosen();
  }

  private final class FindingCell extends LineCell<Finding> {
    private final FindingLine line = FindingLine.brief(texts);

    FindingCell() {
      line.setPrefWidth(1);
      line.setMaxHeight(FINDING_HEIGHT - 6);
    }

    @Override
    protected void showLine(Finding finding) {
      line.show(finding);
      setGraphic(line);
      setAccessibleText(line.getAccessibleText());
    }
  }

  /** A kind of name and one that it makes. */
  private final class ExampleCell extends LineCell<Checked.Example> {
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
    protected void showLine(Checked.Example example) {
      kind.setText(example.kind());
      pattern.setText(example.pattern());
      name.setText(texts.say(example.name()));
      name.getStyleClass().setAll("label", example.made() ? "code" : "needs");
      setGraphic(box);
      setAccessibleText(texts.get("naming.example.spoken", example.kind(), name.getText()));
    }
  }
}
