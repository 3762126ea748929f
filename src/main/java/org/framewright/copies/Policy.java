package org.framewright.copies;

import java.util.List;

/**
 * What a person asks for.
 *
 * @param needed on how many disks besides the card each file has to be, from 1 to 9
 * @param waivers files that need not be kept
 */
record Policy(int needed, List<Waiver> waivers) {
  static final int MOST_NEEDED = 9;

  Policy {
    if (needed < 1 || needed > MOST_NEEDED) {
      throw new IllegalArgumentException(needed + " disks");
    }
    waivers = List.copyOf(waivers);
  }
}
