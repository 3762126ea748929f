package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.TreeMap;
import java.util.function.Function;
import org.framewright.base.Durations;

/**
 * Which setup each frame belongs to. What counts, before what: a person moved it; its name says so;
 * the setup was on set when it arrived; the setup was on set when it was taken, by the body's clock
 * put right. A frame that none of these places is unassigned.
 *
 * <p>An arrival counts where it is that of a frame just taken. Frames that were copied from a card,
 * or that came while nobody watched, arrive long after they were taken, and go by their capture
 * time. How long is long is measured against the other arrivals of the same body, see {@link
 * BodyClock}.
 *
 * <p>The view is the one given with what places the frame, else the only view wanted of the setup.
 */
public final class Attribution {
  private Attribution() {}

  /** As the full form, with no views wanted and capture times in the zone of this computer. */
  public static Tally assign(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace) {
    return assign(
        frames,
        arrivals,
        spans,
        moves,
        namedPlace,
        setup -> Optional.empty(),
        ZoneId.systemDefault());
  }

  /**
   * Assigns each complete frame to a setup and counts. Copies of one frame count once.
   *
   * @param frames of a scan
   * @param arrivals when frames were first seen complete, by the station's clock
   * @param spans what was on set when, in any order; where two overlap, the later begun counts
   * @param moves what people said, in any order; of those for one frame the latest counts
   * @param namedPlace what a frame's name says, by the job's convention
   * @param onlyView the view of a setup of which only one is wanted, by the setup's code
   * @param zone in which bodies that write no offset keep their time
   */
  public static Tally assign(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace,
      Function<String, Optional<String>> onlyView,
      ZoneId zone) {
    var incomplete = frames.stream().filter(frame -> !frame.complete()).toList();
    var complete = FrameScan.distinct(frames).stream().filter(Frame::complete).toList();
    var clocks = BodyClock.measure(complete, arrivals, zone);
    var latest = latest(moves);
    var course = new SetCourse(spans);
    var places = LinkedHashMap.<FrameId, Place>newLinkedHashMap(complete.size());
    var unassigned = new ArrayList<Unassigned>();
    int files = 0;
    for (var frame : complete) {
      files += frame.files().size();
      var time = decisiveTime(frame, arrivals, clocks, zone);
      var place =
          moved(frame, latest)
              .or(() -> namedPlace.apply(frame))
              .or(() -> time.flatMap(course::at).map(SetCourse::place));
      if (place.isPresent()) {
        places.put(frame.id(), withView(place.get(), onlyView));
      } else {
        unassigned.add(unassigned(frame, time, course));
      }
    }
    return new Tally(
        count(places),
        List.copyOf(unassigned),
        incomplete,
        clocks.values().stream().map(BodyClock::describe).toList(),
        places,
        complete.size(),
        files);
  }

  private static Map<FrameId, FrameMove> latest(List<FrameMove> moves) {
    var latest = new HashMap<FrameId, FrameMove>();
    moves.stream()
        .sorted(Comparator.comparing(FrameMove::at))
        .forEach(move -> latest.put(move.frame(), move));
    return latest;
  }

  private static Optional<Place> moved(Frame frame, Map<FrameId, FrameMove> latest) {
    FrameMove last = null;
    for (var known : frame.knownAs()) {
      var move = latest.get(known);
      if (move != null && (last == null || move.at().isAfter(last.at()))) {
        last = move;
      }
    }
    return Optional.ofNullable(last)
        .filter(move -> !move.setup().isBlank())
        .map(move -> new Place(move.setup(), move.view()));
  }

  /** When the frame was before the camera, as well as that is known. */
  private static Optional<Instant> decisiveTime(
      Frame frame, Map<FrameId, Instant> arrivals, Map<Camera, BodyClock> clocks, ZoneId zone) {
    var arrival = frame.arrival(arrivals);
    var clock = frame.capture().camera().map(clocks::get);
    var captured =
        frame
            .capture()
            .instant(zone)
            .map(time -> clock.map(body -> body.putRight(time)).orElse(time));
    if (arrival.isEmpty() || captured.isEmpty()) {
      return arrival.or(() -> captured);
    }
    boolean justTaken =
        clock.map(body -> body.isTethered(arrival.get(), captured.get())).orElse(true);
    return justTaken ? arrival : captured;
  }

  private static Place withView(Place place, Function<String, Optional<String>> onlyView) {
    return place.view().isPresent()
        ? place
        : new Place(place.setup(), onlyView.apply(place.setup()));
  }

  private static Unassigned unassigned(Frame frame, Optional<Instant> time, SetCourse course) {
    if (time.isEmpty()) {
      return new Unassigned(
          frame, Optional.empty(), "neither its arrival nor its capture time is known");
    }
    var near = course.nearest(time.get());
    var why =
        near.map(span -> "nothing was on set; " + distance(span, time.get()))
            .orElse("no setup was on set so far");
    return new Unassigned(frame, near.map(OnSetSpan::setup), why);
  }

  private static String distance(OnSetSpan span, Instant time) {
    boolean before = time.isBefore(span.from());
    var apart =
        before ? Duration.between(time, span.from()) : Duration.between(span.until().get(), time);
    return "%s %s %s"
        .formatted(
            span.setup(),
            before ? "came on set" : "left the set",
            Durations.words(apart) + (before ? " later" : " before"));
  }

  private static SequencedMap<String, SetupTally> count(Map<FrameId, Place> places) {
    var counts = new HashMap<String, SequencedMap<String, Integer>>();
    for (var place : places.values()) {
      counts
          .computeIfAbsent(place.setup(), setup -> new TreeMap<>())
          .merge(place.view().orElse(""), 1, Integer::sum);
    }
    var tallies = new LinkedHashMap<String, SetupTally>();
    for (var setup : counts.keySet().stream().sorted(NaturalOrder.INSTANCE).toList()) {
      var byView = counts.get(setup);
      tallies.put(setup, new SetupTally(byView.values().stream().mapToInt(n -> n).sum(), byView));
    }
    return tallies;
  }
}
