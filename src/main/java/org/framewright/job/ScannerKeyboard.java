package org.framewright.job;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The keyboard for which a computer takes a scanner. A scanner presses the keys of a US keyboard;
 * where the computer is set to another one, it reads other characters, from which the keys can be
 * told.
 */
public enum ScannerKeyboard {
  /** What was scanned is what was read. */
  US(Rows.US, Rows.US_SHIFTED),
  FRENCH(
      "²&é\"'(-è_çà)=" + "azertyuiop^$*" + "qsdfghjklmù" + "wxcvbn,;:!",
      "~1234567890°+" + "AZERTYUIOP¨£µ" + "QSDFGHJKLM%" + "WXCVBN?./§"),
  GERMAN(
      "^1234567890ß´" + "qwertzuiopü+#" + "asdfghjklöä" + "yxcvbnm,.-",
      "°!\"§$%&/()=?`" + "QWERTZUIOPÜ*'" + "ASDFGHJKLÖÄ" + "YXCVBNM;:_"),
  BELGIAN(
      "²&é\"'(§è!çà)-" + "azertyuiop^$µ" + "qsdfghjklmù" + "wxcvbn,;:=",
      "³1234567890°_" + "AZERTYUIOP¨*£" + "QSDFGHJKLM%" + "WXCVBN?./+"),
  SPANISH(
      "º1234567890'¡" + "qwertyuiop`+ç" + "asdfghjklñ´" + "zxcvbnm,.-",
      "ª!\"·$%&/()=?¿" + "QWERTYUIOP^*Ç" + "ASDFGHJKLÑ¨" + "ZXCVBNM;:_"),
  ITALIAN(
      "\\1234567890'ì" + "qwertyuiopè+ù" + "asdfghjklòà" + "zxcvbnm,.-",
      "|!\"£$%&/()=?^" + "QWERTYUIOPé*§" + "ASDFGHJKLç°" + "ZXCVBNM;:_");

  /** An enum's constants cannot name its own fields. */
  private static final class Rows {
    static final String US = "`1234567890-=" + "qwertyuiop[]\\" + "asdfghjkl;'" + "zxcvbnm,./";
    static final String US_SHIFTED =
        "~!@#$%^&*()_+" + "QWERTYUIOP{}|" + "ASDFGHJKL:\"" + "ZXCVBNM<>?";
  }

  private final Map<Character, Character> keys = new HashMap<>();

  ScannerKeyboard(String row, String shifted) {
    put(row, Rows.US);
    put(shifted, Rows.US_SHIFTED);
  }

  private void put(String typed, String us) {
    for (int i = 0; i < us.length(); i++) {
      keys.put(typed.charAt(i), us.charAt(i));
    }
  }

  /**
   * What the scanner pressed, where the computer read this as typed on such a keyboard; none if it
   * has no key for one of the characters. Spaces and what separates elements are the same on all.
   */
  Optional<String> pressed(String read) {
    if (this == US) {
      return Optional.of(read);
    }
    var pressed = new StringBuilder(read.length());
    for (int i = 0; i < read.length(); i++) {
      char c = read.charAt(i);
      var key = c <= ' ' ? Character.valueOf(c) : keys.get(c);
      if (key == null) {
        // With Caps Lock on, some systems write the other case of the letters of the upper row.
        key = keys.get(otherCase(c));
      }
      if (key == null) {
        return Optional.empty();
      }
      pressed.append(key.charValue());
    }
    return Optional.of(pressed.toString());
  }

  private static char otherCase(char c) {
    return Character.isUpperCase(c) ? Character.toLowerCase(c) : Character.toUpperCase(c);
  }
}
