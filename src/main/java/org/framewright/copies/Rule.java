package org.framewright.copies;

import java.util.Locale;

/** What must hold before a card may be cleared; each by itself, all of them together. */
public enum Rule {
  /** The listing of the card is whole. */
  WHOLE_LISTING(1),
  /** Every file of the card was read to its end now. */
  READ(2),
  /** What was read came from the card, and not from the computer's memory. */
  FROM_MEDIUM(3),
  /** Every file is on enough other disks. */
  COPIES(4),
  /** Each of those copies was read now, from its disk, and held still until the end. */
  COPIES_READ(5),
  /** The disks are known, and are several. */
  DEVICES(6),
  /** No card vouches for another one. */
  WITNESSES(7),
  /** No picture on the card is empty or broken. */
  WHOLE_PICTURES(8),
  /** Nothing came to the card meanwhile. */
  UNCHANGED(9);

  private final int number;

  Rule(int number) {
    this.number = number;
  }

  /** The rule as machines read it: {@code whole-listing}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The number that it has in the documentation, from 1. */
  public int number() {
    return number;
  }
}
