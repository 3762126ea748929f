package org.framewright.ui.naming;

import java.util.Optional;
import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.naming.Finding;
import org.framewright.naming.Proposal;
import org.framewright.naming.ProposalDescription;
import org.framewright.naming.Severity;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.TallCell;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;

/** The convention that is proposed: its proof, what the check finds, its text, and saving it. */
final class ProposedPane extends VBox {
  private final ProposalModel model;
  private final Texts texts;
  private final WrappedText proof = new WrappedText("verdict");
  private final CheckBox onlyUnread = new CheckBox();
  private final ListView<Finding> findings = new ListView<>();
  private final WrappedText verdict = new WrappedText("verdict");
  private final TextArea yaml = new TextArea();
  private final Gutter gutter = new Gutter(yaml);
  private final WrappedText said = new WrappedText();
  private final Button use = new Button();
  private final Subscription following;

  /** What one can do with it once it is saved. */
  interface Then {
    /** Asks where to and saves it. */
    void save();

    /** Starts a job by what was saved. */
    void startJob();
  }

  ProposedPane(ProposalModel model, Texts texts, Then then) {
    this.model = model;
    this.texts = texts;
    proof.setId("proof");
    proof.setMinWidth(0);
    HBox.setHgrow(proof, Priority.ALWAYS);
    onlyUnread.setId("only-unread");
    onlyUnread.selectedProperty().bindBidirectional(model.onlyUnread());
    onlyUnread.setMinWidth(USE_PREF_SIZE);
    var proofRow = new HBox(proof, onlyUnread);
    proofRow.getStyleClass().addAll("in-line", "proof-row");
    verdict.setId("proposal-verdict");
    verdict.setMinHeight(USE_PREF_SIZE);
    var found = new VBox(word("naming.findings"), findings);
    buildFindings();
    var text = new VBox(word("proposal.yaml"), paper());
    for (var half : new VBox[] {found, text}) {
      half.getStyleClass().add("half");
      half.setMinWidth(0);
      half.setPrefWidth(1);
      HBox.setHgrow(half, Priority.ALWAYS);
    }
    var halves = new HBox(found, text);
    halves.getStyleClass().add("halves");
    VBox.setVgrow(halves, Priority.ALWAYS);
    getStyleClass().add("proposed");
    getChildren().setAll(proofRow, verdict, halves, saving(then));
    following =
        Subscription.combine(
            model.proposed().subscribe(this::show), model.outcome().subscribe(this::say));
  }

  private Label word(String key) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("table-word");
    return word;
  }

  private void buildFindings() {
    findings.setId("proposal-findings");
    findings.setCellFactory(_ -> new FindingCell());
    findings.setAccessibleText(texts.get("naming.findings"));
    findings.setPlaceholder(new Label(texts.get("naming.noFindings")));
    findings.getStyleClass().add("findings-sheet");
    findings.getSelectionModel().selectedItemProperty().addListener((_, _, now) -> goTo(now));
    findings.setOnKeyPressed(
        event -> {
          if (event.getCode() == KeyCode.ENTER) {
            yaml.requestFocus();
            event.consume();
          }
        });
    VBox.setVgrow(findings, Priority.ALWAYS);
  }

  private HBox paper() {
    yaml.setId("proposal-text");
    yaml.getStyleClass().add("code-area");
    yaml.setEditable(false);
    yaml.setAccessibleText(texts.get("proposal.yaml"));
    KeyFocus.leaveByTab(yaml);
    HBox.setHgrow(yaml, Priority.ALWAYS);
    var paper = new HBox(gutter, yaml);
    paper.getStyleClass().addAll("paper-sheet", "paper");
    VBox.setVgrow(paper, Priority.ALWAYS);
    return paper;
  }

  private HBox saving(Then then) {
    var save = new Button(texts.get("proposal.save"));
    save.setId("save-proposal");
    save.getStyleClass().add("does-it");
    save.setMinWidth(USE_PREF_SIZE);
    save.disableProperty().bind(model.canSave().not());
    save.setOnAction(_ -> then.save());
    use.setId("use-proposal");
    use.setText(texts.get("proposal.use"));
    use.setMinWidth(USE_PREF_SIZE);
    use.disableProperty()
        .bind(
            Bindings.createBooleanBinding(
                () -> model.outcome().get().flatMap(ProposalModel.Said::file).isEmpty(),
                model.outcome()));
    use.setOnAction(_ -> then.startJob());
    said.setId("proposal-said");
    said.setMinWidth(0);
    HBox.setHgrow(said, Priority.ALWAYS);
    var row = new HBox(save, use, said);
    row.getStyleClass().add("in-line");
    return row;
  }

  ListView<Finding> findings() {
    return findings;
  }

  private void show(Proposed now) {
    int unread = now.unread().size();
    onlyUnread.setText(texts.get("proposal.onlyUnread", unread));
    onlyUnread.setVisible(unread > 0);
    onlyUnread.setManaged(unread > 0);
    proof.setText(now.proposal().map(ProposalDescription::proof).map(texts::say).orElse(""));
    proof.setStyleClasses("verdict", now.proven() ? "fine" : "needs");
    findings.getItems().setAll(now.findings());
    verdict.setText(verdict(now));
    verdict.setStyleClasses("verdict", count(now, Severity.ERROR) > 0 ? "needs" : "fine");
    var text = now.proposal().map(Proposal::yaml).orElse("");
    if (!text.equals(yaml.getText())) {
      yaml.setText(text);
    }
    gutter.mark(now.findings());
  }

  private String verdict(Proposed now) {
    if (now.proposal().isEmpty()) {
      return "";
    }
    var errors = count(now, Severity.ERROR);
    var warnings = count(now, Severity.WARNING);
    return errors > 0
        ? texts.get("naming.verdictErrors", errors)
        : warnings > 0
            ? texts.get("naming.verdictWarnings", warnings)
            : texts.get("naming.verdictSound");
  }

  private static long count(Proposed now, Severity severity) {
    return now.findings().stream().filter(one -> one.severity() == severity).count();
  }

  private void say(Optional<ProposalModel.Said> now) {
    said.setText(now.map(ProposalModel.Said::what).orElse(""));
    said.setStyleClasses(
        now.filter(it -> it.file().isEmpty()).isPresent() ? "table-needs" : "status");
  }

  /** Marks the finding's line in the text. */
  private void goTo(Finding finding) {
    if (finding == null || finding.line() <= 0) {
      return;
    }
    var text = yaml.getText();
    int from = 0;
    for (int line = 1; line < finding.line() && from >= 0; line++) {
      from = text.indexOf('\n', from) + 1;
    }
    int end = text.indexOf('\n', from);
    yaml.selectRange(end < 0 ? text.length() : end, from);
  }

  void dispose() {
    following.unsubscribe();
    gutter.dispose();
    onlyUnread.selectedProperty().unbindBidirectional(model.onlyUnread());
  }

  /** A finding with its remedy, as high as it needs. */
  private final class FindingCell extends TallCell<Finding> {
    private final FindingLine line = new FindingLine(texts);

    FindingCell() {
      line.setPrefWidth(1);
      line.setMinWidth(0);
    }

    @Override
    protected void showLine(Finding finding) {
      line.show(finding);
      setGraphic(line);
      setAccessibleText(line.getAccessibleText());
    }
  }
}
