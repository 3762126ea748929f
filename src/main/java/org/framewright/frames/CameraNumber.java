package org.framewright.frames;

import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * The number that a camera gave a frame: names of pictures have eight characters, of which the last
 * four are a number from 0001 to 9999, after which 0001 comes again (DCF 2.0, CIPA DC-009, section
 * 3.2.4).
 */
public final class CameraNumber {
  static final int LAST = 9999;
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9_]{4}([0-9]{4})");

  private CameraNumber() {}

  /** The number in a name without ending; nothing where it is no name of a camera. */
  public static OptionalInt of(String stem) {
    var name = NAME.matcher(stem);
    if (!name.matches()) {
      return OptionalInt.empty();
    }
    int number = Integer.parseInt(name.group(1));
    return number == 0 ? OptionalInt.empty() : OptionalInt.of(number);
  }

  /** What stands before the number in a name, or before the first digit of another one. */
  static String series(String stem) {
    if (of(stem).isPresent()) {
      return stem.substring(0, 4);
    }
    int end = 0;
    while (end < stem.length() && !Character.isDigit(stem.charAt(end))) {
      end++;
    }
    return stem.substring(0, end);
  }
}
