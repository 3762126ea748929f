package org.framewright.ui.command;

import java.util.List;
import java.util.Set;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyCombination.ModifierValue;
import org.framewright.base.OperatingSystem;
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

  /** With Alt. On a Mac that key writes letters, so there letters have Shift and Command. */
  public static KeyCodeCombination alt(KeyCode code) {
    return alt(code, OperatingSystem.current());
  }

  static KeyCodeCombination alt(KeyCode code, OperatingSystem system) {
    boolean writes = code.isLetterKey() || code.isDigitKey();
    return system == OperatingSystem.MACOS && writes
        ? shortcutShift(code)
        : new KeyCodeCombination(code, KeyCombination.ALT_DOWN);
  }

  /**
   * Every key that turns to a page, by its place in their order from 0 on, the best known first.
   */
  public static List<KeyCodeCombination> page(int index) {
    return page(index, OperatingSystem.current());
  }

  static List<KeyCodeCombination> page(int index, OperatingSystem system) {
    // F8 to F11 are the whole window's, and keyboards end at F12.
    var function =
        index < 7
            ? plain(KeyCode.valueOf("F" + (index < 6 ? index + 2 : index + 6)))
            : shift(KeyCode.valueOf("F" + (index - 5)));
    // A Mac has its function keys behind another key.
    return system == OperatingSystem.MACOS
        ? List.of(shortcut(KeyCode.valueOf("DIGIT" + (index + 1) % 10)), function)
        : List.of(function);
  }

  /** The keys that write a digit, the best known first: some keyboards have Shift for it. */
  public static List<KeyCodeCombination> digit(int digit) {
    var row = KeyCode.valueOf("DIGIT" + digit);
    return List.of(plain(row), plain(KeyCode.valueOf("NUMPAD" + digit)), shift(row));
  }

  /** The key that lists every key. */
  public static KeyCodeCombination allKeys() {
    return shift(KeyCode.F1);
  }

  /** The keys that show help. */
  public static List<KeyCodeCombination> help() {
    return help(OperatingSystem.current());
  }

  static List<KeyCodeCombination> help(OperatingSystem system) {
    return system == OperatingSystem.MACOS
        ? List.of(shortcutShift(KeyCode.SLASH), plain(KeyCode.F1))
        : List.of(plain(KeyCode.F1));
  }

  /** The keys that fill the display with a window; F11 is a Mac's own. */
  public static List<KeyCodeCombination> fullScreen() {
    return fullScreen(OperatingSystem.current());
  }

  static List<KeyCodeCombination> fullScreen(OperatingSystem system) {
    return system == OperatingSystem.MACOS
        ? List.of(
            new KeyCodeCombination(
                KeyCode.F, KeyCombination.CONTROL_DOWN, KeyCombination.META_DOWN))
        : List.of(plain(KeyCode.F11));
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
