package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/**
 * A line cut into items, which commas and the like part, and these into units, which are written in
 * one.
 *
 * @param text the line, with plain letters, without bullets and numbering before it
 * @param items in their order; those in brackets too
 */
record Line(String text, List<Item> items) {
  /** What a person may put before an item of a list: bullets, boxes, running numbers. */
  private static final Pattern BULLET =
      Pattern.compile(
          "\\s*(?:[-*•·▪◦‣–—>→»✓✔✅☑☐☒☆★♥❤]\\s*|o\\s+|\\[[ xX✓✔]?\\]\\s*"
              + "|\\(?\\d{1,3}[.)]\\)?\\s+|\\(?[a-z][.)]\\s+)(?=.*[\\p{L}\\p{N}])",
          Pattern.DOTALL);

  private static final int MOST_BULLETS = 4;
  private static final Pattern ADDRESS = Pattern.compile("[^\\s<>,;]{1,80}@[^\\s<>,;]{1,80}");
  private static final Pattern LINK = Pattern.compile("(?:https?://|www\\.)[^\\s<>\"]*");

  /** Signs that may stand inside a name, where no space is. */
  private static final String GLUE = "_-.~/\\'’`´–—‑−%°²³";

  private static final String LIST_SIGNS = ",;|&+\t•·";
  private static final String BRACKETS = "()[]{}<>\"“”„«»";

  private static final int LONGEST_ENDING = 24;

  private static final Pattern ENDINGS =
      Pattern.compile(
          "(?:\\.(?:jpe?g|jpe|png|tiff?|psd|psb|hei[cf]|hif|webp|avif|gif|bmp|pdf|xmp|cr[23w]|ne?f"
              + "|nrw|arw|srf|sr2|raf|orf|rw2|3fr|fff|iiq|dng|pef|srw|rwl|mrw|x3f|gpr))+$",
          Pattern.CASE_INSENSITIVE);

  /** What stands between two tokens. */
  enum Gap {
    /** Nothing, or what may stand inside a name. */
    GLUED,
    SPACE,
    COLON,
    /** A comma or another sign that parts the items of a list. */
    LIST,
    BRACKET
  }

  /**
   * What is written in one: {@code IMG_1234.jpg}.
   *
   * @param tokens its tokens, without those of its ending
   * @param text as written
   * @param ending whether it has the ending of a picture's file
   */
  record Unit(List<Token> tokens, String text, boolean ending, int from, int to) {
    boolean isNumber() {
      return tokens.size() == 1 && tokens.getFirst().number() && !ending;
    }

    boolean isWord() {
      return tokens.size() == 1 && !tokens.getFirst().number() && !ending;
    }

    boolean hasOnlyNumbers() {
      return !ending && tokens.stream().allMatch(Token::number);
    }

    boolean hasNumber() {
      return tokens.stream().anyMatch(Token::number);
    }
  }

  /**
   * What stands between two signs of a list.
   *
   * @param after whether a sign of a list stands before it
   * @param colon whether a colon stands behind it
   * @param bracketed whether it stands in brackets
   */
  record Item(List<Unit> units, boolean after, boolean colon, boolean bracketed) {}

  static Line of(String raw) {
    var text = withoutBullets(withoutLinks(Token.plain(raw)));
    var items = new ArrayList<Item>();
    var units = new ArrayList<Unit>();
    var tokens = Token.of(text);
    boolean after = false;
    int depth = 0;
    int first = 0;
    for (int i = 0; i <= tokens.size(); i++) {
      if (i > 0) {
        var gap =
            i == tokens.size()
                ? text.indexOf(':', tokens.get(i - 1).to()) < 0 ? Gap.SPACE : Gap.COLON
                : gap(text, tokens.get(i - 1), tokens.get(i));
        if (gap == Gap.GLUED) {
          continue;
        }
        var unit = unit(text, tokens.subList(first, i));
        boolean and = isAnd(unit) && !units.isEmpty() && i < tokens.size() && gap == Gap.SPACE;
        if (!and) {
          units.add(unit);
        }
        if (and || gap != Gap.SPACE || i == tokens.size()) {
          items.add(new Item(List.copyOf(units), after, gap == Gap.COLON, depth > 0));
          units.clear();
          after = and || (i < tokens.size() && hasListSign(text, tokens.get(i - 1), tokens.get(i)));
        }
      }
      if (i < tokens.size()) {
        int from = i == 0 ? 0 : tokens.get(i - 1).to();
        depth = Math.max(0, depth + deeper(text, from, tokens.get(i).from()));
        first = i;
      }
    }
    return new Line(text, List.copyOf(items));
  }

  private static String withoutBullets(String text) {
    var rest = text;
    for (int i = 0; i < MOST_BULLETS; i++) {
      var bullet = BULLET.matcher(rest);
      if (!bullet.lookingAt()) {
        break;
      }
      rest = rest.substring(bullet.end());
    }
    return rest;
  }

  /** Of a link only the name of the file at its end stays; an address of a mail goes. */
  private static String withoutLinks(String text) {
    var without = ADDRESS.matcher(text).replaceAll(" ");
    return LINK.matcher(without)
        .replaceAll(
            link -> {
              var path = link.group().replaceFirst("[?#].*", "");
              int slash = path.lastIndexOf('/');
              boolean host = slash < 0 || path.charAt(slash - 1) == '/';
              return java.util.regex.Matcher.quoteReplacement(
                  host ? " " : " " + path.substring(slash + 1) + " ");
            });
  }

  private static Gap gap(String text, Token before, Token then) {
    var gap = Gap.GLUED;
    for (int i = before.to(); i < then.from(); i++) {
      char c = text.charAt(i);
      var own =
          BRACKETS.indexOf(c) >= 0
              ? Gap.BRACKET
              : LIST_SIGNS.indexOf(c) >= 0
                  ? Gap.LIST
                  : c == ':' ? Gap.COLON : GLUE.indexOf(c) >= 0 ? Gap.GLUED : Gap.SPACE;
      gap = own.compareTo(gap) > 0 ? own : gap;
    }
    // A time of the day or a ratio.
    boolean time = gap == Gap.COLON && before.number() && then.number();
    return time && then.from() - before.to() == 1 ? Gap.GLUED : gap;
  }

  private static boolean hasListSign(String text, Token before, Token then) {
    for (int i = before.to(); i < then.from(); i++) {
      if (LIST_SIGNS.indexOf(text.charAt(i)) >= 0) {
        return true;
      }
    }
    return false;
  }

  private static int deeper(String text, int from, int to) {
    int depth = 0;
    for (int i = from; i < to; i++) {
      switch (text.charAt(i)) {
        case '(', '[', '{' -> depth++;
        case ')', ']', '}' -> depth--;
        default -> {}
      }
    }
    return depth;
  }

  private static Unit unit(String text, List<Token> tokens) {
    int from = tokens.getFirst().from();
    int to = tokens.getLast().to();
    var written = text.substring(from, to);
    int tail = Math.max(from, to - LONGEST_ENDING);
    var ending = ENDINGS.matcher(text.substring(tail, to));
    if (ending.find()) {
      int cut = tail + ending.start();
      var kept = tokens.stream().filter(token -> token.from() < cut).toList();
      return new Unit(kept, written, true, from, to);
    }
    return new Unit(List.copyOf(tokens), written, false, from, to);
  }

  private static boolean isAnd(Unit unit) {
    return unit.isWord()
        && ListWords.AND.contains(unit.tokens().getFirst().folded())
        && unit.text().equals(unit.tokens().getFirst().folded());
  }

  /** Whether a dash or dots stand between two places, and nothing but spaces besides. */
  boolean isRangeMark(int from, int to) {
    // A name may begin with a low line, as those of cameras do in one colour space.
    var between = text.substring(from, to).replace("_", " ").strip();
    return switch (between) {
      case "-", "–", "—", "‑", "−", "..", "...", "--", "->", "→", "~" -> true;
      default -> false;
    };
  }

  /** Whether two places are glued by a slash alone. */
  boolean isSlash(int from, int to) {
    return text.substring(from, to).equals("/");
  }
}
