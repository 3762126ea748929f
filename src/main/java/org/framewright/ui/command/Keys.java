package org.framewright.ui.command;

import java.util.Set;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyCombination.ModifierValue;
import org.framewright.ui.look.Texts;

/** Makes key combinations and says what they mean to somebody who is typing. */
public final class Keys {
  private static final Set<KeyCode> NOT_TYPED =
      Set.of(KeyCode.ESCAPE, KeyCode.PAGE_UP, KeyCode.PAGE_DOWN);

  /** Keys that the toolkit writes with a word, or with a sign that no keyboard has. */
  private static final Set<KeyCode> NAMED =
      Set.of(
          KeyCode.BACK_SPACE,
          KeyCode.DELETE,
          KeyCode.INSERT,
          KeyCode.ENTER,
          KeyCode.ESCAPE,
          KeyCode.SPACE,
          KeyCode.TAB,
          KeyCode.HOME,
          KeyCode.END,
          KeyCode.PAGE_UP,
          KeyCode.PAGE_DOWN);

  private Keys() {}

  /** The key alone. */
  public static KeyCodeCombination plain(KeyCode code) {
    return new KeyCodeCombination(code);
  }

  /** With the platform's shortcut key: Ctrl, or Command on macOS. */
  public static KeyCodeCombination shortcut(KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN);
  }

  /** With Alt. */
  public static KeyCodeCombination alt(KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.ALT_DOWN);
  }

  /** With Shift. */
  public static KeyCodeCombination shift(KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.SHIFT_DOWN);
  }

  /** With the platform's shortcut key and Shift. */
  public static KeyCodeCombination shortcutShift(KeyCode code) {
    return new KeyCodeCombination(code, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_DOWN);
  }

  /** A key as it is written on the keyboards of a language: {@code Backspace}, {@code Strg+Z}. */
  public static String text(KeyCodeCombination key, Texts texts) {
    return modifiers(key, texts)
        + switch (key.getCode()) {
          case PLUS -> "+";
          case MINUS -> "\u2212";
          case KeyCode code when NAMED.contains(code) -> texts.get("key." + code.name());
          case KeyCode code -> plain(code).getDisplayText();
        };
  }

  private static String modifiers(KeyCodeCombination key, Texts texts) {
    var withLetter =
        new KeyCodeCombination(
                KeyCode.A,
                key.getShift(),
                key.getControl(),
                key.getAlt(),
                key.getMeta(),
                key.getShortcut())
            .getDisplayText();
    // Where the system writes signs, as on macOS, there is nothing to replace.
    return withLetter
        .substring(0, withLetter.length() - 1)
        .replace("Ctrl+", texts.get("key.control") + "+")
        .replace("Alt+", texts.get("key.alt") + "+")
        .replace("Shift+", texts.get("key.shift") + "+");
  }

  /** Whether a text field would take this combination as undoing or doing again what was typed. */
  static boolean isUndoing(KeyCodeCombination key) {
    return key.getShortcut() == ModifierValue.DOWN
        && (key.getCode() == KeyCode.Z || key.getCode() == KeyCode.Y);
  }

  /** Whether a text field would take this combination as writing or as moving in the text. */
  static boolean isTyping(KeyCodeCombination key) {
    var modified =
        key.getShortcut() == ModifierValue.DOWN
            || key.getControl() == ModifierValue.DOWN
            || key.getAlt() == ModifierValue.DOWN
            || key.getMeta() == ModifierValue.DOWN;
    return !modified && !key.getCode().isFunctionKey() && !NOT_TYPED.contains(key.getCode());
  }
}
