package org.framewright.ui.frames;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import org.framewright.ui.command.Command;
import org.framewright.ui.command.CommandControls;
import org.framewright.ui.command.KeyCap;
import org.framewright.ui.look.Texts;

/** A row of what can be done with frames by mouse, each with its key on it. */
final class FrameActions extends FlowPane {
  private final Texts texts;

  FrameActions(Texts texts) {
    this.texts = texts;
    getStyleClass().addAll("set-actions", "frame-actions");
  }

  /** Adds a button for a command, which says the text of {@code frames.act.} and its last word. */
  Button add(Command command) {
    var button = CommandControls.act(command, texts.get("frames.act." + command.word()), texts);
    getChildren().add(button);
    return button;
  }

  /**
   * Adds a button under which is what can be said of a slate; what cannot be said now says why.
   *
   * @param why why a command cannot be done now; nothing where it can
   */
  void addSlates(List<Command> words, Function<Command, Optional<String>> why) {
    var menu = menu("slate");
    for (var word : words) {
      var item = new MenuItem(word.text());
      item.setMnemonicParsing(false);
      item.setId("act-" + word.word());
      item.setGraphic(new KeyCap(word, texts));
      item.setOnAction(_ -> word.fire());
      menu.getItems().add(item);
    }
    menu.setOnShowing(
        _ -> {
          for (int i = 0; i < words.size(); i++) {
            var word = words.get(i);
            var item = menu.getItems().get(i);
            var not = why.apply(word);
            item.setDisable(not.isPresent());
            item.setText(
                not.map(it -> texts.get("frames.act.not", word.text(), it)).orElse(word.text()));
          }
        });
    menu.setTooltip(new Tooltip(texts.get("frames.act.slateWhat")));
    getChildren().add(menu);
  }

  /** Adds a button under which the ratings are. */
  void addRatings(List<Command> ratings) {
    var menu = menu("rate");
    for (var rating : ratings) {
      var item = CommandControls.item(rating);
      item.setId("act-" + rating.word());
      item.setGraphic(new KeyCap(rating, texts));
      menu.getItems().add(item);
    }
    var keys = new KeyCap();
    keys.setText(texts.get("frames.act.rateKeys"));
    menu.setGraphic(keys);
    menu.setContentDisplay(ContentDisplay.RIGHT);
    menu.setTooltip(new Tooltip(texts.get("frames.act.rateWith")));
    getChildren().add(menu);
  }

  private MenuButton menu(String word) {
    var menu = new MenuButton(texts.get("frames.act." + word));
    menu.setId("act-" + word);
    menu.getStyleClass().add("act");
    menu.setFocusTraversable(false);
    menu.setMinWidth(Region.USE_PREF_SIZE);
    return menu;
  }
}
