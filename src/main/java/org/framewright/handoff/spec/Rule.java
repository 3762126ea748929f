package org.framewright.handoff.spec;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What of a picture a client may ask. */
public enum Rule {
  /** Its header can be read, so that the rest can be judged. */
  READABLE,
  /** The kind of file. */
  KINDS,
  /** An ending that says the kind. */
  ENDING,
  WIDTH,
  HEIGHT,
  LONG_SIDE,
  SHORT_SIDE,
  /** Width to height. */
  ASPECT,
  /** Pixels per inch, as the file says. */
  RESOLUTION,
  /** Bits of a channel. */
  BITS,
  /** The colour model. */
  COLOURS,
  /** The embedded ICC profile. */
  PROFILE,
  /** Channels besides those of the colours. */
  ALPHA,
  LAYERS,
  /** The outermost pixels. */
  BACKGROUND,
  /** Bytes. */
  FILE_SIZE,
  /** A name by the convention to be delivered under. */
  NAME;

  /** The word of the specification's file and of JSON. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Those that a specification asks in words of its own. */
  static List<Rule> keys() {
    return Arrays.stream(values())
        .filter(rule -> rule != READABLE && rule != ENDING && rule != NAME)
        .toList();
  }
}
