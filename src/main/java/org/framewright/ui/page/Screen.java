package org.framewright.ui.page;

import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import org.framewright.ui.command.Command;

/** One page of the shell: a view over its view model. */
public interface Screen {
  /** Stable, as in {@code board}. */
  String id();

  /** The page's word in the head line. */
  String title();

  /**
   * The page that this one belongs to and gives way to: then it has no word and no key of its own.
   */
  default Optional<String> within() {
    return Optional.empty();
  }

  /** The page itself; the same node each time. */
  Node node();

  /** What help on it is about. */
  default String topic() {
    return id();
  }

  /** Where the keys go when the page is shown. */
  default Node focus() {
    return node();
  }

  /** What can be done on the page; asked for whenever it comes to the front. */
  default List<Command> commands() {
    return List.of();
  }

  /** Finds what the page has as it is now. */
  default Finder finder() {
    return Finder.NOTHING;
  }

  /** The page came to the front. */
  default void onShown() {}

  /** Another page came to the front. */
  default void onHidden() {}

  /** The same page made anew, after it could not be laid out; this one is not shown any more. */
  Screen anew();

  /** The page will not be shown again: listeners go, work stops. */
  default void dispose() {}
}
