package org.framewright.frames;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Function;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class AttributionTest {
  private static final Camera A = new Camera("Invented Works", "Studio Body A", "1");
  private static final Camera B = new Camera("Invented Works", "Studio Body B", "2");
  private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

  private final Map<FrameId, Instant> arrivals = new HashMap<>();
  private final List<OnSetSpan> spans = new ArrayList<>();
  private final List<FrameMove> moves = new ArrayList<>();
  private Function<Frame, Optional<Place>> named = frame -> Optional.empty();
  private Function<String, Optional<String>> onlyView = setup -> Optional.empty();
  private ZoneId zone = ZoneOffset.UTC;

  @Test
  void aFrameBelongsToTheSetupThatWasOnSetWhenItArrived() {
    onSet("001", 0, 60);
    onSet("002", 60, 600);
    // Taken in the last second of the first, arrived in the second: tethered frames go by arrival.
    var frame = tethered("x", A, 59, 2);
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("002"));
  }

  @Test
  void theNameCountsBeforeTheArrivalAndAPersonsWordBeforeTheName() {
    onSet("001", 0, 600);
    var frame = tethered("x", A, 10, 1);
    named = any -> Optional.of(new Place("007", Optional.of("F")));
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("007", "F"));
    moves.add(new FrameMove(frame.id(), "003", Optional.of("B"), at(100)));
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("003", "B"));
  }

  @Test
  void saysWhatPlacedEachFrame() {
    onSet("001", 0, 600);
    var arrived = tethered("arrived", A, 10, 1);
    var moved = tethered("moved", A, 12, 1);
    var byName = tethered("named", A, 14, 1);
    var fromCard = frame("card", A, local(16), Optional.empty());
    var nowhere = frame("nowhere", A, local(9000), Optional.empty());
    moves.add(new FrameMove(moved.id(), "003", Optional.empty(), at(100)));
    named = frame -> frame.equals(byName) ? Optional.of(place("007")) : Optional.empty();
    assertThat(
            Attribution.of(
                    List.of(arrived, moved, byName, fromCard, nowhere),
                    arrivals,
                    spans,
                    moves,
                    named,
                    onlyView,
                    zone)
                .tally(PlausibleTimes.ANY)
                .placed())
        .isEqualTo(
            Map.of(
                arrived.id(), HowPlaced.of(PlacedBy.ARRIVAL),
                moved.id(), HowPlaced.of(PlacedBy.PERSON),
                byName.id(), HowPlaced.of(PlacedBy.NAME),
                fromCard.id(), HowPlaced.of(PlacedBy.CAPTURE)));
  }

  @Test
  void ofSeveralMovesTheLatestCountsAndAnEmptyOneTakesThemBack() {
    onSet("001", 0, 600);
    var frame = tethered("x", A, 10, 1);
    moves.add(new FrameMove(frame.id(), "003", Optional.empty(), at(200)));
    moves.add(new FrameMove(frame.id(), "002", Optional.empty(), at(100)));
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("003"));
    moves.add(new FrameMove(frame.id(), "", Optional.empty(), at(300)));
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("001"));
  }

  @Test
  void framesFromACardGoByCaptureTimeOnceTheBodysClockIsKnown() {
    onSet("001", 0, 600);
    onSet("002", 600, 1200);
    var frames = new ArrayList<Frame>();
    // The body is an hour ahead. Ten frames come tethered; one from its card, hours later.
    for (int i = 0; i < 10; i++) {
      frames.add(arrived("t" + i, A, 10 + i + 3600, 11.5 + i));
    }
    var card = arrived("c", A, 300 + 3600, 20_000);
    frames.add(card);
    onSet("009", 19_000, 30_000);
    var tally = assign(frames);
    assertThat(tally.places()).containsEntry(card.id(), place("001"));
    assertThat(tally.cameras())
        .singleElement()
        .satisfies(
            clock -> {
              assertThat(clock.offsetSeconds().orElseThrow()).isCloseTo(-3598.5, within(0.01));
              assertThat(clock.measuredOn()).isEqualTo(10);
              assertThat(clock.frames()).isEqualTo(11);
              assertThat(clock.wholeHours()).isEqualTo(OptionalInt.of(-1));
            });
  }

  @Test
  void aWholeCardCopiedAtOnceIsNotTakenForTethered() {
    onSet("001", 0, 3600);
    onSet("002", 3600, 7200);
    onSet("003", 20_000, 30_000);
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 100; i++) {
      frames.add(arrived("c" + i, A, i * 72L, 20_500 + i * 0.05));
    }
    var tally = assign(frames);
    assertThat(tally.bySetup().keySet()).containsExactly("001", "002");
    assertThat(tally.bySetup().get("001").frames()).isEqualTo(50);
    assertThat(tally.cameras().getFirst().offsetSeconds()).isEmpty();
  }

  @Test
  void framesThatNobodySawArrivingGoByCaptureTimeInTheZoneGiven() {
    zone = ZoneId.of("Europe/Berlin");
    onSet("001", 0, 600);
    // 13:01 in Berlin in November is 12:01 UTC.
    var frame = frame("x", A, LocalDateTime.of(2026, 11, 25, 13, 1), Optional.empty());
    assertThat(assign(frame).places()).containsEntry(frame.id(), place("001"));
    var withOffset =
        frame("y", A, LocalDateTime.of(2026, 11, 25, 7, 1), Optional.of(ZoneOffset.ofHours(-5)));
    assertThat(assign(withOffset).places()).containsEntry(withOffset.id(), place("001"));
  }

  @Test
  void mergesTwoBodiesOfWhichOneIsAnHourAhead() {
    onSet("001", 0, 100);
    onSet("002", 100, 200);
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 10; i++) {
      frames.add(arrived("a" + i, A, i * 20L, i * 20 + 1));
      frames.add(arrived("b" + i, B, i * 20L + 3600, i * 20 + 1));
    }
    // Copied from the cards: nobody saw them come.
    var a = frame("ax", A, local(150), Optional.empty());
    var b = frame("bx", B, local(3600 + 50), Optional.empty());
    frames.addAll(List.of(a, b));
    var tally = assign(frames);
    assertThat(tally.places())
        .containsEntry(a.id(), place("002"))
        .containsEntry(b.id(), place("001"));
    assertThat(tally.bySetup().get("001").frames()).isEqualTo(11);
    assertThat(tally.bySetup().get("002").frames()).isEqualTo(11);
  }

  @Test
  void namesTheLikelySetupOfAnUnassignedFrame() {
    onSet("001", 0, 60);
    onSet("002", 600, 900);
    var tally = assign(tethered("x", A, 100, 1));
    assertThat(tally.unassigned())
        .singleElement()
        .satisfies(
            frame -> {
              assertThat(frame.likely()).contains("001");
              assertThat(frame.why()).contains("001 left the set 41 s before");
            });
    assertThat(tally.frames()).isEqualTo(1);
  }

  @Test
  void countsByViewAndTakesTheOnlyWantedViewWhereNoneIsKnown() {
    spans.add(new OnSetSpan("001", Optional.of("B"), at(0), Optional.of(at(100))));
    onSet("002", 100, 200);
    onSet("003", 200, 300);
    onlyView = setup -> setup.equals("002") ? Optional.of("F") : Optional.empty();
    var tally = assign(tethered("x", A, 10, 1), tethered("y", A, 110, 1), tethered("z", A, 210, 1));
    assertThat(tally.bySetup().get("001").byView()).containsExactly(Map.entry("B", 1));
    assertThat(tally.bySetup().get("002").byView()).containsExactly(Map.entry("F", 1));
    assertThat(tally.bySetup().get("003").byView()).containsExactly(Map.entry("", 1));
  }

  @Test
  void aFrameOnTheEdgeOfTwoSetupsBelongsToTheLater() {
    onSet("001", 0, 60);
    onSet("002", 60, 600);
    var before = arrived("b", A, 58, 59.999);
    var edge = arrived("e", A, 58, 60);
    var after = arrived("a", A, 598, 600);
    var tally = assign(before, edge, after);
    assertThat(tally.places())
        .containsEntry(before.id(), place("001"))
        .containsEntry(edge.id(), place("002"))
        .doesNotContainKey(after.id());
    assertThat(tally.unassigned().getFirst().why()).endsWith("002 left the set 0 s before");
  }

  @Test
  void aFrameThatArrivedMoreThanAMinuteLateGoesByItsCaptureTime() {
    onSet("001", 0, 150);
    onSet("002", 150, 10_000);
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 6; i++) {
      frames.add(arrived("t" + i, A, 1000 + i, 1000 + i));
    }
    var inTime = arrived("x", A, 100, 160);
    var late = arrived("y", A, 100, 160.001);
    frames.addAll(List.of(inTime, late));
    assertThat(assign(frames).places())
        .containsEntry(inTime.id(), place("002"))
        .containsEntry(late.id(), place("001"));
  }

  @Test
  void copiesOfAFrameCountOnceWithTheFilesOfTheFirst() {
    onSet("001", 0, 600);
    var file = new FrameFile(Path.of("/frames/x.jpg"), 1, NOON, FileRole.JPEG);
    var frame = withFiles(tethered("x", A, 10, 1), file);
    var copy = withFiles(frame, file, file);
    var tally = assign(frame, copy, tethered("y", A, 20, 1));
    assertThat(tally.frames()).isEqualTo(2);
    assertThat(tally.files()).isEqualTo(1);
    assertThat(tally.bySetup().get("001").frames()).isEqualTo(2);
  }

  private static Frame withFiles(Frame frame, FrameFile... files) {
    return new Frame(
        frame.id(), frame.folder(), frame.stem(), List.of(files), frame.capture(), true);
  }

  @Test
  void saysWhyAFrameBelongsNowhere() {
    assertThat(assign(tethered("x", A, 100, 1)).unassigned().getFirst().why())
        .isEqualTo("no setup was on set so far");
    onSet("001", 7600, 8000);
    assertThat(assign(tethered("x", A, 99, 1)).unassigned().getFirst().why())
        .isEqualTo("nothing was on set; 001 came on set 2 h 5 min later");
    var unknown =
        new Frame(
            new FrameId("u"), Path.of("/f"), "u", List.of(), Capture.UNKNOWN, /* complete= */ true);
    assertThat(assign(unknown).unassigned())
        .singleElement()
        .returns(Optional.empty(), Unassigned::likely)
        .returns("neither its arrival nor its capture time is known", Unassigned::why);
  }

  @Test
  void ofTheMovesOfTwoIdentitiesTheLaterCounts() {
    onSet("001", 0, 100);
    var jpeg = new FrameId("jpeg");
    var raw = new FrameId("raw");
    var frame =
        new Frame(raw, List.of(raw, jpeg), Path.of("/f"), "x", List.of(), Capture.UNKNOWN, true);
    moves.add(new FrameMove(jpeg, "003", Optional.empty(), at(200)));
    moves.add(new FrameMove(raw, "002", Optional.empty(), at(100)));
    assertThat(assign(frame).places()).containsEntry(raw, place("003"));
  }

  @Test
  void incompleteFramesAreListedAndNotCounted() {
    onSet("001", 0, 100);
    var half =
        new Frame(
            new FrameId("h"),
            Path.of("/f"),
            "h",
            List.of(),
            Capture.UNKNOWN,
            /* complete= */ false);
    var tally = assign(tethered("x", A, 10, 1), half);
    assertThat(tally.incomplete()).containsExactly(half);
    assertThat(tally.frames()).isEqualTo(1);
  }

  @Test
  void anArrivalUnderAnEarlierIdentityCounts() {
    onSet("001", 0, 100);
    var jpeg = new FrameId("jpeg");
    arrivals.put(jpeg, at(10));
    var capture =
        new Capture(Optional.empty(), Optional.empty(), Optional.of(A), OptionalInt.empty());
    var raw = new FrameId("raw");
    var frame = new Frame(raw, List.of(raw, jpeg), Path.of("/f"), "x", List.of(), capture, true);
    assertThat(assign(frame).places()).containsEntry(raw, place("001"));
  }

  @Test
  void setupsAreTalliedInTheOrderOfTheirNumbers() {
    onSet("10", 0, 100);
    onSet("9", 100, 200);
    onSet("A2", 200, 300);
    var tally = assign(tethered("x", A, 10, 1), tethered("y", A, 110, 1), tethered("z", A, 210, 1));
    assertThat(tally.bySetup().keySet()).containsExactly("9", "10", "A2");
  }

  /**
   * The measure withstands as many late arrivals as there are timely ones, less one. (The median's
   * breakdown point is one half; Rousseeuw and Leroy 1987, from memory.)
   */
  @Property(tries = 200)
  void findsAClocksErrorDespiteManyLateArrivals(
      @ForAll @LongRange(min = -50_000, max = 50_000) long error,
      @ForAll @IntRange(min = 5, max = 40) int timely,
      @ForAll long seed) {
    var random = new Random(seed);
    var frames = new ArrayList<Frame>();
    arrivals.clear();
    for (int i = 0; i < timely; i++) {
      frames.add(arrived("t" + i, A, i * 30L - error, i * 30 + 1 + random.nextDouble() * 3));
    }
    for (int i = 0; i < timely - 1; i++) {
      double late = 1000 + i * 137.0 + random.nextInt(100);
      frames.add(arrived("l" + i, A, i * 30L - error, i * 30 + late));
    }
    Collections.shuffle(frames, random);
    var clock = assign(frames).cameras().getFirst();
    assertThat(clock.offsetSeconds().orElseThrow()).isBetween(error + 1.0, error + 4.0);
    assertThat(clock.spreadSeconds().orElseThrow()).isLessThan(3);
  }

  /** The order of frames, spans and moves decides nothing, and each frame is counted once. */
  @Property(tries = 200)
  void theOrderOfWhatIsKnownDecidesNothing(@ForAll long seed) {
    var random = new Random(seed);
    arrivals.clear();
    spans.clear();
    moves.clear();
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 8; i++) {
      onSet("S" + random.nextInt(4), i * 50L, i * 50L + 30 + random.nextInt(20));
    }
    for (int i = 0; i < 30; i++) {
      var frame =
          arrived("f" + i, random.nextBoolean() ? A : B, i * 13L, i * 13 + random.nextInt(90));
      frames.add(frame);
      if (random.nextInt(4) == 0) {
        moves.add(
            new FrameMove(frame.id(), "S" + random.nextInt(4), Optional.empty(), at(1000 + i)));
      }
    }
    var first = assign(frames);
    assertThat(first.places().size() + first.unassigned().size()).isEqualTo(30);
    assertThat(first.bySetup().values().stream().mapToInt(SetupTally::frames).sum())
        .isEqualTo(first.places().size());
    Collections.shuffle(frames, random);
    Collections.shuffle(spans, random);
    Collections.shuffle(moves, random);
    var second = assign(frames);
    assertThat(second.places()).isEqualTo(first.places());
    assertThat(second.bySetup()).isEqualTo(first.bySetup());
    assertThat(second.cameras()).isEqualTo(first.cameras());
  }

  @Test
  void recognisesWholeHoursAndOnlyThose() {
    assertThat(clock(3601.5).wholeHours()).isEqualTo(OptionalInt.of(1));
    assertThat(clock(-7199).wholeHours()).isEqualTo(OptionalInt.of(-2));
    assertThat(clock(2.5).wholeHours()).isEmpty();
    assertThat(clock(5400).wholeHours()).isEmpty();
  }

  private static CameraClock clock(double offset) {
    return new CameraClock(
        A, java.util.OptionalDouble.of(offset), java.util.OptionalDouble.of(0), 9, 9);
  }

  private Tally assign(Frame... frames) {
    return assign(List.of(frames));
  }

  private Tally assign(List<Frame> frames) {
    return Attribution.assign(frames, arrivals, spans, moves, named, onlyView, zone);
  }

  private void onSet(String setup, long from, long until) {
    spans.add(new OnSetSpan(setup, Optional.empty(), at(from), Optional.of(at(until))));
  }

  private Frame tethered(String id, Camera camera, long taken, double seconds) {
    return arrived(id, camera, taken, taken + seconds);
  }

  private Frame arrived(String id, Camera camera, long bodyTime, double arrived) {
    arrivals.put(new FrameId(id), NOON.plus(Duration.ofNanos((long) (arrived * 1e9))));
    return frame(id, camera, local(bodyTime), Optional.empty());
  }

  private static Frame frame(
      String id, Camera camera, LocalDateTime time, Optional<ZoneOffset> offset) {
    var capture = new Capture(Optional.of(time), offset, Optional.of(camera), OptionalInt.empty());
    return new Frame(new FrameId(id), Path.of("/frames"), id, List.of(), capture, true);
  }

  private static Instant at(long seconds) {
    return NOON.plusSeconds(seconds);
  }

  private static LocalDateTime local(long seconds) {
    return LocalDateTime.ofInstant(at(seconds), ZoneOffset.UTC);
  }

  private static Place place(String setup) {
    return new Place(setup, Optional.empty());
  }

  private static Place place(String setup, String view) {
    return new Place(setup, Optional.of(view));
  }
}
