package org.framewright.ui;

import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.util.Subscription;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Notices.Notice;

/** One quiet line as long as there is something to know: the first of it, and how many. */
final class NoticeLine {
  private final Texts texts;
  private final Label first = new Label();
  private final Label more = new Label();
  private final HBox node = new HBox(first, more);
  private Subscription following = Subscription.EMPTY;

  NoticeLine(Texts texts) {
    this.texts = texts;
    first.setId("notice");
    first.setMinWidth(0);
    first.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(first, Priority.ALWAYS);
    more.setMinWidth(Region.USE_PREF_SIZE);
    node.getStyleClass().add("notice-line");
    clear();
  }

  Node node() {
    return node;
  }

  /**
   * Follows what there is to know.
   *
   * @param key the key that shows all of it
   */
  void follow(ObservableValue<List<Notice>> all, String key) {
    following.unsubscribe();
    following = all.subscribe(now -> show(now, key));
  }

  /** There is nothing to know any more. */
  void clear() {
    following.unsubscribe();
    show(List.of(), "");
  }

  private void show(List<Notice> now, String key) {
    node.setVisible(!now.isEmpty());
    node.setManaged(!now.isEmpty());
    if (now.isEmpty()) {
      first.setText("");
      return;
    }
    first.setText(texts.get("notice.line", now.getFirst().what(), now.getFirst().remedy()).strip());
    first.setAccessibleText(first.getText());
    more.setText(texts.get("notice.key", key, now.size()));
  }
}
