package org.framewright.ui.frames;

import java.util.Optional;
import org.framewright.frames.Place;

/**
 * A part of the job's frames that can be looked at.
 *
 * @param place the setup and view, for the headings that are one
 * @param title the setup's title; empty for all others
 * @param frames how many frames are under it
 * @param selects how many of them are selects
 */
record FrameHeading(Kind kind, Optional<Place> place, String title, int frames, int selects) {
  /** What a heading gathers. */
  enum Kind {
    /** Every frame of the job. */
    ALL,
    /** The selects of all setups. */
    SELECTS,
    /** The frames that no setup claims. */
    UNASSIGNED,
    /** The frames of a setup. */
    SETUP,
    /** The frames of one view of a setup. */
    VIEW,
    /** The frames that are slates, and of no setup. */
    SLATES
  }

  /** The heading of frames that no setup claims, to be looked for among those there are. */
  static FrameHeading unassigned() {
    return new FrameHeading(Kind.UNASSIGNED, Optional.empty(), "", 0, 0);
  }

  /** The heading of slates, to be looked for among those there are. */
  static FrameHeading slates() {
    return new FrameHeading(Kind.SLATES, Optional.empty(), "", 0, 0);
  }

  /** The heading of a setup, to be looked for among those there are. */
  static FrameHeading ofSetup(String code) {
    return new FrameHeading(Kind.SETUP, Optional.of(new Place(code, Optional.empty())), "", 0, 0);
  }

  /** Whether a frame is under this heading. */
  boolean holds(Tile tile) {
    return switch (kind) {
      case ALL -> true;
      case SELECTS -> tile.select();
      case UNASSIGNED -> tile.place().isEmpty() && tile.slate().isEmpty();
      case SLATES -> tile.slate().isPresent();
      case SETUP -> tile.place().map(Place::setup).equals(place.map(Place::setup));
      case VIEW -> tile.place().equals(place);
    };
  }

  /** Whether both gather the same, however many frames there are by now. */
  boolean same(FrameHeading other) {
    return kind == other.kind && place.equals(other.place);
  }
}
