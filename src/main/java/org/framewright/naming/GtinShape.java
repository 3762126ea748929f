package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import dk.brics.automaton.Transition;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** A product number with its check digit, see {@link Gtin}. */
record GtinShape(int digits, Dfa texts) implements Shape {
  GtinShape(int digits) {
    this(digits, automaton(digits));
  }

  private static Dfa automaton(int digits) {
    var states = new State[digits + 1][10];
    for (var row : states) {
      for (int sum = 0; sum < 10; sum++) {
        row[sum] = new State();
      }
    }
    for (int i = 0; i < digits; i++) {
      for (int sum = 0; sum < 10; sum++) {
        for (int d = 0; d < 10; d++) {
          int next = (sum + d * Gtin.weight(digits - 1 - i)) % 10;
          states[i][sum].addTransition(new Transition((char) ('0' + d), states[i + 1][next]));
        }
      }
    }
    states[digits][0].setAccept(true);
    var automaton = new Automaton();
    automaton.setInitialState(states[0][0]);
    return Dfa.of(automaton);
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var digitsGiven = Gtin.digits(raw);
    if (digitsGiven.isEmpty()) {
      return new Settled.Refused(
          Text.of("“{0}” is not a product number", Quoted.bare(raw)),
          Text.of("Give the 8, 12, 13 or 14 digits of its GTIN, check digit included."));
    }
    var number = digitsGiven.get();
    int expected = Gtin.checkDigit(number.substring(0, number.length() - 1));
    if (number.charAt(number.length() - 1) - '0' != expected) {
      return new Settled.Refused(
          Text.of(
              "the check digit of {0} is wrong; after these digits it is {1}", number, expected),
          Text.of("Compare it with the label: a digit is mistyped."));
    }
    var bare = number.replaceFirst("^0+", "");
    if (bare.length() > digits) {
      return new Settled.Refused(
          Text.of("{0} has more than {1} digits", number, digits),
          Text.of("Declare the field with {0}.", "digits: 14"));
    }
    var padded = "0".repeat(digits - bare.length()) + bare;
    if (!padded.equals(raw)) {
      steps.add(new Step(field, raw, padded, Text.of("a product number in {0} digits", digits)));
    }
    return new Settled.Legal(padded, padded);
  }

  @Override
  public String value(String text) {
    return text;
  }

  @Override
  public Optional<Loss> loss() {
    return Optional.empty();
  }

  @Override
  public Text inWords() {
    return Text.of("{0} digits with a right check digit", digits);
  }
}
