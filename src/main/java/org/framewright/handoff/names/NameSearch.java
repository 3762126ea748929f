package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import org.framewright.base.NameKey;

/** Looks for a name, or a part of one, in a longer name: that of a file as somebody called it. */
public final class NameSearch {
  private static final int LONGEST = 400;

  private final NameIndex index;
  private final SimilarNames similar;

  /** A search among these names. */
  public NameSearch(List<KnownName> names) {
    this.index = new NameIndex(names);
    this.similar = new SimilarNames(index);
  }

  /**
   * A name that is held in another.
   *
   * @param name the name that is held, or of which a part is
   * @param whole whether it is held as a whole
   * @param same whether the part is spelled as the name is, but for letter case
   * @param rest the words and numbers around it, in their order
   */
  public record Found(KnownName name, boolean whole, boolean same, List<String> rest) {
    public Found {
      rest = List.copyOf(rest);
    }
  }

  /**
   * The longest name that a text holds; else the longest end of one, of two words at least and with
   * a number, that stands in one name only. None where there is none, and none where there are two.
   */
  public Optional<Found> in(String text) {
    var plain = Token.plain(text.length() > LONGEST ? text.substring(0, LONGEST) : text);
    var tokens = Token.of(plain);
    Found best = null;
    int length = 1;
    boolean twice = false;
    for (int at = 0; at < tokens.size(); at++) {
      int longest = index.longest(tokens, at, tokens.size());
      for (int size = longest; size > 0; size--) {
        var run = tokens.subList(at, at + size);
        var hits = index.find(run);
        boolean whole = hits.grade().whole();
        boolean counts = whole || (size > 1 && hits.count() == 1 && ends(tokens, at, size, hits));
        boolean better =
            best == null || (whole && !best.whole()) || (whole == best.whole() && size > length);
        if (!counts || hits.count() != 1) {
          continue;
        }
        if (better) {
          best = found(plain, tokens, at, run, hits);
          length = size;
          twice = false;
        } else if (whole == best.whole() && size == length) {
          twice |= hits.names().firstEntry().getKey() != best.name().frame();
        }
        break;
      }
    }
    return twice ? Optional.empty() : Optional.ofNullable(best);
  }

  /**
   * Whether a name ends so: another number behind it or before it would make it another name, as
   * {@code 004_F_0012} is not {@code 001_F_0012}.
   */
  private static boolean ends(List<Token> text, int at, int size, NameIndex.Hits hits) {
    var run = text.subList(at, at + size);
    var name = Token.of(Token.plain(hits.names().firstEntry().getValue().text()));
    if (name.size() < run.size() || run.stream().noneMatch(Token::number)) {
      return false;
    }
    int first = name.size() - size;
    if (at > 0 && first > 0 && text.get(at - 1).number() && name.get(first - 1).number()) {
      return false;
    }
    var end = name.subList(first, name.size());
    for (int i = 0; i < run.size(); i++) {
      if (!run.get(i).folded().equals(end.get(i).folded())) {
        return false;
      }
    }
    return true;
  }

  private static Found found(
      String text, List<Token> tokens, int at, List<Token> run, NameIndex.Hits hits) {
    var rest = new ArrayList<String>();
    for (int i = 0; i < tokens.size(); i++) {
      if (i < at || i >= at + run.size()) {
        rest.add(tokens.get(i).text());
      }
    }
    var name = hits.names().firstEntry().getValue();
    var written = text.substring(run.getFirst().from(), run.getLast().to());
    return new Found(
        name, hits.grade().whole(), NameKey.of(name.text()).contains(NameKey.of(written)), rest);
  }

  /** The frames whose names are nearest to a text that holds none. */
  public List<KnownName> near(String text) {
    var tokens = Token.of(Token.plain(text.length() > LONGEST ? text.substring(0, LONGEST) : text));
    return tokens.isEmpty() ? List.of() : List.copyOf(new LinkedHashSet<>(similar.to(tokens)));
  }
}
