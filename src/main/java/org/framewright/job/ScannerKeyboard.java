package org.framewright.job;

import java.util.Optional;
import java.util.OptionalInt;

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

  private final String row;
  private final String shifted;

  ScannerKeyboard(String row, String shifted) {
    this.row = row;
    this.shifted = shifted;
  }

  /** What the key that writes a character writes on a US keyboard; none if there is no such key. */
  private OptionalInt key(int c) {
    int at = row.indexOf(c);
    if (at >= 0) {
      return OptionalInt.of(Rows.US.charAt(at));
    }
    at = shifted.indexOf(c);
    return at >= 0 ? OptionalInt.of(Rows.US_SHIFTED.charAt(at)) : OptionalInt.empty();
  }

  /**
   * What the scanner pressed, where the computer read this as typed on such a keyboard; none if it
   * has no key for one of the characters. Spaces and what separates elements are the same on all.
   */
  Optional<String> pressed(String typed) {
    var read = ScannedText.bounded(typed);
    if (this == US) {
      return Optional.of(read);
    }
    var pressed = new StringBuilder(read.length());
    for (int i = 0; i < read.length(); i++) {
      char c = read.charAt(i);
      var key = c <= ' ' ? OptionalInt.of(c) : key(c);
      if (key.isEmpty()) {
        // With Caps Lock on, some systems write the other case of the letters of the upper row.
        key = key(otherCase(c));
      }
      if (key.isEmpty()) {
        return Optional.empty();
      }
      pressed.append((char) key.getAsInt());
    }
    return Optional.of(pressed.toString());
  }

  private static char otherCase(char c) {
    return Character.isUpperCase(c) ? Character.toLowerCase(c) : Character.toUpperCase(c);
  }
}
