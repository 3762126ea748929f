package org.framewright.ui;

import java.util.Optional;
import javafx.animation.PauseTransition;
import javafx.beans.binding.Bindings;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Duration;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Running;

/** The window's last line: what was just done, and what is under way. */
final class FootLine {
  private static final Duration PASSING = Duration.seconds(6);

  private final Label status = new Label();
  private final Label doing = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final Button stop = new Button();
  private final HBox work = new HBox(doing, bar, stop);
  private final HBox node;
  private final PauseTransition passing = new PauseTransition(PASSING);

  FootLine(Texts texts) {
    status.getStyleClass().add("status");
    status.setId("status");
    status.setMaxWidth(Double.MAX_VALUE);
    status.setMinWidth(0);
    status.setAccessibleRole(AccessibleRole.TEXT);
    HBox.setHgrow(status, Priority.ALWAYS);
    work.getStyleClass().add("work");
    doing.setMinWidth(Region.USE_PREF_SIZE);
    stop.setText(texts.get("shell.stop"));
    stop.setFocusTraversable(false);
    // Laid out with the window, unseen: the first time is long, and is else felt when a job opens.
    work.setOpacity(0);
    var keys = new Label(texts.get("shell.allKeys"));
    keys.getStyleClass().add("quiet");
    keys.setMinWidth(Region.USE_PREF_SIZE);
    node = new HBox(status, work, keys);
    node.getStyleClass().add("foot-line");
    passing.setOnFinished(_ -> status.setText(""));
  }

  Node node() {
    return node;
  }

  /** Says something; it passes by. */
  void say(String text) {
    status.setText(text);
    status.setAccessibleText(text);
    passing.playFromStart();
  }

  /**
   * Shows what is under way, if anything is. The controls stay and change: new ones would have to
   * be styled each time.
   */
  void showWork(Optional<Running> now) {
    work.setOpacity(1);
    work.setVisible(now.isPresent());
    work.setManaged(now.isPresent());
    bar.progressProperty().unbind();
    bar.visibleProperty().unbind();
    stop.setOnAction(null);
    now.ifPresent(
        running -> {
          doing.setText(running.title());
          // No bar that runs to and fro: it would have the window drawn all the while, and take the
          // processors from what it waits for.
          bar.progressProperty().bind(Bindings.max(0, running.progress()));
          bar.visibleProperty().bind(running.progress().greaterThanOrEqualTo(0));
          bar.setAccessibleText(running.title());
          stop.setOnAction(_ -> running.cancel());
        });
  }
}
