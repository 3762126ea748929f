package org.framewright.ui;

import java.util.List;
import java.util.Optional;
import javafx.geometry.Rectangle2D;

/**
 * Where the client's window is among displays that come and go. It fills the display that the app
 * is not on; when that is unplugged it waits out of sight, so that it does not lie over the list,
 * and comes back with it.
 */
final class ClientPlace {
  /** What the window does when the displays have changed. */
  sealed interface Move {
    /** It stays as it is. */
    record Stay() implements Move {}

    /** It goes out of sight. */
    record Wait() implements Move {}

    /** It fills a display. */
    record Fill(Rectangle2D display) implements Move {}
  }

  private static final Move STAY = new Move.Stay();

  /** The display that it fills, or filled until that was unplugged. */
  private Optional<Rectangle2D> on = Optional.empty();

  private boolean waiting;

  /**
   * The window comes up.
   *
   * @param app where the app's own window is
   * @return the display to fill; none where the app is on all of them
   */
  Optional<Rectangle2D> begin(List<Rectangle2D> displays, Rectangle2D app) {
    waiting = false;
    on = Displays.beside(displays, app);
    return on;
  }

  /**
   * Displays were plugged in or out, or changed.
   *
   * @param fills whether the window fills its display, not put elsewhere by hand
   */
  Move now(List<Rectangle2D> displays, Rectangle2D app, boolean fills) {
    var there = on.filter(displays::contains);
    if (there.isPresent()) {
      return waiting ? fill(there.get()) : STAY;
    }
    var other = Displays.beside(displays, app);
    if (waiting || on.isEmpty() || fills) {
      if (other.isPresent()) {
        return fill(other.get());
      }
      if (on.isPresent() && !waiting) {
        waiting = true;
        return new Move.Wait();
      }
    }
    return STAY;
  }

  private Move fill(Rectangle2D display) {
    waiting = false;
    on = Optional.of(display);
    return new Move.Fill(display);
  }
}
