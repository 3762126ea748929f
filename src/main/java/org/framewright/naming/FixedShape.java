package org.framewright.naming;

import java.util.List;
import java.util.Optional;

/** Always the same text. */
record FixedShape(String text, Dfa texts) implements Shape {
  FixedShape(String text) {
    this(text, Dfa.of(text));
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    return raw.isEmpty() || raw.equals(text)
        ? new Settled.Text(text, text)
        : new Settled.Refused(
            Quoted.text(raw) + " is given, and it is always " + Quoted.text(text),
            "Leave this value out.");
  }

  @Override
  public String value(String shown) {
    return text;
  }

  @Override
  public Optional<Loss> loss() {
    return Optional.empty();
  }

  @Override
  public String inWords() {
    return Quoted.text(text);
  }
}
