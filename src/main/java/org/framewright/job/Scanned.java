package org.framewright.job;

import java.util.List;
import org.framewright.shotlist.Setup;

/** What a scanned code says of the setups of a list. */
public sealed interface Scanned {
  /**
   * What was found, and for which keyboard the computer takes the scanner.
   *
   * @param keyboard the one that the scanner was read as last, where this scan does not tell it
   */
  record Read(Scanned scanned, ScannerKeyboard keyboard) {}

  /** The one setup that has the code. */
  record One(Setup setup) implements Scanned {}

  /** Several setups have it, in the order of the list: a person says which is meant. */
  record Several(List<Setup> setups) implements Scanned {
    public Several {
      setups = List.copyOf(setups);
    }
  }

  /**
   * A slate that means no setup of the list.
   *
   * @param setup the setup that it was printed for
   * @param ofAnotherJob whether it was printed for another job
   */
  record StraySlate(String setup, boolean ofAnotherJob) implements Scanned {}

  /**
   * No setup has it.
   *
   * @param code what was read, without what a scanner adds to it; of a symbol of GS1 the product
   *     number
   * @param checked whether its check digit, or a slate's check, says that it was read rightly
   */
  record Unknown(String code, boolean checked) implements Scanned {}
}
