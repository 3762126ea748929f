package org.framewright.ui.command;

import javafx.beans.binding.Bindings;
import javafx.scene.control.Button;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.MenuItem;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.Region;
import org.framewright.ui.look.Texts;

/** What does a command by mouse. */
public final class CommandControls {
  private CommandControls() {}

  /** A button with the command's key on it; the keys stay where they are. */
  public static Button button(Command command, String text, Texts texts) {
    var button = new Button(text);
    // Names have underscores of their own.
    button.setMnemonicParsing(false);
    button.setGraphic(new KeyCap(command, texts));
    button.setContentDisplay(ContentDisplay.RIGHT);
    button.setFocusTraversable(false);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(_ -> command.fire());
    button.setAccessibleText(command.text());
    button.setAccessibleHelp(Keys.text(command.key(), texts));
    return button;
  }

  /** The same for a row of what can be done: dashed while it cannot be, its tooltip says what. */
  public static Button act(Command command, String text, Texts texts) {
    var button = button(command, text, texts);
    button.setId("act-" + command.word());
    button.getStyleClass().add("act");
    button.disableProperty().bind(Bindings.not(command.enabled()));
    button.setTooltip(new Tooltip(command.text()));
    return button;
  }

  /** A line of a menu; it can be chosen while the command makes sense. */
  public static MenuItem item(Command command) {
    var item = new MenuItem(command.text());
    item.setMnemonicParsing(false);
    item.setOnAction(_ -> command.fire());
    item.disableProperty().bind(Bindings.not(command.enabled()));
    return item;
  }
}
