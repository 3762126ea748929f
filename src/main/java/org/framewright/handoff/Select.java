package org.framewright.handoff;

import java.util.List;
import java.util.OptionalInt;
import java.util.SequencedMap;
import org.framewright.frames.Frame;
import org.framewright.frames.Place;

/**
 * A frame chosen for retouching, with the name that it travels under; or a slate that goes along.
 *
 * @param frame the frame as it lies in the job
 * @param original its name in the job, with its folder below the frames folder and without ending
 * @param place the setup and view that it belongs to
 * @param rating from 1 to 5, or -1 for a frame that its files reject; none if it is not rated
 * @param name its name in the package, without ending
 * @param fields the name's fields, as the convention reads them back
 * @param files each file's name in the package, in the order of the frame's files
 * @param slate whether it is a slate: a frame that shows a card, and need not come back
 */
public record Select(
    Frame frame,
    String original,
    Place place,
    OptionalInt rating,
    String name,
    SequencedMap<String, String> fields,
    List<String> files,
    boolean slate) {
  public Select {
    files = List.copyOf(files);
  }

  /** One that is no slate. */
  public Select(
      Frame frame,
      String original,
      Place place,
      OptionalInt rating,
      String name,
      SequencedMap<String, String> fields,
      List<String> files) {
    this(frame, original, place, rating, name, fields, files, false);
  }

  /** The size of its files. */
  public long bytes() {
    return frame.files().stream().mapToLong(file -> file.size()).sum();
  }
}
