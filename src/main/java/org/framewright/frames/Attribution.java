package org.framewright.frames;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.framewright.base.Durations;
import org.framewright.base.Text;

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
  private final List<Frame> incomplete;
  private final List<Frame> complete;
  private final Map<FrameId, Instant> arrivals;
  private final Map<Camera, BodyClock> clocks;
  private final Map<FrameId, FrameMove> moves;
  private final SetCourse course;
  private final Function<Frame, Optional<Place>> namedPlace;
  private final Function<String, Optional<String>> onlyView;
  private final ZoneId zone;

  private Attribution(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace,
      Function<String, Optional<String>> onlyView,
      ZoneId zone) {
    this.incomplete = frames.stream().filter(frame -> !frame.complete()).toList();
    this.complete = FrameScan.distinct(frames).stream().filter(Frame::complete).toList();
    this.arrivals = arrivals;
    this.clocks = BodyClock.measure(complete, arrivals, zone);
    this.moves = latest(moves);
    this.course = new SetCourse(spans);
    this.namedPlace = namedPlace;
    this.onlyView = onlyView;
    this.zone = zone;
  }

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

  /** As the full form, with all capture times taken as they are. */
  public static Tally assign(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace,
      Function<String, Optional<String>> onlyView,
      ZoneId zone) {
    return of(frames, arrivals, spans, moves, namedPlace, onlyView, zone).tally(PlausibleTimes.ANY);
  }

  /**
   * What decides to which setup each complete frame belongs.
   *
   * @param frames of a scan
   * @param arrivals when frames were first seen complete, by the station's clock
   * @param spans what was on set when, in any order; where two overlap, the later begun counts
   * @param moves what people said, in any order; of those for one frame the latest counts
   * @param namedPlace what a frame's name says, by the job's convention
   * @param onlyView the view of a setup of which only one is wanted, by the setup's code
   * @param zone in which bodies that write no offset keep their time
   */
  public static Attribution of(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace,
      Function<String, Optional<String>> onlyView,
      ZoneId zone) {
    return new Attribution(frames, arrivals, spans, moves, namedPlace, onlyView, zone);
  }

  /** Assigns each complete frame to a setup and counts. Copies of one frame count once. */
  public Tally tally(PlausibleTimes plausible) {
    var places = LinkedHashMap.<FrameId, Place>newLinkedHashMap(complete.size());
    var clips = new HashSet<FrameId>();
    var unassigned = new ArrayList<Unassigned>();
    var implausible = new ImplausibleClock.Gathering();
    int files = 0;
    for (var frame : complete) {
      files += frame.files().size();
      if (frame.isClip()) {
        clips.add(frame.id());
      }
      var captured = captured(frame);
      if (captured.isPresent() && !plausible.holds(captured.get())) {
        implausible.add(frame, plausible.ahead(captured.get()));
      }
      var time = decisiveTime(frame, captured);
      var decision = decision(frame, time);
      if (decision.isPresent()) {
        places.put(frame.id(), withView(decision.get().place()));
      } else {
        unassigned.add(unassigned(frame, time.map(Decisive::time)));
      }
    }
    return new Tally(
        count(places, clips),
        List.copyOf(unassigned),
        incomplete,
        clocks.values().stream().map(BodyClock::describe).toList(),
        places,
        complete.size() - clips.size(),
        files,
        clips.size(),
        implausible.clocks());
  }

  /** What placed each complete frame that has a setup. */
  public Map<FrameId, PlacedBy> placedBy() {
    var by = HashMap.<FrameId, PlacedBy>newHashMap(complete.size());
    for (var frame : complete) {
      decision(frame, decisiveTime(frame, captured(frame)))
          .ifPresent(found -> by.put(frame.id(), found.by()));
    }
    return by;
  }

  private record Decision(Place place, PlacedBy by) {}

  private Optional<Decision> decision(Frame frame, Optional<Decisive> time) {
    return moved(frame)
        .map(place -> new Decision(place, PlacedBy.PERSON))
        .or(() -> namedPlace.apply(frame).map(place -> new Decision(place, PlacedBy.NAME)))
        .or(
            () ->
                time.flatMap(
                    at ->
                        course
                            .at(at.time())
                            .map(span -> new Decision(SetCourse.place(span), at.by()))));
  }

  private static Map<FrameId, FrameMove> latest(List<FrameMove> moves) {
    var latest = new HashMap<FrameId, FrameMove>();
    moves.stream()
        .sorted(Comparator.comparing(FrameMove::at))
        .forEach(move -> latest.put(move.frame(), move));
    return latest;
  }

  private Optional<Place> moved(Frame frame) {
    FrameMove last = null;
    for (var known : frame.knownAs()) {
      var move = moves.get(known);
      if (move != null && (last == null || move.at().isAfter(last.at()))) {
        last = move;
      }
    }
    return Optional.ofNullable(last)
        .filter(move -> !move.setup().isBlank())
        .map(move -> new Place(move.setup(), move.view()));
  }

  /** A time, and whether it is that of the arrival or of the capture. */
  private record Decisive(Instant time, PlacedBy by) {}

  /** When it was taken, by its body's clock put right. */
  private Optional<Instant> captured(Frame frame) {
    var clock = frame.capture().camera().map(clocks::get);
    return frame
        .capture()
        .instant(zone)
        .map(time -> clock.map(body -> body.putRight(time)).orElse(time));
  }

  /** When the frame was before the camera, as well as that is known. */
  private Optional<Decisive> decisiveTime(Frame frame, Optional<Instant> captured) {
    var arrival = frame.arrival(arrivals);
    boolean justTaken =
        arrival.isPresent()
            && (captured.isEmpty()
                || frame
                    .capture()
                    .camera()
                    .map(clocks::get)
                    .map(body -> body.isTethered(arrival.get(), captured.get()))
                    .orElse(true));
    return justTaken
        ? arrival.map(time -> new Decisive(time, PlacedBy.ARRIVAL))
        : captured.map(time -> new Decisive(time, PlacedBy.CAPTURE));
  }

  private Place withView(Place place) {
    return place.view().isPresent()
        ? place
        : new Place(place.setup(), onlyView.apply(place.setup()));
  }

  private Unassigned unassigned(Frame frame, Optional<Instant> time) {
    if (time.isEmpty()) {
      return new Unassigned(
          frame, Optional.empty(), Text.of("neither its arrival nor its capture time is known"));
    }
    var near = course.nearest(time.get());
    var why =
        near.map(span -> distance(span, time.get())).orElse(Text.of("no setup was on set so far"));
    return new Unassigned(frame, near.map(OnSetSpan::setup), why);
  }

  private static Text distance(OnSetSpan span, Instant time) {
    boolean before = time.isBefore(span.from());
    var apart =
        before ? Duration.between(time, span.from()) : Duration.between(span.until().get(), time);
    return Text.of(
        before
            ? "nothing was on set; {0} came on set {1} later"
            : "nothing was on set; {0} left the set {1} before",
        span.setup(),
        Durations.said(apart));
  }

  private static SequencedMap<String, SetupTally> count(
      Map<FrameId, Place> places, Set<FrameId> clips) {
    var counts = new HashMap<String, SequencedMap<String, Integer>>();
    var clipCounts = new HashMap<String, Integer>();
    places.forEach(
        (frame, place) -> {
          var byView = counts.computeIfAbsent(place.setup(), setup -> new TreeMap<>());
          if (clips.contains(frame)) {
            clipCounts.merge(place.setup(), 1, Integer::sum);
          } else {
            byView.merge(place.view().orElse(""), 1, Integer::sum);
          }
        });
    var tallies = new LinkedHashMap<String, SetupTally>();
    for (var setup : counts.keySet().stream().sorted(NaturalOrder.INSTANCE).toList()) {
      var byView = counts.get(setup);
      tallies.put(
          setup,
          new SetupTally(
              byView.values().stream().mapToInt(n -> n).sum(),
              byView,
              clipCounts.getOrDefault(setup, 0)));
    }
    return tallies;
  }
}
