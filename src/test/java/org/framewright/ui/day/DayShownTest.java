package org.framewright.ui.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.framewright.copies.FramesOnce;
import org.framewright.day.Attention;
import org.framewright.day.DaySummary;
import org.framewright.day.Forecast;
import org.framewright.day.Space;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.ui.day.LookLine.Group;
import org.framewright.ui.page.ViewWords;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the page says of a day, at ten to twelve on the 23rd. */
class DayShownTest {
  private static final Instant BEFORE_TEN = Instant.parse("2026-11-23T09:40:00Z");
  private static final long GB = 1_000_000_000L;

  @TempDir private Path folder;

  private static DayNow read(DayScene scene) throws Exception {
    return new DayNow.Reader(scene.job(), () -> DayScene.HOURS, List::of, () -> Optional.empty())
        .read(scene.session.view().get());
  }

  private static DayShown shown(DayScene scene, DayNow now) {
    return DayShown.of(now, DayScene.TEXTS, new ViewWords(scene.job().convention()));
  }

  private static DayShown compared(DayScene scene, Instant at, int once, int notCompared)
      throws Exception {
    var now = read(scene);
    return shown(
        scene,
        new DayNow(
            now.view(),
            now.summary(),
            now.attention(),
            now.finished(),
            now.times(),
            Optional.of(new FramesOnce(at, 6, once, notCompared)),
            now.supplies()));
  }

  private static DayShown with(DayScene scene, Space space, Optional<Forecast> today)
      throws Exception {
    var now = read(scene);
    var summary = now.summary();
    return shown(
        scene,
        new DayNow(
            now.view(),
            new DaySummary(
                summary.at(),
                summary.hours(),
                summary.setups(),
                summary.frames(),
                summary.unassigned(),
                summary.pace(),
                today,
                summary.all(),
                summary.kinds(),
                space,
                summary.attention()),
            now.attention(),
            now.finished(),
            now.times(),
            now.once(),
            now.supplies()));
  }

  private static Optional<LookLine> line(DayShown shown, String what) {
    return shown.lines().stream().filter(one -> one.what().contains(what)).findFirst();
  }

  @Test
  void framesOnOneDiskOnlyNeedSomebody() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var shown = compared(scene, BEFORE_TEN, 2, 0);
      var once = line(shown, "2 frames are on one disk only").orElseThrow();
      assertThat(once.group()).isEqualTo(Group.NEEDS);
      assertThat(once.way()).contains(new Way.Copies());
      assertThat(once.more()).isEqualTo("As of the comparison of 09:40");
      assertThat(line(shown, "two disks")).isEmpty();
      assertThat(line(shown, "since the last comparison")).isEmpty();
    }
  }

  @Test
  void framesThatCameSinceTheComparisonAreToBeJudged() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var shown = compared(scene, BEFORE_TEN, 0, 3);
      var since = line(shown, "3 frames came since the last comparison").orElseThrow();
      assertThat(since.group()).isEqualTo(Group.JUDGE);
      assertThat(line(shown, "two disks")).isEmpty();
      assertThat(line(shown, "one disk only")).isEmpty();
    }
  }

  @Test
  void framesThatAreAllOnTwoDisksAreWellAndAComparisonOfAnotherDayIsToldWithIt() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var well = line(compared(scene, BEFORE_TEN, 0, 0), "on two disks at the least").orElseThrow();
      assertThat(well.group()).isEqualTo(Group.FINE);
      var earlier =
          line(compared(scene, BEFORE_TEN.minus(Duration.ofDays(2)), 0, 0), "on two disks");
      assertThat(earlier.orElseThrow().more())
          .isNotEqualTo("As of the comparison of 09:40")
          .contains("09:40");
    }
  }

  @Test
  void aDiskThatDoesNotHoldWhatIsPlannedComesFirst() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      // 30 frames of 1 GB are planned, and 20 GB are free.
      var full = with(scene, new Space(GB, 1, OptionalLong.of(30), 20 * GB), Optional.empty());
      var line = line(full, "does not hold the 30 frames that are still planned").orElseThrow();
      assertThat(line.group()).isEqualTo(Group.NEEDS);
      assertThat(line.way()).contains(new Way.Folder());
      assertThat(full.figures().getLast().needs()).isTrue();
      var enough = with(scene, new Space(GB, 1, OptionalLong.of(30), 40 * GB), Optional.empty());
      assertThat(line(enough, "does not hold")).isEmpty();
      assertThat(enough.figures().getLast().needs()).isFalse();
    }
  }

  @Test
  void whatSecondsCostIsToldWhereManyFramesArePlanned() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      // 212 x 8 s = 1,696 s.
      var many = with(scene, new Space(1, 1, OptionalLong.of(212), GB), Optional.empty());
      assertThat(many.said())
          .contains("8 s more for each frame would cost 28 min: 212 are still planned.");
      var few = with(scene, new Space(1, 1, OptionalLong.of(29), GB), Optional.empty());
      assertThat(String.join(" ", few.said())).doesNotContain("8 s more");
    }
  }

  @Test
  void onlyWhatIsPlannedForTheDayCanBeLate() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      var space = new Space(1, 1, OptionalLong.empty(), GB);
      assertThat(finish(with(scene, space, Optional.of(doneBy("2026-11-23T18:01:00Z")))).needs())
          .isTrue();
      assertThat(finish(with(scene, space, Optional.of(doneBy("2026-11-23T17:59:00Z")))).needs())
          .isFalse();
      assertThat(finish(with(scene, space, Optional.empty())).needs()).isFalse();
    }
  }

  private static Forecast doneBy(String finish) {
    return new Forecast(
        2,
        Optional.of(Duration.ofHours(1)),
        Optional.of(Instant.parse(finish)),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static Figure finish(DayShown shown) {
    return shown.figures().stream().filter(one -> one.id().equals("finish")).findFirst().get();
  }

  @Test
  void theHoursAreThoseOfTheDay() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      assertThat(read(scene).finished()).hasSize(3);
      scene.clock.pass(Duration.ofDays(1));
      assertThat(read(scene).finished()).isEmpty();
    }
  }

  @Test
  void aSetupThatGotFramesAfterItsSignOffNeedsSomebody() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      assertThat(line(shown(scene, read(scene)), "after its sign-off")).isEmpty();
      var job = scene.job();
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 900)
          .take(Exposure.of(scene.clock.instant(), "001", "F"))
          .writeTo(job.framesFolder());
      var frame =
          job.scan().distinct().stream()
              .filter(one -> one.stem().contains("900"))
              .findFirst()
              .orElseThrow();
      job.moveFrames(List.of(frame.id()), "001", Optional.of("F"), "Odette");
      scene.session.look();
      var changed = line(shown(scene, read(scene)), "001 got frames after its sign-off");
      assertThat(changed.orElseThrow().group()).isEqualTo(Group.NEEDS);
    }
  }

  @Test
  void aFrameThatIsCutShortIsToldAndTheOthersAreNotCalledWhole() throws Exception {
    try (var scene = DayScene.inTheMiddle(folder)) {
      assertThat(line(shown(scene, read(scene)), "All 6 frames are whole")).isPresent();
      var cut = scene.job().framesFolder().resolve("IMG_0001.JPG");
      Files.write(cut, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE0});
      Files.setLastModifiedTime(cut, FileTime.from(Instant.parse("2026-11-23T08:00:00Z")));
      scene.session.look();
      var now = read(scene);
      assertThat(now.attention()).contains(new Attention.Incomplete(1));
      assertThat(line(shown(scene, now), "1 frame is not whole")).isPresent();
      assertThat(line(shown(scene, now), "frames are whole")).isEmpty();
    }
  }
}
