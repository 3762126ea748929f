package org.framewright.naming;

import java.util.LinkedHashSet;
import java.util.stream.Collectors;

/** Says where reading failed and what was expected there. */
final class Expectation {
  private Expectation() {}

  /** Of a name that is longer than any name can be. */
  static Reading.None tooLong() {
    return new Reading.None(
        Limits.NAME,
        "the end",
        "This is no name: it is longer than " + Limits.NAME + " characters.");
  }

  static Reading.None of(String name, DeclaredKind kind, Reader.Result result) {
    var chain = kind.chain();
    var wanted = new LinkedHashSet<String>();
    var after = new LinkedHashSet<String>();
    boolean mayEnd = false;
    for (int state : result.states().toArray()) {
      var leaf = chain.leaf(state);
      if (leaf != null) {
        after.add(leaf.part() instanceof Part.Show show ? "the " + label(show) : literal(leaf));
        if (chain.goesOn(state)) {
          wanted.add(
              leaf.part() instanceof Part.Show show
                  ? "more of the " + label(show) + " (" + show.shape().inWords() + ")"
                  : rest(chain, leaf, state));
        }
      }
      mayEnd |= chain.accepts(state);
      for (var next : chain.following(state)) {
        wanted.add(
            next.part() instanceof Part.Show show
                ? "the " + label(show) + " (" + show.shape().inWords() + ")"
                : literal(next));
      }
    }
    if (mayEnd) {
      wanted.add("the end");
    }
    var expected = wanted.stream().limit(4).collect(Collectors.joining(" or "));
    int at = result.reached();
    var found =
        at == name.length()
            ? "the name ends"
            : "there is " + character(Character.toString(name.codePointAt(at)));
    var place =
        after.isEmpty()
            ? "at the beginning"
            : "after " + after.stream().limit(2).collect(Collectors.joining(" or "));
    return new Reading.None(
        at,
        expected,
        "This is no "
            + kind.id()
            + " name: "
            + place
            + (at > 0 ? " (" + Quoted.text(name.substring(0, at)) + ") " : " ")
            + expected
            + " was expected, but "
            + found
            + ".");
  }

  private static String label(Part.Show show) {
    return show.field().label();
  }

  private static String literal(Chain.Leaf leaf) {
    return character(((Part.Text) leaf.part()).text());
  }

  private static String rest(Chain chain, Chain.Leaf leaf, int state) {
    return character(((Part.Text) leaf.part()).text().substring(chain.local(state)));
  }

  private static String character(String text) {
    return switch (text) {
      case "_" -> "an underscore";
      case "-" -> "a hyphen";
      case "." -> "a full stop";
      case " " -> "a space";
      default -> Quoted.text(text);
    };
  }
}
