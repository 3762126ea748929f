package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.PlainText;

/** Ranges of numbers: {@code 1236-1240}. Both ends must be frames; what lies between may not be. */
final class Ranges {
  private static final int MOST = 5000;
  private static final int MOST_DIGITS = 15;
  private static final int MOST_MISSING = 5;

  private final NameIndex index;
  private final SimilarNames similar;

  /** Numbers looked up in all. */
  private final SearchBudget budget = new SearchBudget(200_000);

  Ranges(NameIndex index, SimilarNames similar) {
    this.index = index;
    this.similar = similar;
  }

  /**
   * The last number of a range as it is meant; none where this is no range.
   *
   * @param glued whether no space stands between the two, so that {@code 1234-36} ends at 1236
   */
  static Optional<Token> end(Token first, Token last, boolean glued) {
    if (first.text().length() > MOST_DIGITS || last.text().length() > MOST_DIGITS) {
      return Optional.empty();
    }
    int shorter = first.text().length() - last.text().length();
    if (shorter <= 0) {
      return Optional.of(last);
    }
    if (!glued) {
      return Optional.empty();
    }
    if (value(last) >= value(first)) {
      return Optional.of(last);
    }
    if (last.text().length() < 2) {
      return Optional.empty();
    }
    var whole = first.text().substring(0, shorter) + last.text();
    return Long.parseLong(whole) > value(first)
        ? Optional.of(Token.number(whole))
        : Optional.empty();
  }

  private static long value(Token number) {
    return Long.parseLong(number.text());
  }

  /** The frames of a range. */
  Piece read(String written, Following what, Token first, Token last) {
    long from = value(first);
    long to = value(last);
    if (to < from) {
      return new Piece.Unknown(written, List.of(), "this range ends before it begins");
    }
    if (what.of(index, first).count() == 0) {
      return new Piece.Unknown(
          written, near(what, first), "no frame has the name that it begins with");
    }
    if (what.of(index, last).count() == 0) {
      return new Piece.Unknown(
          written, near(what, last), "no frame has the name that it ends with");
    }
    if (to - from >= MOST || !budget.take(to - from + 1)) {
      return new Piece.Unknown(
          written,
          List.of(),
          "a range of " + (to - from + 1) + " numbers is more than is looked up");
    }
    return between(written, what, first, from, to);
  }

  private Piece between(String written, Following what, Token first, long from, long to) {
    var frames = new LinkedHashSet<Integer>();
    var missing = new ArrayList<String>();
    var form = "%0" + first.text().length() + "d";
    for (long number = from; number <= to; number++) {
      var token = Token.number(String.format(Locale.ROOT, form, number));
      var hits = what.of(index, token);
      if (hits.count() > 1) {
        return new Piece.Asked(
            written, hits.fitting(), hits.count(), "several frames fit " + token.text() + " of it");
      }
      if (hits.count() == 0) {
        missing.add(token.text());
      }
      frames.addAll(hits.frames());
    }
    var why = new StringBuilder("a range of ").append(PlainText.counted(frames.size(), "frame"));
    if (!missing.isEmpty()) {
      why.append("; there is no ")
          .append(String.join(", ", missing.subList(0, Math.min(MOST_MISSING, missing.size()))));
      if (missing.size() > MOST_MISSING) {
        why.append(" and ").append(missing.size() - MOST_MISSING).append(" more of it");
      }
    }
    return new Piece.Taken(written, List.copyOf(frames), why.toString());
  }

  private List<KnownName> near(Following what, Token number) {
    return switch (what) {
      case Following.Name name -> similar.to(name.with(number));
      case Following.Heading heading -> {
        var run = new ArrayList<>(heading.tokens());
        run.add(number);
        yield similar.to(run);
      }
    };
  }
}
