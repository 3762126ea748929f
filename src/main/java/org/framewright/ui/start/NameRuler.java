package org.framewright.ui.start;

import java.util.List;
import java.util.Map;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/**
 * A name laid out like a measured thing: each piece that a field gives has its line beneath and the
 * field's word under the line. Pieces that are only examples stand on a broken line.
 */
final class NameRuler extends FlowPane {
  NameRuler() {
    getStyleClass().add("name-ruler");
    setAccessibleRole(AccessibleRole.TEXT);
  }

  /**
   * @param labels what each field is called on the form
   */
  void show(List<Segment> segments, Map<String, String> labels) {
    getChildren().setAll(segments.stream().map(segment -> piece(segment, labels)).toList());
    var name = new StringBuilder();
    segments.forEach(segment -> name.append(segment.text()));
    setAccessibleText(name.toString());
  }

  private static Region piece(Segment segment, Map<String, String> labels) {
    var text = new Label(segment.text());
    text.getStyleClass().add("piece-text");
    text.setMinWidth(USE_PREF_SIZE);
    var line = new Region();
    line.getStyleClass().add("piece-line");
    var label = new Label(segment.field().map(f -> labels.getOrDefault(f, f)).orElse(""));
    label.getStyleClass().add("piece-label");
    var piece = new VBox(text, line, label);
    piece.getStyleClass().add("piece");
    if (segment.field().isEmpty()) {
      piece.getStyleClass().add("between");
    }
    if (segment.example()) {
      piece.getStyleClass().add("example");
    }
    return piece;
  }
}
