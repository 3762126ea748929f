package org.framewright.naming;

/** How much work one proof may take, so that a hostile convention cannot hold anybody up. */
final class Effort {
  /** The proof would take more. */
  static final class TooLarge extends Exception {
    private static final long serialVersionUID = 1L;

    TooLarge() {
      super("too large to prove", null, false, false);
    }
  }

  private long left;

  Effort(long steps) {
    left = steps;
  }

  void spend(long steps) throws TooLarge {
    left -= steps;
    if (left < 0) {
      throw new TooLarge();
    }
  }
}
