package org.framewright.ui.naming;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextArea;
import javafx.scene.control.TextField;
import javafx.scene.control.TextFormatter;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.KeyFocus;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** The paper on which names are pasted or typed as a studio has them now. */
final class GivenPane extends VBox {
  private final ProposalModel model;
  private final Texts texts;
  private final TextArea names = new TextArea();
  private final TextField job = new TextField();
  private final TextField title = new TextField();
  private final VBox remarks = new VBox();
  private final WrappedText jobUnread = new WrappedText("needs");
  private final Subscription following;

  GivenPane(ProposalModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    var heading = WrappedText.of(texts.get("proposal.title"), "sheet-title");
    heading.setMinHeight(USE_PREF_SIZE);
    names.setId("example-names");
    names.getStyleClass().add("code-area");
    names.setPromptText(texts.get("proposal.prompt"));
    names.setAccessibleText(texts.get("proposal.names"));
    names.setTextFormatter(new TextFormatter<>(GivenPane::bounded));
    names.textProperty().bindBidirectional(model.names());
    KeyFocus.leaveByTab(names);
    names.setMinHeight(60);
    VBox.setVgrow(names, Priority.ALWAYS);
    job.setId("example-job");
    job.setPromptText(texts.get("start.example", "2026-03-01_ABC_spring"));
    job.textProperty().bindBidirectional(model.job());
    title.setId("convention-title");
    title.setPromptText(texts.get("start.example", texts.get("proposal.titleExample")));
    title.textProperty().bindBidirectional(model.title());
    getStyleClass().addAll("paper-sheet", "given");
    getChildren()
        .setAll(
            heading,
            word("proposal.names", names),
            names,
            remarks,
            word("proposal.job", job),
            job,
            jobUnread,
            word("proposal.called", title),
            title);
    following = model.proposed().subscribe(this::show);
  }

  private Label word(String key, Node of) {
    var word = new Label(texts.get(key));
    word.getStyleClass().add("field-word");
    word.setLabelFor(of);
    word.setMinHeight(USE_PREF_SIZE);
    return word;
  }

  /** A paste of very much is cut, as a field of very much text is slow. */
  private static TextFormatter.Change bounded(TextFormatter.Change change) {
    int pasted = change.getText().length();
    if (pasted > 1) {
      int room = ProposalModel.MOST_CHARACTERS - (change.getControlNewText().length() - pasted);
      var taken = ProposalModel.taken(change.getText(), Math.max(0, room));
      if (taken.length() < pasted) {
        int at = change.getRangeStart() + taken.length();
        change.setText(taken);
        change.selectRange(at, at);
      }
    }
    return change.getControlNewText().length() > ProposalModel.MOST_CHARACTERS && change.isAdded()
        ? null
        : change;
  }

  private void show(Proposed now) {
    remarks
        .getChildren()
        .setAll(
            now.remarks().stream()
                .map(remark -> WrappedText.of(texts.say(remark), "needs"))
                .toList());
    if (now.unheld()) {
      remarks.getChildren().add(WrappedText.of(texts.get("proposal.unheld"), "needs"));
    }
    var why = now.jobUnread();
    jobUnread.setText(why.map(it -> texts.get("proposal.doesNotFit", texts.say(it))).orElse(""));
    jobUnread.setVisible(why.isPresent());
    jobUnread.setManaged(why.isPresent());
  }

  TextArea names() {
    return names;
  }

  void dispose() {
    following.unsubscribe();
    names.textProperty().unbindBidirectional(model.names());
    job.textProperty().unbindBidirectional(model.job());
    title.textProperty().unbindBidirectional(model.title());
  }
}
