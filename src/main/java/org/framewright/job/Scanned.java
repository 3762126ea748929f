package org.framewright.job;

import java.util.List;
import org.framewright.shotlist.Setup;

/** What a scanned code says of the setups of a list. */
public sealed interface Scanned {
  /** The one setup that has the code. */
  record One(Setup setup) implements Scanned {}

  /** Several setups have it, in the order of the list: a person says which is meant. */
  record Several(List<Setup> setups) implements Scanned {
    public Several {
      setups = List.copyOf(setups);
    }
  }

  /**
   * No setup has it.
   *
   * @param code what was read, without what a scanner adds to it
   */
  record Unknown(String code) implements Scanned {}
}
