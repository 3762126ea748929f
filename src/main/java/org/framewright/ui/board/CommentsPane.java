package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import javafx.css.PseudoClass;
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
  private static final PseudoClass NEW = PseudoClass.getPseudoClass("new");

  private final Texts texts;
  private final List<Entry> lines = new ArrayList<>();
  private final Label earlier = new Label();
  private final Button seen;
  private final HBox below;
  private int most;
  private List<Said> shown = List.of();

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

  /** Shows so many from now on. */
  void setMost(int comments) {
    if (comments != most) {
      most = comments;
      show(shown);
    }
  }

  /** The lines stay and change: new ones would have to be styled each time. */
  void show(List<Said> said) {
    shown = said;
    setVisible(!said.isEmpty());
    setManaged(isVisible());
    int many = Math.min(most, said.size());
    while (lines.size() < many) {
      lines.add(new Entry());
    }
    for (int i = 0; i < many; i++) {
      lines.get(i).show(said.get(i));
    }
    earlier.setText(said.size() > many ? texts.get("comment.earlier", said.size() - many) : "");
    boolean fresh = said.stream().anyMatch(Said::isNew);
    seen.setVisible(fresh);
    var parts = new ArrayList<Region>(lines.subList(0, many));
    if (fresh || said.size() > many) {
      parts.add(below);
    }
    if (!getChildren().equals(parts)) {
      getChildren().setAll(parts);
    }
  }

  private final class Entry extends VBox {
    private final WrappedText text = new WrappedText("comment-text");
    private final WrappedText who = new WrappedText("comment-who");

    Entry() {
      text.setMostLines(3);
      who.setMostLines(2);
      getStyleClass().add("comment");
      getChildren().setAll(text, who);
    }

    void show(Said said) {
      pseudoClassStateChanged(NEW, said.isNew());
      text.setText(said.text());
      who.setText(texts.apart(said.isNew() ? texts.get("comment.new") : "", said.who(), said.of()));
    }
  }
}
