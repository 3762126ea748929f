package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.framewright.Templates;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Place;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.frames.slate.SlateReading;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a job keeps of slates. Pictures are searched by a stand-in: by the frames' names. */
class JobSlatesTest {
  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-23T09:00:00Z");
  private final Clock clock = ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
  private final SampleCamera camera =
      new SampleCamera(
          SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 9998);
  private final Map<String, String> shown = new HashMap<>();
  private Job job;

  @BeforeEach
  void aJob() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    job.importList(
        new ShotList(
            List.of(new Setup("001", "Coat"), new Setup("002", "Hat"), new Setup("003", "Scarf"))));
  }

  @Test
  void slatesPlaceFramesAndSurviveReopening() throws Exception {
    slate("001");
    take();
    slate("002");
    take();
    take();
    search();
    var expected = List.of("slate 001", "001", "slate 002", "002", "002");
    assertThat(setups()).isEqualTo(expected);
    job = Job.open(job.folder(), clock);
    assertThat(setups()).isEqualTo(expected);
    assertThat(job.notLookedAt(job.scan())).isEmpty();
  }

  @Test
  void anotherStationKnowsThemWithoutSearchingAgain() throws Exception {
    slate("001");
    take();
    search();
    job = Job.open(job.folder(), clock, new Station("other"));
    assertThat(setups()).containsExactly("slate 001", "001");
  }

  @Test
  void aReadingOutlivesItsSlateWhichKeepsItsNumberAfterARename() throws Exception {
    // The bursts of this body are faster than its clock: only the numbers say the order.
    slate("001");
    take();
    slate("002");
    take();
    search();
    rename();
    assertThat(setups()).containsExactly("slate 001", "001", "slate 002", "002");
    assertThat(job.scan().frames().stream().map(Frame::stem))
        .as("slates keep the names that they came with")
        .contains("IMG_9998", "IMG_0001")
        .hasSize(4);
  }

  @Test
  void theNameThatAFrameCameWithIsKnownFromTheRenamesWhereItIsSearchedLater() throws Exception {
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    var frame = take();
    arrive();
    rename();
    var scan = job.scan();
    assertThat(scan.frames().getFirst().stem()).isNotEqualTo(frame.stem());
    job.recordLooks(Map.of(scan.frames().getFirst(), Optional.empty()));
    assertThat(job.state().slates().looked()).containsValue("IMG_9998");
  }

  @Test
  void noPictureIsSearchedBeforeSlatesOfTheJobArePrinted() throws Exception {
    take();
    assertThat(job.notLookedAt(job.scan())).isEmpty();
    job.slateKey();
    assertThat(job.notLookedAt(job.scan())).hasSize(1);
    search();
    assertThat(job.notLookedAt(job.scan())).isEmpty();
  }

  @Test
  void slatesOfAnotherJobAndOfNoSetupAreTold() throws Exception {
    shown.put(take().stem(), Slate.of(new JobKey("0000"), "001").print());
    take();
    shown.put(take().stem(), Slate.of(job.slateKey(), "077").print());
    take();
    search();
    assertThat(setups()).containsExactly("slate 001", "-", "slate 077", "-");
    assertThat(job.tally().unassigned().stream().map(one -> one.why()))
        .containsExactlyInAnyOrder(
            "it comes after IMG_9998, a slate of another job",
            "slate IMG_0001 says 077, which is not in the list");
    job.importList(
        new ShotList(List.of(new Setup("001", "Coat"), new Setup("077", "A late arrival"))));
    assertThat(setups()).endsWith("slate 077", "077");
  }

  @Test
  void aPersonSaysWhatIsASlateAndWhatIsNoneAndTakesItBack() throws Exception {
    var first = take();
    take();
    slate("002");
    take();
    search();
    assertThat(setups()).containsExactly("-", "-", "slate 002", "002");
    say(first.stem(), new SlateWord.OfSetup("1"));
    assertThat(setups()).containsExactly("slate 001", "001", "slate 002", "002");
    say("IMG_0001", new SlateWord.NoSlate());
    assertThat(setups()).containsExactly("slate 001", "001", "001", "001");
    job.takeBackMove();
    say("IMG_0001", new SlateWord.Backwards());
    assertThat(setups()).containsExactly("slate 001", "002", "slate 002", "002");
    job.takeBackMove();
    job.takeBackMove();
    assertThat(setups()).containsExactly("-", "-", "slate 002", "002");
  }

  @Test
  void whatCannotBeSaidIsRefused() throws Exception {
    var frame = take();
    slate("002");
    search();
    assertThatThrownBy(() -> say(frame.stem(), new SlateWord.NoSlate()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("shows no slate");
    assertThatThrownBy(() -> say(frame.stem(), new SlateWord.OfSetup("099")))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no setup \"099\"");
    assertThatThrownBy(() -> say("IMG_9999", new SlateWord.Follow(Optional.empty())))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("contradicts nothing");
  }

  // ---- With a cable

  @Test
  void aSlateThatArrivesWhereNothingIsOnSetPutsItsSetupThere() throws Exception {
    slate("001");
    arrive();
    var came = now;
    now = now.plusSeconds(3);
    searchNow();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("001");
    assertThat(job.state().onSet().map(OnSet::since)).contains(came);
    now = now.plusSeconds(10);
    slate("002");
    arrive();
    searchNow();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("002");
    // What a slate put on set is taken back like any tick.
    job.takeBack();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("001");
  }

  @Test
  void aSlateThatContradictsAPersonMovesNothingOnSetUntilItIsFollowed() throws Exception {
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    now = now.plusSeconds(10);
    slate("002");
    arrive();
    now = now.plusSeconds(10);
    take();
    arrive();
    searchNow();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("001");
    assertThat(setups()).containsExactly("slate 002", "001");
    assertThat(job.tally().slates().doubts())
        .singleElement()
        .satisfies(
            doubt -> {
              assertThat(doubt.onSet()).isEqualTo("001");
              assertThat(doubt.says().code()).isEqualTo("002");
              assertThat(doubt.frames()).isEqualTo(1);
              assertThat(doubt.lasts()).isTrue();
            });
    now = now.plusSeconds(10);
    var undo = say("IMG_9998", new SlateWord.Follow(Optional.empty()));
    assertThat(job.state().onSet().map(OnSet::setup)).contains("002");
    assertThat(setups()).containsExactly("slate 002", "002");
    assertThat(doubts()).isEmpty();
    undo.run();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("001");
    say("IMG_9998", new SlateWord.Stay());
    assertThat(setups()).containsExactly("slate 002", "001");
    assertThat(doubts()).isEmpty();
  }

  @Test
  void aSlateThatIsReadLateMovesNothingOnSet() throws Exception {
    slate("001");
    arrive();
    now = now.plus(Duration.ofMinutes(11));
    searchNow();
    assertThat(job.state().onSet()).isEmpty();
    slate("002");
    arrive();
    now = now.plusSeconds(5);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    searchNow();
    assertThat(job.state().onSet().map(OnSet::setup)).contains("003");
  }

  @Test
  void whatCouldNotBeKeptIsKeptWithWhatIsFoundNext() throws Exception {
    slate("001");
    var log = new JobLayout(job.folder()).log();
    var away = folder.resolve("away");
    var failures = new ArrayList<IOException>();
    try (var watch = SlateWatch.atOnce(job, this::look, new Heard(failures))) {
      var scan = job.scan();
      Files.move(log, away);
      watch.look(scan);
      assertThat(failures).hasSize(1);
      Files.move(away, log);
      take();
      watch.look(job.scan());
    }
    assertThat(failures).hasSize(1);
    assertThat(job.notLookedAt(job.scan())).isEmpty();
    assertThat(setups()).containsExactly("slate 001", "001");
  }

  @Test
  void whoStopsWatchingLosesNothingThatWasFound() throws Exception {
    job.slateKey();
    for (int i = 0; i < 3; i++) {
      take();
    }
    var watch = new ArrayList<SlateWatch>();
    var looks = new ArrayList<Frame>();
    Function<Frame, SlateReading> search =
        frame -> {
          looks.add(frame);
          if (looks.size() == 2) {
            watch.getFirst().close();
          }
          return look(frame);
        };
    watch.add(SlateWatch.atOnce(job, search, new Heard(new ArrayList<>())));
    watch.getFirst().look(job.scan());
    assertThat(looks).hasSize(2);
    assertThat(job.notLookedAt(job.scan())).hasSize(2).doesNotContain(looks.getFirst());
  }

  // ---- Names

  @Test
  void aSlateHasANameOfItsOwnKindWhereTheConventionHasOne() throws Exception {
    var yaml = Files.readString(job.folder().resolve(".framewright/convention.yaml"));
    assertThat(yaml).contains("\n  select:");
    Files.writeString(
        job.folder().resolve(".framewright/convention.yaml"),
        yaml.replaceFirst(
            "\n  select:", "\n  slate: \"{client}_slate_{setup}_{take}\"\n  select:"));
    job = Job.open(job.folder(), clock);
    slate("001");
    take();
    search();
    rename();
    assertThat(job.scan().frames().stream().map(Frame::stem)).contains("KVO_slate_001_0001");
    assertThat(setups()).contains("slate 001", "001").hasSize(2);
    assertThat(job.frameNames(job.scan()).requests())
        .allSatisfy(request -> assertThat(request.from()).isEqualTo(request.to()));
  }

  // ---- The scene

  private Frame take() throws IOException {
    now = now.plusMillis(50);
    var taken = camera.take(Exposure.of(now, "001", "F"));
    taken.writeTo(job.framesFolder());
    return job.scan().frames().stream()
        .filter(frame -> frame.stem().equals(taken.stem()))
        .findFirst()
        .orElseThrow();
  }

  private void slate(String setup) throws IOException {
    shown.put(take().stem(), Slate.of(job.slateKey(), setup).print());
  }

  private void arrive() throws IOException {
    job.recordArrivals(job.scan());
  }

  private SlateReading look(Frame frame) {
    return Optional.ofNullable(shown.get(frame.stem()))
        .flatMap(Slate::read)
        .<SlateReading>map(SlateReading.Found::new)
        .orElseGet(SlateReading.None::new);
  }

  /** As a command does that finds frames lying there. */
  private void search() throws IOException {
    var found = new HashMap<Frame, Optional<String>>();
    job.notLookedAt(job.scan()).forEach(frame -> found.put(frame, SlateLooks.text(look(frame))));
    job.recordLooks(found);
  }

  /** As whoever watches does. */
  private void searchNow() throws IOException {
    var failures = new ArrayList<IOException>();
    try (var watch = SlateWatch.atOnce(job, this::look, new Heard(failures))) {
      watch.look(job.scan());
    }
    assertThat(failures).isEmpty();
  }

  private record Heard(List<IOException> failures) implements SlateWatch.Listener {
    @Override
    public void read() {}

    @Override
    public void failed(IOException failure) {
      failures.add(failure);
    }
  }

  private Undo say(String stem, SlateWord word) throws Exception {
    var scan = job.scan();
    var frame =
        scan.frames().stream().filter(one -> one.stem().equals(stem)).findFirst().orElseThrow();
    return job.saySlate(frame, word, "Ana", scan);
  }

  private void rename() throws IOException {
    var renamer = Renamer.in(job.folder(), clock);
    var plan = renamer.plan(job.frameNames(job.scan()).requests());
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
  }

  /** Each frame in the order in which it was taken. */
  private List<String> setups() throws IOException {
    FrameScan scan = job.scan();
    var tally = job.tally(scan);
    return job.inOrder(scan).stream()
        .map(
            frame ->
                tally
                    .slates()
                    .of(frame)
                    .map(JobSlatesTest::words)
                    .or(() -> tally.place(frame).map(Place::setup))
                    .orElse("-"))
        .toList();
  }

  private static String words(SlateFrame slate) {
    return "slate " + slate.slate().says().code();
  }

  private List<SlateDoubt> doubts() throws IOException {
    return job.tally().slates().doubts();
  }
}
