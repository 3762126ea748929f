package org.framewright.ui.command;

import java.util.List;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.input.KeyCodeCombination;
import org.framewright.ui.look.Texts;

/**
 * One thing that can be done.
 *
 * @param id stable, as in {@code board.signOff}
 * @param text what it does, for people, as a short imperative
 * @param key the key that does it, from everywhere on its screen
 * @param action runs on the interface thread and returns at once
 * @param enabled whether it makes sense now
 * @param otherKeys keys that do it as well
 * @param repeats whether it is done again and again while its key is held down
 */
public record Command(
    String id,
    String text,
    KeyCodeCombination key,
    Runnable action,
    ObservableBooleanValue enabled,
    List<KeyCodeCombination> otherKeys,
    boolean repeats) {

  public Command {
    otherKeys = List.copyOf(otherKeys);
  }

  /** A command with one key. */
  public Command(
      String id,
      String text,
      KeyCodeCombination key,
      Runnable action,
      ObservableBooleanValue enabled) {
    this(id, text, key, action, enabled, List.of(), false);
  }

  /** A command that always makes sense. */
  public static Command of(String id, String text, KeyCodeCombination key, Runnable action) {
    return new Command(id, text, key, action, Bindings.createBooleanBinding(() -> true));
  }

  /** A command that always makes sense, by several keys. */
  public static Command of(String id, String text, List<KeyCodeCombination> keys, Runnable action) {
    var command = of(id, text, keys.getFirst(), action);
    for (var other : keys.subList(1, keys.size())) {
      command = command.orBy(other);
    }
    return command;
  }

  /** The same with one more key. */
  public Command orBy(KeyCodeCombination other) {
    return new Command(
        id,
        text,
        key,
        action,
        enabled,
        Stream.concat(otherKeys.stream(), Stream.of(other)).toList(),
        repeats);
  }

  /** The same, which makes sense at times only. */
  public Command onlyWhile(ObservableBooleanValue some) {
    return new Command(id, text, key, action, some, otherKeys, repeats);
  }

  /** The same, done again and again while its key is held down: for walking. */
  public Command repeating() {
    return new Command(id, text, key, action, enabled, otherKeys, true);
  }

  /** What it does whichever page it is on: the last part of its id. */
  public String word() {
    return id.substring(id.lastIndexOf('.') + 1);
  }

  /** The key that it is best known by, and the others. */
  List<KeyCodeCombination> keys() {
    return Stream.concat(Stream.of(key), otherKeys.stream()).toList();
  }

  /** All its keys, for people. */
  String keysText(Texts texts) {
    return texts.apart(keys().stream().map(key -> Keys.text(key, texts)).toArray(String[]::new));
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
