package org.framewright.base;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Words for a person that can be said in another language: a pattern in English, and what stands in
 * it. The command line says it in English; the app looks the pattern up in the bundles {@code
 * org/framewright/core_*.properties}.
 *
 * @param one the pattern where the first value is 1; the same as {@code many} where nothing is
 *     counted
 * @param many the pattern, with {@code {0}} to {@code {9}} for the values; without values, whatever
 *     is in braces is text
 * @param values texts, whole numbers, sizes and strings; a number that is large enough to be read
 *     in groups is {@link Grouped}
 */
public record Text(String one, String many, List<Object> values) {
  /** A whole number whose digits every language groups its own way: {@code 60,000}. */
  public record Grouped(long number) {
    @Override
    public String toString() {
      return String.format(Locale.ROOT, "%,d", number);
    }
  }

  /**
   * A size of files, which every language writes its own way: {@code 5.1 GB}, {@code 5,1 Go}.
   *
   * @param bytes of which a unit that was begun counts
   * @param inMegabytes whether it is told in megabytes however large it is
   */
  public record Size(long bytes, boolean inMegabytes) {
    @Override
    public String toString() {
      return inMegabytes ? ByteSizes.megabytes(bytes) : ByteSizes.words(bytes);
    }
  }

  /** No words. */
  public static final Text NONE = of("");

  public Text {
    values =
        values.stream()
            .map(
                value ->
                    value instanceof Text
                            || value instanceof Grouped
                            || value instanceof Size
                            || value instanceof Integer
                            || value instanceof Long
                        ? value
                        : String.valueOf(value))
            .toList();
  }

  /** A text; {@code of("there is no file {0}", name)}. */
  public static Text of(String pattern, Object... values) {
    return new Text(pattern, pattern, Arrays.asList(values));
  }

  /** A text that counts: {@code counted("{0} file", "{0} files", count)}. */
  public static Text counted(String one, String many, long count, Object... more) {
    var values = new Object[1 + more.length];
    values[0] = count;
    System.arraycopy(more, 0, values, 1, more.length);
    return new Text(one, many, Arrays.asList(values));
  }

  /** Whether there are no words. */
  public boolean isEmpty() {
    return many.isEmpty();
  }

  /** In English. */
  public String english() {
    boolean single =
        !values.isEmpty() && values.getFirst() instanceof Number n && n.longValue() == 1;
    var pattern = single ? one : many;
    if (values.isEmpty()) {
      return pattern;
    }
    var text = new StringBuilder();
    for (int i = 0; i < pattern.length(); i++) {
      int value = value(pattern, i);
      if (value >= 0) {
        text.append(values.get(value) instanceof Text inner ? inner.english() : values.get(value));
        i += 2;
      } else {
        text.append(pattern.charAt(i));
      }
    }
    return text.toString();
  }

  /** Which value stands there; -1 if none does. */
  private int value(String pattern, int at) {
    boolean braces =
        at + 2 < pattern.length() && pattern.charAt(at) == '{' && pattern.charAt(at + 2) == '}';
    int value = braces ? pattern.charAt(at + 1) - '0' : -1;
    return value >= 0 && value < values.size() ? value : -1;
  }

  @Override
  public String toString() {
    return english();
  }
}
