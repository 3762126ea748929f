package org.framewright.ui.command;

import javafx.scene.control.Label;
import org.framewright.ui.look.Texts;

/** A command's key, as it stands on a button that does the same. */
public final class KeyCap extends Label {
  /** Without a key yet. */
  public KeyCap() {
    getStyleClass().add("key-cap");
  }

  /** With the key that a command is best known by. */
  public KeyCap(Command command, Texts texts) {
    this();
    show(command, texts);
  }

  /** Shows the key that a command is best known by. */
  public void show(Command command, Texts texts) {
    setText(Keys.text(command.key(), texts));
  }
}
