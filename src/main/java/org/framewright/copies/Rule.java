package org.framewright.copies;

import java.util.Locale;

/** What must hold before a card may be cleared; each by itself, all of them together. */
public enum Rule {
  /** The listing of the card is whole. */
  WHOLE_LISTING,
  /** Every file of the card was read to its end now. */
  READ,
  /** What was read came from the card, and not from the computer's memory. */
  FROM_MEDIUM,
  /** Every file is on enough other disks. */
  COPIES,
  /** Each of those copies was read now, from its disk, and held still until the end. */
  COPIES_READ,
  /** The disks are known, and are several. */
  DEVICES,
  /** No card vouches for another one. */
  WITNESSES,
  /** No picture on the card is empty or broken. */
  WHOLE_PICTURES,
  /** Nothing came to the card meanwhile. */
  UNCHANGED;

  /** The rule as machines read it: {@code whole-listing}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** The number that it has in the documentation, from 1. */
  public int number() {
    return ordinal() + 1;
  }
}
