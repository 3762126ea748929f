package org.framewright.ui.handoff;

import java.util.function.Function;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ListCell;

/** A choice in words. */
final class WordCell<T> extends ListCell<T> {
  private final Function<T, String> words;

  private WordCell(Function<T, String> words) {
    this.words = words;
  }

  /** Lets a box show its choices, and the one that is made, in words. */
  static <T> void in(ComboBox<T> box, Function<T, String> words) {
    box.setCellFactory(_ -> new WordCell<>(words));
    box.setButtonCell(new WordCell<>(words));
  }

  @Override
  protected void updateItem(T item, boolean empty) {
    super.updateItem(item, empty);
    setText(empty || item == null ? "" : words.apply(item));
  }
}
