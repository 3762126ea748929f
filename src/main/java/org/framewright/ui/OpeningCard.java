package org.framewright.ui;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import org.framewright.job.JobProgress;
import org.framewright.ui.look.StateRuler;
import org.framewright.ui.look.Texts;

/** What the window says of a job while its frames are read: its name, then how far it is. */
final class OpeningCard {
  private final Texts texts;
  private final Label standing = new Label();
  private final StateRuler ruler = new StateRuler();
  private final VBox node;

  /**
   * @param name the job's, or its folder's
   */
  OpeningCard(Texts texts, String name) {
    this.texts = texts;
    var title = new Label(name);
    title.getStyleClass().add("opening-name");
    title.setMinWidth(0);
    standing.setId("opening-standing");
    ruler.setVisible(false);
    var reading = new Label(texts.get("opening.read"));
    reading.getStyleClass().add("quiet");
    node = new VBox(title, standing, ruler, reading);
    node.setId("opening");
    node.getStyleClass().add("opening");
  }

  Node node() {
    return node;
  }

  /** How far the job is, once its log was read. */
  void show(JobProgress progress) {
    if (!progress.states().isEmpty()) {
      standing.setText(texts.get("board.agreed", progress.signedOff(), progress.states().size()));
      ruler.setVisible(true);
      ruler.show(progress.states(), standing.getText());
    }
  }
}
