package org.framewright.naming;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A name that somebody uses, taken apart into dates, numbers, letters and what stands between. */
record NameTokens(String name, List<Token> tokens) {
  enum Kind {
    DATE,
    DIGITS,
    LETTERS,
    /** Letters and digits, perhaps with characters between them, that belong together. */
    MIXED,
    SEPARATOR
  }

  /**
   * @param pattern a date's pattern; empty otherwise
   */
  record Token(Kind kind, String text, String pattern) {
    Token(Kind kind, String text) {
      this(kind, text, "");
    }

    boolean isSeparator() {
      return kind == Kind.SEPARATOR;
    }

    /** What must be the same for two names to be alike in shape. */
    String shape() {
      return switch (kind) {
        case SEPARATOR -> text;
        case LETTERS, MIXED -> "TEXT";
        case DATE, DIGITS -> kind + pattern;
      };
    }
  }

  private static final Pattern ENDING =
      Pattern.compile("\\.(?=[A-Za-z0-9]*[A-Za-z])[A-Za-z0-9]{2,4}$");

  private static final Pattern YEAR_FIRST =
      Pattern.compile("(?<![0-9])([0-9]{4})([-_. ]?)([0-9]{2})\\2([0-9]{2})(T[0-9]{6})?(?![0-9])");

  private static final Pattern DAY_FIRST =
      Pattern.compile("(?<![0-9])([0-9]{2})([-_. ])([0-9]{2})\\2([0-9]{4})(?![0-9])");

  private static final Pattern RUNS =
      Pattern.compile("[0-9]+|[\\p{L}\\p{M}]+|\\X", Pattern.UNICODE_CHARACTER_CLASS);

  /** A file's name without its folders and its ending. */
  static NameTokens of(String example) {
    return ofName(ENDING.matcher(folder(example)).replaceFirst(""));
  }

  /** A folder's name without the folders that it lies in. */
  static String folder(String example) {
    var name = example.strip().replaceFirst("[/\\\\]+$", "");
    name = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    return Normalizer.normalize(name, Normalizer.Form.NFC);
  }

  /** A whole name. */
  static NameTokens ofName(String name) {
    var tokens = new ArrayList<Token>();
    int at = 0;
    while (at < name.length()) {
      var date = date(name, at);
      int end = date == null ? name.length() : date.start;
      runs(name.substring(at, end), tokens);
      if (date == null) {
        break;
      }
      tokens.add(date.token);
      at = date.end;
    }
    return new NameTokens(name, List.copyOf(tokens));
  }

  private static void runs(String text, List<Token> tokens) {
    for (var run = RUNS.matcher(text); run.find(); ) {
      int first = run.group().codePointAt(0);
      var kind =
          first >= '0' && first <= '9'
              ? Kind.DIGITS
              : Character.isLetter(first) ? Kind.LETTERS : Kind.SEPARATOR;
      tokens.add(new Token(kind, run.group()));
    }
  }

  private record Date(int start, int end, Token token) {}

  private static Date date(String name, int from) {
    Date first = null;
    for (var pattern : List.of(YEAR_FIRST, DAY_FIRST)) {
      var match = pattern.matcher(name);
      for (int at = from; at <= name.length() && match.find(at); at = match.start() + 1) {
        var date = date(match, pattern == YEAR_FIRST);
        if (date != null) {
          first = first == null || date.start < first.start ? date : first;
          break;
        }
      }
    }
    return first;
  }

  private static Date date(Matcher match, boolean yearFirst) {
    var separator = match.group(2);
    boolean timed = yearFirst && match.group(5) != null;
    if (!isDate(match.group(yearFirst ? 1 : 4), match.group(3), match.group(yearFirst ? 4 : 1))) {
      return null;
    }
    var parts = yearFirst ? List.of("uuuu", "MM", "dd") : List.of("dd", "MM", "uuuu");
    return new Date(
        match.start(),
        match.end(),
        new Token(
            Kind.DATE, match.group(), String.join(separator, parts) + (timed ? "'T'HHmmss" : "")));
  }

  static boolean isDate(String year, String month, String day) {
    try {
      int y = Integer.parseInt(year);
      return LocalDate.of(y, Integer.parseInt(month), Integer.parseInt(day)).getYear()
              >= DatePattern.FIRST_YEAR
          && y <= DatePattern.LAST_YEAR;
    } catch (DateTimeException e) {
      return false;
    }
  }

  List<String> shape() {
    return tokens.stream().map(Token::shape).toList();
  }

  /**
   * The same with runs of tokens between this separator as one token.
   *
   * @param all all of them, else those of two words or more
   */
  NameTokens joinedWithin(char separator, boolean all) {
    var joined = new ArrayList<Token>();
    var run = new ArrayList<Token>();
    for (var token : tokens) {
      if (token.kind == Kind.DATE || token.text.equals(String.valueOf(separator))) {
        flush(run, joined, all);
        joined.add(token);
      } else {
        run.add(token);
      }
    }
    flush(run, joined, all);
    return new NameTokens(name, List.copyOf(joined));
  }

  /** Separators at the ends of the run stay what they are. */
  private static void flush(List<Token> run, List<Token> joined, boolean all) {
    int from = 0;
    while (from < run.size() && run.get(from).isSeparator()) {
      joined.add(run.get(from++));
    }
    int to = run.size();
    while (to > from && run.get(to - 1).isSeparator()) {
      to--;
    }
    var inner = run.subList(from, to);
    long words = inner.stream().filter(token -> token.kind == Kind.LETTERS).count();
    boolean areWords = words > 1 && inner.stream().anyMatch(Token::isSeparator);
    if (inner.size() < 2 || !(all || areWords)) {
      joined.addAll(inner);
    } else {
      var text = new StringBuilder();
      inner.forEach(token -> text.append(token.text));
      joined.add(new Token(Kind.MIXED, text.toString()));
    }
    joined.addAll(run.subList(to, run.size()));
    run.clear();
  }
}
