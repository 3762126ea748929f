package org.framewright.naming;

import org.framewright.base.Text;

/** One step on the way from people's text to legal text: what a rule was given and what it made. */
public record Step(String field, String given, String became, Text said) {
  /** The rule, in English. */
  public String rule() {
    return said.english();
  }

  /** The step in a line: {@code client: KVÖ -> KVO (Latin letters without accents)}. */
  public String description() {
    return field + ": " + given + " -> " + became + " (" + rule() + ")";
  }
}
