package org.framewright.naming;

import java.util.Optional;
import java.util.SequencedMap;

/** A kind of name, such as {@code frame}. */
public interface Kind {
  String id();

  /** The pattern as written. */
  String pattern();

  /** The fields that it shows, in order; false for those inside an optional run. */
  SequencedMap<String, Boolean> fields();

  /** The name of the counter that it shows. A name shows one at most. */
  Optional<String> counter();
}
