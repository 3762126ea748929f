package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.SequencedMap;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import org.framewright.base.Text;
import org.framewright.frames.FrameId;
import org.framewright.frames.slate.JobKey;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.Test;

/** The fold as it grows, compared with one that is made all at once. */
@Tag("slow")
@org.junit.jupiter.api.Tag("slow")
class FoldingTest {
  private static final List<String> CODES = List.of("1", "01", "2", "A-3", "a-03", "9");
  private static final List<SetupState> STATES = List.of(SetupState.values());
  private static final long BEGIN = 1_764_000_000_000L;

  private static Entry entry(long millis, Event event) {
    var stamp = new Stamp(BEGIN + millis, 0, "s" + millis % 3);
    return new Entry(millis + 1, stamp, stamp.instant(), event);
  }

  private static Entry tick(long millis, String setup, SetupState state) {
    return entry(millis, new Event.Marked(setup, state, MarkDetails.by("Ana")));
  }

  private static List<Entry> entries(Random random, int count) {
    var entries = new ArrayList<Entry>();
    for (int i = 0; i < count; i++) {
      entries.add(entry(i * (1 + random.nextInt(2) * 1_000_000L) + i, event(random, entries)));
    }
    entries.sort(Comparator.comparing(Entry::stamp));
    return entries;
  }

  private static Event event(Random random, List<Entry> before) {
    var setup = CODES.get(random.nextInt(CODES.size()));
    var frames =
        List.of(new FrameId("f" + random.nextInt(4)), new FrameId("f" + random.nextInt(4)));
    return switch (random.nextInt(21)) {
      case 0, 1, 2, 3 -> new Event.Marked(setup, SetupState.ON_SET, MarkDetails.NONE);
      case 4, 5, 6, 7 ->
          new Event.Marked(
              setup,
              STATES.get(random.nextInt(STATES.size())),
              MarkDetails.by("Ana").andView(random.nextBoolean() ? "F" : "B"));
      case 8 ->
          new Event.ListChanged(
              List.of(
                  new Setup(
                      setup,
                      "T" + random.nextInt(9),
                      List.of(new View("F")),
                      OptionalInt.empty(),
                      new LinkedHashMap<>())),
              List.of(CODES.get(random.nextInt(CODES.size()))),
              random.nextBoolean() ? CODES : CODES.reversed());
      case 9 -> new Event.Arrived(frames);
      case 10 -> new Event.Moved(frames, setup, Optional.of("F"), "Ana");
      case 11 ->
          random.nextBoolean()
              ? new Event.Selected(frames, random.nextBoolean(), "Ana")
              : new Event.Rated(frames, random.nextInt(6), "Ana");
      case 12 ->
          switch (random.nextInt(3)) {
            case 0 -> new Event.Unknown("w");
            case 1 -> new Event.Began(values(random));
            default -> new Event.SlatesKeyed(key(random));
          };
      case 13 -> compared(random.nextInt(100));
      case 14 ->
          new Event.LookedAt(
              List.of(
                  new FrameLook(
                      frames.getFirst(),
                      "IMG_000" + random.nextInt(9),
                      random.nextBoolean() ? Optional.of("S1K7Q2014C75Y") : Optional.empty())));
      case 15 -> new Event.SlateSaid(frames, word(random, setup), "Ana");
      case 18 ->
          new Event.ItemTicked(
              "i" + random.nextInt(2), random.nextInt(3) > 0, "Ana" + random.nextInt(9));
      case 19 -> new Event.ReadyAsked(ready(random));
      case 17 -> new Event.Commented(setup, frames, "T" + random.nextInt(9), "Ana");
      case 16 ->
          new Event.Marked(
              setup, SetupState.ON_SET, MarkDetails.NONE, Optional.of(frames.getFirst()));
      default ->
          before.isEmpty()
              ? new Event.Unknown("x")
              : new Event.TakenBack(before.get(random.nextInt(before.size())).stamp());
    };
  }

  private static SlateWord word(Random random, String setup) {
    return switch (random.nextInt(6)) {
      case 0 -> new SlateWord.OfSetup(setup);
      case 1 -> new SlateWord.NoSlate();
      case 2 -> new SlateWord.Backwards();
      case 3 -> new SlateWord.Stay();
      case 4 -> new SlateWord.Follow(Optional.empty());
      default -> new SlateWord.Follow(Optional.of(setup));
    };
  }

  private static Event compared(int frames) {
    var found =
        new ComparedCopies(
            "e" + frames, "00", "Ana", List.of(), new FramesCompared(frames, 0), List.of());
    return new Event.Compared(found);
  }

  private static ReadyRecord ready(Random random) {
    return new ReadyRecord(
        random.nextBoolean(), "ready", List.of("told " + random.nextInt(9)), values(random));
  }

  private static JobKey key(Random random) {
    return new JobKey("K7Q" + random.nextInt(4));
  }

  private static SequencedMap<String, String> values(Random random) {
    var values = new LinkedHashMap<String, String>();
    values.put("f" + random.nextInt(3), "v" + random.nextInt(9));
    return values;
  }

  /** In whatever order and in whatever portions events come, they make what all of them make. */
  @Property(tries = 150)
  void makesTheSameInAnyOrderOfArrival(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int count) {
    arrive(seed, count);
  }

  @Property(tries = 3_000)
  @Tag("slow")
  void makesTheSameInVeryManyOrdersOfArrival(
      @ForAll long seed, @ForAll @IntRange(min = 1, max = 120) int count) {
    arrive(seed, count);
  }

  private static void arrive(long seed, int count) {
    var random = new Random(seed);
    var entries = entries(random, count);
    var arriving = new ArrayList<>(entries);
    // Mostly in order, as they do come; sometimes in none.
    if (random.nextInt(3) == 0) {
      Collections.shuffle(arriving, random);
    } else {
      for (int i = 0; i < count / 5; i++) {
        Collections.swap(arriving, random.nextInt(count), random.nextInt(count));
      }
    }
    var folding = new Folding();
    var handedOut = new ArrayList<Fold>();
    var shown = new ArrayList<StationsLawsTest.Shown>();
    for (int from = 0; from < count; ) {
      int to = Math.min(count, from + 1 + random.nextInt(4));
      folding.add(arriving.subList(from, to));
      var known = new ArrayList<>(arriving.subList(0, to));
      known.sort(Comparator.comparing(Entry::stamp));
      var fold = folding.fold();
      assertThat(StationsLawsTest.Shown.of(fold))
          .isEqualTo(StationsLawsTest.Shown.of(ReferenceFold.of(known)));
      handedOut.add(fold);
      shown.add(StationsLawsTest.Shown.of(ReferenceFold.of(known)));
      from = to;
    }
    for (int i = 0; i < shown.size(); i++) {
      assertThat(StationsLawsTest.Shown.of(handedOut.get(i)))
          .as("what was handed out stays")
          .isEqualTo(shown.get(i));
    }
    assertThat(StationsLawsTest.Shown.of(Fold.of(arriving)))
        .isEqualTo(StationsLawsTest.Shown.of(folding.fold()));
  }

  @Test
  void appliesWhatIsNewAndNoMore() {
    var folding = new Folding();
    for (int i = 0; i < 10_000; i++) {
      folding.add(List.of(tick(2L * i, "" + i % 7, SetupState.ON_SET)));
    }
    assertThat(folding.applied()).isEqualTo(10_000);
    folding.add(List.of(tick(2L * 9_990 - 1, "8", SetupState.SHOT)));
    assertThat(folding.applied()).as("ten that come after it, and itself").isEqualTo(10_011);
    folding.add(List.of(entry(30_000, new Event.TakenBack(tick(2L * 9_995, "", null).stamp()))));
    assertThat(folding.applied()).as("five, the taking back with them").isEqualTo(10_017);
    folding.add(List.of(tick(1, "8", SetupState.SHOT)));
    assertThat(folding.applied()).as("all anew, so far back it is").isEqualTo(20_020);
    folding.add(List.of(entry(30_001, new Event.TakenBack(new Stamp(5, 5, "nobody")))));
    assertThat(folding.applied()).as("of what nobody knows, nothing").isEqualTo(20_021);
  }

  @Test
  void undoesNoEventOfVeryManyStepsStepByStep() {
    var folding = new Folding();
    folding.add(List.of(tick(0, "1", SetupState.SHOT), tick(10, "1", SetupState.PICKUP)));
    var many = new ArrayList<FrameId>();
    for (int i = 0; i < 100_001; i++) {
      many.add(new FrameId("f" + i));
    }
    folding.add(List.of(entry(20, new Event.Selected(many, true, "Ana"))));
    long before = folding.applied();
    folding.add(List.of(tick(19, "1", SetupState.SHOT)));
    assertThat(folding.applied() - before).as("all four").isEqualTo(4);
    assertThat(folding.fold().state().selects()).hasSize(100_001);
    assertThat(folding.fold().state().of("1").state()).isEqualTo(SetupState.SHOT);
  }

  @Test
  void findsTheLastEventOfAStationThatCounts() {
    var folding = new Folding();
    var first = tick(0, "1", SetupState.SHOT);
    var last = tick(3, "2", SetupState.SHOT);
    folding.add(List.of(first, last, tick(1, "3", SetupState.SHOT)));
    assertThat(folding.last("s0", event -> event instanceof Event.Marked)).contains(last);
    assertThat(folding.last("s0", event -> event instanceof Event.Moved)).isEmpty();
    assertThat(folding.last("s2", event -> true)).isEmpty();
    folding.add(List.of(entry(6, new Event.TakenBack(last.stamp()))));
    assertThat(folding.last("s0", event -> event instanceof Event.Marked)).contains(first);
    assertThat(folding.isWorkedOn("1")).isTrue();
    assertThat(folding.isWorkedOn("2")).isFalse();
  }

  @Test
  void sharesTheListAndWhatDidNotChangeWithTheFoldBefore() {
    var folding = new Folding();
    folding.add(
        List.of(
            entry(
                0, new Event.ListChanged(List.of(new Setup("1", "Coat")), List.of(), List.of("1"))),
            entry(1, new Event.Arrived(List.of(new FrameId("a")))),
            entry(2, new Event.Selected(List.of(new FrameId("a")), true, "Ana"))));
    var before = folding.fold();
    folding.add(List.of(tick(3, "1", SetupState.PICKUP)));
    var after = folding.fold();
    assertThat(after.list()).isSameAs(before.list());
    assertThat(after.state().arrivals()).isSameAs(before.state().arrivals());
    assertThat(after.state().selects()).isSameAs(before.state().selects());
    assertThat(after.state().moves()).isSameAs(before.state().moves());
    folding.add(List.of(entry(4, new Event.Arrived(List.of(new FrameId("b"))))));
    assertThat(folding.fold().state().setups()).isSameAs(after.state().setups());
    assertThat(folding.fold().state().pickups()).isSameAs(after.state().pickups());
  }

  @Test
  void namesTheFirstOfVeryManyRemarks() {
    var folding = new Folding();
    for (int i = 0; i < 30; i++) {
      folding.add(
          List.of(
              tick(2L * i, "S" + i, SetupState.SHOT),
              entry(2L * i + 1, new Event.Unknown("t" + i))));
    }
    assertThat(folding.fold().remarks())
        .extracting(Text::english)
        .hasSize(42)
        .anyMatch(line -> line.startsWith("Setup S0 was worked on and is in no list"))
        .contains("The same holds for 10 more setups.", "The same holds for 10 more kinds.");
    var one = new Folding();
    one.add(List.of(entry(0, new Event.Unknown("\u001b[2J" + "x".repeat(100_000)))));
    assertThat(one.fold().remarks())
        .singleElement()
        .asString()
        .startsWith("1 event of the kind \"\\u{1B}[2Jxxx")
        .hasSizeLessThan(300);
  }
}
