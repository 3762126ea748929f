package org.framewright.handoff.names;

import java.util.Optional;

/** Where names begin and end in a row of tokens. */
record NameRuns(NameIndex index, Line line) {
  /** As many as cameras give a frame's number (DCF; from memory). */
  private static final int DIGITS_OF_A_CAMERA = 4;

  /** Where the longest name or part of one ends that begins here; 0 if none does. */
  int nameFrom(Row row, int at) {
    int longest = index.longest(row.tokens(), at, row.limit(at));
    for (int end = at + longest; end > at; end--) {
      if (isRangeInside(row, end) || (row.ends(end) && endsName(row, at, end))) {
        return end;
      }
    }
    return 0;
  }

  private boolean endsName(Row row, int at, int end) {
    boolean number = row.tokens().subList(at, end).stream().anyMatch(Token::number);
    boolean all = at == 0 && end == row.tokens().size();
    return number || (all && index.find(row.tokens().subList(at, end)).grade().whole());
  }

  /** Whether a unit goes on here with the end of a range: its last number, or a name with it. */
  boolean isRangeInside(Row row, int end) {
    if (row.ends(end)
        || !row.tokens().get(end - 1).number()
        || !line.isRangeMark(row.tokens().get(end - 1).to(), row.tokens().get(end).from())) {
      return false;
    }
    int last = row.endOfUnit(end) - 1;
    return row.tokens().get(last).number()
        && (last == end || index.longest(row.tokens(), end, last + 1) == last + 1 - end)
        && Ranges.end(row.tokens().get(end - 1), row.tokens().get(last), true).isPresent();
  }

  /** The number that ends a range: bare, or behind the same beginning as the first one has. */
  static int lastOfRange(Row row, int then, Following what) {
    int bare = then;
    if (what instanceof Following.Name name && !name.before().isEmpty()) {
      int size = name.before().size();
      boolean again = then + size < row.tokens().size();
      for (int i = 0; again && i < size; i++) {
        again = row.tokens().get(then + i).folded().equals(name.before().get(i).folded());
      }
      bare = again ? then + size : then;
    }
    return bare < row.tokens().size() && row.tokens().get(bare).number() && row.ends(bare + 1)
        ? bare
        : -1;
  }

  static boolean isFiller(Line.Unit unit) {
    return unit.isWord() && ListWords.BEFORE_NUMBERS.contains(unit.tokens().getFirst().folded());
  }

  /** Whether the number that ends here says how many there are of what stands behind it. */
  boolean isCounted(Row row, int end) {
    if (end >= row.tokens().size() || !row.unit(end).isWord()) {
      return false;
    }
    var word = row.tokens().get(end).folded();
    boolean verb =
        ListWords.VERBS.contains(word)
            && row.tokens().get(end - 1).text().length() >= DIGITS_OF_A_CAMERA;
    return ListWords.COUNTED.contains(word) && !verb;
  }

  /**
   * The word before a number, if it looks like the beginning of a file's name.
   *
   * @param lastEnd where the last name ends, to which the word may belong
   */
  Optional<Line.Unit> prefix(Row row, int at, Token number, int lastEnd) {
    if (at == 0) {
      return Optional.empty();
    }
    var unit = row.unit(at - 1);
    if (!unit.isWord() || row.tokens().get(at - 1).to() == lastEnd) {
      return Optional.empty();
    }
    var word = unit.tokens().getFirst();
    if (ListWords.BEFORE_NUMBERS.contains(word.folded())
        || ListWords.TO.contains(word.folded())
        || ListWords.CAUTION.contains(word.folded())
        || ListWords.NO_PREFIX.contains(word.folded())) {
      return Optional.empty();
    }
    boolean capitals =
        unit.text().length() >= 2
            && unit.text().length() <= 4
            && unit.text().chars().allMatch(c -> c >= 'A' && c <= 'Z')
            && number.text().length() >= DIGITS_OF_A_CAMERA;
    return capitals || index.knows(word) ? Optional.of(unit) : Optional.empty();
  }
}
