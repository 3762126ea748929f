package org.framewright.handoff.names;

import java.util.List;
import org.framewright.base.PlainText;

/** Makes pieces of what was found of a name, with the reason in words. */
record Pieces(NameIndex index, SimilarNames similar) {
  Piece piece(String written, NameIndex.Hits hits, List<Token> run) {
    return switch (hits.count()) {
      case 0 -> unknown(written, run);
      case 1 -> new Piece.Taken(written, hits.frames(), words(hits, false));
      default -> several(written, hits, "several frames fit");
    };
  }

  /** By which name of it a frame was found. */
  static String words(NameIndex.Hits hits, boolean inside) {
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

  static boolean butZeros(NameIndex.Hits hits) {
    return hits.grade() == NameIndex.Grade.PART_BUT_ZEROS
        || hits.grade() == NameIndex.Grade.WHOLE_BUT_ZEROS;
  }

  static Piece several(String written, NameIndex.Hits hits, String why) {
    return new Piece.Asked(PlainText.line(written), hits.fitting(), hits.count(), why);
  }

  Piece unknown(String written, List<Token> run) {
    return new Piece.Unknown(PlainText.line(written), similar.to(run), "no frame has this name");
  }

  /** Makes of what was taken a question. */
  Piece asked(Piece.Taken taken, String why) {
    return new Piece.Asked(taken.written(), index.now(taken.frames()), taken.frames().size(), why);
  }
}
