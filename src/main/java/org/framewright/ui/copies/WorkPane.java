package org.framewright.ui.copies;

import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** How far a comparison or a copy is. */
final class WorkPane extends VBox {
  private final Label what = new Label();
  private final Label figure = new Label();
  private final Label left = new Label();
  private final ProgressBar bar = new ProgressBar();
  private final VBox targets = new VBox();

  WorkPane(Texts texts, Command stop) {
    what.getStyleClass().add("work-what");
    figure.getStyleClass().add("work-figure");
    figure.setId("work-figure");
    left.getStyleClass().add("quiet");
    left.setMinWidth(Region.USE_PREF_SIZE);
    figure.setMinWidth(0);
    figure.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(figure, Priority.ALWAYS);
    bar.setMaxWidth(Double.MAX_VALUE);
    targets.getStyleClass().add("work-targets");
    var line = new HBox(figure, left);
    line.getStyleClass().add("in-line");
    var stopping = CommandControls.button(stop, texts.get("copies.act.stop"), texts);
    stopping.setId("copies-stop");
    stopping.getStyleClass().add("act");
    getChildren()
        .addAll(
            what,
            line,
            bar,
            targets,
            WrappedText.of(texts.get("copies.stopSafe"), "quiet"),
            stopping);
    getStyleClass().addAll("paper-sheet", "work-sheet");
  }

  void show(Way way) {
    what.setText(way.what());
    figure.setText(way.figure());
    left.setText(way.left());
    // No bar that runs to and fro: nothing moves by itself.
    bar.setProgress(Math.max(0, way.part()));
    bar.setAccessibleText(way.what());
    while (targets.getChildren().size() > way.targets().size()) {
      targets.getChildren().removeLast();
    }
    for (int i = 0; i < way.targets().size(); i++) {
      if (i == targets.getChildren().size()) {
        targets.getChildren().add(new Target());
      }
      if (targets.getChildren().get(i) instanceof Target line) {
        line.show(way.targets().get(i));
      }
    }
  }

  /** How far one target is. */
  private static final class Target extends VBox {
    private final Label name = new Label();
    private final Label figure = new Label();
    private final ProgressBar bar = new ProgressBar();

    Target() {
      name.getStyleClass().add("field-word");
      name.setMinWidth(0);
      name.setMaxWidth(Double.MAX_VALUE);
      HBox.setHgrow(name, Priority.ALWAYS);
      figure.setMinWidth(Region.USE_PREF_SIZE);
      var line = new HBox(name, figure);
      line.getStyleClass().add("in-line");
      bar.setMaxWidth(Double.MAX_VALUE);
      bar.getStyleClass().add("place-bar");
      getChildren().addAll(line, bar);
    }

    void show(Way.Target now) {
      name.setText(now.name());
      figure.setText(now.figure());
      bar.setProgress(now.part());
      bar.setAccessibleText(now.name());
    }
  }
}
