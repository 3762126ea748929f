package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;

/** How slates place frames, and who has precedence: what {@link Attribution} promises. */
class SlatesTest {
  private static final Camera A = new Camera("Invented Works", "Studio Body A", "1");
  private static final Camera B = new Camera("Invented Works", "Studio Body B", "2");
  private static final Camera NAMELESS = new Camera("Invented Works", "Studio Body C", "");
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);

  private final List<Frame> frames = new ArrayList<>();
  private final Map<FrameId, ShotSlate> slates = new HashMap<>();
  private final Map<FrameId, String> names = new HashMap<>();
  private final Map<FrameId, Instant> arrivals = new HashMap<>();
  private final List<OnSetSpan> spans = new ArrayList<>();
  private final List<FrameMove> moves = new ArrayList<>();
  private Function<Frame, Optional<Place>> named = _ -> Optional.empty();

  // ---- Slates alone

  @Test
  void aSlateOpensItsSetupForTheFramesBehindIt() {
    taken(A, 1, 0);
    slate(A, 2, 10, "001");
    taken(A, 3, 20);
    slate(A, 4, 30, "002");
    taken(A, 5, 40);
    taken(A, 6, 50);
    assertThat(setups()).containsExactly("-", "slate", "001", "slate", "002", "002");
    assertThat(tally().frames()).isEqualTo(4);
    assertThat(tally().bySetup().get("002").frames()).isEqualTo(2);
    assertThat(tally().slates().frames().stream().map(SlateFrame::frames)).containsExactly(1, 2);
    assertThat(how(4)).isEqualTo("by slate IMG_0004");
  }

  @Test
  void aSlateHoldsForItsOwnBodyOnly() {
    slate(A, 1, 0, "001");
    taken(A, 2, 10);
    taken(B, 2, 11);
    slate(B, 3, 12, "002");
    taken(B, 4, 13);
    taken(A, 5, 14);
    assertThat(setups()).containsExactly("slate", "001", "-", "slate", "002", "001");
  }

  @Test
  void theViewIsTheOnlyWantedOneElseNone() {
    slate(A, 1, 0, "001");
    taken(A, 2, 10);
    slate(A, 3, 20, "002");
    taken(A, 4, 30);
    var tally =
        Attribution.of(
                frames,
                arrivals,
                spans,
                moves,
                named,
                setup -> setup.equals("001") ? Optional.of("F") : Optional.empty(),
                ZoneOffset.UTC,
                new ShotSlates(slates, names))
            .tally(PlausibleTimes.ANY);
    assertThat(tally.places().values())
        .containsExactlyInAnyOrder(
            new Place("001", Optional.of("F")), new Place("002", Optional.empty()));
  }

  @Test
  void theSameSlateThreeTimesIsASlateAndTheFourthIsACardLeftLying() {
    for (int i = 1; i <= 5; i++) {
      slate(A, i, i, "001");
    }
    taken(A, 6, 6);
    assertThat(setups()).containsExactly("slate", "slate", "slate", "001", "001", "001");
    assertThat(how(3)).isEqualTo("by slate IMG_0003; a slate lay in the picture");
    assertThat(how(5)).isEqualTo("by slate IMG_0003");
  }

  @Test
  void aPersonsSlateIsASlateHoweverManyStandInARow() {
    for (int i = 1; i <= 4; i++) {
      slate(A, i, i, "001");
    }
    slates.put(
        id(3), new ShotSlate(new SlateSays.OfSetup("001"), true, false, ShotSlate.Ruling.OPEN));
    assertThat(setups()).containsExactly("slate", "slate", "slate", "slate");
  }

  @Test
  void theWrongCardThenTheRightOneMeansTheRightOne() {
    slate(A, 1, 0, "002");
    slate(A, 2, 1, "001");
    taken(A, 3, 2);
    assertThat(setups()).containsExactly("slate", "slate", "001");
  }

  @Test
  void framesBehindAnUnknownCodeOrASlateOfAnotherJobAreUnassignedAndSayWhy() {
    slate(A, 1, 0, "001");
    slate(A, 2, 1, new SlateSays.Unlisted("099"));
    taken(A, 3, 2);
    slate(A, 4, 3, new SlateSays.OfAnotherJob("001"));
    taken(A, 5, 4);
    // What was on set by the clock does not count for them.
    spans.add(new OnSetSpan("007", Optional.empty(), at(0), Optional.empty()));
    assertThat(setups()).containsExactly("slate", "slate", "-", "slate", "-");
    assertThat(tally().unassigned().stream().map(Unassigned::why))
        .containsExactly(
            "slate IMG_0002 says 099, which is not in the list",
            "it comes after IMG_0004, a slate of another job");
  }

  @Test
  void aSlateThatCountsForTheFramesBeforeReachesBackToTheLastSlate() {
    slate(A, 1, 0, "001");
    taken(A, 2, 1);
    slate(A, 3, 2, "002");
    taken(A, 4, 3);
    taken(A, 5, 4);
    slates.put(
        slate(A, 6, 5, "003").id(),
        new ShotSlate(new SlateSays.OfSetup("003"), false, true, ShotSlate.Ruling.OPEN));
    taken(A, 7, 6);
    assertThat(setups()).containsExactly("slate", "001", "slate", "003", "003", "slate", "003");
  }

  @Test
  void whatAPersonOrTheNameSaysCountsBeforeASlate() {
    slate(A, 1, 0, "001");
    var moved = taken(A, 2, 1);
    var byName = taken(A, 3, 2);
    moves.add(new FrameMove(moved.id(), "005", Optional.empty(), at(100)));
    named =
        frame ->
            frame.equals(byName)
                ? Optional.of(new Place("006", Optional.empty()))
                : Optional.empty();
    assertThat(setups()).containsExactly("slate", "005", "006");
  }

  @Test
  void aSlateStaysASlateWhateverSetupItIsMovedTo() {
    var slate = slate(A, 1, 0, "001");
    moves.add(new FrameMove(slate.id(), "005", Optional.empty(), at(100)));
    taken(A, 2, 1);
    assertThat(setups()).containsExactly("slate", "001");
  }

  @Test
  void beforeABodysFirstSlateTheClockCounts() {
    spans.add(new OnSetSpan("007", Optional.empty(), at(0), Optional.empty()));
    taken(A, 1, 1);
    slate(A, 2, 2, "001");
    taken(A, 3, 3);
    assertThat(setups()).containsExactly("007", "slate", "001");
    assertThat(how(0)).isEqualTo("it was on set when the frame was taken");
  }

  // ---- The order of one body's frames

  @Test
  void numbersGoRoundWithinOneSecond() {
    slate(A, 9998, 0, "001");
    taken(A, 1, 0);
    taken(A, 9999, 0);
    slate(A, 2, 0, "002");
    taken(A, 3, 0);
    assertThat(setups()).containsExactly("slate", "001", "001", "slate", "002");
  }

  @Test
  void aClockThatIsSetBackChangesNothingAndIsTold() {
    slate(A, 101, 0, "001");
    taken(A, 102, 100);
    slate(A, 103, -3500, "002");
    taken(A, 104, -3400);
    assertThat(setups()).containsExactly("slate", "001", "slate", "002");
    assertThat(remarks())
        .containsExactly(
            "the clock of Studio Body A was set back; its frames stand in the order of their"
                + " numbers");
  }

  @Test
  void numbersThatBeginAnewLeaveTheOrderToTheTimesAndAreTold() {
    slate(A, 30, 0, "001");
    taken(A, 31, 1);
    slate(A, 1, 500, "002");
    taken(A, 2, 501);
    assertThat(setups()).containsExactly("slate", "001", "slate", "002");
    assertThat(remarks())
        .containsExactly(
            "the numbers of Studio Body A began anew; its frames stand in the order of their"
                + " times");
  }

  @Test
  void aNumberThatComesAgainBeginsAnEpoch() {
    slate(A, 9000, 0, "001");
    taken(A, 9001, 1);
    slate(A, 9000, 5000, "002");
    taken(A, 9001, 5001);
    assertThat(setups()).containsExactly("slate", "001", "slate", "002");
    assertThat(remarks()).isEmpty();
  }

  @Test
  void chainsOfNumbersThatLieFarApartStandInTheOrderOfTheirTimes() {
    slate(A, 5000, 0, "001");
    taken(A, 5001, 1);
    slate(A, 200, 100, "002");
    taken(A, 201, 101);
    taken(A, 250, 102);
    assertThat(setups()).containsExactly("slate", "001", "slate", "002", "002");
  }

  @Test
  void aFrameThatWasRenamedKeepsTheNumberThatItCameWith() {
    slate(A, 10, 0, "001");
    var frame = taken(A, 11, 0);
    slate(A, 12, 0, "002");
    frames.set(1, called(frame, "ZZZ_final"));
    names.put(frame.id(), "IMG_0011");
    assertThat(setups()).containsExactly("slate", "001", "slate");
  }

  @Test
  void aFrameWithoutANumberComesBeforeTheFirstWithALaterTime() {
    slate(A, 10, 0, "001");
    frames.add(called(frame(A, 11, 5), "cover shot"));
    slate(A, 12, 10, "002");
    frames.add(called(frame(A, 13, 15), "cover shot two"));
    assertThat(setups()).containsExactly("slate", "001", "slate", "002");
  }

  @Test
  void namesAreInNaturalOrderWhereTimesAreTheSameAndNothingIsNumbered() {
    var slate = called(frame(A, 1, 0), "take 2");
    frames.add(called(frame(A, 2, 0), "take 1"));
    frames.add(slate);
    frames.add(called(frame(A, 3, 0), "take 10"));
    slates.put(slate.id(), ShotSlate.read(new SlateSays.OfSetup("001")));
    assertThat(setups()).containsExactly("-", "slate", "001");
  }

  @Test
  void bodiesWithoutASerialNumberAreToldApartByFolderAndThatIsSaid() {
    slate(NAMELESS, 1, 0, "001");
    taken(NAMELESS, 2, 1);
    var other = frame(NAMELESS, 3, 2);
    frames.add(
        new Frame(
            other.id(), Path.of("/frames/other"), "IMG_0003", List.of(), other.capture(), true));
    assertThat(setups()).containsExactly("slate", "001", "-");
    assertThat(remarks())
        .containsExactly(
            "the frames of Studio Body C name no serial number; those of one folder are taken to be"
                + " of one body");
  }

  @Test
  void numbersAllTheWayRoundBeginWithTheEarliestFrame() {
    for (int i = 0; i < 400; i++) {
      int number = (5000 + i * 25 - 1) % 9999 + 1;
      if (i == 0 || i == 200) {
        slate(A, number, i, i == 0 ? "001" : "002");
      } else {
        taken(A, number, i);
      }
    }
    var expected = new ArrayList<String>();
    for (int i = 0; i < 400; i++) {
      expected.add(i == 0 || i == 200 ? "slate" : i < 200 ? "001" : "002");
    }
    assertThat(setups()).isEqualTo(expected);
  }

  // ---- Slates and people, with a cable

  @Test
  void whereNothingWasOnSetASlateHoldsAtOnce() {
    tetheredSlate(A, 1, 0, "001");
    tethered(A, 2, 10);
    assertThat(setups()).containsExactly("slate", "001");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  @Test
  void whatAPersonPutOnSetHoldsAndTheSlateIsTold() {
    onSet("013", 0);
    tetheredSlate(A, 1, 10, "014");
    tethered(A, 2, 20);
    tethered(A, 3, 30);
    assertThat(setups()).containsExactly("slate", "013", "013");
    assertThat(tally().slates().doubts())
        .containsExactly(
            new SlateDoubt(frames.getFirst(), new SlateSays.OfSetup("014"), "013", 2, true));
    assertThat(how(1))
        .isEqualTo("it was on set when the frame arrived; in doubt: slate IMG_0001 says 014");
  }

  @Test
  void aContradictionIsToldBeforeTheNextFrameComes() {
    onSet("013", 0);
    tetheredSlate(A, 1, 10, "014");
    assertThat(tally().slates().doubts()).hasSize(1);
    // The right card at once: nothing was in doubt.
    tetheredSlate(A, 2, 12, "013");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  @Test
  void whatAPersonPutsOnSetAfterASlateHoldsWithoutDoubt() {
    tetheredSlate(A, 1, 0, "014");
    tethered(A, 2, 10);
    onSet("015", 20);
    tethered(A, 3, 30);
    assertThat(setups()).containsExactly("slate", "014", "015");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  @Test
  void aSetupThatIsTickedShotMakesRoomForASlate() {
    spans.add(
        new OnSetSpan(
            "013", Optional.of("F"), at(0), Optional.of(at(3700)), Optional.of(at(100)), false));
    tethered(A, 1, 110);
    tetheredSlate(A, 2, 120, "014");
    tethered(A, 3, 130);
    assertThat(setups()).containsExactly("013", "slate", "014");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  @Test
  void whatASlatePutOnSetMakesRoomForTheNextSlate() {
    spans.add(
        new OnSetSpan("013", Optional.empty(), at(0), Optional.empty(), Optional.empty(), true));
    tetheredSlate(A, 1, 0, "013");
    tethered(A, 2, 10);
    tetheredSlate(A, 3, 20, "014");
    tethered(A, 4, 30);
    // Another body without slates of its own goes by what is on set, whoever put it there.
    tethered(B, 7, 31);
    assertThat(setups()).containsExactly("slate", "013", "slate", "014", "013");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  @Test
  void whoFollowsASlateHasItsFramesInItsSetup() {
    onSet("013", 0);
    tetheredSlate(A, 1, 10, "014");
    tethered(A, 2, 20);
    rule(ShotSlate.Ruling.FOLLOW);
    assertThat(setups()).containsExactly("slate", "014");
    assertThat(tally().slates().doubts()).isEmpty();
    // What comes on set later counts all the same.
    spans.set(0, new OnSetSpan("013", Optional.empty(), at(0), Optional.of(at(50))));
    onSet("015", 50);
    tethered(A, 3, 60);
    assertThat(setups()).containsExactly("slate", "014", "015");
  }

  @Test
  void whoStaysWithWhatIsOnSetHearsNoMoreOfTheSlate() {
    onSet("013", 0);
    tetheredSlate(A, 1, 10, "014");
    tethered(A, 2, 20);
    rule(ShotSlate.Ruling.STAY);
    assertThat(setups()).containsExactly("slate", "013");
    assertThat(tally().slates().doubts()).isEmpty();
    assertThat(how(1)).isEqualTo("it was on set when the frame arrived");
  }

  @Test
  void aSlateThatAgreesLeavesTheViewAsItIs() {
    spans.add(new OnSetSpan("013", Optional.of("B"), at(0), Optional.empty()));
    tetheredSlate(A, 1, 10, "013");
    var frame = tethered(A, 2, 20);
    assertThat(tally().places()).containsEntry(frame.id(), new Place("013", Optional.of("B")));
  }

  @Test
  void framesFromACardGoByTheirSlatesWhateverWasOnSet() {
    onSet("013", 0);
    slate(A, 1, 10, "014");
    taken(A, 2, 20);
    assertThat(setups()).containsExactly("slate", "014");
    assertThat(tally().slates().doubts()).isEmpty();
  }

  // ---- The scene

  private void rule(ShotSlate.Ruling ruling) {
    slates.put(id(0), new ShotSlate(new SlateSays.OfSetup("014"), false, false, ruling));
  }

  private FrameId id(int place) {
    return frames.get(place).id();
  }

  private void onSet(String setup, long from) {
    spans.add(new OnSetSpan(setup, Optional.empty(), at(from), Optional.empty()));
  }

  private Frame taken(Camera camera, int number, long second) {
    var frame = frame(camera, number, second);
    frames.add(frame);
    return frame;
  }

  private Frame slate(Camera camera, int number, long second, String setup) {
    return slate(camera, number, second, new SlateSays.OfSetup(setup));
  }

  private Frame slate(Camera camera, int number, long second, SlateSays says) {
    var frame = taken(camera, number, second);
    slates.put(frame.id(), ShotSlate.read(says));
    return frame;
  }

  private Frame tethered(Camera camera, int number, long second) {
    var frame = taken(camera, number, second);
    arrivals.put(frame.id(), at(second + 1));
    return frame;
  }

  private void tetheredSlate(Camera camera, int number, long second, String setup) {
    var frame = slate(camera, number, second, setup);
    arrivals.put(frame.id(), at(second + 1));
  }

  private static Instant at(long second) {
    return NOON.plusSeconds(second).toInstant(ZoneOffset.UTC);
  }

  private static Frame frame(Camera camera, int number, long second) {
    var stem = "IMG_%04d".formatted(number);
    var capture =
        new Capture(
            Optional.of(NOON.plusSeconds(second)),
            Optional.empty(),
            Optional.of(camera),
            OptionalInt.empty());
    var id = new FrameId(camera.model() + " " + stem + " " + second);
    return new Frame(id, Path.of("/frames"), stem, List.of(), capture, true);
  }

  private static Frame called(Frame frame, String stem) {
    return new Frame(frame.id(), frame.folder(), stem, frame.files(), frame.capture(), true);
  }

  private Attribution attribution() {
    return Attribution.of(
        frames,
        arrivals,
        spans,
        moves,
        named,
        _ -> Optional.empty(),
        ZoneOffset.UTC,
        new ShotSlates(slates, names));
  }

  private Tally tally() {
    return attribution().tally(PlausibleTimes.ANY);
  }

  private List<String> setups() {
    var tally = tally();
    return frames.stream()
        .map(
            frame ->
                tally.slates().of(frame).isPresent()
                    ? "slate"
                    : tally.place(frame).map(Place::setup).orElse("-"))
        .toList();
  }

  private String how(int place) {
    return tally().placed().get(id(place)).words();
  }

  private List<String> remarks() {
    return tally().slates().remarks().stream().map(Text::english).toList();
  }
}
