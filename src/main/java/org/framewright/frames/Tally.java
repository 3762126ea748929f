package org.framewright.frames;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * The frames, counted by setup and view. Only complete frames are counted, video clips apart.
 *
 * @param bySetup each setup that has frames or clips, by code in natural order
 * @param unassigned the complete frames and clips that no setup claims
 * @param incomplete the frames and clips that are not whole, or not yet
 * @param cameras the bodies and their clocks
 * @param places where each assigned frame or clip belongs
 * @param placed how each of them came there
 * @param frames the number of complete frames without the clips
 * @param files the number of the files of all complete frames and clips
 * @param clips the number of complete clips
 * @param implausible the bodies with capture times that cannot be right
 * @param slates the frames that are slates, which no other number here counts but {@code files}
 */
public record Tally(
    SequencedMap<String, SetupTally> bySetup,
    List<Unassigned> unassigned,
    List<Frame> incomplete,
    List<CameraClock> cameras,
    Map<FrameId, Place> places,
    Map<FrameId, HowPlaced> placed,
    int frames,
    int files,
    int clips,
    List<ImplausibleClock> implausible,
    SlateTally slates) {

  /** A tally without clips, of bodies whose times can be right. */
  public Tally(
      SequencedMap<String, SetupTally> bySetup,
      List<Unassigned> unassigned,
      List<Frame> incomplete,
      List<CameraClock> cameras,
      Map<FrameId, Place> places,
      int frames,
      int files) {
    this(
        bySetup,
        unassigned,
        incomplete,
        cameras,
        places,
        Map.of(),
        frames,
        files,
        0,
        List.of(),
        SlateTally.NONE);
  }

  /** How a frame came to its setup, if it has one. */
  public Optional<HowPlaced> placed(Frame frame) {
    return frame.knownAs().stream().filter(placed::containsKey).map(placed::get).findFirst();
  }

  /** Where a frame belongs, by any of the identities that it is known by. */
  public Optional<Place> place(Frame frame) {
    return frame.knownAs().stream().filter(places::containsKey).map(places::get).findFirst();
  }
}
