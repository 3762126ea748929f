package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;
import org.framewright.base.PlainText;

/** What is known of a line while its items are read from left to right. */
final class LineState {
  final Pieces make;
  final Line line;
  final List<Piece> pieces = new ArrayList<>();

  /** The heading that the line stands below, or has. */
  Following.Heading heading;

  boolean ownHeading;
  boolean usedHeading;

  /** What a number would go on with; none at the beginning and behind the name of a file. */
  Following.Name before;

  /** The number that {@link #before} had. */
  String lastNumber;

  boolean behindFile;

  /** Words that say something, since the line began or a colon. */
  int words;

  /** A word that says that what follows is not meant. */
  String caution;

  /** Whether what follows is one of several. */
  boolean either;

  /** Where the last token of what was read last ends, and where that ends with its ending. */
  int lastEnd = -1;

  private int lastTo;

  LineState(Pieces make, Line line, Following.Heading heading) {
    this.make = make;
    this.line = line;
    this.heading = heading;
  }

  /** Whether the line has a heading, or stands below one. */
  boolean headed() {
    return ownHeading || usedHeading;
  }

  /** Whether a unit stands behind what was read last, with a space between them. */
  boolean follows(Row row, int at) {
    return at > 0 && row.tokens().get(at - 1).to() == lastEnd;
  }

  /** Whether a number goes on with the name before it. */
  boolean goesOn(Line.Item item, Row row, int at) {
    return before != null && (at == 0 ? item.after() : follows(row, at));
  }

  /** Passes something over; returns where it ends. */
  int aside(Row row, int at, int end, String why) {
    pieces.add(new Piece.Aside(written(row, at, end), why));
    return end;
  }

  /** Some tokens as they are written; they count as read. */
  String written(Row row, int at, int end) {
    boolean all = row.ends(end) && row.unit(end - 1).ending();
    int from = row.tokens().get(at).from();
    int to = all ? row.unit(end - 1).to() : row.tokens().get(end - 1).to();
    lastEnd = row.tokens().get(end - 1).to();
    lastTo = to;
    return PlainText.line(line.text().substring(from, to));
  }

  /** Whether a question mark follows, perhaps behind a space or in brackets. */
  private boolean isQuestioned() {
    int at = lastTo;
    while (at < line.text().length() && " \t\u00a0(".indexOf(line.text().charAt(at)) >= 0) {
      at++;
    }
    return at < line.text().length() && "?\uff1f\u061f".indexOf(line.text().charAt(at)) >= 0;
  }

  /**
   * Adds what was read; a word before it, or a question behind it, may mean that it is not meant.
   */
  void add(Piece piece) {
    if (!(piece instanceof Piece.Taken taken)) {
      pieces.add(piece);
    } else if (either) {
      pieces.add(make.asked(taken, "it is one of several"));
      int before = pieces.size() - 2;
      if (before >= 0 && pieces.get(before) instanceof Piece.Taken other) {
        pieces.set(before, make.asked(other, "it is one of several"));
      }
    } else if (caution != null) {
      pieces.add(make.asked(taken, "the line says “" + PlainText.line(caution) + "”"));
    } else if (isQuestioned()) {
      pieces.add(make.asked(taken, "a question mark stands behind it"));
    } else {
      pieces.add(taken);
    }
  }
}
