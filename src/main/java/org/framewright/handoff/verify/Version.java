package org.framewright.handoff.verify;

import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** A version of BagIt. */
record Version(int major, int minor) {
  /** That of RFC 8493. */
  static final Version OF_THE_STANDARD = new Version(1, 0);

  private static final Pattern NUMBERS = Pattern.compile("(\\d{1,4})\\.(\\d{1,4})");

  /** RFC 8493, section 7.2, lists the drafts before it. */
  private static final Set<Version> KNOWN =
      Set.of(
          OF_THE_STANDARD,
          new Version(0, 97),
          new Version(0, 96),
          new Version(0, 95),
          new Version(0, 94),
          new Version(0, 93));

  static Optional<Version> of(String text) {
    var match = NUMBERS.matcher(text);
    return match.matches()
        ? Optional.of(
            new Version(Integer.parseInt(match.group(1)), Integer.parseInt(match.group(2))))
        : Optional.empty();
  }

  boolean isKnown() {
    return KNOWN.contains(this);
  }

  /** Whether the rules of RFC 8493 hold, and not the looser ones of the drafts before it. */
  boolean isStrict() {
    return major >= 1;
  }

  @Override
  public String toString() {
    return major + "." + minor;
  }
}
