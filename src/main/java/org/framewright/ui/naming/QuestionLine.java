package org.framewright.ui.naming;

import java.util.ArrayList;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.framewright.naming.Proposal.Piece;
import org.framewright.naming.Proposal.Role;
import org.framewright.naming.ProposalDescription;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What the names do not show of a piece, one question at a time, with a button for each answer. */
final class QuestionLine extends VBox {
  private final ProposalModel model;
  private final Texts texts;
  private final WrappedText question = new WrappedText("question-words");
  private final FlowPane answers = new FlowPane();

  QuestionLine(ProposalModel model, Texts texts) {
    this.model = model;
    this.texts = texts;
    question.setId("piece-question");
    question.setMinHeight(USE_PREF_SIZE);
    setMinHeight(USE_PREF_SIZE);
    answers.getStyleClass().add("answers");
    getStyleClass().addAll("paper-sheet", "piece-question");
    getChildren().setAll(question, answers);
  }

  void show(Proposed now) {
    var asked = now.asked();
    setVisible(asked.isPresent());
    setManaged(asked.isPresent());
    if (asked.isEmpty()) {
      return;
    }
    var piece = asked.get();
    question.setText(
        texts.get(
            "proposal.question",
            ProposalDescription.values(piece),
            texts.say(piece.question().orElseThrow()),
            now.questions()));
    boolean had = holdsTheKeys();
    var buttons = new ArrayList<Node>();
    buttons.add(answer(piece, piece.role()));
    piece.choices().stream()
        .filter(role -> role != piece.role())
        .forEach(role -> buttons.add(answer(piece, role)));
    answers.getChildren().setAll(buttons);
    if (had) {
      buttons.getFirst().requestFocus();
    }
  }

  private Button answer(Piece piece, Role role) {
    var answer =
        new Button(
            role == piece.role()
                ? texts.get("proposal.asNow", RoleWords.word(texts, role))
                : RoleWords.word(texts, role));
    answer.setId("answer-" + role.word());
    answer.setTooltip(new Tooltip(RoleWords.meaning(texts, role)));
    answer.setAccessibleText(RoleWords.explained(texts, role));
    answer.setOnAction(_ -> model.say(piece.number(), role));
    return answer;
  }

  private boolean holdsTheKeys() {
    var owner = getScene() == null ? null : getScene().getFocusOwner();
    return owner != null && answers.getChildren().contains(owner);
  }
}
