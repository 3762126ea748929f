package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;

/** Reads what several runs of tokens say together: ranges, headings, parts of one name. */
record RunReader(LineState state, NameRuns runs, Ranges ranges, SearchBudget headings) {
  /** Reads the rest of a range whose first name ends here; 0 where it is none. */
  int range(Row row, int at, int end, Following what) {
    if (end >= row.tokens().size()) {
      return 0;
    }
    var first = row.tokens().get(end - 1);
    int then = end;
    boolean glued = !row.begins(end);
    if (glued
        ? !runs.isRangeInside(row, end)
        : !state.line.isRangeMark(first.to(), row.tokens().get(end).from())) {
      var word = row.unit(end);
      boolean to = word.isWord() && ListWords.TO.contains(word.tokens().getFirst().folded());
      if (glued || !to) {
        return 0;
      }
      then = end + 1;
    }
    int last = NameRuns.lastOfRange(row, then, what);
    if (last < 0) {
      return otherRange(row, at, end, then, what);
    }
    var meant = Ranges.end(first, row.tokens().get(last), glued);
    if (meant.isEmpty()) {
      return 0;
    }
    state.add(ranges.read(state.written(row, at, last + 1), what, first, meant.get()));
    return last + 1;
  }

  /** From one name to another that begins otherwise: nobody knows what lies between. */
  private int otherRange(Row row, int at, int end, int then, Following what) {
    if (what instanceof Following.Heading) {
      return 0;
    }
    int name = runs.nameFrom(row, then);
    if (name <= then + 1) {
      return 0;
    }
    var both = new ArrayList<KnownName>();
    both.addAll(state.make.index().find(row.tokens().subList(at, end)).fitting());
    both.addAll(state.make.index().find(row.tokens().subList(then, name)).fitting());
    state.add(
        new Piece.Asked(
            state.written(row, at, name),
            both,
            both.size(),
            "a range from one name to another that begins otherwise"));
    return name;
  }

  /**
   * {@code 001 ... 0003}: two parts of a name that fit several frames, and one together; 0 where
   * they do not.
   */
  int joined(Row row, int at, int end, List<Token> run) {
    int then = end;
    while (then < row.tokens().size() && NameRuns.isFiller(row.unit(then))) {
      then++;
    }
    int name = runs.nameFrom(row, then);
    if (name == 0 || !row.ends(name)) {
      return 0;
    }
    var second = row.tokens().subList(then, name);
    var hits = state.make.index().following(run, second, headings);
    if (hits.count() == 0) {
      return 0;
    }
    state.add(
        hits.count() == 1
            ? new Piece.Taken(
                state.written(row, at, name),
                hits.frames(),
                "both parts stand in its name and in no other")
            : Pieces.several(
                state.written(row, at, name), hits, "several frames have both in their names"));
    state.behindFile = row.unit(name - 1).ending();
    state.before = null;
    return name;
  }

  /** Whether a name with a colon behind it is a heading for what follows. */
  boolean heads(
      Line.Item item,
      Line.Item next,
      Row row,
      int end,
      List<Token> run,
      NameIndex.Hits hits,
      boolean bare) {
    if (!item.colon() || end < row.tokens().size() || (bare && state.words > 0)) {
      return false;
    }
    var candidate = new Following.Heading(line(row), List.copyOf(run), headings);
    boolean several = hits.count() > 1;
    boolean numberNext =
        bare
            && next != null
            && next.units().getFirst().isNumber()
            && candidate.of(state.make.index(), next.units().getFirst().tokens().getFirst()).count()
                > 0;
    boolean unknown =
        bare && hits.count() == 0 && (next == null || next.units().getFirst().hasOnlyNumbers());
    if (several || numberNext || unknown) {
      state.heading = candidate;
      state.ownHeading = true;
      state.before = null;
      return true;
    }
    return false;
  }

  private String line(Row row) {
    return state.written(row, 0, row.tokens().size());
  }
}
