package org.framewright.studio;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;

/**
 * Frames of one setup that are numbered one after the other.
 *
 * @param setup its code; blank where they belong to none
 * @param stem their names without the number, as {@link SearchKey#joined} makes it
 * @param first the first number, or {@link #NONE}
 * @param last the last one, included
 */
record FrameRange(String setup, String stem, long first, long last) {
  /** The number of a name that ends in no digit. */
  static final long NONE = -1;

  private static final int MOST_DIGITS = 9;
  private static final int LONGEST = 300;
  private static final Pattern ENDING = Pattern.compile("\\.[A-Za-z][A-Za-z0-9]{1,4}$");
  private static final Comparator<FrameRange> ORDER =
      Comparator.comparing(FrameRange::setup)
          .thenComparing(FrameRange::stem)
          .thenComparingLong(FrameRange::first);

  /** A frame alone, by its name without an ending. */
  static FrameRange of(String setup, String name) {
    var key = PlainText.start(SearchKey.joined(name), LONGEST);
    int digits = key.length();
    while (digits > 0
        && key.length() - digits < MOST_DIGITS
        && key.charAt(digits - 1) >= '0'
        && key.charAt(digits - 1) <= '9') {
      digits--;
    }
    long number = digits == key.length() ? NONE : Long.parseLong(key.substring(digits));
    return new FrameRange(setup, key.substring(0, digits), number, number);
  }

  /** The frame that somebody asks for, with or without the ending of a file. */
  static FrameRange asked(String words) {
    return of("", ENDING.matcher(words.strip()).replaceFirst(""));
  }

  /** The same frames in as few ranges as there can be, in order. */
  static List<FrameRange> joined(List<FrameRange> single) {
    var ranges = new ArrayList<FrameRange>();
    for (var next : single.stream().sorted(ORDER).toList()) {
      var before = ranges.isEmpty() ? null : ranges.getLast();
      if (before != null && before.goesOnWith(next)) {
        ranges.set(
            ranges.size() - 1,
            new FrameRange(
                before.setup, before.stem, before.first, Math.max(before.last, next.last)));
      } else {
        ranges.add(next);
      }
    }
    return ranges;
  }

  private boolean goesOnWith(FrameRange next) {
    return setup.equals(next.setup)
        && stem.equals(next.stem)
        && next.first <= last + 1
        && (first == NONE) == (next.first == NONE);
  }
}
