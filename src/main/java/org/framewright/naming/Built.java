package org.framewright.naming;

import java.util.List;
import java.util.SequencedMap;

/** What came of building a name. */
public sealed interface Built {
  /**
   * The name.
   *
   * @param text the name, in normalisation form C, without a file ending
   * @param values each shown field's value, as {@link Convention#read} returns it
   * @param steps how people's text became those values; empty where nothing had to change
   */
  record Name(String text, SequencedMap<String, String> values, List<Step> steps)
      implements Built {}

  /** No name, and every reason why not. */
  record Refused(List<Finding> findings) implements Built {}
}
