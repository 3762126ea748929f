package org.framewright.ui.frames;

import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.frames.Frame;
import org.framewright.frames.Place;
import org.framewright.frames.ShotSlate;
import org.framewright.frames.SlateSays;
import org.framewright.ui.look.Texts;

/**
 * One frame in the grid.
 *
 * @param place where it belongs; none for a frame that no setup claims
 * @param likely the setup that a frame without a place most probably belongs to
 * @param slate the slate that it is, if it is one; then it belongs to no setup
 * @param select whether it is chosen for retouching
 * @param rating from 1 to 5, -1 for a frame that its files reject; none if it is not rated
 */
record Tile(
    Frame frame,
    Optional<Place> place,
    Optional<String> likely,
    Optional<ShotSlate> slate,
    boolean select,
    OptionalInt rating) {

  /** What stands in place of its setup where it is a slate. */
  Optional<String> slate(Texts texts) {
    return slate.map(
        one ->
            one.says() instanceof SlateSays.OfAnotherJob
                ? texts.get("frames.slateOfAnotherJob")
                : texts.get("frames.slateOf", one.says().code()));
  }
}
