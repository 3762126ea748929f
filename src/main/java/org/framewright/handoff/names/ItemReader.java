package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.PlainText;

/** Reads the items of a line from left to right. */
final class ItemReader {
  /** Shorter numbers count, rate or number something as often as they name a frame. */
  private static final int FEWEST_DIGITS = 3;

  private static final int DIGITS_BEHIND_CAPITALS = 4;

  /** What the lines of a list share. */
  record Shared(
      NameIndex index, Nearest nearest, Ranges ranges, Effort headings, boolean screenshot) {}

  private final Shared shared;
  private final Line line;
  private final List<Piece> pieces = new ArrayList<>();
  private Following.Heading heading;

  /** Whether the heading stands in this line. */
  private boolean ownHeading;

  private boolean usedHeading;

  /** What a number would go on with; none at the beginning and behind the name of a file. */
  private Following.Name before;

  private boolean behindFile;
  private String lastNumber;

  /** Words that say something, since the line began or a colon. */
  private int words;

  private String caution;
  private boolean either;

  /** Where the last token of what was read last ends, and where that ends with its ending. */
  private int lastEnd = -1;

  private int lastTo;

  ItemReader(Shared shared, Line line, Following.Heading heading) {
    this.shared = shared;
    this.line = line;
    this.heading = heading;
  }

  List<Piece> pieces() {
    return pieces;
  }

  Following.Heading heading() {
    return heading;
  }

  /** Whether the line has a heading, or stands below one. */
  boolean headed() {
    return ownHeading || usedHeading;
  }

  /** A word of the line that says that something is not meant. */
  Optional<String> caution() {
    return Optional.ofNullable(caution);
  }

  /** Tokens of an item in one row. */
  private record Row(List<Line.Unit> units, List<Token> tokens, List<Integer> unitOf) {
    static Row of(List<Line.Unit> units) {
      var tokens = new ArrayList<Token>();
      var unitOf = new ArrayList<Integer>();
      for (int u = 0; u < units.size(); u++) {
        for (var token : units.get(u).tokens()) {
          tokens.add(token);
          unitOf.add(u);
        }
      }
      return new Row(units, tokens, unitOf);
    }

    boolean begins(int token) {
      return token == 0 || !unitOf.get(token).equals(unitOf.get(token - 1));
    }

    boolean ends(int after) {
      return after == tokens.size() || begins(after);
    }

    Line.Unit unit(int token) {
      return units.get(unitOf.get(token));
    }

    /** Where the unit of a token ends. */
    int endOfUnit(int token) {
      int end = token;
      while (!ends(end)) {
        end++;
      }
      return end == token ? next(token) : end;
    }

    private int next(int token) {
      int end = token + 1;
      while (!ends(end)) {
        end++;
      }
      return end;
    }

    /** How far a name may reach that begins here: an ending of a file ends it. */
    int limit(int token) {
      int most = Math.min(tokens.size(), token + NameIndex.LONGEST);
      for (int at = token; at < most; at++) {
        if (unit(at).ending()) {
          return Math.min(most, endOfUnit(at));
        }
      }
      return most;
    }
  }

  void read(Line.Item item, Line.Item next) {
    var row = Row.of(item.units());
    int at = 0;
    while (at < row.tokens().size()) {
      at = step(item, next, row, at);
    }
    if (item.colon()) {
      words = 0;
    }
  }

  /** Reads what begins at a unit; returns where the next one begins. */
  private int step(Line.Item item, Line.Item next, Row row, int at) {
    var unit = row.unit(at);
    int name = nameFrom(row, at);
    boolean bare = name == at + 1 && row.tokens().get(at).number();
    if (name > at && !bare) {
      return named(item, next, row, at, name);
    }
    if (unit.isNumber()) {
      return number(item, next, row, at);
    }
    if (!unit.hasNumber()) {
      return word(item, row, at);
    }
    return strange(item, row, at);
  }

  /** Where the longest name or part of one ends that begins here; {@code at} if none does. */
  private int nameFrom(Row row, int at) {
    int longest = shared.index().longest(row.tokens(), at, row.limit(at));
    for (int end = at + longest; end > at; end--) {
      if (isRangeInside(row, end) || (row.ends(end) && endsName(row, at, end))) {
        return end;
      }
    }
    return at;
  }

  private boolean endsName(Row row, int at, int end) {
    boolean number = row.tokens().subList(at, end).stream().anyMatch(Token::number);
    boolean all = at == 0 && end == row.tokens().size() && line.items().size() == 1;
    return number || (all && shared.index().find(row.tokens().subList(at, end)).grade().whole());
  }

  /** Whether a unit goes on here with the end of a range: its last number, or a name with it. */
  private boolean isRangeInside(Row row, int end) {
    if (row.ends(end)
        || !row.tokens().get(end - 1).number()
        || !line.isRangeMark(row.tokens().get(end - 1).to(), row.tokens().get(end).from())) {
      return false;
    }
    int last = row.endOfUnit(end) - 1;
    return row.tokens().get(last).number()
        && (last == end || shared.index().longest(row.tokens(), end, last + 1) == last + 1 - end)
        && Ranges.end(row.tokens().get(end - 1), row.tokens().get(last), true).isPresent();
  }

  // ---- names

  private int named(Line.Item item, Line.Item next, Row row, int at, int end) {
    var run = row.tokens().subList(at, end);
    var hits = shared.index().find(run);
    var last = run.getLast();
    boolean file = row.unit(end - 1).ending() && row.ends(end);
    if (last.number()) {
      var following =
          new Following.Name(
              written(row, at, end), run.subList(0, run.size() - 1), last.text().length());
      int after = range(row, at, end, following);
      if (after > end) {
        before = following;
        behindFile = false;
        return after;
      }
      before = file ? null : following;
      lastNumber = last.text();
    }
    behindFile = file;
    if (!row.ends(end)) {
      return strange(item, row, at);
    }
    if (heads(item, next, row, end, run, hits, false)) {
      return end;
    }
    if (hits.count() > 1 && end < row.tokens().size()) {
      int joined = joined(row, at, end, run);
      if (joined > end) {
        return joined;
      }
    }
    add(piece(written(row, at, end), hits, run));
    return end;
  }

  /** Reads the rest of a range whose first name ends here; returns {@code end} where it is none. */
  private int range(Row row, int at, int end, Following what) {
    if (end >= row.tokens().size()) {
      return end;
    }
    var first = row.tokens().get(end - 1);
    int then = end;
    boolean glued = !row.begins(end);
    if (glued
        ? !isRangeInside(row, end)
        : !line.isRangeMark(first.to(), row.tokens().get(end).from())) {
      var word = row.unit(end);
      boolean to = word.isWord() && ListWords.TO.contains(word.tokens().getFirst().folded());
      if (glued || !to) {
        return end;
      }
      then = end + 1;
    }
    int last = lastOfRange(row, then, what);
    if (last < 0) {
      return otherRange(row, at, end, then, what);
    }
    var meant = Ranges.end(first, row.tokens().get(last), glued);
    if (meant.isEmpty()) {
      return end;
    }
    add(shared.ranges().read(written(row, at, last + 1), what, first, meant.get()));
    return last + 1;
  }

  /** The number that ends a range: bare, or behind the same beginning as the first one has. */
  private static int lastOfRange(Row row, int then, Following what) {
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

  /** From one name to another that begins otherwise: nobody knows what lies between. */
  private int otherRange(Row row, int at, int end, int then, Following what) {
    if (then >= row.tokens().size() || what instanceof Following.Heading) {
      return end;
    }
    int name = nameFrom(row, then);
    if (name <= then + 1
        || !shared.index().find(row.tokens().subList(then, name)).grade().whole()) {
      return end;
    }
    var both = new ArrayList<KnownName>();
    both.addAll(shared.index().find(row.tokens().subList(at, end)).fitting());
    both.addAll(shared.index().find(row.tokens().subList(then, name)).fitting());
    add(
        new Piece.Asked(
            written(row, at, name),
            both,
            both.size(),
            "a range from one name to another that begins otherwise"));
    return name;
  }

  /** {@code 001 ... 0003}: two parts of a name that fit several frames, and one together. */
  private int joined(Row row, int at, int end, List<Token> run) {
    int then = end;
    while (then < row.tokens().size() && isFiller(row.unit(then))) {
      then++;
    }
    if (then >= row.tokens().size()) {
      return end;
    }
    int name = nameFrom(row, then);
    if (name <= then || !row.ends(name)) {
      return end;
    }
    var second = row.tokens().subList(then, name);
    var hits = shared.index().following(run, second, shared.headings());
    if (hits.count() == 0) {
      return end;
    }
    add(
        hits.count() == 1
            ? new Piece.Taken(
                written(row, at, name),
                hits.frames(),
                "both parts stand in its name and in no other")
            : several(written(row, at, name), hits, "several frames have both in their names"));
    behindFile = row.unit(name - 1).ending();
    before = null;
    return name;
  }

  private static boolean isFiller(Line.Unit unit) {
    return unit.isWord() && ListWords.BEFORE_NUMBERS.contains(unit.tokens().getFirst().folded());
  }

  /** Whether a name with a colon behind it is a heading for what follows. */
  private boolean heads(
      Line.Item item,
      Line.Item next,
      Row row,
      int end,
      List<Token> run,
      NameIndex.Hits hits,
      boolean bare) {
    if (!item.colon() || end < row.tokens().size() || (bare && words > 0)) {
      return false;
    }
    var candidate = new Following.Heading(line(row), List.copyOf(run), shared.headings());
    boolean several = hits.count() > 1;
    boolean numberNext =
        bare
            && next != null
            && next.units().getFirst().isNumber()
            && candidate.of(shared.index(), next.units().getFirst().tokens().getFirst()).count()
                > 0;
    boolean unknown =
        bare && hits.count() == 0 && (next == null || next.units().getFirst().isNumber());
    if (several || numberNext || unknown) {
      heading = candidate;
      ownHeading = true;
      before = null;
      return true;
    }
    return false;
  }

  private String line(Row row) {
    return written(row, 0, row.tokens().size());
  }

  // ---- numbers that stand alone

  private int number(Line.Item item, Line.Item next, Row row, int at) {
    var number = row.tokens().get(at);
    int end = at + 1;
    if (isCounted(row, end)) {
      return aside(row, at, end, "it counts something");
    }
    var prefix = prefix(row, at, number);
    if (prefix.isPresent()) {
      // Written with a beginning of its own, so that it is no other frame's number.
      var run = new ArrayList<>(prefix.get().tokens());
      run.add(number);
      before = null;
      add(unknown(prefix.get().text() + " " + number.text(), run));
      return end;
    }
    var run = List.of(number);
    if (heads(item, next, row, end, run, shared.index().find(run), true)) {
      return end;
    }
    boolean goesOn = before != null && (at == 0 ? item.after() : lastPieceEndsAt(row, at));
    if (goesOn && before.digits() == number.text().length()) {
      return goesOn(row, at, before);
    }
    if (!ownHeading) {
      int joined = joined(row, at, end, run);
      if (joined > end) {
        return joined;
      }
    }
    if (heading != null && before == null && words == 0) {
      return underHeading(row, at);
    }
    return alone(row, at, goesOn);
  }

  private boolean lastPieceEndsAt(Row row, int at) {
    return at > 0 && row.tokens().get(at - 1).to() == lastEnd;
  }

  private boolean isCounted(Row row, int end) {
    if (end >= row.tokens().size()) {
      return false;
    }
    var unit = row.unit(end);
    return unit.isWord() && ListWords.COUNTED.contains(unit.tokens().getFirst().folded());
  }

  /** The word before a number, if it looks like the beginning of a file's name. */
  private Optional<Line.Unit> prefix(Row row, int at, Token number) {
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
            && number.text().length() >= DIGITS_BEHIND_CAPITALS;
    return capitals || shared.index().knows(word) ? Optional.of(unit) : Optional.empty();
  }

  private int goesOn(Row row, int at, Following.Name what) {
    int end = range(row, at, at + 1, what);
    if (end > at + 1) {
      return end;
    }
    var number = row.tokens().get(at);
    var run = what.with(number);
    var hits = what.of(shared.index(), number);
    var written = written(row, at, at + 1);
    var why = "goes on with “" + PlainText.line(what.written()) + "”";
    add(
        hits.count() == 0
            ? unknown(written, run)
            : hits.count() == 1
                ? new Piece.Taken(written, hits.frames(), why)
                : several(written, hits, "several frames fit, as it " + why));
    return at + 1;
  }

  private int underHeading(Row row, int at) {
    usedHeading = true;
    var number = row.tokens().get(at);
    int end = range(row, at, at + 1, heading);
    if (end > at + 1) {
      return end;
    }
    var hits = heading.of(shared.index(), number);
    var written = written(row, at, at + 1);
    var under = "under “" + PlainText.line(heading.written()) + "”";
    if (hits.count() == 1) {
      add(new Piece.Taken(written, hits.frames(), under));
    } else if (hits.count() > 1) {
      add(several(written, hits, "several frames fit " + under));
    } else {
      var elsewhere = shared.index().find(List.of(number));
      var run = new ArrayList<>(heading.tokens());
      run.add(number);
      add(
          elsewhere.count() > 0 && number.text().length() >= FEWEST_DIGITS
              ? several(written, elsewhere, "no frame fits " + under + ", only elsewhere")
              : new Piece.Unknown(written, shared.nearest().to(run), "no frame fits " + under));
    }
    return at + 1;
  }

  private int alone(Row row, int at, boolean goesOn) {
    var number = row.tokens().get(at);
    boolean sentence = words > 0;
    boolean wholeLine = line.items().size() == 1 && row.tokens().size() == 1;
    var hits = shared.index().find(List.of(number));
    boolean exact = hits.count() > 0 && !butZeros(hits);
    if (!sentence && !behindFile && number.text().length() >= FEWEST_DIGITS) {
      var what = new Following.Name(written(row, at, at + 1), List.of(), number.text().length());
      int end = range(row, at, at + 1, what);
      if (end > at + 1) {
        before = what;
        lastNumber = number.text();
        return end;
      }
      if (hits.count() == 0) {
        add(unknown(number.text(), List.of(number)));
      } else if (exact || wholeLine) {
        before = what;
        lastNumber = number.text();
        add(piece(number.text(), hits, List.of(number)));
      } else {
        add(several(number.text(), hits, "it fits but for its zeros"));
      }
      return at + 1;
    }
    if (sentence || behindFile) {
      boolean may = exact && number.text().length() >= FEWEST_DIGITS;
      if (!may) {
        return aside(row, at, at + 1, "a number in a remark");
      }
      add(
          several(
              number.text(),
              hits,
              behindFile
                  ? "it stands behind the whole name of a file; a frame, or something else?"
                  : "it stands in a sentence; a frame, or something else?"));
      return at + 1;
    }
    boolean goesOnShort = goesOn && completed(number).count() > 0;
    if (goesOnShort) {
      add(several(number.text(), completed(number), "it goes on with the name before, or counts?"));
    } else if (hits.count() > 0 && (goesOn || before == null)) {
      add(several(number.text(), hits, "so short a number is a frame, or something else"));
    } else if (wholeLine) {
      add(unknown(number.text(), List.of(number)));
    } else {
      return aside(row, at, at + 1, "a number in a remark");
    }
    return at + 1;
  }

  /** {@code IMG_1234, 36}: perhaps 1236. */
  private NameIndex.Hits completed(Token number) {
    var last = lastNumber;
    int missing = before == null || last == null ? 0 : last.length() - number.text().length();
    return missing <= 0 || number.text().length() < 2
        ? NameIndex.Hits.NONE
        : before.of(shared.index(), Token.number(last.substring(0, missing) + number.text()));
  }

  // ---- what fits nothing as it stands

  private int word(Line.Item item, Row row, int at) {
    var unit = row.unit(at);
    int end = row.endOfUnit(at);
    if (unit.ending() && at > 0 && lastPieceEndsAt(row, at)) {
      behindFile = true;
      return end; // "IMG_1234 copy.jpg"
    }
    if (unit.ending()) {
      add(unknown(unit.text(), unit.tokens()));
      behindFile = true;
      before = null;
      return end;
    }
    var word = unit.tokens().getFirst().folded();
    if (ListWords.OR.contains(word) && at > 0 && !pieces.isEmpty()) {
      either |= lastPieceEndsAt(row, at);
    }
    if (ListWords.CAUTION.contains(word)) {
      caution = unit.text();
    }
    boolean says =
        !ListWords.BEFORE_NUMBERS.contains(word)
            && !ListWords.TO.contains(word)
            && !ListWords.CAUTION.contains(word)
            && !(item.colon() && ListWords.COUNTED.contains(word));
    words += says ? 1 : 0;
    return end;
  }

  /** A unit of letters and numbers that is no name and no part of one. */
  private int strange(Line.Item item, Row row, int at) {
    var unit = row.unit(at);
    int end = row.endOfUnit(at);
    boolean numbers = unit.tokens().stream().allMatch(Token::number);
    if (numbers && !unit.ending()) {
      return numbers(item, row, at, end);
    }
    var held = held(unit);
    if (held.isPresent()) {
      add(held.get());
      behindFile = true;
      before = null;
    } else if (looksLikeName(unit)) {
      add(unknown(unit.text(), unit.tokens()));
      behindFile = unit.ending();
      before = null;
    } else {
      aside(row, at, end, "a number in a remark");
      words++;
    }
    return end;
  }

  /** Numbers in one: a date, a time, several names that slashes part, or a range. */
  private int numbers(Line.Item item, Row row, int at, int end) {
    var tokens = row.tokens().subList(at, end);
    boolean slashes = tokens.size() > 1;
    boolean range = tokens.size() == 2;
    for (int i = 1; i < tokens.size(); i++) {
      slashes &= line.isSlash(tokens.get(i - 1).to(), tokens.get(i).from());
      range &= line.isRangeMark(tokens.get(i - 1).to(), tokens.get(i).from());
    }
    boolean goesOn = before != null && (at == 0 ? item.after() : lastPieceEndsAt(row, at));
    int digits = tokens.getFirst().text().length();
    if (range && Ranges.end(tokens.getFirst(), tokens.getLast(), true).isPresent()) {
      if (goesOn && before.digits() == digits) {
        return range(row, at, at + 1, before);
      }
      if (heading != null && before == null && words == 0) {
        usedHeading = true;
        return range(row, at, at + 1, heading);
      }
      if (digits >= FEWEST_DIGITS && words == 0 && !behindFile) {
        before = new Following.Name(tokens.getFirst().text(), List.of(), digits);
        return range(row, at, at + 1, before);
      }
    }
    boolean year =
        tokens.size() > 2
            || tokens.stream().allMatch(token -> token.text().length() < FEWEST_DIGITS);
    if (slashes && !year) {
      for (var token : tokens) {
        var run = List.of(token);
        var hits = shared.index().find(run);
        add(
            hits.count() == 0
                ? unknown(token.text(), run)
                : several(token.text(), hits, "numbers with a slash between them"));
      }
      return end;
    }
    boolean longNumber = tokens.stream().anyMatch(token -> token.text().length() >= FEWEST_DIGITS);
    boolean name = tokens.size() < 3 && longNumber && words == 0 && !shared.screenshot();
    if (name) {
      add(unknown(written(row, at, end), tokens));
      return end;
    }
    return aside(row, at, end, "a date, a time or a measure");
  }

  /** A name inside a longer one, such as that of a picture of the screen. */
  private Optional<Piece> held(Line.Unit unit) {
    var tokens = unit.tokens();
    List<Token> best = List.of();
    int bestAt = 0;
    for (int at = 0; at < tokens.size(); at++) {
      int longest = shared.index().longest(tokens, at, tokens.size());
      for (int length = longest; length > Math.max(1, best.size()); length--) {
        var run = tokens.subList(at, at + length);
        if (holds(run)) {
          best = run;
          bestAt = at;
          break;
        }
      }
    }
    if (best.isEmpty()) {
      return Optional.empty();
    }
    var hits = shared.index().find(best);
    var text = best.stream().map(Token::text).reduce((a, b) -> a + "_" + b).orElse("");
    int after = bestAt + best.size();
    boolean numberBehind =
        after < tokens.size()
            && tokens.get(after).number()
            && line.isRangeMark(tokens.get(after - 1).to(), tokens.get(after).from());
    if (holdsOne(tokens.subList(0, bestAt)) || holdsOne(tokens.subList(after, tokens.size()))) {
      return Optional.of(several(unit.text(), hits, "it holds “" + text + "”, and another name"));
    }
    if (hits.count() == 1 && !numberBehind) {
      return Optional.of(
          new Piece.Taken(
              unit.text(), hits.frames(), "it holds “" + text + "”, " + words(hits, true)));
    }
    return Optional.of(
        several(
            unit.text(),
            hits,
            numberBehind
                ? "a range, or the name of a copy?"
                : "it holds “" + text + "”, which fits several frames"));
  }

  private boolean holdsOne(List<Token> tokens) {
    for (int at = 0; at < tokens.size(); at++) {
      int longest = shared.index().longest(tokens, at, tokens.size());
      for (int length = longest; length > 1; length--) {
        if (holds(tokens.subList(at, at + length))) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean holds(List<Token> run) {
    boolean number = run.stream().anyMatch(Token::number);
    boolean word = run.stream().anyMatch(token -> !token.number());
    if (!number) {
      return false;
    }
    var hits = shared.index().find(run);
    return hits.grade().whole() || (word && shared.screenshot() && hits.count() > 0);
  }

  private static boolean looksLikeName(Line.Unit unit) {
    if (unit.ending()) {
      return true;
    }
    boolean word = unit.tokens().stream().anyMatch(token -> !token.number());
    boolean number =
        unit.tokens().stream()
            .anyMatch(token -> token.number() && token.text().length() >= FEWEST_DIGITS);
    boolean measure =
        unit.tokens().size() == 2
            && unit.tokens().getFirst().number()
            && ListWords.COUNTED.contains(unit.tokens().getLast().folded());
    return word && !measure && (number || unit.text().indexOf('_') > 0);
  }

  // ---- pieces

  private Piece piece(String written, NameIndex.Hits hits, List<Token> run) {
    return switch (hits.count()) {
      case 0 -> unknown(written, run);
      case 1 -> new Piece.Taken(written, hits.frames(), words(hits, false));
      default -> several(written, hits, "several frames fit");
    };
  }

  /** By which name of it a frame was found. */
  private static String words(NameIndex.Hits hits, boolean inside) {
    var name = hits.names().firstEntry().getValue();
    var words =
        switch (hits.grade()) {
          case WHOLE -> name.kind().words();
          case WHOLE_BUT_ZEROS -> name.kind().words() + " but for its zeros";
          case PART -> "a part of " + name.kind().words() + " and of no other";
          case PART_BUT_ZEROS ->
              "a part of " + name.kind().words() + " but for its zeros, and of no other";
        };
    return inside || name.kind() == KnownName.Kind.NOW ? words : words + ", " + name.text();
  }

  private static boolean butZeros(NameIndex.Hits hits) {
    return hits.grade() == NameIndex.Grade.PART_BUT_ZEROS
        || hits.grade() == NameIndex.Grade.WHOLE_BUT_ZEROS;
  }

  private static Piece several(String written, NameIndex.Hits hits, String why) {
    return new Piece.Asked(PlainText.line(written), hits.fitting(), hits.count(), why);
  }

  private Piece unknown(String written, List<Token> run) {
    return new Piece.Unknown(
        PlainText.line(written), shared.nearest().to(run), "no frame has this name");
  }

  private int aside(Row row, int at, int end, String why) {
    pieces.add(new Piece.Aside(written(row, at, end), why));
    return end;
  }

  private String written(Row row, int at, int end) {
    boolean all = row.ends(end) && row.unit(end - 1).ending();
    int from = row.tokens().get(at).from();
    int to = all ? row.unit(end - 1).to() : row.tokens().get(end - 1).to();
    lastEnd = row.tokens().get(end - 1).to();
    lastTo = to;
    return PlainText.line(line.text().substring(from, to));
  }

  /**
   * Adds what was read; a word before it, or a question behind it, may mean that it is not meant.
   */
  private void add(Piece piece) {
    if (!(piece instanceof Piece.Taken taken)) {
      pieces.add(piece);
    } else if (either) {
      pieces.add(asked(taken, "it is one of several"));
      int before = pieces.size() - 2;
      if (before >= 0 && pieces.get(before) instanceof Piece.Taken other) {
        pieces.set(before, asked(other, "it is one of several"));
      }
    } else if (caution != null) {
      pieces.add(asked(taken, "the line says “" + PlainText.line(caution) + "”"));
    } else if (line.text().startsWith("?", lastTo)) {
      pieces.add(asked(taken, "a question mark stands behind it"));
    } else {
      pieces.add(taken);
    }
  }

  private Piece asked(Piece.Taken taken, String why) {
    return new Piece.Asked(
        taken.written(), shared.index().now(taken.frames()), taken.frames().size(), why);
  }
}
