package org.framewright.job;

import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.HowPlaced;
import org.framewright.frames.Place;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.Tally;
import org.framewright.frames.Unassigned;

/**
 * A frame as a table of all frames shows it.
 *
 * @param frame the frame
 * @param taken when, its body's clock put right, at the place of the shoot; none where its time is
 *     not known
 * @param place the setup and view that it belongs to
 * @param rating from 1 to 5, or -1 for a frame that its files reject; none if it is not rated
 * @param slate the slate that it is, if it is one; then it belongs to no setup
 * @param placed what brought it to its setup, if it has one
 * @param how how it came to its setup, or why it belongs to none, in words
 */
public record FrameLine(
    Frame frame,
    Optional<LocalDateTime> taken,
    Optional<Place> place,
    OptionalInt rating,
    Optional<SlateFrame> slate,
    Optional<HowPlaced> placed,
    String how) {

  static List<FrameLine> all(List<Frame> frames, JobState state, Tally tally, FrameTimes times) {
    var unassigned = new HashMap<FrameId, Unassigned>();
    tally.unassigned().forEach(one -> unassigned.put(one.frame().id(), one));
    var slates = new HashMap<FrameId, SlateFrame>();
    tally.slates().frames().forEach(one -> slates.put(one.frame().id(), one));
    var seen = new HashSet<FrameId>();
    return frames.stream()
        .map(
            frame -> {
              boolean copy = frame.complete() && !seen.add(frame.id());
              var slate = Optional.ofNullable(slates.get(frame.id()));
              var placed = Optional.ofNullable(tally.placed().get(frame.id()));
              var place = Optional.ofNullable(tally.places().get(frame.id()));
              return new FrameLine(
                  frame,
                  times.capturedLocal(frame),
                  frame.complete() ? place : Optional.empty(),
                  state.rating(frame),
                  slate.filter(_ -> frame.complete()),
                  placed.filter(_ -> frame.complete()),
                  how(frame, copy, slate, placed, unassigned.get(frame.id())));
            })
        .toList();
  }

  private static String how(
      Frame frame,
      boolean copy,
      Optional<SlateFrame> slate,
      Optional<HowPlaced> placed,
      Unassigned unassigned) {
    if (!frame.complete()) {
      return "not counted: it is not whole";
    }
    var words =
        slate
            .map(one -> one.slate().says().said(UnaryOperator.identity()).english())
            .or(() -> placed.map(HowPlaced::words))
            .orElseGet(
                () ->
                    "unassigned: "
                        + unassigned.why()
                        + unassigned.likely().map(setup -> "; likely " + setup).orElse(""));
    return copy ? words + "; a copy, counted once" : words;
  }
}
