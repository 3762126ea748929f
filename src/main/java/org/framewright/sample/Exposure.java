package org.framewright.sample;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.frames.slate.Slate;

/**
 * What stands before the camera, and when.
 *
 * @param at the true time
 * @param setup the setup's code; its digits are drawn into the picture
 * @param view {@code F}, {@code B}, {@code D} or anything else; the garment is drawn from that side
 * @param upright whether the camera is held upright, which Exif's Orientation then says
 * @param rating a rating given to the frame, -1 to 5, or none
 * @param slate the slate that is held before the garment
 */
public record Exposure(
    Instant at,
    String setup,
    String view,
    boolean upright,
    OptionalInt rating,
    Optional<Slate> slate) {

  /** An unrated frame from a camera that lies level. */
  public static Exposure of(Instant at, String setup, String view) {
    return new Exposure(at, setup, view, false, OptionalInt.empty(), Optional.empty());
  }

  /** The same with a rating. */
  public Exposure rated(int stars) {
    return new Exposure(at, setup, view, upright, OptionalInt.of(stars), slate);
  }

  /** The same with the camera held upright. */
  public Exposure heldUpright() {
    return new Exposure(at, setup, view, true, rating, slate);
  }

  /** The same with a slate held into the picture. */
  public Exposure with(Slate held) {
    return new Exposure(at, setup, view, upright, rating, Optional.of(held));
  }
}
