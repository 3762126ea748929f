package org.framewright.ui;

import java.util.stream.IntStream;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.framewright.ui.look.Texts;

/** What to look at on the floor before the first frame of the day. */
final class SafetyReminder {
  private static final int POINTS = 5;

  private final VBox box = new VBox();
  private final CheckBox never = new CheckBox();

  SafetyReminder(Texts texts) {
    IntStream.rangeClosed(1, POINTS)
        .mapToObj(point -> new Label(texts.get("safety." + point)))
        .forEach(
            label -> {
              label.setWrapText(true);
              box.getChildren().add(label);
            });
    var law = new Label(texts.get("safety.law"));
    law.setWrapText(true);
    law.getStyleClass().add("law");
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
