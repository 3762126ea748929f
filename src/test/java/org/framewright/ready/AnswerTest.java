package org.framewright.ready;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults are made true on a real job, and its answer is asked for. */
class AnswerTest {
  @TempDir private Path temp;
  private ReadyScene scene;
  private Job job;
  private Path copies;

  @BeforeEach
  void aJobInTheMorning() throws Exception {
    scene = new ReadyScene(Files.createDirectory(temp.resolve("laptop")));
    job = scene.job;
    copies = Files.createDirectory(temp.resolve("copies"));
    scene.volumes.disk(copies, "copies");
    Files.writeString(
        job.folder().resolve(Checklists.FILE),
        """
        checklist: Short
        morning:
          tea: There is tea
          lamps: {caution: Lamps stand clear}
        evening:
          packed: All is packed
        """);
    job.tickItem("tea", true, "Timo");
    job.tickItem("lamps", true, "Ines");
    job.tickItem("packed", true, "Ines");
  }

  private List<String> missing(Answer answer) {
    return answer.missing().stream().map(missing -> missing.what().english()).toList();
  }

  private SampleCamera camera() {
    return new SampleCamera(
        SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 1);
  }

  private void frame(SampleCamera camera, String setup) throws Exception {
    camera.take(Exposure.of(scene.now, setup, "F")).writeTo(job.framesFolder());
    job.recordArrivals(job.scan());
    scene.now = scene.now.plusSeconds(5);
  }

  @Test
  void whereAllIsWellTheDayCanBegin() throws Exception {
    var answer = scene.asked(copies);
    assertThat(missing(answer)).isEmpty();
    assertThat(answer.kind()).isEqualTo(Answer.Kind.READY);
    assertThat(ReadyDescription.lines(answer, ReadyScene.ZONE).getFirst()).isEqualTo("Ready.");
    assertThat(ReadyDescription.lines(answer, ReadyScene.ZONE))
        .contains(
            "  [x] tea    There is tea (Timo, 08:30)",
            "  [x] lamps  Caution: Lamps stand clear (Ines, 08:30)",
            "  " + Checklist.CAUTION.english());
  }

  @Test
  void anItemThatIsNotTickedTodayIsMissing() throws Exception {
    job.tickItem("tea", false, "Timo");
    var answer = scene.asked(copies);
    assertThat(answer.kind()).isEqualTo(Answer.Kind.BUT_FOR);
    assertThat(missing(answer)).isEqualTo(List.of("1 of 2 items of the checklist is not ticked"));
    scene.now = scene.now.plus(Duration.ofDays(1));
    assertThat(missing(scene.asked(copies)))
        .isEqualTo(List.of("2 of 2 items of the checklist are not ticked"));
  }

  @Test
  void withoutAChecklistPeopleWereNotAsked() throws Exception {
    Files.delete(job.folder().resolve(Checklists.FILE));
    assertThat(missing(scene.asked(copies)))
        .isEqualTo(List.of("no checklist was chosen, so nobody is asked what only people can see"));
  }

  @Test
  void aPlaceForCopiesOnTheDiskOfTheFramesIsNone() throws Exception {
    var beside = Files.createDirectory(job.folder().resolveSibling("beside"));
    scene.volumes.disk(temp.resolve("laptop"), "laptop");
    assertThat(missing(scene.asked(beside)))
        .containsExactly(
            beside.toAbsolutePath()
                + " lies on the same disk as the frames, and what breaks one"
                + " breaks both");
    assertThat(missing(scene.asked(temp.resolve("gone"))))
        .containsExactly(temp.resolve("gone") + " is not there");
    assertThat(missing(scene.asked()))
        .containsExactly("no place for copies is known, so every frame will be in one place only");
  }

  @Test
  void aDiskThatRefusesWhatIsWrittenStopsTheDay() throws Exception {
    scene.refused = Optional.of(new FileSystemException("x", null, "Read-only file system"));
    var answer = scene.asked(copies);
    assertThat(answer.kind()).isEqualTo(Answer.Kind.NOT_READY);
    assertThat(missing(answer))
        .isEqualTo(List.of("the disk takes no file: the disk can only be read"));
  }

  @Test
  void aDiskWithoutRoomIsNotMeasuredAndAQuickAnswerLeavesItOut() throws Exception {
    scene.speed = Optional.empty();
    assertThat(
            scene.asked(copies).measured().stream()
                .filter(one -> one.topic() == Topic.SPEED)
                .allMatch(one -> one.outcome() instanceof Outcome.CannotTell))
        .isTrue();
    var quick =
        Answer.morning(job, job.scan(), new Asked(20, List.of(copies), true), scene, Progress.NONE);
    assertThat(quick.measured().stream().anyMatch(one -> one.topic() == Topic.SPEED)).isFalse();
  }

  @Test
  void anEmptyListStopsTheDay() throws Exception {
    job.importList(new ShotList(List.of()));
    assertThat(missing(scene.asked(copies)))
        .isEqualTo(List.of("the shot list is empty, so nothing can be put on set"));
  }

  @Test
  void aCounterTooShortForTheFramesPlannedStopsTheDay() throws Exception {
    var file = job.folder().resolve(".framewright/convention.yaml");
    Files.writeString(file, Files.readString(file).replaceFirst("(take:.*digits: )4", "$11"));
    job.importList(ReadyScene.list(3));
    var tight = Job.open(job.folder(), scene.clock(), new Station("set"));
    var answer =
        Answer.morning(
            tight, tight.scan(), new Asked(20, List.of(copies), true), scene, Progress.NONE);
    // Four frames are wanted of each setup, and one digit is enough for nine.
    assertThat(missing(answer)).isEmpty();
    var list = ReadyScene.list(3).setups();
    tight.changeSetup(
        new Setup(
            list.getFirst().code(),
            "Coat",
            list.getFirst().views(),
            OptionalInt.of(12),
            new TreeMap<>()));
    var full =
        Answer.morning(
            tight, tight.scan(), new Asked(20, List.of(copies), true), scene, Progress.NONE);
    assertThat(missing(full).size()).isEqualTo(1);
    assertThat(missing(full).getFirst()).contains("12 are planned");
    assertThat(full.kind()).isEqualTo(Answer.Kind.NOT_READY);
  }

  @Test
  void aCopyThatNobodyEndsStopsTheDay() throws Exception {
    var folder = Files.createDirectories(job.folder().resolve(".framewright/copies"));
    Files.writeString(folder.resolve("copy-00000000000000ab.txt"), copies + "\n");
    assertThat(missing(scene.asked(copies)))
        .isEqualTo(List.of("a copy to " + copies + " was interrupted"));
  }

  @Test
  void anotherComputerWhoseClockIsAheadIsTold() throws Exception {
    scene.now = scene.now.plusSeconds(90);
    Job.open(job.folder(), scene.clock(), new Station("desk")).tickItem("tea", true, "Ines");
    scene.now = scene.now.minusSeconds(90);
    job.refresh();
    assertThat(missing(scene.asked(copies)))
        .isEqualTo(List.of("another computer of this job was 90 s ahead of this one’s clock"));
  }

  @Test
  void aBodyThatIsAnHourFastIsToldByTheFramesThatArrived() throws Exception {
    job.mark("1", SetupState.ON_SET, MarkDetails.NONE);
    var camera =
        new SampleCamera(SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    frame(camera, "1");
    frame(camera, "1");
    assertThat(missing(scene.asked(copies)).getFirst()).endsWith("is 1 h fast");
  }

  @Test
  void anAnswerIsKeptAndLapsesWhenWhatItRestsOnIsAnother() throws Exception {
    frame(camera(), "1");
    var first = scene.asked(copies);
    job.record(first.record());
    assertThat(scene.asked(copies).changedSince(job)).isEmpty();
    // Nobody has to name the place again.
    assertThat(missing(scene.asked())).isEmpty();

    job.importList(ReadyScene.list(4));
    scene.volumes.again(copies);
    var other =
        new SampleCamera(
            SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 500);
    frame(other, "1");
    var later = scene.asked(copies);
    assertThat(later.changedSince(job).stream().map(Text::english).toList())
        .containsExactly(
            "the shot list is another one",
            "a body came that was not there: Studio Body B SB-200963");
    job.record(later.record());
    Files.delete(copies);
    assertThat(scene.asked(copies).changedSince(job).stream().map(Text::english).toList())
        .containsExactly("the place for copies " + copies.toAbsolutePath() + " is gone");
    assertThat(ReadyDescription.last(job, scene.asked(copies)).getFirst())
        .isEqualTo("The answer of 2026-11-23 08:30 no longer holds:");
  }

  @Test
  void inTheEveningWhatIsLeftIsTold() throws Exception {
    job.mark("1", SetupState.SHOT, MarkDetails.NONE);
    job.mark("2", SetupState.DROPPED, MarkDetails.NONE);
    job.mark("3", SetupState.ON_SET, MarkDetails.NONE);
    frame(camera(), "3");
    var answer = Answer.evening(job, job.scan(), scene);
    assertThat(answer.kind()).isEqualTo(Answer.Kind.NOT_READY);
    assertThat(missing(answer))
        .isEqualTo(
            List.of(
                "no copies were compared, so the only known place of 1 frame is this disk",
                "0 to shoot, 1 on set, 0 to be shot again",
                "1 setup was shot and is not signed off",
                "1 frame has not got its name yet",
                "no report of today is in the folder for paper"));
    Files.writeString(
        Files.createDirectories(job.folder("paper")).resolve("day_2026-11-23.pdf"), "x");
    job.mark("3", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    job.mark("1", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    assertThat(missing(Answer.evening(job, job.scan(), scene)))
        .isEqualTo(
            List.of(
                "no copies were compared, so the only known place of 1 frame is this disk",
                "1 frame has not got its name yet"));
  }
}
