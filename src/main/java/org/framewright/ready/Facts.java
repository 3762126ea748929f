package org.framewright.ready;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.SortedSet;
import org.framewright.base.Text;
import org.framewright.day.Battery;
import org.framewright.frames.CameraClock;

/**
 * What is known before the first frame. The checks are functions of it and of nothing else.
 *
 * @param at the moment that it holds for
 * @param zone the computer's
 * @param setups how many the list has
 * @param unnamed setups whose frames could not be named, the first first
 * @param convention what is wrong with the convention for the frames planned
 * @param halfWay what an earlier run left half-way
 * @param space of the disk that frames arrive on
 * @param speed of that disk
 * @param places for copies
 * @param power what the computer runs on
 * @param othersAhead by how much the latest clock of another computer is ahead of this one's; 0 for
 *     none
 * @param bodies what the arrival of their frames says of their clocks
 * @param atHand what only the app knows
 */
public record Facts(
    Instant at,
    ZoneId zone,
    int setups,
    List<Misnamed> unnamed,
    List<Fault> convention,
    List<HalfWay> halfWay,
    Space space,
    Speed speed,
    List<CopyPlace> places,
    Power power,
    Duration othersAhead,
    List<CameraClock> bodies,
    AtHand atHand) {
  public Facts {
    unnamed = List.copyOf(unnamed);
    convention = List.copyOf(convention);
    halfWay = List.copyOf(halfWay);
    places = List.copyOf(places);
    bodies = List.copyOf(bodies);
  }

  /** A setup whose frames could not be named. */
  public record Misnamed(String setup, Text why, Text remedy) {}

  /** A finding of the convention that a person has to do something about. */
  public record Fault(boolean error, Text said, Text remedy) {}

  /** What an earlier run left half-way, and how it is brought to an end. */
  public record HalfWay(Text said, Text remedy) {}

  /**
   * The disk that frames arrive on.
   *
   * @param free bytes
   * @param planned frames that the list still wants; none where it does not say
   * @param bytesPerFrame of the job's own frames; 0 before the first
   */
  public record Space(long free, OptionalLong planned, long bytesPerFrame) {
    /**
     * A frame of a body of 45 megapixels, raw and JPEG together. Common practice, no source; the
     * job's own frames are gone by as soon as there is one.
     */
    public static final long USUAL_FRAME = 60_000_000;

    /** Bytes of one frame, its own or the usual ones. */
    public long frame() {
      return bytesPerFrame > 0 ? bytesPerFrame : USUAL_FRAME;
    }

    /** Bytes that the planned frames need; none where nobody can say. */
    public OptionalLong needed() {
      return planned.isEmpty()
          ? OptionalLong.empty()
          : OptionalLong.of(
              (long) Math.min(Long.MAX_VALUE, (double) planned.getAsLong() * frame()));
    }
  }

  /**
   * How fast that disk is, and what is asked of it.
   *
   * @param measured empty where it was not
   * @param burst how many frames follow each other at once
   * @param camera bytes a second that a body sent at its fastest; none before it did
   */
  public record Speed(Optional<Measure> measured, int burst, OptionalLong camera) {
    /** Why it was not measured, or what it came to. */
    public sealed interface Measure {
      /**
       * Bytes a second.
       *
       * @param read none where the system does not let us past its memory
       */
      record Rates(long written, OptionalLong read) implements Measure {}

      /** The disk refused what was written to it. */
      record Refused(Text why, Text remedy) implements Measure {}

      /** There is too little room to measure. */
      record NoRoom() implements Measure {}
    }
  }

  /**
   * A folder for copies.
   *
   * @param folder as it was given
   * @param there whether it can be reached
   * @param apart whether it lies on another disk than the frames; none where nobody can know
   * @param free bytes; 0 where it is not there
   */
  public record CopyPlace(String folder, boolean there, Optional<Boolean> apart, long free) {}

  /** What the computer runs on. */
  public sealed interface Power {
    /** On its battery. */
    record OnBattery(Battery battery) implements Power {}

    /** On mains, or it has no battery. */
    record OnMains() implements Power {}

    /** This system is not asked. */
    record Unknown() implements Power {}
  }

  /**
   * What only the app knows; empty from the command line.
   *
   * @param noFont the scripts of the list that no font is there for, by their English names
   * @param display whether a second display is there
   * @param devices how many phones and tablets are paired; none where the page is not served
   */
  public record AtHand(
      SortedSet<String> scripts,
      Optional<List<String>> noFont,
      Optional<Boolean> display,
      Optional<Integer> devices) {}
}
