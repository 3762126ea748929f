package org.framewright.ui;

import java.util.Optional;
import javafx.beans.value.ObservableValue;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.Subscription;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;
import org.framewright.ui.session.Notices.Notice;

/**
 * What keeps the job from going on, over the whole width of the window for as long as it does: its
 * folder is gone, its disk is full.
 */
final class AlarmBand {
  private static final int MOST_LINES = 2;

  private final WrappedText what = new WrappedText("alarm-what");
  private final WrappedText remedy = new WrappedText("alarm-remedy");
  private final Button again = new Button();
  private final Button elsewhere = new Button();
  private final HBox node;
  private Subscription following = Subscription.EMPTY;

  /** What can be done about it from here. */
  interface Ways {
    /** Looks at the folder at once. */
    void lookAgain();

    /** Asks where the folder is now, and opens it there. */
    void openElsewhere();
  }

  AlarmBand(Texts texts) {
    what.setId("alarm");
    what.setMostLines(MOST_LINES);
    remedy.setMostLines(MOST_LINES);
    again.setText(texts.get("alarm.again"));
    again.setId("look-again");
    elsewhere.setText(texts.get("alarm.elsewhere"));
    for (var button : new Button[] {again, elsewhere}) {
      button.setMinWidth(Region.USE_PREF_SIZE);
      // The keys stay with the page: it goes on when the band goes.
      button.setFocusTraversable(false);
    }
    var words = new VBox(what, remedy);
    words.setMinWidth(0);
    HBox.setHgrow(words, Priority.ALWAYS);
    node = new HBox(words, again, elsewhere);
    node.getStyleClass().add("alarm-band");
    node.setAccessibleRole(AccessibleRole.TEXT);
    show(Optional.empty());
  }

  Node node() {
    return node;
  }

  void follow(ObservableValue<Optional<Notice>> alarm, Ways ways) {
    following.unsubscribe();
    again.setOnAction(_ -> ways.lookAgain());
    elsewhere.setOnAction(_ -> ways.openElsewhere());
    following = alarm.subscribe(this::show);
  }

  /** There is no job any more. */
  void clear() {
    following.unsubscribe();
    show(Optional.empty());
  }

  private void show(Optional<Notice> now) {
    node.setVisible(now.isPresent());
    node.setManaged(now.isPresent());
    what.setText(now.map(Notice::what).orElse(""));
    remedy.setText(now.map(Notice::remedy).orElse(""));
    node.setAccessibleText((what.getText() + " " + remedy.getText()).strip());
  }
}
