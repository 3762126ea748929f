package org.framewright.ui.naming;

import java.util.LinkedHashSet;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import org.framewright.naming.Finding;
import org.framewright.naming.Witness;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** A finding in full: its remedy, and the values and names that show it. */
final class WitnessPane extends VBox {
  private final Texts texts;

  WitnessPane(Texts texts) {
    this.texts = texts;
    getStyleClass().add("witness");
  }

  void show(Finding finding) {
    getChildren().clear();
    if (finding == null) {
      return;
    }
    getChildren().add(WrappedText.of(texts.say(finding.said()), "witness-message"));
    finding.fix().ifPresent(fix -> getChildren().add(WrappedText.of(texts.say(fix), "remedy")));
    finding.witness().ifPresent(this::show);
  }

  private void show(Witness witness) {
    var two = !witness.second().isEmpty();
    getChildren()
        .add(WrappedText.of(texts.get(two ? "naming.seenTwo" : "naming.seenOne"), "field-word"));
    var table = new GridPane();
    table.getStyleClass().add("witness-table");
    var fieldColumn = new ColumnConstraints();
    var first = new ColumnConstraints();
    first.setHgrow(Priority.ALWAYS);
    var second = new ColumnConstraints();
    second.setHgrow(Priority.ALWAYS);
    table.getColumnConstraints().addAll(fieldColumn, first, second);
    var fields = new LinkedHashSet<>(witness.first().keySet());
    fields.addAll(witness.second().keySet());
    var row = 0;
    for (var field : fields) {
      var a = witness.first().getOrDefault(field, "");
      var b = witness.second().getOrDefault(field, "");
      var differs = two && !a.equals(b);
      table.addRow(row, value(field, "witness-field"), value(a, differs ? "differs" : "same"));
      if (two) {
        table.add(value(b, differs ? "differs" : "same"), 2, row);
      }
      row++;
    }
    getChildren().add(table);
    if (!witness.names().isEmpty()) {
      getChildren()
          .add(
              WrappedText.of(
                  texts.get(witness.names().size() == 1 ? "naming.makesOne" : "naming.makesTwo"),
                  "field-word"));
      witness.names().forEach(name -> getChildren().add(WrappedText.of(name, "code")));
    }
  }

  private static WrappedText value(String text, String styleClass) {
    var value = WrappedText.of(text.isEmpty() ? "–" : text, styleClass);
    value.setMinWidth(0);
    return value;
  }
}
