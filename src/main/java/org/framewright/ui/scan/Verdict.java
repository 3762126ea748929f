package org.framewright.ui.scan;

import java.util.List;

/** What becomes of a stroke, and of those that are held. */
sealed interface Verdict<E> {
  /** It goes on its way. */
  record Pass<E>() implements Verdict<E> {}

  /** It goes no further now. */
  record Held<E>() implements Verdict<E> {}

  /** It was typing: these go on their way, in this order. */
  record Typing<E>(List<E> events) implements Verdict<E> {
    public Typing {
      events = List.copyOf(events);
    }
  }

  /**
   * It was a scan.
   *
   * @param text what was scanned
   * @param others what was held and is no part of it: keys that were let go meanwhile
   */
  record Scan<E>(String text, List<E> others) implements Verdict<E> {
    public Scan {
      others = List.copyOf(others);
    }
  }
}
