package org.framewright.ui.page;

import java.util.List;
import org.framewright.ui.command.TypedWords;

/**
 * Finds what a page has, by part of what it is called. Made on the interface thread, of what the
 * page has then; asked in the background.
 */
@FunctionalInterface
public interface Finder {
  /** Finds nothing. */
  Finder NOTHING = (_, _) -> List.of();

  /**
   * What was found, the best first.
   *
   * @param most so many at most
   */
  List<Found> find(TypedWords typed, int most);

  /**
   * Something that one can go to.
   *
   * @param name what it is called
   * @param more what else there is to say of it, such as its state or its key; may be empty
   * @param go goes there; called on the interface thread
   */
  record Found(String name, String more, Runnable go) {}
}
