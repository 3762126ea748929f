package org.framewright.naming;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/** Always the same text. */
record FixedShape(String text, Dfa texts) implements Shape {
  FixedShape(String text) {
    this(text, Dfa.of(text));
  }

  @Override
  public Settled settle(String field, String raw, List<Step> steps) {
    return raw.isEmpty() || raw.equals(text)
        ? new Settled.Legal(text, text)
        : new Settled.Refused(
            Text.of("“{0}” is given, and it is always “{1}”", Quoted.bare(raw), Quoted.bare(text)),
            Text.of("Leave this value out."));
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
  public Text inWords() {
    return Quoted.said(text);
  }
}
