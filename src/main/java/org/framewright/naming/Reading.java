package org.framewright.naming;

import java.util.List;
import java.util.SequencedMap;

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
   * @param expected what was expected there
   * @param message the same as a sentence
   */
  record None(int position, String expected, String message) implements Reading {}
}
