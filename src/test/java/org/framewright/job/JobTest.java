package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.CRC32C;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.Capture;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.OnSetSpan;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.renaming.RenameRequest;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JobTest {
  private static final Station DESK = new Station("desk");
  private static final Station SET = new Station("set");
  private static final Map<String, String> VALUES =
      Map.of("day", "2026-11-23", "client", "Kvø", "title", "Winter & wool");

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;
  private final SampleCamera camera =
      new SampleCamera(
          SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 9998);

  private static Convention convention(String yaml) {
    return switch (Convention.parse(yaml, "test.yaml")) {
      case Convention.Parsed.Sound sound -> sound.convention();
      case Convention.Parsed.Faulty faulty -> throw new AssertionError(faulty.findings());
    };
  }

  static Setup setup(String code, String title, String... views) {
    return new Setup(
        code,
        title,
        List.of(views).stream().map(View::new).toList(),
        OptionalInt.empty(),
        new LinkedHashMap<>());
  }

  private static ShotList list(Setup... setups) {
    return new ShotList(List.of(setups));
  }

  @BeforeEach
  void aJobWithThreeSetups() throws Exception {
    var fashion = Files.readString(Path.of("templates/fashion-days.yaml"));
    job = ((Started.Opened) Job.start(convention(fashion), parent, VALUES, clock, DESK)).job();
    job.importList(
        list(
            setup("1", "Coat", "F", "B"),
            setup("002", "Hat", "F"),
            setup("3", "Scarf", "F", "front", "D")));
  }

  @Test
  void aJobGetsTheKeyOfItsSlatesWithTheFirstOnesAndKeepsIt() throws Exception {
    assertThat(job.slateKeys()).isEmpty();
    var key = job.slateKey();
    assertThat(job.slateKey()).isEqualTo(key);
    assertThat(job.slateKeys()).containsExactly(key);
    assertThat(reopened(SET).slateKeys()).containsExactly(key);
    assertThat(reopened(SET).slateKey()).isEqualTo(key);
  }

  @Test
  void copiesStandInTheOrderInWhichTheyWereMadeAlsoWhereAClockIsSlow() throws Exception {
    var slow = new TestClock("2026-11-23T08:00:00Z");
    var set = Job.open(job.folder(), slow, SET);
    at("09:10:00");
    var first = new CopyRecord("/media/A", 1, 5, List.of());
    var second = new CopyRecord("/media/B", 1, 5, List.of());
    job.record(first);
    set.record(second);
    assertThat(reopened(DESK).copies()).containsExactly(first, second);
  }

  private Job reopened(Station station) throws Exception {
    return Job.open(job.folder(), clock, station);
  }

  private void at(String time) {
    clock.set("2026-11-23T" + time + "Z");
  }

  private JobState mark(String time, String setup, SetupState state) throws Exception {
    at(time);
    return job.mark(setup, state, MarkDetails.NONE);
  }

  private static Instant instant(String time) {
    return Instant.parse("2026-11-23T" + time + "Z");
  }

  /** Takes a frame and lets it arrive half a second later. */
  private Frame frame(String time, String setup, String view) throws Exception {
    shoot(time, setup, view);
    clock.set("2026-11-23T" + time + "Z");
    clock.pass(Duration.ofMillis(500));
    var scan = job.scan();
    var before = Set.copyOf(job.state().arrivals().keySet());
    job.recordArrivals(scan);
    return scan.frames().stream()
        .filter(frame -> !before.contains(frame.id()))
        .findFirst()
        .orElseThrow();
  }

  private void shoot(String time, String setup, String view) throws Exception {
    var taken = camera.take(Exposure.of(instant(time), setup, view));
    taken.writeTo(job.framesFolder());
  }

  // Starting and opening

  @Test
  void isAFolderThatHoldsEverything() throws Exception {
    assertThat(job.folder()).isEqualTo(parent.resolve("2026-11-23_KVO_winter-and-wool"));
    assertThat(job.framesFolder()).isEqualTo(job.folder().resolve("01_frames")).isDirectory();
    assertThat(job.folder("selects")).isDirectory();
    assertThat(job.folder().resolve(".framewright/convention.yaml"))
        .hasSameTextualContentAs(Path.of("templates/fashion-days.yaml"));

    job.mark("1", SetupState.ON_SET, MarkDetails.NONE.andView("b"));
    var moved = Files.move(job.folder(), parent.resolve("elsewhere"));
    var found = Job.open(moved, clock, SET);
    assertThat(found.state()).isEqualTo(job.state());
    assertThat(found.shotList()).isEqualTo(job.shotList());
    assertThat(found.values()).isEqualTo(job.values()).containsAllEntriesOf(VALUES);
    assertThat(found.warnings()).isEmpty();
  }

  @Test
  void refusesToStartOverAnExistingFolder() throws Exception {
    var convention = job.convention();
    var before = Files.readString(job.folder().resolve(".framewright/log/desk.jsonl"));
    assertThatThrownBy(() -> Job.start(convention, parent, VALUES, clock, DESK))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("exists already");
    assertThat(job.folder().resolve(".framewright/log/desk.jsonl")).hasContent(before);
  }

  @Test
  void refusesEveryBadValueAtOnceAndWritesNothing() throws Exception {
    var before = names(parent);
    var started =
        Job.start(
            job.convention(),
            parent,
            Map.of("day", "tomorrow", "klient", "X", "title", "Winter"),
            clock,
            DESK);
    assertThat(started).isInstanceOf(Started.Refused.class);
    assertThat(((Started.Refused) started).findings())
        .extracting(Finding::message)
        .hasSizeGreaterThanOrEqualTo(3)
        .anyMatch(message -> message.contains("klient"))
        .anyMatch(message -> message.contains("tomorrow"));
    assertThat(names(parent)).isEqualTo(before);
  }

  private static List<String> names(Path folder) throws Exception {
    try (var files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void opensOnlyJobFolders() {
    assertThatThrownBy(() -> Job.open(parent, clock, DESK))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no job folder");
    assertThatThrownBy(() -> Job.open(parent.resolve("nowhere"), clock, DESK))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no such folder");
  }

  @Test
  void readsTheValuesFromTheNameWhereTheLogIsGone() throws Exception {
    Files.delete(job.folder().resolve(".framewright/log/desk.jsonl"));
    var found = reopened(SET);
    assertThat(found.values())
        .containsEntry("day", "2026-11-23")
        .containsEntry("client", "KVO")
        .containsEntry("title", "winter-and-wool");
    assertThat(found.warnings()).singleElement().asString().contains("read from the folder's name");
  }

  // Ticks

  @Test
  void putsOneSetupOnSetAtATime() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var state = mark("09:20:00", "2", SetupState.ON_SET);
    assertThat(state.of("1").state()).isEqualTo(SetupState.TO_SHOOT);
    assertThat(state.of("002").state()).isEqualTo(SetupState.ON_SET);
    assertThat(state.onSet()).contains(new OnSet("002", Optional.empty(), instant("09:20:00")));
    assertThat(state.spans())
        .containsExactly(
            new OnSetSpan(
                "1", Optional.empty(), instant("09:10:00"), Optional.of(instant("09:20:00"))),
            new OnSetSpan("002", Optional.empty(), instant("09:20:00"), Optional.empty()));
  }

  @Test
  void keepsTheStateThatASetupHadWhenItLeavesTheSet() throws Exception {
    mark("09:10:00", "1", SetupState.PICKUP);
    mark("09:20:00", "1", SetupState.ON_SET);
    var state = mark("09:30:00", "2", SetupState.ON_SET);
    assertThat(state.of("1").state()).isEqualTo(SetupState.PICKUP);
    assertThat(state.pickups()).containsExactly("1");
  }

  @Test
  void letsAShotSetupLingerUntilTheNextComesOnSet() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    mark("09:20:00", "1", SetupState.SHOT);
    var state = mark("09:25:00", "2", SetupState.ON_SET);
    assertThat(state.spans().getFirst().until()).contains(instant("09:25:00"));
    mark("09:40:00", "2", SetupState.SHOT);
    state = mark("12:00:00", "3", SetupState.ON_SET);
    assertThat(state.spans().get(1).until()).as("an hour at most").contains(instant("10:40:00"));
    mark("12:10:00", "3", SetupState.SHOT);
    state = mark("12:11:00", "3", SetupState.DROPPED);
    assertThat(state.spans().getLast().until()).contains(instant("12:11:00"));
    assertThat(state.onSet()).isEmpty();
  }

  @Test
  void keepsASignOffWithItsNameAndTime() throws Exception {
    at("10:00:00");
    assertThatThrownBy(() -> job.mark("1", SetupState.SIGNED_OFF, MarkDetails.by(" ")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("needs the name");
    var status = job.mark("1", SetupState.SIGNED_OFF, MarkDetails.by("Ana")).of("1");
    assertThat(status.signedOffBy()).contains("Ana");
    assertThat(status.signedOffAt()).contains(instant("10:00:00"));
    assertThat(mark("11:00:00", "1", SetupState.ON_SET).of("1").signedOffBy()).contains("Ana");
    assertThat(mark("11:05:00", "1", SetupState.SHOT).of("1").signedOffBy()).isEmpty();
  }

  @Test
  void keepsTheReasonOfAMissingGarment() throws Exception {
    var state = job.mark("2", SetupState.PICKUP, MarkDetails.NONE.andReason("the hat is missing"));
    assertThat(state.of("002").reason()).contains("the hat is missing");
    assertThat(state.pickups()).containsExactly("002");
  }

  @Test
  void refusesUnknownSetupsAndViewsAndChangesNothing() throws Exception {
    var before = job.state();
    assertThatThrownBy(() -> job.mark("7", SetupState.SHOT, MarkDetails.NONE))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no setup \"7\"");
    assertThatThrownBy(() -> job.mark("1", SetupState.ON_SET, MarkDetails.NONE.andView("Q")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no view \"Q\"");
    assertThat(job.state()).isEqualTo(before);
    assertThat(job.mark("1", SetupState.ON_SET, MarkDetails.NONE.andView("Front")).onSet())
        .hasValueSatisfying(now -> assertThat(now.view()).contains("F"));
  }

  @Test
  void takesTheTicksOfThisStationBackOneByOne() throws Exception {
    var fresh = job.state();
    var first = mark("09:10:00", "1", SetupState.ON_SET);
    mark("09:20:00", "1", SetupState.SHOT);
    var other = reopened(SET);
    other.mark("3", SetupState.DROPPED, MarkDetails.NONE);

    assertThat(job.lastTick()).hasValueSatisfying(tick -> assertThat(tick.setup()).isEqualTo("1"));
    var state = job.takeBack();
    assertThat(state.of("1")).isEqualTo(first.of("1"));
    assertThat(state.of("3").state()).isEqualTo(SetupState.DROPPED);
    state = job.takeBack();
    assertThat(state.of("1")).isEqualTo(fresh.of("1"));
    assertThat(state.spans()).isEmpty();
    assertThatThrownBy(() -> job.takeBack())
        .isInstanceOf(JobException.class)
        .hasMessageContaining("made no tick");
    other.takeBack();
    job.refresh();
    assertThat(job.state()).isEqualTo(fresh);
  }

  @Test
  void losesNothingWhenTwoStationsTick() throws Exception {
    var other = reopened(SET);
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    other.mark("2", SetupState.PICKUP, MarkDetails.NONE.andReason("stain"));
    job.mark("3", SetupState.DROPPED, MarkDetails.NONE);
    assertThat(other.refresh()).isTrue();
    assertThat(other.refresh()).isFalse();
    job.refresh();
    assertThat(other.state()).isEqualTo(job.state()).isEqualTo(reopened(DESK).state());
    assertThat(job.state().setups().values())
        .extracting(SetupStatus::state)
        .containsExactly(SetupState.SHOT, SetupState.PICKUP, SetupState.DROPPED);
  }

  @Test
  void goesByWhatAStationHadSeenWhateverItsClockSays() throws Exception {
    var fast = new TestClock("2026-11-23T10:00:00Z");
    Job.open(job.folder(), fast, SET).mark("1", SetupState.SHOT, MarkDetails.NONE);
    job.refresh();
    assertThat(job.warnings())
        .singleElement()
        .asString()
        .contains("set is 60 min ahead of this computer's");
    assertThat(job.now()).isEqualTo("2026-11-23T10:00:00Z");
    job.mark("1", SetupState.PICKUP, MarkDetails.NONE);
    assertThat(reopened(SET).state().of("1").state()).isEqualTo(SetupState.PICKUP);
  }

  @Test
  void survivesATornLineAndGoesOn() throws Exception {
    mark("09:10:00", "1", SetupState.SHOT);
    var log = job.folder().resolve(".framewright/log/desk.jsonl");
    Files.writeString(log, "{\"station\":\"desk\",\"numb", StandardOpenOption.APPEND);
    var found = reopened(DESK);
    assertThat(found.state()).isEqualTo(job.state());
    assertThat(found.warnings()).singleElement().asString().contains("last line is torn");
    found.mark("2", SetupState.SHOT, MarkDetails.NONE);
    assertThat(reopened(SET).state().of("002").state()).isEqualTo(SetupState.SHOT);
  }

  @Test
  void keepsAndSaysWhatANewerVersionWrote() throws Exception {
    mark("09:10:00", "1", SetupState.SHOT);
    var log = job.folder().resolve(".framewright/log/desk.jsonl");
    var line = Files.readAllLines(log).getLast();
    var body =
        line.substring(0, line.lastIndexOf(",\"crc32c\""))
            .replace("\"marked\"", "\"weather\"")
            .replace("desk", "newer");
    var crc = new CRC32C();
    crc.update(body.getBytes(StandardCharsets.UTF_8));
    var newer = body + ",\"crc32c\":\"%08x\"}\n".formatted(crc.getValue());
    Files.writeString(log.resolveSibling("newer.jsonl"), newer);
    var found = reopened(DESK);
    assertThat(found.state()).isEqualTo(job.state());
    assertThat(found.warnings())
        .anyMatch(warning -> warning.contains("1 event of the kind \"weather\""));
    found.mark("2", SetupState.SHOT, MarkDetails.NONE);
    assertThat(log.resolveSibling("newer.jsonl")).hasContent(newer);
  }

  // The list

  @Test
  void importsAChangedListAndKeepsDoneWork() throws Exception {
    mark("09:10:00", "1", SetupState.SHOT);
    mark("09:20:00", "3", SetupState.DROPPED);
    var noon = list(setup("4", "Gloves"), setup("001", "Long coat", "F", "B"));
    var preview = job.previewImport(noon);
    assertThat(job.shotList().codes()).containsExactly("1", "002", "3");

    var change = job.importList(noon);
    assertThat(change).isEqualTo(preview);
    assertThat(change.added()).extracting(Setup::code).containsExactly("4");
    assertThat(change.removed()).extracting(Setup::code).containsExactly("002");
    assertThat(change.kept()).extracting(Setup::code).containsExactly("3");
    assertThat(change.changed())
        .singleElement()
        .satisfies(
            changed ->
                assertThat(changed.descriptions())
                    .extracting(Text::english)
                    .containsExactly("code \"1\" -> \"001\"", "title \"Coat\" -> \"Long coat\""));
    assertThat(job.shotList().codes()).containsExactly("4", "001", "3");
    assertThat(job.state().of("001").state()).isEqualTo(SetupState.SHOT);
    assertThat(job.state().of("3").state()).isEqualTo(SetupState.DROPPED);
    assertThat(job.importList(job.shotList()).isEmpty()).isTrue();
    assertThat(reopened(SET).shotList()).isEqualTo(job.shotList());
  }

  @Test
  void importsOnlyTheLinesThatWereAccepted() throws Exception {
    var noon =
        list(
            setup("5", "Belt"), setup("1", "Long coat"), setup("4", "Gloves"), setup("3", "Shawl"));
    job.importList(noon, Set.of("4", "1"));
    assertThat(job.shotList().setups())
        .extracting(Setup::code, Setup::title)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("1", "Long coat"),
            org.assertj.core.groups.Tuple.tuple("002", "Hat"),
            org.assertj.core.groups.Tuple.tuple("4", "Gloves"),
            org.assertj.core.groups.Tuple.tuple("3", "Scarf"));
    job.importList(noon, Set.of("2"));
    assertThat(job.shotList().codes()).containsExactly("1", "4", "3");
  }

  @Test
  void keepsASetupThatAnotherStationTickedWhileItWasRemoved() throws Exception {
    var other = reopened(SET);
    job.importList(list(setup("1", "Coat", "F", "B")));
    // The other station has not looked since.
    var log = new FileEventLog(job.folder().resolve(".framewright/log"), SET, clock);
    log.append(new Event.Marked("3", SetupState.SHOT, MarkDetails.NONE));
    other.refresh();
    job.refresh();
    assertThat(job.shotList().codes()).contains("3");
    assertThat(job.warnings()).singleElement().asString().contains("Setup 3 is no longer");
    assertThat(other.state()).isEqualTo(job.state());
  }

  @Test
  void putsSetupsInAnotherOrder() throws Exception {
    job.reorder(List.of("3", "1"));
    assertThat(job.shotList().codes()).containsExactly("3", "1", "002");
    assertThat(reopened(SET).shotList().codes()).containsExactly("3", "1", "002");
    assertThatThrownBy(() -> job.reorder(List.of("9"))).isInstanceOf(JobException.class);
  }

  // Frames

  @Test
  void countsFramesForTheSetupThatIsOnSet() throws Exception {
    at("09:10:00");
    job.mark("1", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    frame("09:11:00", "1", "F");
    frame("09:12:00", "1", "F");
    mark("09:20:00", "2", SetupState.ON_SET);
    frame("09:21:00", "2", "F");
    var tally = job.tally();
    assertThat(tally.frames()).isEqualTo(3);
    assertThat(tally.files()).isEqualTo(6);
    assertThat(tally.bySetup().get("1").byView()).containsExactly(Map.entry("F", 2));
    assertThat(tally.bySetup().get("002").byView())
        .as("the only view wanted")
        .containsExactly(Map.entry("F", 1));
    assertThat(reopened(SET).tally()).isEqualTo(tally);
    assertThat(job.missing(job.shotList().setup("1").orElseThrow(), tally))
        .containsExactly("back: none of 1");
    assertThat(job.missing(job.shotList().setup("2").orElseThrow(), tally)).isEmpty();
  }

  @Test
  void saysASetupThatGotAFrameAfterItsSignOff() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    frame("09:11:00", "1", "F");
    at("09:20:00");
    job.mark("1", SetupState.SIGNED_OFF, MarkDetails.by("Ana"));
    assertThat(job.standing().state().of("1").changedSinceSignOff()).isFalse();
    frame("09:21:00", "1", "F");
    var standing = job.standing();
    assertThat(standing.state().of("1").changedSinceSignOff()).isTrue();
    assertThat(job.state().of("1").changedSinceSignOff())
        .as("counting changes no other answer")
        .isFalse();
    assertThat(reopened(SET).standing()).isEqualTo(standing);
    assertThat(standing.with(job.state())).isEqualTo(standing);
    at("09:30:00");
    job.mark("1", SetupState.SIGNED_OFF, MarkDetails.by("Ana"));
    assertThat(job.standing().state().of("1").changedSinceSignOff()).isFalse();
  }

  @Test
  void movesFramesAndTakesTheMoveBack() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var frame = frame("09:11:00", "1", "F");
    frame("09:12:00", "1", "F");
    job.moveFrames(List.of(frame.id()), "3", Optional.of("detail"), "Ana");
    assertThat(job.tally().bySetup().get("3").byView()).containsExactly(Map.entry("D", 1));
    job.takeBackMove();
    assertThat(job.tally().bySetup()).containsOnlyKeys("1");
    assertThat(Files.readString(job.folder().resolve(".framewright/log/desk.jsonl")))
        .contains("\"moved\"", "\"taken-back\"");
  }

  @Test
  void choosesSelects() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var one = frame("09:11:00", "1", "F");
    var two = frame("09:12:00", "1", "F");
    job.select(List.of(one.id(), two.id()), true, "Ana");
    job.select(List.of(two.id()), false, "Ana");
    assertThat(reopened(SET).state().selects()).containsExactly(one.id());
    assertThat(job.selects(job.scan())).extracting(Frame::id).containsExactly(one.id());
  }

  @Test
  void eachStepOnFramesIsUndoneByItselfWhateverCameAfter() throws Exception {
    var one = List.of(frame("09:11:00", "1", "F").id());
    var two = List.of(frame("09:12:00", "1", "F").id());
    job.select(one, true, "Ana");
    var both = job.select(Stream.of(one, two).flatMap(List::stream).toList(), true, "Ana");
    var rated = job.rate(one, 3, "Ana");
    job.rate(two, 5, "Ana");
    var moved = job.moveFrames(one, "3", Optional.empty(), "Ana");
    both.orElseThrow().run();
    rated.orElseThrow().run();
    moved.orElseThrow().run();
    var now = reopened(SET).state();
    assertThat(now.selects()).containsExactlyElementsOf(one);
    assertThat(now.ratings()).containsExactly(Map.entry(two.getFirst(), 5));
    assertThat(now.moves()).isEmpty();
    assertThat(job.select(List.of(), true, "Ana")).isEmpty();
    assertThat(job.rate(List.of(), 5, "Ana")).isEmpty();
    assertThatIllegalArgumentException().isThrownBy(() -> job.rate(one, 6, "Ana"));
    assertThatIllegalArgumentException().isThrownBy(() -> job.rate(one, -1, "Ana"));
  }

  /** XMP (ISO 16684-1): a rating is -1, rejected, to 5; 0 is not rated. */
  @Test
  void aRatingSaidHerePrevailsOverThatOfTheFile() throws Exception {
    var made = frame("09:11:00", "1", "F");
    var inItsFile = rated(made, OptionalInt.of(2));
    assertThat(job.state().rating(made)).isEmpty();
    assertThat(job.state().rating(inItsFile)).hasValue(2);
    assertThat(job.state().rating(rated(made, OptionalInt.of(0)))).isEmpty();
    assertThat(job.state().rating(rated(made, OptionalInt.of(-1)))).hasValue(-1);
    job.rate(List.of(made.id()), 4, "Ana");
    assertThat(job.state().rating(inItsFile)).hasValue(4);
    job.rate(List.of(made.id()), 0, "Ana");
    assertThat(job.state().rating(inItsFile)).isEmpty();
  }

  /** The raw of a frame may come after somebody rated and chose its JPEG. */
  @Test
  void aFrameKeepsItsMarksUnderEachIdentityThatItIsKnownBy() throws Exception {
    var jpeg = new FrameId("a".repeat(32));
    var raw = new FrameId("b".repeat(32));
    var alone = frame("09:11:00", "1", "F");
    var both =
        new Frame(
            raw,
            List.of(raw, jpeg),
            alone.folder(),
            alone.stem(),
            alone.files(),
            alone.capture(),
            true);
    job.rate(List.of(jpeg), 2, "Ana");
    job.select(List.of(jpeg), true, "Ana");
    assertThat(job.state().rating(both)).hasValue(2);
    assertThat(job.state().isSelect(both)).isTrue();
    job.rate(List.of(raw), 3, "Ana");
    assertThat(job.state().rating(both)).hasValue(3);
    job.select(both.knownAs(), false, "Ana");
    assertThat(job.state().isSelect(both)).isFalse();
  }

  private static Frame rated(Frame frame, OptionalInt rating) {
    var capture = frame.capture();
    return new Frame(
        frame.id(),
        frame.folder(),
        frame.stem(),
        frame.files(),
        new Capture(capture.time(), capture.offset(), capture.camera(), rating),
        true);
  }

  @Test
  void eachCommandAnswersWithTheStateThatItMade() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var frame = frame("09:11:00", "1", "F");
    var ids = List.of(frame.id());
    assertThat(job.moveFrames(ids, "3", Optional.empty(), "Ana")).isPresent();
    assertThat(job.state().moves()).hasSize(1);
    assertThat(job.takeBackMove().moves()).isEmpty();
    assertThat(job.moveFrames(List.of(), "3", Optional.empty(), "Ana")).isEmpty();
    assertThat(job.state().moves()).isEmpty();
    var change = job.importList(list(setup("7", "Veil")), Set.of("7"));
    assertThat(change.added()).extracting(Setup::code).containsExactly("7");
  }

  @Test
  void theLastTickIsNoMoveAndTheLastMoveIsNoTick() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var frame = frame("09:11:00", "1", "F");
    job.moveFrames(List.of(frame.id()), "3", Optional.empty(), "Ana");
    assertThat(job.lastTick().orElseThrow().setup()).isEqualTo("1");
    mark("09:12:00", "002", SetupState.PICKUP);
    job.takeBackMove();
    assertThat(job.tally().bySetup()).containsOnlyKeys("1");
    assertThat(job.state().of("002").state()).isEqualTo(SetupState.PICKUP);
    assertThat(job.lastTick().orElseThrow().setup()).isEqualTo("002");
  }

  @Test
  void saysWhatAnotherStationDidToTheListLast() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    assertThat(job.elsewhere()).isEmpty();
    var other = reopened(SET);
    at("09:11:00");
    other.mark("002", SetupState.SHOT, MarkDetails.by("Ana"));
    other.mark("3", SetupState.PICKUP, MarkDetails.NONE);
    other.select(List.of(new FrameId("x")), true, "Ana");
    assertThat(job.elsewhere()).isEmpty();
    assertThat(job.refresh()).isTrue();
    var elsewhere = job.elsewhere().orElseThrow();
    assertThat(elsewhere.station()).isEqualTo("set");
    assertThat(elsewhere.tick().orElseThrow().setup()).isEqualTo("3");
    mark("09:12:00", "1", SetupState.SHOT);
    assertThat(job.elsewhere()).contains(elsewhere);
    assertThat(job.refresh()).isFalse();
  }

  @Test
  void saysWhatPeopleCallTheStationOnceItDidSomething() throws Exception {
    var other = reopened(SET);
    other.callThisStation(" Cart 1 ");
    assertThat(job.refresh()).isFalse();
    at("09:11:00");
    other.mark(List.of("002", "3"), SetupState.SHOT, MarkDetails.NONE);
    job.refresh();
    assertThat(job.elsewhere().orElseThrow().called()).contains("Cart 1");
    var log = job.folder().resolve(".framewright/log/set.jsonl");
    assertThat(Files.readString(log)).containsOnlyOnce("\"named\"");
    other.takeBack();
    assertThat(job.refresh()).isTrue();
    assertThat(job.state().of("3").state()).isEqualTo(SetupState.TO_SHOOT);
    assertThat(job.elsewhere().orElseThrow().called()).contains("Cart 1");
    var again = reopened(SET);
    again.callThisStation("Cart 1");
    again.mark("3", SetupState.SHOT, MarkDetails.NONE);
    assertThat(Files.readString(log)).containsOnlyOnce("\"named\"");
    again.callThisStation("");
    again.mark("3", SetupState.PICKUP, MarkDetails.NONE);
    job.refresh();
    assertThat(job.elsewhere().orElseThrow().called()).isEmpty();
  }

  @Test
  void keepsASetupOfWhichThereAreFramesThoughItWasNeverTicked() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var frame = frame("09:11:00", "1", "F");
    job.moveFrames(List.of(frame.id()), "3", Optional.empty(), "Ana");
    var change = job.previewImport(list(setup("002", "Hat")));
    assertThat(change.kept()).extracting(Setup::code).contains("3");
  }

  @Test
  void aScanThatIsStoppedGivesNothingAndTheOrderIsThatOfTime() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var late = frame("09:12:00", "1", "F");
    shoot("09:11:00", "1", "F");
    var scan = job.scan(Progress.NONE).orElseThrow();
    assertThat(job.inOrder(scan)).hasSize(2).last().extracting(Frame::stem).isEqualTo(late.stem());
  }

  @Test
  void saysWhichSetupsThereAreWhereOneIsUnknown() {
    assertThatThrownBy(() -> job.mark("9", SetupState.SHOT, MarkDetails.NONE))
        .isInstanceOfSatisfying(
            JobException.class,
            refused -> assertThat(refused.remedy()).isEqualTo("Its setups go from 1 to 3."));
  }

  @Test
  void doesNotTakeFramesThatLayThereForArrivals() throws Exception {
    shoot("09:05:00", "1", "F");
    job.foundPresent(job.scan());
    mark("09:10:00", "1", SetupState.ON_SET);
    frame("09:11:00", "1", "F");
    assertThat(job.state().arrivals()).hasSize(1);
    assertThat(job.tally().unassigned()).hasSize(1);
  }

  // Names

  private List<String> targets(FrameNames names) {
    return names.requests().stream()
        .map(request -> request.to().getFileName().toString())
        .sorted()
        .toList();
  }

  private void rename() throws Exception {
    var renamer = Renamer.in(job.folder());
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
  }

  @Test
  void namesFramesInTheOrderInWhichTheyWereTaken() throws Exception {
    at("09:10:00");
    job.mark("1", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    frame("09:11:00", "1", "F"); // 9998
    frame("09:12:00", "1", "F"); // 9999
    frame("09:13:00", "1", "F"); // 0001: names of the camera run over
    var names = job.frameNames(job.scan());
    assertThat(names.leftOut()).isEmpty();
    var byName = new TreeMap<String, String>();
    for (var request : names.requests()) {
      byName.put(request.from().getFileName().toString(), request.to().getFileName().toString());
      assertThat(request.from().getParent()).isEqualTo(Path.of("01_frames"));
    }
    assertThat(byName.values())
        .filteredOn(name -> name.endsWith(".JPG"))
        .containsExactly(
            "20261123_KVO_001_F_0003.JPG",
            "20261123_KVO_001_F_0001.JPG",
            "20261123_KVO_001_F_0002.JPG");
    assertThat(names.requests())
        .as("raw and JPEG are one group")
        .extracting(RenameRequest::group)
        .hasSize(6)
        .satisfies(groups -> assertThat(Set.copyOf(groups)).hasSize(3));
  }

  @Test
  void keepsNamesThatAreRightAndGoesOnCounting() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    frame("09:11:00", "1", "F");
    frame("09:12:00", "1", "F");
    rename();
    var named = targets(job.frameNames(job.scan()));
    assertThat(job.frameNames(job.scan()).requests())
        .allSatisfy(request -> assertThat(request.to()).isEqualTo(request.from()));
    frame("09:13:00", "1", "F");
    mark("09:20:00", "2", SetupState.ON_SET);
    frame("09:21:00", "2", "F");
    assertThat(targets(job.frameNames(job.scan())))
        .containsAll(named)
        .contains("20261123_KVO_001_0003.JPG", "20261123_KVO_002_F_0001.JPG");
    rename();

    // The name now says where a frame belongs, also without the log of arrivals.
    Files.delete(job.folder().resolve(".framewright/log/desk.jsonl"));
    var found = reopened(SET);
    found.importList(list(setup("1", "Coat"), setup("2", "Hat")));
    assertThat(found.tally().bySetup())
        .hasEntrySatisfying("1", counted -> assertThat(counted.frames()).isEqualTo(3))
        .hasEntrySatisfying("2", counted -> assertThat(counted.frames()).isEqualTo(1));
  }

  @Test
  void givesAMovedFrameItsNewSetupsName() throws Exception {
    mark("09:10:00", "1", SetupState.ON_SET);
    var frame = frame("09:11:00", "1", "F");
    rename();
    job.moveFrames(List.of(frame.id()), "2", Optional.empty(), "Ana");
    assertThat(targets(job.frameNames(job.scan()))).contains("20261123_KVO_002_F_0001.JPG");
  }

  @Test
  void leavesOutFramesWithoutASetupAndFramesThatAreNotWhole() throws Exception {
    shoot("09:05:00", "1", "F");
    Files.write(job.framesFolder().resolve("IMG_0500.JPG"), new byte[] {(byte) 0xFF, (byte) 0xD8});
    var names = job.frameNames(job.scan());
    assertThat(names.requests()).isEmpty();
    assertThat(names.leftOut())
        .extracting(FrameNames.LeftOut::why)
        .hasSize(2)
        .anyMatch(why -> why.contains("not whole"))
        .anyMatch(why -> why.contains("no setup was on set"));
  }

  @Test
  void takesFieldsFromTheColumnsOfTheList() throws Exception {
    var yaml =
        """
        convention: Products
        fields:
          day: {type: date, pattern: uuuuMMdd}
          client: {type: code, letters: upper, length: 2-6}
          gtin: {type: gtin}
          take: {type: counter, digits: 3, restarts: gtin}
        names:
          job: "{day}_{client}"
          frame: "{gtin}_{take}"
        folders: {frames: frames}
        """;
    var started =
        Job.start(
            convention(yaml), parent, Map.of("day", "2026-11-23", "client", "KVO"), clock, DESK);
    job = ((Started.Opened) started).job();
    var columns = new LinkedHashMap<String, String>();
    columns.put("GTIN", "6291041500213"); // GS1's example of a check digit
    job.importList(
        list(new Setup("7", "Jar", List.of(), OptionalInt.empty(), columns), setup("8", "Lid")));
    mark("09:10:00", "7", SetupState.ON_SET);
    frame("09:11:00", "7", "F");
    mark("09:20:00", "8", SetupState.ON_SET);
    frame("09:21:00", "8", "F");
    var names = job.frameNames(job.scan());
    assertThat(targets(names)).anyMatch(name -> name.matches("0?6291041500213_001\\.JPG"));
    assertThat(names.leftOut()).hasSize(1);
    rename();
    assertThat(job.tally().bySetup().get("7").frames()).isEqualTo(1);
  }

  @Test
  void takesAChoiceThatNothingElseSaysFromTheFoldersThatAFrameLiesIn() throws Exception {
    var event = Files.readString(Path.of("templates/event-two-rooms.yaml"));
    var evening = Files.createDirectory(parent.resolve("evening"));
    job = ((Started.Opened) Job.start(convention(event), evening, VALUES, clock, SET)).job();
    job.importList(list(setup("1", "Opening speech")));
    mark("09:10:00", "1", SetupState.ON_SET);
    camera
        .take(Exposure.of(instant("09:11:00"), "1", ""))
        .writeTo(Files.createDirectories(job.framesFolder().resolve("Hall/B")));
    camera.take(Exposure.of(instant("09:12:00"), "1", "")).writeTo(job.framesFolder());
    clock.set("2026-11-23T09:12:01Z");
    job.recordArrivals(job.scan());

    var names = job.frameNames(job.scan());
    assertThat(targets(names)).isNotEmpty().allMatch(name -> name.contains("_hall_B00001_01."));
    assertThat(names.leftOut())
        .as("the frame beside the folders")
        .singleElement()
        .satisfies(left -> assertThat(left.why()).contains("a value is missing"));
  }

  @Test
  void handsOutWhatNeverChanges() throws Exception {
    var state = job.state();
    assertThatThrownBy(() -> state.setups().clear())
        .isInstanceOf(UnsupportedOperationException.class);
    assertThatThrownBy(() -> state.arrivals().put(new FrameId("x"), Instant.EPOCH))
        .isInstanceOf(UnsupportedOperationException.class);
    var kept = new ArrayList<>(state.setups().values());
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    assertThat(state.setups().values()).containsExactlyElementsOf(kept);
  }
}
