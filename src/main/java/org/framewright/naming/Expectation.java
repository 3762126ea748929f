package org.framewright.naming;

import java.util.LinkedHashSet;
import org.framewright.base.Text;

/** Says where reading failed and what was expected there. */
final class Expectation {
  private Expectation() {}

  /** Of a name that is longer than any name can be. */
  static Reading.None tooLong() {
    return new Reading.None(
        Limits.NAME,
        Text.of("the end"),
        Text.of("This is no name: it is longer than {0} characters.", Limits.NAME));
  }

  static Reading.None of(String name, DeclaredKind kind, Reader.Result result) {
    var chain = kind.chain();
    var wanted = new LinkedHashSet<Text>();
    var after = new LinkedHashSet<Text>();
    boolean mayEnd = false;
    for (int state : result.states().toArray()) {
      var leaf = chain.leaf(state);
      if (leaf != null) {
        after.add(
            leaf.part() instanceof Part.Show show
                ? Text.of("the {0}", show.field().label())
                : literal(leaf));
        if (chain.goesOn(state)) {
          wanted.add(
              leaf.part() instanceof Part.Show show
                  ? Text.of("more of the {0} ({1})", show.field().label(), show.shape().inWords())
                  : rest(chain, leaf, state));
        }
      }
      mayEnd |= chain.accepts(state);
      for (var next : chain.following(state)) {
        wanted.add(
            next.part() instanceof Part.Show show
                ? Text.of("the {0} ({1})", show.field().label(), show.shape().inWords())
                : literal(next));
      }
    }
    if (mayEnd) {
      wanted.add(Text.of("the end"));
    }
    var expected = Series.either(wanted.stream().limit(4).toList());
    int at = result.reached();
    var found =
        at == name.length()
            ? Text.of("the name ends")
            : Text.of("there is {0}", character(Character.toString(name.codePointAt(at))));
    return new Reading.None(
        at,
        expected,
        after.isEmpty()
            ? Text.of(
                "This is no {0} name: at the beginning {1} was expected, but {2}.",
                kind.id(), expected, found)
            : Text.of(
                "This is no {0} name: after {1} (“{2}”) {3} was expected, but {4}.",
                kind.id(),
                Series.either(after.stream().limit(2).toList()),
                Quoted.bare(name.substring(0, at)),
                expected,
                found));
  }

  private static Text literal(Chain.Leaf leaf) {
    return character(((Part.Text) leaf.part()).text());
  }

  private static Text rest(Chain chain, Chain.Leaf leaf, int state) {
    return character(((Part.Text) leaf.part()).text().substring(chain.local(state)));
  }

  private static Text character(String text) {
    return switch (text) {
      case "_" -> Text.of("an underscore");
      case "-" -> Text.of("a hyphen");
      case "." -> Text.of("a full stop");
      case " " -> Text.of("a space");
      default -> Quoted.said(text);
    };
  }
}
