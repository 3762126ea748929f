package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;

/** Reads numbers that stand alone: the name of a frame, the end of one, a count, a date. */
record NumberReader(LineState state, NameRuns runs, RunReader reader, boolean screenshot) {
  /** Shorter numbers count, rate or number something as often as they name a frame. */
  static final int FEWEST_DIGITS = 3;

  int number(Line.Item item, Line.Item next, Row row, int at) {
    var number = row.tokens().get(at);
    int end = at + 1;
    if (runs.isCounted(row, end)) {
      return state.aside(row, at, end, "it counts something");
    }
    var prefix = runs.prefix(row, at, number, state.lastEnd);
    if (prefix.isPresent()) {
      // Written with a beginning of its own, so that it is no other frame's number.
      var run = new ArrayList<>(prefix.get().tokens());
      run.add(number);
      state.before = null;
      state.add(state.make.unknown(prefix.get().text() + " " + number.text(), run));
      return end;
    }
    var run = List.of(number);
    if (reader.heads(item, next, row, end, run, state.make.index().find(run), true)) {
      return end;
    }
    boolean goesOn = state.goesOn(item, row, at);
    if (goesOn && state.before.digits() == number.text().length()) {
      return goesOn(row, at, state.before);
    }
    if (!state.ownHeading) {
      int joined = reader.joined(row, at, end, run);
      if (joined > 0) {
        return joined;
      }
    }
    if (state.heading != null && state.before == null && state.words == 0) {
      return underHeading(row, at);
    }
    return alone(row, at, goesOn);
  }

  private int goesOn(Row row, int at, Following.Name what) {
    int end = reader.range(row, at, at + 1, what);
    if (end > 0) {
      return end;
    }
    var number = row.tokens().get(at);
    var run = what.with(number);
    var hits = what.of(state.make.index(), number);
    var written = state.written(row, at, at + 1);
    var why = "goes on with “" + PlainText.line(what.written()) + "”";
    state.add(
        hits.count() == 0
            ? state.make.unknown(written, run)
            : hits.count() == 1
                ? new Piece.Taken(written, hits.frames(), why)
                : Pieces.several(written, hits, "several frames fit, as it " + why));
    return at + 1;
  }

  private int underHeading(Row row, int at) {
    state.usedHeading = true;
    var number = row.tokens().get(at);
    int end = reader.range(row, at, at + 1, state.heading);
    if (end > 0) {
      return end;
    }
    var hits = state.heading.of(state.make.index(), number);
    var written = state.written(row, at, at + 1);
    var under = "under “" + PlainText.line(state.heading.written()) + "”";
    if (hits.count() == 1) {
      state.add(new Piece.Taken(written, hits.frames(), under));
    } else if (hits.count() > 1) {
      state.add(Pieces.several(written, hits, "several frames fit " + under));
    } else {
      var elsewhere = state.make.index().find(List.of(number));
      var run = new ArrayList<>(state.heading.tokens());
      run.add(number);
      state.add(
          elsewhere.count() > 0 && number.text().length() >= FEWEST_DIGITS
              ? Pieces.several(written, elsewhere, "no frame fits " + under + ", only elsewhere")
              : new Piece.Unknown(written, state.make.similar().to(run), "no frame fits " + under));
    }
    return at + 1;
  }

  private int alone(Row row, int at, boolean goesOn) {
    var number = row.tokens().get(at);
    boolean sentence = state.words > 0;
    boolean wholeLine = state.line.items().size() == 1 && row.tokens().size() == 1;
    var hits = state.make.index().find(List.of(number));
    boolean exact = hits.count() > 0 && !Pieces.butZeros(hits);
    if (!sentence && !state.behindFile && number.text().length() >= FEWEST_DIGITS) {
      var what =
          new Following.Name(state.written(row, at, at + 1), List.of(), number.text().length());
      int end = reader.range(row, at, at + 1, what);
      if (end > 0) {
        state.before = what;
        state.lastNumber = number.text();
        return end;
      }
      if (hits.count() == 0) {
        state.add(state.make.unknown(number.text(), List.of(number)));
      } else if (exact || wholeLine) {
        state.before = what;
        state.lastNumber = number.text();
        state.add(state.make.piece(number.text(), hits, List.of(number)));
      } else {
        state.add(Pieces.several(number.text(), hits, "it fits but for its zeros"));
      }
      return at + 1;
    }
    if (sentence || state.behindFile) {
      boolean may = exact && number.text().length() >= FEWEST_DIGITS;
      if (!may) {
        return state.aside(row, at, at + 1, "a number in a remark");
      }
      state.add(
          Pieces.several(
              number.text(),
              hits,
              state.behindFile
                  ? "it stands behind the whole name of a file; a frame, or something else?"
                  : "it stands in a sentence; a frame, or something else?"));
      return at + 1;
    }
    boolean goesOnShort = goesOn && completed(number).count() > 0;
    if (goesOnShort) {
      state.add(
          Pieces.several(
              number.text(),
              completed(number),
              "it goes on with “" + PlainText.line(state.before.written()) + "”, or counts?"));
    } else if (hits.count() > 0 && (goesOn || state.before == null)) {
      state.add(
          Pieces.several(number.text(), hits, "so short a number is a frame, or something else"));
    } else if (wholeLine) {
      state.add(state.make.unknown(number.text(), List.of(number)));
    } else {
      return state.aside(row, at, at + 1, "a number in a remark");
    }
    return at + 1;
  }

  /** {@code IMG_1234, 36}: perhaps 1236. */
  private NameIndex.Hits completed(Token number) {
    var last = state.lastNumber;
    int missing = state.before == null || last == null ? 0 : last.length() - number.text().length();
    return missing <= 0 || number.text().length() < 2
        ? NameIndex.Hits.NONE
        : state.before.of(
            state.make.index(), Token.number(last.substring(0, missing) + number.text()));
  }

  /** Numbers in one: a date, a time, several names that slashes part, or a range. */
  int numbers(Line.Item item, Row row, int at, int end) {
    var tokens = row.tokens().subList(at, end);
    boolean slashes = true;
    boolean range = tokens.size() == 2;
    for (int i = 1; i < tokens.size(); i++) {
      slashes &= state.line.isSlash(tokens.get(i - 1).to(), tokens.get(i).from());
      range &= state.line.isRangeMark(tokens.get(i - 1).to(), tokens.get(i).from());
    }
    if (range && Ranges.end(tokens.getFirst(), tokens.getLast(), true).isPresent()) {
      int read = rangeOf(item, row, at, tokens.getFirst());
      if (read > 0) {
        return read;
      }
    }
    long longOnes = tokens.stream().filter(token -> token.text().length() >= FEWEST_DIGITS).count();
    // A date has one long number at the most; one of a month has two numbers.
    boolean date = longOnes == 0 || (longOnes == 1 && tokens.size() > 2);
    if (slashes && !date) {
      for (var token : tokens) {
        var run = List.of(token);
        var hits = state.make.index().find(run);
        state.add(
            hits.count() == 0
                ? state.make.unknown(token.text(), run)
                : Pieces.several(token.text(), hits, "numbers with a slash between them"));
      }
      return end;
    }
    boolean name = !date && state.words == 0 && !screenshot;
    if (name) {
      state.add(state.make.unknown(state.written(row, at, end), tokens));
      return end;
    }
    return state.aside(row, at, end, "a date, a time or a measure");
  }

  private int rangeOf(Line.Item item, Row row, int at, Token first) {
    int digits = first.text().length();
    if (state.goesOn(item, row, at) && state.before.digits() == digits) {
      return reader.range(row, at, at + 1, state.before);
    }
    if (state.heading != null && state.before == null && state.words == 0) {
      state.usedHeading = true;
      return reader.range(row, at, at + 1, state.heading);
    }
    if (digits >= FEWEST_DIGITS && state.words == 0 && !state.behindFile) {
      state.before = new Following.Name(first.text(), List.of(), digits);
      return reader.range(row, at, at + 1, state.before);
    }
    return 0;
  }
}
