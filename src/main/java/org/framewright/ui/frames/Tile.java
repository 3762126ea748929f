package org.framewright.ui.frames;

import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.frames.HowPlaced;
import org.framewright.frames.Place;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.ui.look.Texts;

/**
 * One frame in the grid.
 *
 * @param place where it belongs; none for a frame that no setup claims
 * @param likely the setup that a frame without a place most probably belongs to
 * @param how how it came to its place; none for a frame that has none
 * @param whyNone why no setup claims it; none for a frame with a place and for a slate
 * @param slate the slate that it is, if it is one; then it belongs to no setup
 * @param select whether it is chosen for retouching
 * @param rating from 1 to 5, -1 for a frame that its files reject; none if it is not rated
 */
record Tile(
    Frame frame,
    Optional<Place> place,
    Optional<String> likely,
    Optional<HowPlaced> how,
    Optional<Text> whyNone,
    Optional<SlateFrame> slate,
    boolean select,
    OptionalInt rating) {

  /** What stands in place of its setup where it is a slate. */
  Optional<String> slate(Texts texts) {
    return slate.map(
        one ->
            one.slate().says() instanceof SlateSays.OfAnotherJob
                ? texts.get("frames.slateOfAnotherJob")
                : texts.get("frames.slateOf", PlainText.line(one.slate().says().code())));
  }

  /** Whether a slate contradicts its place, and nobody ruled. */
  boolean inDoubt() {
    return how.filter(HowPlaced::doubt).isPresent();
  }
}
