package org.framewright.ui;

import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What to look at on the floor before the first frame of the day. */
final class SafetyReminder {
  private static final int POINTS = 5;

  private final VBox box = new VBox();
  private final CheckBox never = new CheckBox();

  SafetyReminder(Texts texts) {
    IntStream.rangeClosed(1, POINTS)
        .mapToObj(point -> WrappedText.of(texts.get("safety." + point)))
        .forEach(box.getChildren()::add);
    var law = WrappedText.of(texts.get("safety.law"), "law");
    never.setText(texts.get("safety.never"));
    box.getChildren().addAll(law, never);
    box.getStyleClass().add("safety");
  }

  Node node() {
    return box;
  }

  Node focus() {
    return never;
  }

  boolean neverAgain() {
    return never.isSelected();
  }
}
