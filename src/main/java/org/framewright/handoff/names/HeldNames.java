package org.framewright.handoff.names;

import java.util.List;
import java.util.Optional;

/** Finds names inside longer ones. */
record HeldNames(NameIndex index, Line line, boolean screenshot) {
  /** A name inside a longer one, such as that of a picture of the screen. */
  Optional<Piece> held(Line.Unit unit) {
    var tokens = unit.tokens();
    List<Token> best = List.of();
    int bestAt = 0;
    for (int at = 0; at < tokens.size(); at++) {
      int longest = index.longest(tokens, at, tokens.size());
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
    var hits = index.find(best);
    var text = best.stream().map(Token::text).reduce((a, b) -> a + "_" + b).orElse("");
    int after = bestAt + best.size();
    boolean numberBehind =
        after < tokens.size()
            && tokens.get(after).number()
            && line.isRangeMark(tokens.get(after - 1).to(), tokens.get(after).from());
    if (holdsOne(tokens.subList(0, bestAt)) || holdsOne(tokens.subList(after, tokens.size()))) {
      return Optional.of(
          Pieces.several(unit.text(), hits, "it holds “" + text + "”, and another name"));
    }
    if (hits.count() == 1 && !numberBehind) {
      return Optional.of(
          new Piece.Taken(
              unit.text(), hits.frames(), "it holds “" + text + "”, " + Pieces.words(hits, true)));
    }
    return Optional.of(
        Pieces.several(
            unit.text(),
            hits,
            numberBehind
                ? "a range, or the name of a copy?"
                : "it holds “" + text + "”, which fits several frames"));
  }

  private boolean holdsOne(List<Token> tokens) {
    for (int at = 0; at < tokens.size(); at++) {
      int longest = index.longest(tokens, at, tokens.size());
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
    var hits = index.find(run);
    return hits.grade().whole() || (word && screenshot && hits.count() > 0);
  }

  /** Whether a unit looks like the name of a file. */
  static boolean looksLikeName(Line.Unit unit) {
    if (unit.ending()) {
      return true;
    }
    boolean word = unit.tokens().stream().anyMatch(token -> !token.number());
    boolean number =
        unit.tokens().stream()
            .anyMatch(
                token -> token.number() && token.text().length() >= NumberReader.FEWEST_DIGITS);
    boolean measure =
        unit.tokens().size() == 2
            && unit.tokens().getFirst().number()
            && ListWords.COUNTED.contains(unit.tokens().getLast().folded());
    return word && !measure && (number || unit.text().contains("_"));
  }
}
