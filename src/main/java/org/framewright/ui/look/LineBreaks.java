package org.framewright.ui.look;

import com.ibm.icu.text.BreakIterator;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * Breaks a text into lines where Unicode's line breaking algorithm (UAX 14) and ICU's dictionaries
 * for scripts without spaces allow it.
 *
 * @param width how wide a piece of text is
 */
record LineBreaks(ToDoubleFunction<String> width) {
  static final String MORE = "...";

  /** Nobody reads more of it in a label, and breaking it would take the time of a frame. */
  private static final int MOST_CHARACTERS = 4_000;

  /**
   * The lines of a text, none wider than {@code room} as long as a letter fits in it.
   *
   * @param room in pixels
   * @param most lines; the last one ends in dots where text is left over
   */
  List<String> of(String text, double room, int most) {
    var whole = text.length() <= MOST_CHARACTERS ? text : text.substring(0, MOST_CHARACTERS) + MORE;
    var lines = new ArrayList<String>();
    for (var paragraph : whole.lines().toList()) {
      breakUp(paragraph, room, most, lines);
    }
    if (lines.size() <= most) {
      return lines;
    }
    var cut = new ArrayList<>(lines.subList(0, most));
    cut.set(most - 1, cut(lines.get(most - 1) + " " + lines.get(most), room));
    return cut;
  }

  /** Adds the lines of a paragraph, one more than {@code most} at the most. */
  private void breakUp(String paragraph, double room, int most, List<String> lines) {
    var words = BreakIterator.getLineInstance(Locale.ROOT);
    words.setText(paragraph);
    int start = 0;
    int fits = 0;
    int end = words.next();
    while (end != BreakIterator.DONE && lines.size() <= most) {
      if (width.applyAsDouble(paragraph.substring(start, end).stripTrailing()) <= room) {
        fits = end;
        end = words.next();
      } else {
        if (fits == start) {
          fits += fitting(paragraph.substring(start, end), room);
        }
        lines.add(paragraph.substring(start, fits).strip());
        start = fits;
        if (start == end) {
          end = words.next();
        }
      }
    }
    if (lines.size() <= most && (start < paragraph.length() || start == 0)) {
      lines.add(paragraph.substring(start).strip());
    }
  }

  private String cut(String line, double room) {
    var left = room - width.applyAsDouble(MORE);
    return left <= 0 ? MORE : line.substring(0, fitting(line, left)).strip() + MORE;
  }

  /** How many chars of a text fit: whole letters with their marks, one at the least. */
  private int fitting(String text, double room) {
    var letters = BreakIterator.getCharacterInstance(Locale.ROOT);
    letters.setText(text);
    int fits = letters.next();
    for (int end = letters.next();
        end != BreakIterator.DONE && width.applyAsDouble(text.substring(0, end)) <= room;
        end = letters.next()) {
      fits = end;
    }
    return fits == BreakIterator.DONE ? text.length() : fits;
  }
}
