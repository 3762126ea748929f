package org.framewright.handoff.names;

import java.util.List;
import java.util.Optional;

/** Reads the items of a line from left to right. */
final class ItemReader {
  /** What the lines of a list share. */
  record Shared(Pieces make, Ranges ranges, SearchBudget headings) {}

  private final LineState state;
  private final NameRuns runs;
  private final RunReader reader;
  private final NumberReader numbers;
  private final HeldNames held;

  /**
   * @param screenshot whether the line speaks of a picture of a screen, whose name has a date
   */
  ItemReader(Shared shared, Line line, Following.Heading heading, boolean screenshot) {
    this.state = new LineState(shared.make(), line, heading);
    this.runs = new NameRuns(shared.make().index(), line);
    this.reader = new RunReader(state, runs, shared.ranges(), shared.headings());
    this.numbers = new NumberReader(state, runs, reader, screenshot);
    this.held = new HeldNames(shared.make().index(), line, screenshot);
  }

  List<Piece> pieces() {
    return state.pieces;
  }

  Following.Heading heading() {
    return state.heading;
  }

  /** Whether the line has a heading, or stands below one. */
  boolean headed() {
    return state.headed();
  }

  /** A word of the line that says that something is not meant. */
  Optional<String> caution() {
    return Optional.ofNullable(state.caution);
  }

  void read(Line.Item item, Line.Item next) {
    var row = Row.of(item.units());
    int at = 0;
    while (at < row.tokens().size()) {
      at = step(item, next, row, at);
    }
    if (item.colon()) {
      state.words = 0;
    }
  }

  /** Reads what begins at a unit; returns where the next one begins. */
  private int step(Line.Item item, Line.Item next, Row row, int at) {
    var unit = row.unit(at);
    int name = runs.nameFrom(row, at);
    boolean bare = name == at + 1 && row.tokens().get(at).number();
    if (name > 0 && !bare) {
      return named(item, next, row, at, name);
    }
    if (unit.isNumber()) {
      return numbers.number(item, next, row, at);
    }
    if (!unit.hasNumber()) {
      return word(item, row, at);
    }
    return strange(item, row, at);
  }

  private int named(Line.Item item, Line.Item next, Row row, int at, int end) {
    var run = row.tokens().subList(at, end);
    var hits = state.make.index().find(run);
    var last = run.getLast();
    boolean file = row.unit(end - 1).ending() && row.ends(end);
    if (last.number()) {
      var following =
          new Following.Name(
              state.written(row, at, end), run.subList(0, run.size() - 1), last.text().length());
      int after = reader.range(row, at, end, following);
      if (after > 0) {
        state.before = following;
        state.behindFile = false;
        return after;
      }
      state.before = file ? null : following;
      state.lastNumber = last.text();
    }
    state.behindFile = file;
    if (!row.ends(end)) {
      return strange(item, row, at);
    }
    if (reader.heads(item, next, row, end, run, hits, false)) {
      return end;
    }
    if (hits.count() > 1 && end < row.tokens().size()) {
      int joined = reader.joined(row, at, end, run);
      if (joined > 0) {
        return joined;
      }
    }
    state.add(state.make.piece(state.written(row, at, end), hits, run));
    return end;
  }

  private int word(Line.Item item, Row row, int at) {
    var unit = row.unit(at);
    int end = row.endOfUnit(at);
    if (unit.ending() && state.follows(row, at)) {
      state.behindFile = true;
      return end; // "IMG_1234 copy.jpg"
    }
    if (unit.ending()) {
      state.add(state.make.unknown(unit.text(), unit.tokens()));
      state.behindFile = true;
      state.before = null;
      return end;
    }
    var word = unit.tokens().getFirst().folded();
    if (ListWords.OR.contains(word)) {
      state.either |= at == 0 ? item.after() && !state.pieces.isEmpty() : state.follows(row, at);
    }
    if (ListWords.CAUTION.contains(word)) {
      state.caution = unit.text();
    }
    boolean says =
        !ListWords.BEFORE_NUMBERS.contains(word)
            && !ListWords.TO.contains(word)
            && !ListWords.CAUTION.contains(word)
            && !(item.colon() && ListWords.COUNTED.contains(word));
    state.words += says ? 1 : 0;
    return end;
  }

  /** A unit of letters and numbers that is no name and no part of one. */
  private int strange(Line.Item item, Row row, int at) {
    var unit = row.unit(at);
    int end = row.endOfUnit(at);
    if (unit.hasOnlyNumbers()) {
      return numbers.numbers(item, row, at, end);
    }
    var name = held.held(unit);
    if (name.isPresent()) {
      state.add(name.get());
      state.behindFile = true;
      state.before = null;
    } else if (HeldNames.looksLikeName(unit)) {
      state.add(state.make.unknown(unit.text(), unit.tokens()));
      state.behindFile = unit.ending();
      state.before = null;
    } else {
      state.aside(row, at, end, "a number in a remark");
      state.words++;
    }
    return end;
  }
}
