package org.framewright.ui.handoff;

import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.task.Running;

/** How far a piece of work is, and how it is stopped. */
final class WorkStrip extends VBox {
  private final Texts texts;
  private final WrappedText what = new WrappedText("work-what");
  private final Label figure = new Label();
  private final ProgressBar bar = new ProgressBar();
  private Subscription following = Subscription.EMPTY;

  /**
   * @param safe what stopping leaves behind
   */
  WorkStrip(Texts texts, Command stop, String safe) {
    this.texts = texts;
    figure.getStyleClass().add("work-figure");
    figure.setMinWidth(Region.USE_PREF_SIZE);
    bar.setMaxWidth(Double.MAX_VALUE);
    var stopping = CommandControls.button(stop, texts.get("handoff.act.stop"), texts);
    stopping.getStyleClass().add("act");
    getChildren().addAll(what, figure, bar, WrappedText.of(safe, "quiet"), stopping);
    getStyleClass().addAll("paper-sheet", "work-sheet");
  }

  /** Shows a piece of work; none leaves it empty. */
  void show(Optional<Running> running) {
    following.unsubscribe();
    what.setText(running.map(Running::title).orElse(""));
    following =
        running
            .map(task -> task.progress().subscribe(now -> show(now.doubleValue())))
            .orElse(Subscription.EMPTY);
  }

  private void show(double part) {
    // No bar that runs to and fro: nothing moves by itself.
    bar.setProgress(Math.max(0, part));
    figure.setText(
        part < 0
            ? texts.get("handoff.progress.begun")
            : texts.get("handoff.progress", Math.floor(part * 100) / 100));
    bar.setAccessibleText(figure.getText());
  }

  void dispose() {
    following.unsubscribe();
  }
}
