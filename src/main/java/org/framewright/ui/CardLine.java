package org.framewright.ui;

import java.util.Optional;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.util.Subscription;
import org.framewright.copies.MountedCards;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.look.Texts;

/** One line as long as a card is offered that was put in: what is on it, and what one can do. */
final class CardLine {
  private final Texts texts;
  private final Label words = new Label();
  private final HBox node = new HBox(words);
  private Subscription following = Subscription.EMPTY;

  CardLine(Texts texts) {
    this.texts = texts;
    words.setId("card-offered");
    words.setMinWidth(0);
    words.setMaxWidth(Double.MAX_VALUE);
    HBox.setHgrow(words, Priority.ALWAYS);
    node.getStyleClass().add("card-line");
    show(Optional.empty());
  }

  /** Lays the buttons, once the commands are there. */
  void lay(Command take, Command leave) {
    node.getChildren()
        .setAll(words, button(take, "copies.card.take"), button(leave, "copies.card.notNow"));
  }

  private Button button(Command command, String key) {
    var button = CommandControls.button(command, texts.get(key), texts);
    button.setId("card-" + command.word());
    button.getStyleClass().add("slight");
    return button;
  }

  Node node() {
    return node;
  }

  /** Follows which card is offered. */
  void follow(ObservableValue<Optional<MountedCards.Card>> offered) {
    following.unsubscribe();
    following = offered.subscribe(this::show);
  }

  /** No card is offered any more. */
  void clear() {
    following.unsubscribe();
    show(Optional.empty());
  }

  private void show(Optional<MountedCards.Card> card) {
    node.setVisible(card.isPresent());
    node.setManaged(card.isPresent());
    words.setText(card.map(this::words).orElse(""));
    words.setAccessibleText(words.getText());
  }

  private String words(MountedCards.Card card) {
    return card.notOnTwo().isPresent()
        ? texts.get("copies.card.known", card.name(), card.files(), card.notOnTwo().getAsInt())
        : texts.get("copies.card.new", card.name(), card.files());
  }
}
