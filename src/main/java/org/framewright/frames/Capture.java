package org.framewright.frames;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a frame says of its own making.
 *
 * @param time Exif DateTimeOriginal with SubSecTimeOriginal, else what the file's container says,
 *     by the body's own clock
 * @param offset Exif OffsetTimeOriginal, where the body wrote one; UTC where the container's time
 *     is by its standard in UTC
 * @param camera the body
 * @param rating -1 (rejected) to 5; the sidecar's, else the picture's own; 0 where a sidecar says
 *     that it is not rated
 * @param label the text of XMP's Label, in whatever language somebody wrote it; the sidecar's, else
 *     the picture's own
 */
public record Capture(
    Optional<LocalDateTime> time,
    Optional<ZoneOffset> offset,
    Optional<Camera> camera,
    OptionalInt rating,
    Optional<String> label) {

  /** One without a label. */
  public Capture(
      Optional<LocalDateTime> time,
      Optional<ZoneOffset> offset,
      Optional<Camera> camera,
      OptionalInt rating) {
    this(time, offset, camera, rating, Optional.empty());
  }

  /** Nothing is known. */
  public static final Capture UNKNOWN =
      new Capture(Optional.empty(), Optional.empty(), Optional.empty(), OptionalInt.empty());

  /** The instant of capture by the body's clock, taken in {@code zone} where it wrote no offset. */
  public Optional<Instant> instant(ZoneId zone) {
    return time.map(
        local ->
            offset.isPresent() ? local.toInstant(offset.get()) : local.atZone(zone).toInstant());
  }

  /** This, with what it does not say taken from another; a time keeps its own offset or none. */
  Capture or(Capture other) {
    var dated = time.isPresent() ? this : other;
    return new Capture(
        dated.time,
        dated.offset,
        camera.isPresent() ? camera : other.camera,
        rating.isPresent() ? rating : other.rating,
        label.isPresent() ? label : other.label);
  }

  /** This, as somebody judged it. */
  Capture judged(OptionalInt newRating, Optional<String> newLabel) {
    return new Capture(time, offset, camera, newRating, newLabel);
  }
}
