package org.framewright.ui.frames;

import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;

/** Why the frame that the keys are on belongs where it does, and the way to its slate. */
final class WhyLine extends HBox {
  private final Label words = new Label();
  private final Tooltip whole = new Tooltip();
  private final Subscription following;

  /**
   * @param toSlate goes to the slate that placed it
   */
  WhyLine(SlateModel model, Texts texts, Command toSlate) {
    words.setId("why");
    words.getStyleClass().add("quiet");
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    var button = CommandControls.button(toSlate, texts.get("frames.act.toSlate"), texts);
    button.setId("act-toSlate");
    button.getStyleClass().addAll("act", "slight");
    BooleanBinding hasSlate =
        Bindings.createBooleanBinding(() -> model.why().get().slate().isPresent(), model.why());
    button.visibleProperty().bind(hasSlate);
    getStyleClass().add("why-line");
    getChildren().addAll(words, button);
    following =
        model
            .why()
            .subscribe(
                now -> {
                  words.setText(now.words());
                  whole.setText(now.words());
                  words.setTooltip(now.words().isEmpty() ? null : whole);
                });
  }

  void dispose() {
    following.unsubscribe();
  }
}
