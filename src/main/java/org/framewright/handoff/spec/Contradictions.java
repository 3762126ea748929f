package org.framewright.handoff.spec;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;

/** Whether what is asked of a picture can be had at all. */
final class Contradictions {
  private static final Asked.Amount ANY = new Asked.Amount(1, Integer.MAX_VALUE, Text.NONE);
  private static final Asked.Ratio FREE = new Asked.Ratio(0, 0, "");

  private final Map<Rule, Asked> asked;

  Contradictions(Map<Rule, Asked> asked) {
    this.asked = asked;
  }

  /** Why no picture is like this; empty where there can be one. */
  Optional<Text> found() {
    if (!sizes()) {
      return Optional.of(Text.of("no picture has all the sizes that are asked for together here"));
    }
    if (asked.get(Rule.KINDS) instanceof Asked.Kinds kinds
        && kinds.kinds().stream()
            .noneMatch(
                kind ->
                    asked.entrySet().stream()
                        .allMatch(one -> Kinds.canHave(kind, one.getValue(), one.getKey())))) {
      return Optional.of(
          Text.of(
              "no file of the kind {0} has all that is asked for together here", kinds.words()));
    }
    return Optional.empty();
  }

  /** Whether some width and height fit, with either of them as the long side. */
  private boolean sizes() {
    var ratios =
        asked.get(Rule.ASPECT) instanceof Asked.Ratios given ? given.ratios() : List.of(FREE);
    return ratios.stream()
        .anyMatch(
            ratio ->
                (ratio.width() >= ratio.height() && sizes(Rule.WIDTH, Rule.HEIGHT, ratio, true))
                    || (ratio.width() <= ratio.height()
                        && sizes(Rule.HEIGHT, Rule.WIDTH, ratio, false)));
  }

  private boolean sizes(Rule longer, Rule shorter, Asked.Ratio ratio, boolean wide) {
    var one = both(amount(longer), amount(Rule.LONG_SIDE));
    var other = both(amount(shorter), amount(Rule.SHORT_SIDE));
    if (one.least() > one.most() || other.least() > other.most() || one.most() < other.least()) {
      return false;
    }
    if (ratio.equals(FREE)) {
      return true;
    }
    double factor =
        wide ? (double) ratio.height() / ratio.width() : (double) ratio.width() / ratio.height();
    // A side is rounded to a pixel.
    return one.least() * factor - 1 < other.most() && one.most() * factor + 1 > other.least();
  }

  private Asked.Amount amount(Rule rule) {
    return asked.get(rule) instanceof Asked.Amount amount ? amount : ANY;
  }

  private static Asked.Amount both(Asked.Amount one, Asked.Amount other) {
    return new Asked.Amount(
        Math.max(one.least(), other.least()), Math.min(one.most(), other.most()), Text.NONE);
  }
}
