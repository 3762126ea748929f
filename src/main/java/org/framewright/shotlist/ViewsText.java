package org.framewright.shotlist;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The views of a setup in one cell. People write {@code F, B}, {@code F/B}, {@code F:8 B:4} or
 * {@code F x 8}; we write {@code F:8, B:4}, and put quotation marks around a view that would read
 * as another one without them.
 */
final class ViewsText {
  private static final String SEPARATORS = ",;/+|&\r\n";

  /**
   * The signs and words by which lists give a view its number: {@code F:8}, {@code F x 8}, {@code F
   * (8)}. Before them stands one space at most.
   */
  private static final Pattern COUNTED =
      Pattern.compile(" ?[:=×*] ?(?=\\d)| [xX] ?(?=\\d)| ?\\((?=\\d+\\))");

  private static final Pattern VIEW = Pattern.compile("(.+?):(\\d{1,4})\\)?");
  private static final Pattern NUMBER = Pattern.compile("\\d{1,4}");
  private static final Pattern QUOTED_NUMBER = Pattern.compile("(?::(\\d{1,9}))?");
  private static final int LONGEST_CODE = 3;

  private ViewsText() {}

  /** The views that a cell names, in its order; one may be named twice. */
  static List<View> read(String cell) {
    var views = new ArrayList<View>();
    var text = cell.strip();
    if (text.equals("-")) {
      return views;
    }
    int from = 0;
    while (from <= text.length()) {
      int end = endOfQuoted(text, from);
      if (end < 0) {
        end = next(text, from);
        views.addAll(apart(new Cell(text.substring(from, end), 0, 0).plain()));
      } else {
        views.add(quoted(text.substring(from, end).strip()));
      }
      from = end + 1;
    }
    return views;
  }

  /** The views as {@link #read} understands them. */
  static String write(List<View> views) {
    return views.stream().map(ViewsText::write).collect(Collectors.joining(", "));
  }

  private static String write(View view) {
    var plain = view.toString();
    if (plain.indexOf('"') < 0 && read(plain).equals(List.of(view))) {
      return plain;
    }
    var quoted = '"' + view.code().replace("\"", "\"\"") + '"';
    return view.frames().isPresent() ? quoted + ":" + view.frames().getAsInt() : quoted;
  }

  private static int next(String text, int from) {
    int at = from;
    while (at < text.length() && SEPARATORS.indexOf(text.charAt(at)) < 0) {
      at++;
    }
    return at;
  }

  /** The end of a view in quotation marks and its number, or -1 where none stands here. */
  private static int endOfQuoted(String text, int from) {
    int at = from;
    while (at < text.length() && text.charAt(at) == ' ') {
      at++;
    }
    if (at == text.length() || text.charAt(at) != '"') {
      return -1;
    }
    int close = closing(text, at + 1);
    if (close < 0 || text.substring(at + 1, close).isBlank()) {
      return -1;
    }
    int end = next(text, close + 1);
    return QUOTED_NUMBER.matcher(text.substring(close + 1, end).strip()).matches() ? end : -1;
  }

  private static int closing(String text, int from) {
    for (int at = from; at < text.length(); at++) {
      if (text.charAt(at) == '"') {
        if (at + 1 == text.length() || text.charAt(at + 1) != '"') {
          return at;
        }
        at++;
      }
    }
    return -1;
  }

  private static View quoted(String part) {
    int close = closing(part, 1);
    var code = part.substring(1, close).replace("\"\"", "\"");
    var number = part.substring(close + 1);
    return new View(code, number.isEmpty() ? OptionalInt.empty() : frames(number.substring(1)));
  }

  /**
   * {@code F B D}, {@code F:8 B:4} and {@code F 8} are several words; {@code three quarter} is one
   * view.
   */
  private static List<View> apart(String plain) {
    var part = COUNTED.matcher(plain).replaceAll(":");
    if (part.isEmpty()) {
      return List.of();
    }
    var words = part.split(" ", -1);
    boolean codes =
        Arrays.stream(words)
            .allMatch(word -> word.length() <= LONGEST_CODE || VIEW.matcher(word).matches());
    if (!codes) {
      return List.of(view(part));
    }
    var views = new ArrayList<View>();
    for (var word : words) {
      boolean countsLast =
          NUMBER.matcher(word).matches()
              && !views.isEmpty()
              && views.getLast().frames().isEmpty()
              && !NUMBER.matcher(views.getLast().code()).matches();
      views.add(countsLast ? view(views.removeLast().code() + ":" + word) : view(word));
    }
    return views;
  }

  private static View view(String text) {
    var counted = VIEW.matcher(text);
    return counted.matches()
        ? new View(counted.group(1), frames(counted.group(2)))
        : new View(text);
  }

  private static OptionalInt frames(String digits) {
    int frames = Integer.parseInt(digits);
    return frames > 0 ? OptionalInt.of(frames) : OptionalInt.empty();
  }
}
