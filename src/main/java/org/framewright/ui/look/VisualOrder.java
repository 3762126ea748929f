package org.framewright.ui.look;

import com.ibm.icu.lang.UCharacter;
import com.ibm.icu.text.BreakIterator;
import java.text.Bidi;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A line of text as pieces in the order of the eye, by Unicode's bidirectional algorithm (UAX 9).
 * The toolkit lays the pieces of one right-to-left run that come from several fonts in the order of
 * the keyboard: letters and the signs between them are therefore pieces of their own.
 */
final class VisualOrder {
  private VisualOrder() {}

  /** Whether a line has anything that is written from right to left. */
  static boolean matters(String text) {
    return Bidi.requiresBidi(text.toCharArray(), 0, text.length());
  }

  /** Whether a text begins from the right: by its first letter that has a direction. */
  static boolean fromTheRight(String text) {
    return text.codePoints()
            .map(Character::getDirectionality)
            .filter(
                way ->
                    way == Character.DIRECTIONALITY_LEFT_TO_RIGHT
                        || way == Character.DIRECTIONALITY_RIGHT_TO_LEFT
                        || way == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC)
            .map(way -> way == Character.DIRECTIONALITY_LEFT_TO_RIGHT ? 0 : 1)
            .findFirst()
            .orElse(0)
        == 1;
  }

  /**
   * The pieces of a line from left to right.
   *
   * @param fromTheRight the direction of the text that the line is of
   */
  static List<String> pieces(String line, boolean fromTheRight) {
    if (line.isEmpty()) {
      return List.of();
    }
    var bidi =
        new Bidi(line, fromTheRight ? Bidi.DIRECTION_RIGHT_TO_LEFT : Bidi.DIRECTION_LEFT_TO_RIGHT);
    var pieces = new ArrayList<String>();
    var levels = new ArrayList<Integer>();
    int from = 0;
    for (int at = next(line, 0); at <= line.length(); at = next(line, at)) {
      if (at == line.length()
          || bidi.getLevelAt(at) != bidi.getLevelAt(from)
          || isLetter(line, at) != isLetter(line, from)) {
        int level = bidi.getLevelAt(from);
        var piece = line.substring(from, at);
        pieces.add(level % 2 == 1 && !isLetter(line, from) ? mirrored(piece) : piece);
        levels.add(level);
        from = at;
      }
    }
    var order = new byte[levels.size()];
    for (int i = 0; i < order.length; i++) {
      order[i] = levels.get(i).byteValue();
    }
    var seen = pieces.toArray();
    Bidi.reorderVisually(order, 0, seen, 0, seen.length);
    return List.of(seen).stream().map(String.class::cast).toList();
  }

  private static int next(String line, int at) {
    return at + (at < line.length() ? Character.charCount(line.codePointAt(at)) : 1);
  }

  private static boolean isLetter(String line, int at) {
    int c = line.codePointAt(at);
    byte way = Character.getDirectionality(c);
    return c == ' '
        || way == Character.DIRECTIONALITY_RIGHT_TO_LEFT
        || way == Character.DIRECTIONALITY_RIGHT_TO_LEFT_ARABIC
        || way == Character.DIRECTIONALITY_NONSPACING_MARK;
  }

  /** Signs of a right-to-left run as they are seen: last one first, brackets turned round. */
  private static String mirrored(String signs) {
    var each = BreakIterator.getCharacterInstance(Locale.ROOT);
    each.setText(signs);
    var seen = new StringBuilder(signs.length());
    int end = each.last();
    for (int from = each.previous(); from != BreakIterator.DONE; from = each.previous()) {
      signs
          .substring(from, end)
          .codePoints()
          .map(UCharacter::getMirror)
          .forEach(seen::appendCodePoint);
      end = from;
    }
    return seen.toString();
  }
}
