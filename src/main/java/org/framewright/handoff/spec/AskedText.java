package org.framewright.handoff.spec;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/** Amounts and proportions as people write them in a specification. */
final class AskedText {
  private static final String NUMBER = "([0-9]{1,9})";
  private static final String SIZE =
      "([0-9]{1,9}(?:[.][0-9]{1,3})? ?(?:bytes|kB|MB|GB|KiB|MiB|GiB))";
  private static final Pattern RATIO =
      Pattern.compile("([0-9]{1,5}(?:[.][0-9]{1,3})?) ?: ?([0-9]{1,5}(?:[.][0-9]{1,3})?)");
  private static final int THOUSANDS = 3;

  /** What is farther off is grey. */
  private static final int MOST_OFF_WHITE = 64;

  private AskedText() {}

  /** Bounds, or what is wrong with them. */
  sealed interface Bounds {
    record Of(Asked.Amount amount) implements Bounds {}

    /** The lower one is above the upper one. */
    record Crossed(String least, String most) implements Bounds {}
  }

  /** {@code white}, {@code white within 3}: how far from white, in the steps of 8 bits. */
  static Optional<Integer> white(String text) {
    return matched("white(?: within ([0-9]{1,3}))?", text)
        .map(it -> it.group(1) == null ? 0 : Integer.parseInt(it.group(1)))
        .filter(within -> within <= MOST_OFF_WHITE);
  }

  /** {@code 2400}, {@code 900-4800}, {@code at least 900}, {@code at most 4800 pixels}. */
  static Optional<Bounds> pixels(String text) {
    return bounds(
        text, NUMBER, "(?: ?(?:pixels|px))?", Long::parseLong, said -> Text.of("{0} pixels", said));
  }

  /** The same of pixels per inch. */
  static Optional<Bounds> resolution(String text) {
    return bounds(
        text, NUMBER, "(?: ?(?:ppi|dpi))?", Long::parseLong, said -> Text.of("{0} ppi", said));
  }

  /** The same of bytes: {@code at most 20 MB}. */
  static Optional<Bounds> bytes(String text) {
    return bounds(text, SIZE, "", AskedText::size, said -> Text.of("{0}", said));
  }

  private static Optional<Bounds> bounds(
      String text,
      String number,
      String unit,
      Function<String, Long> value,
      Function<String, Text> words) {
    var one = matched("(?:exactly )?" + number + unit, text);
    if (one.isPresent()) {
      var said = one.get().group(1);
      long exact = value.apply(said);
      return Optional.of(new Bounds.Of(new Asked.Amount(exact, exact, words.apply(said))));
    }
    var least = matched("at least " + number + unit, text);
    if (least.isPresent()) {
      var said = least.get().group(1);
      return Optional.of(
          new Bounds.Of(
              new Asked.Amount(
                  value.apply(said), Long.MAX_VALUE, Text.of("at least {0}", words.apply(said)))));
    }
    var most = matched("at most " + number + unit, text);
    if (most.isPresent()) {
      var said = most.get().group(1);
      return Optional.of(
          new Bounds.Of(
              new Asked.Amount(0, value.apply(said), Text.of("at most {0}", words.apply(said)))));
    }
    var both = matched(number + unit + "(?: ?[-–] ?| to )" + number + unit, text);
    if (both.isEmpty()) {
      return Optional.empty();
    }
    var from = both.get().group(1);
    var to = both.get().group(2);
    return Optional.of(
        value.apply(from) > value.apply(to)
            ? new Bounds.Crossed(from, to)
            : new Bounds.Of(
                new Asked.Amount(
                    value.apply(from),
                    value.apply(to),
                    Text.of("{0} to {1}", from, words.apply(to)))));
  }

  private static Optional<Matcher> matched(String pattern, String text) {
    var matcher = Pattern.compile(pattern, Pattern.CASE_INSENSITIVE).matcher(text.strip());
    return matcher.matches() ? Optional.of(matcher) : Optional.empty();
  }

  /** kB, MB and GB are decimal, as disks are sold; KiB, MiB and GiB by 1024 (IEC 80000-13). */
  private static long size(String text) {
    int end = 0;
    while (end < text.length()
        && (Character.isDigit(text.charAt(end)) || text.charAt(end) == '.')) {
      end++;
    }
    var amount = new BigDecimal(text.substring(0, end));
    var unit = text.substring(end).strip().toLowerCase(Locale.ROOT);
    int steps =
        switch (unit.charAt(0)) {
          case 'k' -> 1;
          case 'm' -> 2;
          case 'g' -> 3;
          default -> 0;
        };
    var factor =
        unit.contains("i")
            ? BigDecimal.valueOf(1L << (10 * steps))
            : BigDecimal.ONE.scaleByPowerOfTen(THOUSANDS * steps);
    return amount.multiply(factor).longValue();
  }

  /** {@code 4:5}, {@code 1.91:1}, {@code square}. */
  static Optional<Asked.Ratio> ratio(String text) {
    if (text.strip().equalsIgnoreCase("square")) {
      return Optional.of(new Asked.Ratio(1, 1, "1:1"));
    }
    var match = RATIO.matcher(text.strip());
    if (!match.matches()) {
      return Optional.empty();
    }
    var width = new BigDecimal(match.group(1)).scaleByPowerOfTen(THOUSANDS).longValueExact();
    var height = new BigDecimal(match.group(2)).scaleByPowerOfTen(THOUSANDS).longValueExact();
    if (width == 0 || height == 0) {
      return Optional.empty();
    }
    long common =
        java.math.BigInteger.valueOf(width).gcd(java.math.BigInteger.valueOf(height)).longValue();
    return Optional.of(
        new Asked.Ratio(width / common, height / common, match.group(1) + ":" + match.group(2)));
  }
}
