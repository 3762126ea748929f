package org.framewright.ui.command;

import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.input.KeyCodeCombination;

/**
 * One thing that can be done.
 *
 * @param id stable, as in {@code board.signOff}
 * @param text what it does, for people, as a short imperative
 * @param key the key that does it, from everywhere on its screen
 * @param action runs on the interface thread and returns at once
 * @param enabled whether it makes sense now
 */
public record Command(
    String id,
    String text,
    KeyCodeCombination key,
    Runnable action,
    ObservableBooleanValue enabled) {

  /** A command that always makes sense. */
  public static Command of(String id, String text, KeyCodeCombination key, Runnable action) {
    return new Command(id, text, key, action, Bindings.createBooleanBinding(() -> true));
  }

  /** Does it, if it makes sense now; says whether it did. */
  public boolean fire() {
    if (!enabled.get()) {
      return false;
    }
    action.run();
    return true;
  }
}
