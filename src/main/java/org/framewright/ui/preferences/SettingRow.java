package org.framewright.ui.preferences;

import java.util.List;
import java.util.Optional;
import javafx.beans.InvalidationListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.base.Problem;
import org.framewright.naming.Severity;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.page.FindingLine;

/** A line of the form: its word, what it is set with, what it is for, and below what is wrong. */
final class SettingRow extends VBox {
  private final Texts texts;
  private final List<EntryField> fields;
  private final VBox below = new VBox();
  private final InvalidationListener listener = _ -> showProblem();

  /**
   * @param word what is set
   * @param controls what it is set with, in one line
   * @param fields those of them that can be wrong
   * @param what what it is for; may be empty
   */
  SettingRow(Texts texts, String word, List<Node> controls, List<EntryField> fields, String what) {
    this.texts = texts;
    this.fields = fields;
    var label = new Label(word);
    label.getStyleClass().add("setting-word");
    if (!fields.isEmpty()) {
      label.setLabelFor(fields.getFirst());
    }
    var set = new HBox(controls.toArray(Node[]::new));
    set.getStyleClass().add("setting-controls");
    var line = new HBox(label, set);
    line.getStyleClass().add("setting-line");
    if (what.isEmpty()) {
      HBox.setHgrow(set, Priority.ALWAYS);
      set.setMaxWidth(Double.MAX_VALUE);
    } else {
      var purpose = WrappedText.of(what, "quiet", "setting-what");
      HBox.setHgrow(purpose, Priority.ALWAYS);
      line.getChildren().add(purpose);
    }
    below.getStyleClass().add("setting-below");
    getStyleClass().add("setting-row");
    getChildren().addAll(line, below);
    fields.forEach(field -> field.entry().problem().addListener(listener));
    showProblem();
  }

  List<EntryField> fields() {
    return fields;
  }

  private void showProblem() {
    var problems =
        fields.stream()
            .map(field -> field.entry().problem().get())
            .flatMap(Optional::stream)
            .toList();
    below.getChildren().setAll(problems.stream().map(this::line).toList());
    below.setVisible(!problems.isEmpty());
    below.setManaged(!problems.isEmpty());
  }

  private Node line(Problem problem) {
    var line = new FindingLine(texts);
    line.show(Severity.ERROR, texts.sentence(problem), texts.remedy(problem));
    return line;
  }

  void dispose() {
    fields.forEach(
        field -> {
          field.entry().problem().removeListener(listener);
          field.dispose();
        });
  }
}
