package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** What was said of a setup, the newest first; nothing where nothing was. */
final class CommentsPane extends VBox {
  private final Texts texts;
  private final int most;
  private final List<Entry> lines = new ArrayList<>();
  private final Label earlier = new Label();
  private final Button seen;
  private final HBox below;

  /**
   * @param most so many are shown
   * @param see says that they are seen
   */
  CommentsPane(Texts texts, int most, Command see) {
    this.texts = texts;
    this.most = most;
    earlier.getStyleClass().add("quiet");
    earlier.setMinWidth(0);
    seen = CommandControls.button(see, texts.get("comment.seen"), texts);
    seen.getStyleClass().add("slight");
    var gap = new Region();
    HBox.setHgrow(gap, Priority.ALWAYS);
    below = new HBox(earlier, gap, seen);
    below.getStyleClass().add("comments-below");
    getStyleClass().add("comments");
    setMinHeight(0);
    show(List.of());
  }

  /** The lines stay and change: new ones would have to be styled each time. */
  void show(List<Said> said) {
    setVisible(!said.isEmpty());
    setManaged(isVisible());
    int shown = Math.min(most, said.size());
    while (lines.size() < shown) {
      lines.add(new Entry());
    }
    for (int i = 0; i < shown; i++) {
      lines.get(i).show(said.get(i));
    }
    earlier.setText(said.size() > shown ? texts.get("comment.earlier", said.size() - shown) : "");
    boolean fresh = said.stream().anyMatch(Said::isNew);
    seen.setVisible(fresh);
    var parts = new ArrayList<Region>(lines.subList(0, shown));
    if (fresh || said.size() > shown) {
      parts.add(below);
    }
    if (!getChildren().equals(parts)) {
      getChildren().setAll(parts);
    }
  }

  private final class Entry extends VBox {
    private final Label isNew = new Label(texts.get("comment.new"));
    private final Label who = new Label();
    private final Label of = new Label();
    private final WrappedText text = new WrappedText("comment-text");

    Entry() {
      isNew.getStyleClass().add("comment-new");
      isNew.setMinWidth(Region.USE_PREF_SIZE);
      who.getStyleClass().add("comment-who");
      who.setMinWidth(0);
      of.getStyleClass().add("comment-who");
      of.setMinWidth(0);
      text.setMostLines(3);
      var head = new HBox(isNew, who);
      head.getStyleClass().add("comment-head");
      getStyleClass().add("comment");
      getChildren().setAll(text, head, of);
    }

    void show(Said said) {
      isNew.setVisible(said.isNew());
      isNew.setManaged(said.isNew());
      who.setText(said.who());
      of.setText(said.of());
      of.setVisible(!said.of().isEmpty());
      of.setManaged(of.isVisible());
      text.setText(said.text());
    }
  }
}
