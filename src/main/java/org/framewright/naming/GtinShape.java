package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import dk.brics.automaton.Transition;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * A product number with its check digit (GS1 General Specifications: from the right the digits
 * before the check digit weigh 3, 1, 3 ...; the check digit makes the sum a multiple of ten).
 */
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
          int next = (sum + d * weight(digits - 1 - i)) % 10;
          states[i][sum].addTransition(new Transition((char) ('0' + d), states[i + 1][next]));
        }
      }
    }
    states[digits][0].setAccept(true);
    var automaton = new Automaton();
    automaton.setInitialState(states[0][0]);
    return Dfa.of(automaton);
  }

  private static int weight(int fromTheRight) {
    return fromTheRight % 2 == 0 ? 1 : 3;
  }

  /** The check digit that belongs after these digits. */
  static int checkDigit(String withoutIt) {
    int sum = 0;
    for (int i = 0; i < withoutIt.length(); i++) {
      sum += (withoutIt.charAt(i) - '0') * weight(withoutIt.length() - i);
    }
    return (10 - sum % 10) % 10;
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    var number = raw.replaceAll("[\\s-]", "");
    if (!number.matches("[0-9]{8}|[0-9]{12,14}")) {
      return new Settled.Refused(
          Text.of("“{0}” is not a product number", Quoted.bare(raw)),
          Text.of("Give the 8, 12, 13 or 14 digits of its GTIN, check digit included."));
    }
    int expected = checkDigit(number.substring(0, number.length() - 1));
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
