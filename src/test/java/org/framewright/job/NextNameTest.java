package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.naming.Convention;
import org.framewright.renaming.Renamer;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The name that is said beforehand is the one that the frame gets once it is there. */
class NextNameTest {
  private static final Station DESK = new Station("desk");

  @TempDir private Path parent;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 7);
  private Job job;

  @BeforeEach
  void aJobForFashion() throws Exception {
    job = started(Files.readString(Path.of("templates/fashion-days.yaml")));
  }

  private Job started(String yaml) throws Exception {
    var sound = (Convention.Parsed.Sound) Convention.parse(yaml, "test.yaml");
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "Winter");
    var begun = ((Started.Opened) Job.start(sound.convention(), parent, values, clock, DESK)).job();
    begun.importList(
        new ShotList(
            List.of(JobTest.setup("1", "Coat", "F", "B"), JobTest.setup("2", "Hat", "F"))));
    return begun;
  }

  private void put(String code, String view) throws Exception {
    clock.pass(Duration.ofMinutes(5));
    job.mark(code, SetupState.ON_SET, MarkDetails.NONE.andView(view));
  }

  private String next(String code, Optional<String> view) throws Exception {
    return switch (job.nextName(code, view, job.framesFolder(), job.scan())) {
      case NextName.Known known -> known.stem();
      case NextName.Unknown unknown -> throw new AssertionError(unknown.problem());
    };
  }

  private NextName.Unknown unknown(String code, Path folder) throws Exception {
    return (NextName.Unknown)
        job.nextName(code, Optional.empty(), folder, new FrameScan(List.of(), 0, List.of()));
  }

  /** Takes a frame of what is on set, a minute later, and says what it is to be called. */
  private String taken(String code, String view) throws Exception {
    var before = job.scan().frames().stream().map(Frame::id).toList();
    clock.pass(Duration.ofMinutes(1));
    camera.take(Exposure.of(clock.instant(), code, view)).writeTo(job.framesFolder());
    job.recordArrivals(job.scan());
    var scan = job.scan();
    var came =
        scan.frames().stream()
            .filter(frame -> !before.contains(frame.id()))
            .findFirst()
            .orElseThrow();
    var from = job.folder().relativize(came.primary().path());
    return job.frameNames(scan).requests().stream()
        .filter(request -> request.from().equals(from))
        .map(request -> request.to().getFileName().toString().replaceFirst("\\.JPG$", ""))
        .findFirst()
        .orElseThrow();
  }

  private void rename() throws Exception {
    var renamer = Renamer.in(job.folder());
    renamer.apply(renamer.plan(job.frameNames(job.scan()).requests()), Progress.NONE);
  }

  @Test
  void isTheNameThatTheFrameGetsOnceItIsThere() throws Exception {
    put("1", "F");
    var said = new ArrayList<String>();
    var given = new ArrayList<String>();
    for (var i = 0; i < 4; i++) {
      said.add(next("1", Optional.of("F")));
      given.add(taken("1", "F"));
      if (i == 1) {
        rename();
      }
    }
    put("1", "B");
    said.add(next("1", Optional.of("B")));
    given.add(taken("1", "B"));
    assertThat(said)
        .isEqualTo(given)
        .containsExactly(
            "20261123_KVO_001_F_0001",
            "20261123_KVO_001_F_0002",
            "20261123_KVO_001_F_0003",
            "20261123_KVO_001_F_0004",
            "20261123_KVO_001_B_0005");
  }

  @Test
  void countsAfterFramesThatWaitForTheirNames() throws Exception {
    put("1", "F");
    taken("1", "F");
    taken("1", "F");
    assertThat(next("1", Optional.of("F"))).isEqualTo("20261123_KVO_001_F_0003");
  }

  @Test
  void takesTheOnlyWantedViewWhereNoneIsSaid() throws Exception {
    assertThat(next("2", Optional.empty())).isEqualTo("20261123_KVO_002_F_0001");
    assertThat(next("1", Optional.empty())).isEqualTo("20261123_KVO_001_0001");
  }

  @Test
  void takesTheDayOfNow() throws Exception {
    clock.set("2026-11-25T10:00:00Z");
    assertThat(next("2", Optional.of("F"))).isEqualTo("20261125_KVO_002_F_0001");
  }

  @Test
  void readsFromTheFolderWhatTheConventionReadsFromFolders() throws Exception {
    parent = Files.createDirectory(parent.resolve("rooms"));
    job =
        started(
            """
            convention: Rooms
            fields:
              day: {type: date, pattern: uuuuMMdd}
              client: {type: code, letters: upper, length: 2-6}
              title: {type: words}
              room: {type: choice, label: Room, values: {A: large, B: small}}
              setup: {type: number, digits: 3, from: 1}
              take: {type: counter, digits: 4, restarts: setup}
            names:
              job: "{day}_{client}_{title}"
              frame: "{client}_{room}_{setup}_{take}"
            folders: {frames: frames}
            """);
    var scan = new FrameScan(List.of(), 0, List.of());
    var small = job.framesFolder().resolve("b").resolve("card 2");
    assertThat(job.nextName("1", Optional.empty(), small, scan))
        .isEqualTo(new NextName.Known("KVO_B_001_0001"));
    assertThat(unknown("1", job.framesFolder()).problem().what())
        .isEqualTo("Room: a value is missing");
  }

  @Test
  void saysWhyItCannotBeSaid() throws Exception {
    job.importList(new ShotList(List.of(JobTest.setup("odd", "Belt"))));
    var problem = unknown("odd", job.framesFolder()).problem();
    assertThat(problem.what()).startsWith("Look: ");
    assertThat(problem.where()).isEqualTo("setup odd");
    assertThat(problem.remedy()).isNotEmpty();
    assertThatThrownBy(() -> unknown("9", job.framesFolder()))
        .isInstanceOf(JobException.class)
        .hasMessageContaining("no setup \"9\"");
  }
}
