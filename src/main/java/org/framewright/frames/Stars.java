package org.framewright.frames;

import java.util.OptionalInt;

/**
 * Ratings that are written as a share of a hundred: 1, 25, 50, 75 and 99 for one to five. Source:
 * Microsoft, "System.Rating" and "Photo Metadata Policies" (the bounds in between from memory).
 */
final class Stars {
  private static final int MOST = 99;

  private Stars() {}

  /** From 1 to 5; nothing for 0, which is not rated, and for what is no such share. */
  static OptionalInt ofShare(int share) {
    return share < 1 || share > MOST ? OptionalInt.empty() : OptionalInt.of((share + 12) / 25 + 1);
  }
}
