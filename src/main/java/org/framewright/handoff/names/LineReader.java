package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;

/** Reads the lines of a list one after another; a heading holds for the lines below it. */
final class LineReader {
  /** Longer lines are no list of names. */
  static final int LONGEST_LINE = 100_000;

  private static final Pattern STRUCK = Pattern.compile("~~|[✗✘❌🚫]");

  /** Entries of the index that headings may be looked up in. */
  private static final long HEADINGS = 20_000_000;

  private final Pieces make;
  private final ItemReader.Shared shared;

  private Following.Heading heading;
  private boolean headingUsed;
  private String caution;

  LineReader(NameIndex index) {
    var similar = new SimilarNames(index);
    this.make = new Pieces(index, similar);
    this.shared =
        new ItemReader.Shared(make, new Ranges(index, similar), new SearchBudget(HEADINGS));
  }

  /** What a line asks for; nothing where it is a remark without anything that might be a name. */
  List<Piece> read(String text) {
    if (text.length() > LONGEST_LINE) {
      return List.of(
          new Piece.Unknown(
              PlainText.line(text.substring(0, 60)) + " ...",
              List.of(),
              "a line of more than " + LONGEST_LINE + " characters is no list of names"));
    }
    var line = Line.of(text);
    boolean screenshot = isScreenshot(line);
    var outside = new ItemReader(shared, line, heading, screenshot);
    var inBrackets = new ItemReader(shared, line, heading, screenshot);
    for (int i = 0; i < line.items().size(); i++) {
      var item = line.items().get(i);
      var next = i + 1 < line.items().size() ? line.items().get(i + 1) : null;
      (item.bracketed() ? inBrackets : outside).read(item, next);
    }
    var pieces = joined(outside.pieces(), inBrackets.pieces());
    if (STRUCK.matcher(text).find()) {
      pieces = asked(pieces, "a sign in the line strikes it out");
    }
    boolean asks = pieces.stream().anyMatch(piece -> !(piece instanceof Piece.Aside));
    heading = asks && !outside.headed() ? null : outside.heading();
    headingUsed = outside.headed() && asks;
    if (text.strip().endsWith(":") && !asks) {
      caution = outside.caution().map(word -> text.strip()).orElse(null);
    } else if (asks && caution != null) {
      pieces = asked(pieces, "it stands below “" + PlainText.line(caution) + "”");
    }
    return pieces;
  }

  /** An empty line ends what stands below a heading. */
  void emptyLine() {
    if (headingUsed) {
      heading = null;
    }
    caution = null;
  }

  private static boolean isScreenshot(Line line) {
    return line.items().stream()
        .flatMap(item -> item.units().stream())
        .flatMap(unit -> unit.tokens().stream())
        .anyMatch(token -> ListWords.SCREENSHOT.contains(token.folded()));
  }

  /** What stands in brackets behind a name is a remark, unless it names another frame. */
  private List<Piece> joined(List<Piece> outside, List<Piece> inBrackets) {
    if (outside.stream().allMatch(piece -> piece instanceof Piece.Aside)) {
      var all = new ArrayList<>(outside);
      all.addAll(inBrackets);
      return all;
    }
    var known = new HashSet<Integer>();
    for (var piece : outside) {
      if (piece instanceof Piece.Taken taken) {
        known.addAll(taken.frames());
      }
    }
    var all = new ArrayList<>(outside);
    for (var piece : inBrackets) {
      switch (piece) {
        case Piece.Taken taken -> {
          if (!known.containsAll(taken.frames())) {
            all.add(make.asked(taken, "it stands in brackets behind another name"));
          }
        }
        case Piece.Asked asked when isShortNumber(asked.written()) ->
            all.add(new Piece.Aside(asked.written(), "a number in brackets"));
        case Piece.Unknown unknown when isShortNumber(unknown.written()) ->
            all.add(new Piece.Aside(unknown.written(), "a number in brackets"));
        default -> all.add(piece);
      }
    }
    return all;
  }

  /** What is asked about and so short is a number: no shorter name is looked for in brackets. */
  private static boolean isShortNumber(String written) {
    return written.length() < NumberReader.FEWEST_DIGITS;
  }

  private List<Piece> asked(List<Piece> pieces, String why) {
    return pieces.stream()
        .map(piece -> piece instanceof Piece.Taken taken ? make.asked(taken, why) : piece)
        .toList();
  }
}
