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
 * a slate of its body, or what was on set when it arrived; the setup was on set when it was taken,
 * by the body's clock put right. A frame that none of these places is unassigned. A slate itself
 * belongs to no setup, whatever else is said of it.
 *
 * <p>An arrival counts where it is that of a frame just taken. Frames that were copied from a card,
 * or that came while nobody watched, arrive long after they were taken, and go by their capture
 * time. How long is long is measured against the other arrivals of the same body, see {@link
 * BodyClock}.
 *
 * <p>A slate holds for its own body only, from the frame after it to the next one, see {@link
 * SlateCourse}. Where frames arrive as they are taken, a slate and a person may say different
 * things. What a person puts on set after the slate holds. What was on set when the slate came
 * holds, too, and the slate is told as a doubt, until somebody rules. Where nothing was on set, or
 * what a slate had put there, the slate holds. Frames that nobody saw arrive go by their slates,
 * since these need no clock. Another body that has no slates of its own goes by what is on set,
 * whoever put it there.
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
  private final SetCourse personal;
  private final SlateCourse slates;
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
      ZoneId zone,
      ShotSlates slates) {
    this.incomplete = frames.stream().filter(frame -> !frame.complete()).toList();
    this.complete = FrameScan.distinct(frames).stream().filter(Frame::complete).toList();
    this.arrivals = arrivals;
    this.clocks = BodyClock.measure(complete, arrivals, zone);
    this.moves = latest(moves);
    this.course = new SetCourse(spans);
    this.slates = SlateCourse.of(complete, slates, zone);
    this.personal =
        this.slates.frames().isEmpty()
            ? course
            : new SetCourse(spans.stream().filter(span -> !span.bySlate()).toList());
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
    return of(frames, arrivals, spans, moves, namedPlace, onlyView, zone, ShotSlates.NONE);
  }

  /**
   * The same, where some frames show slates.
   *
   * @param slates which frames do, and what is said of them
   */
  public static Attribution of(
      List<Frame> frames,
      Map<FrameId, Instant> arrivals,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Function<Frame, Optional<Place>> namedPlace,
      Function<String, Optional<String>> onlyView,
      ZoneId zone,
      ShotSlates slates) {
    return new Attribution(frames, arrivals, spans, moves, namedPlace, onlyView, zone, slates);
  }

  /** What is known of a frame's setup. */
  private sealed interface Verdict {
    /** It belongs to a setup. */
    record In(Place place, HowPlaced how) implements Verdict {}

    /** It belongs to none; {@code why} where that is not a matter of time. */
    record Loose(Optional<Text> why) implements Verdict {}

    /** It is a slate. */
    record Slate() implements Verdict {}
  }

  /** Assigns each complete frame to a setup and counts. Copies of one frame count once. */
  public Tally tally(PlausibleTimes plausible) {
    var places = LinkedHashMap.<FrameId, Place>newLinkedHashMap(complete.size());
    var placed = HashMap.<FrameId, HowPlaced>newHashMap(complete.size());
    var clips = new HashSet<FrameId>();
    var unassigned = new ArrayList<Unassigned>();
    var implausible = new ImplausibleClock.Gathering();
    var bySlate = new HashMap<FrameId, Integer>();
    var inDoubt = new HashMap<FrameId, Integer>();
    int files = 0;
    for (var frame : complete) {
      files += frame.files().size();
      var captured = captured(frame);
      if (captured.isPresent() && !plausible.holds(captured.get())) {
        implausible.add(frame, plausible.ahead(captured.get()));
      }
      var time = decisiveTime(frame, captured);
      var verdict = verdict(frame, time);
      if (frame.isClip() && !(verdict instanceof Verdict.Slate)) {
        clips.add(frame.id());
      }
      switch (verdict) {
        case Verdict.In(var place, var how) -> {
          places.put(frame.id(), withView(place));
          placed.put(frame.id(), how);
          how.slate()
              .ifPresent(
                  one ->
                      (how.doubt() ? inDoubt : bySlate).merge(one.frame().id(), 1, Integer::sum));
        }
        case Verdict.Loose(var why) ->
            unassigned.add(
                why.isPresent()
                    ? new Unassigned(frame, Optional.empty(), why.get())
                    : unassigned(frame, time.map(Decisive::time)));
        case Verdict.Slate() -> {}
      }
    }
    return new Tally(
        count(places, clips),
        List.copyOf(unassigned),
        incomplete,
        clocks.values().stream().map(BodyClock::describe).toList(),
        places,
        placed,
        complete.size() - clips.size() - slates.frames().size(),
        files,
        clips.size(),
        implausible.clocks(),
        new SlateTally(
            slates.frames().stream()
                .map(
                    frame ->
                        new SlateFrame(
                            frame,
                            slates.slate(frame),
                            bySlate.getOrDefault(frame.id(), 0),
                            opened(frame)))
                .toList(),
            doubts(inDoubt),
            slates.remarks()));
  }

  private Verdict verdict(Frame frame, Optional<Decisive> time) {
    if (slates.isSlate(frame)) {
      return new Verdict.Slate();
    }
    var moved = moved(frame);
    if (moved.isPresent()) {
      return new Verdict.In(moved.get(), HowPlaced.of(PlacedBy.PERSON));
    }
    var named = namedPlace.apply(frame);
    if (named.isPresent()) {
      return new Verdict.In(named.get(), HowPlaced.of(PlacedBy.NAME));
    }
    var statement = slates.statement(frame);
    if (statement.isPresent()) {
      return bySlate(frame, statement.get(), time);
    }
    return time.flatMap(
            at ->
                course.at(at.time()).map(span -> in(SetCourse.place(span), HowPlaced.of(at.by()))))
        .orElseGet(() -> new Verdict.Loose(Optional.empty()));
  }

  private static Verdict in(Place place, HowPlaced how) {
    return new Verdict.In(place, how);
  }

  private Verdict bySlate(Frame frame, SlateCourse.Statement said, Optional<Decisive> time) {
    var onSet =
        time.filter(at -> at.by() == PlacedBy.ARRIVAL).flatMap(at -> personal.at(at.time()));
    var slate = Optional.of(new SlateFrame(said.frame(), said.slate(), 0, Optional.empty()));
    boolean card = slates.showsCard(frame);
    if (onSet.isPresent() && !said.ordered()) {
      var relation = relation(onSet.get(), said.frame(), said.slate());
      if (relation != Relation.SLATE_HOLDS) {
        boolean doubt = relation == Relation.DOUBT;
        return in(
            SetCourse.place(onSet.get()),
            new HowPlaced(PlacedBy.ARRIVAL, doubt ? slate : Optional.empty(), doubt, card));
      }
    }
    return switch (said.slate().says()) {
      case SlateSays.OfSetup(var setup) ->
          in(new Place(setup, Optional.empty()), new HowPlaced(PlacedBy.SLATE, slate, false, card));
      case SlateSays.Unlisted _, SlateSays.OfAnotherJob _ ->
          new Verdict.Loose(Optional.of(said.slate().says().whyNone(said.frame().stem())));
    };
  }

  /** How a slate stands to what a person put on set. */
  private enum Relation {
    SLATE_HOLDS,
    ON_SET_HOLDS,
    /** What is on set holds for the time being. */
    DOUBT
  }

  private Relation relation(OnSetSpan onSet, Frame frame, ShotSlate slate) {
    var time = decisiveTime(frame, captured(frame)).map(Decisive::time);
    if (time.isEmpty() || onSet.from().isAfter(time.get())) {
      return Relation.ON_SET_HOLDS;
    }
    if (onSet.shot().filter(shot -> !shot.isAfter(time.get())).isPresent()) {
      return Relation.SLATE_HOLDS;
    }
    if (slate.says().equals(new SlateSays.OfSetup(onSet.setup()))) {
      return Relation.ON_SET_HOLDS;
    }
    return switch (slate.ruling()) {
      case FOLLOW -> Relation.SLATE_HOLDS;
      case STAY -> Relation.ON_SET_HOLDS;
      case OPEN -> Relation.DOUBT;
    };
  }

  private Optional<Instant> opened(Frame frame) {
    var slate = slates.slate(frame);
    if (!slates.isLast(frame) || !(slate.says() instanceof SlateSays.OfSetup)) {
      return Optional.empty();
    }
    return decisiveTime(frame, captured(frame))
        .filter(at -> at.by() == PlacedBy.ARRIVAL)
        .map(Decisive::time)
        .filter(
            time ->
                personal
                    .at(time)
                    .map(span -> relation(span, frame, slate) == Relation.SLATE_HOLDS)
                    .orElse(true));
  }

  /** Without frames in doubt only a slate that nothing has overtaken is told. */
  private List<SlateDoubt> doubts(Map<FrameId, Integer> inDoubt) {
    var doubts = new ArrayList<SlateDoubt>();
    for (var frame : slates.frames()) {
      int count = inDoubt.getOrDefault(frame.id(), 0);
      var slate = slates.slate(frame);
      var onSet =
          decisiveTime(frame, captured(frame))
              .filter(at -> at.by() == PlacedBy.ARRIVAL)
              .flatMap(at -> personal.at(at.time()));
      if (onSet.isEmpty() || relation(onSet.get(), frame, slate) != Relation.DOUBT) {
        continue;
      }
      boolean lasts = onSet.get().until().isEmpty();
      if (count > 0 || (lasts && slates.isLast(frame))) {
        doubts.add(
            new SlateDoubt(
                frame, slate.says(), onSet.get().setup(), count, lasts && slates.isLast(frame)));
      }
    }
    return doubts;
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
