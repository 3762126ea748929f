package org.framewright.naming;

import java.util.List;
import java.util.SequencedMap;
import org.framewright.base.Text;

/** What came of reading a name. */
public sealed interface Reading {
  /** Exactly one reading: the kind of name, and the value of every field that it shows. */
  record One(String kind, SequencedMap<String, String> fields) implements Reading {}

  /** More than one; an unsound convention can have very many, so at most a hundred are listed. */
  record Several(List<One> readings) implements Reading {}

  /**
   * None.
   *
   * @param position where reading failed, in UTF-16 units from 0; the name's length if it ended too
   *     early
   * @param wanted what was expected there
   * @param said the same as a sentence
   */
  record None(int position, Text wanted, Text said) implements Reading {
    /** What was expected there, in English. */
    public String expected() {
      return wanted.english();
    }

    /** The same as a sentence, in English. */
    public String message() {
      return said.english();
    }
  }
}
