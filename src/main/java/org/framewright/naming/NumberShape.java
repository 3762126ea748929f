package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.BasicAutomata;
import dk.brics.automaton.BasicOperations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.Text;

/**
 * A whole number, padded with zeros to {@code width} digits and growing to {@code most} digits at
 * most. {@code valueWidth} is the width of the field's value, which is that of its main shape.
 */
record NumberShape(int width, int most, int valueWidth, long smallest, long largest, Dfa texts)
    implements Shape {
  static final int MOST_DIGITS = 9;

  private static final Pattern DIGITS = Pattern.compile("[0-9]{1,18}");

  NumberShape(int width, int most, int valueWidth, long smallest, long largest) {
    this(
        width,
        most,
        valueWidth,
        smallest,
        Math.min(largest, room(most)),
        automaton(width, most, smallest, Math.min(largest, room(most))));
  }

  /** The largest number of so many digits. */
  static long room(int digits) {
    return Math.powExact(10L, digits) - 1;
  }

  private static Dfa automaton(int width, int most, long smallest, long largest) {
    List<Automaton> lengths = new ArrayList<>();
    for (int length = width; length <= most; length++) {
      long low = length == width ? smallest : Math.max(smallest, room(length - 1) + 1);
      long high = Math.min(largest, room(length));
      if (low <= high) {
        lengths.add(BasicAutomata.makeInterval((int) low, (int) high, length));
      }
    }
    return Dfa.of(BasicOperations.union(lengths));
  }

  boolean isFixedWidth() {
    return largest <= room(width);
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var given = raw.strip();
    if (!DIGITS.matcher(given).matches()) {
      return new Settled.Refused(
          Text.of("“{0}” is not a whole number", Quoted.bare(raw)),
          Text.of(
              "Give a number from {0} to {1}, in digits 0-9.",
              Long.toString(smallest), Long.toString(largest)));
    }
    long number = Long.parseLong(given);
    if (number < smallest || number > largest) {
      return new Settled.Refused(
          Text.of(
              "{0} is not between {1} and {2}",
              Long.toString(number), Long.toString(smallest), Long.toString(largest)),
          number > largest
              ? Text.of("Give it more digits in the convention, or a smaller number.")
              : Text.of("Give a number from {0} on.", Long.toString(smallest)));
    }
    return new Settled.Legal(padded(number, width), padded(number, valueWidth));
  }

  static String padded(long number, int width) {
    var digits = Long.toString(number);
    return "0".repeat(Math.max(0, width - digits.length())) + digits;
  }

  @Override
  public String value(String text) {
    return width == valueWidth ? text : padded(Long.parseLong(text), valueWidth);
  }

  @Override
  public Optional<Loss> loss() {
    return Optional.empty();
  }

  @Override
  public Text inWords() {
    return isFixedWidth()
        ? Text.counted("{0} digit", "{0} digits", width)
        : Text.of("{0} to {1} digits", width, most);
  }
}
