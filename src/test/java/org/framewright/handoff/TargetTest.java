package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.LongStream;
import org.framewright.base.ByteSizes;
import org.framewright.disk.SymbolicLinks;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TargetTest {
  @TempDir private Path folder;
  private Job job;

  @BeforeEach
  void aJob() throws Exception {
    job = Scene.ofOneFile(folder).job();
  }

  private void assertRefused(Path target, String what) throws Exception {
    var before = Scene.contents(job.folder());
    var outcome = Scene.deliver(job, target);
    assertThat(outcome).isInstanceOf(Delivery.Refused.class);
    var problem = ((Delivery.Refused) outcome).problem();
    assertThat(problem.what()).contains(what);
    assertThat(problem.where()).isNotBlank();
    assertThat(problem.remedy()).isNotBlank();
    assertThat(Scene.contents(job.folder())).isEqualTo(before);
  }

  @ParameterizedTest
  @CsvSource({
    "01_frames/new, in the frames folder",
    "01_frames/deep/er/new, in the frames folder",
    "01_FRAMES/new, in the frames folder",
    "03_retouched/new, what comes back",
    ".framewright/new, .framewright",
    ".framewright/log/new, .framewright",
    ".Framewright/new, .framewright",
    "01_frames, job's folder for frames",
    "02_selects, job's folder for selects",
    "., job's own folder",
  })
  void aPlaceInTheJobWhereAPackageDoesHarmIsRefused(String below, String what) throws Exception {
    assertRefused(job.folder().resolve(below), what);
  }

  @ParameterizedTest
  @CsvSource({"02_selects/for Bram", "09_paper/deep/er/still/for Bram", "for Bram"})
  void otherPlacesInTheJobAreAllowed(String below) throws Exception {
    assertThat(Scene.deliver(job, job.folder().resolve(below)))
        .isInstanceOf(Delivery.Delivered.class);
  }

  @ParameterizedTest
  @CsvSource({
    "01_frames, in the frames folder",
    ".framewright, .framewright",
    ".framewright/log, .framewright",
    "03_retouched, what comes back"
  })
  void aLinkThatLeadsThereIsRefusedToo(String below, String what) throws Exception {
    var link = folder.resolve("link");
    SymbolicLinks.make(link, job.folder().resolve(below));
    assertRefused(link.resolve("new"), what);
    assertRefused(link.resolve("not there/new"), what);
  }

  @Test
  void aLinkToAnotherPlaceIsFollowed() throws Exception {
    Files.createDirectory(folder.resolve("drive"));
    var link = SymbolicLinks.make(folder.resolve("link"), folder.resolve("drive"));
    assertThat(Scene.deliver(job, link.resolve("for Bram"))).isInstanceOf(Delivery.Delivered.class);
    assertThat(folder.resolve("drive/for Bram/bagit.txt")).exists();
  }

  @Test
  void aJobThatIsOpenedThroughALinkKnowsItsFramesFolder() throws Exception {
    var link = SymbolicLinks.make(folder.resolve("link"), job.folder());
    job = Scene.open(link);
    assertRefused(folder.resolve(job.folder().toRealPath()).resolve("01_frames/new"), "frames");
    assertRefused(link.resolve("01_frames/new"), "frames");
  }

  @Test
  void aFramesFolderThatIsALinkIsKnownByWhereItLeads() throws Exception {
    var drive = folder.resolve("drive");
    Files.move(job.framesFolder(), drive);
    SymbolicLinks.make(job.framesFolder(), drive);
    var target = Target.of(drive.resolve("new"));
    assertThat(target.problem(job)).isPresent();
  }

  @Test
  void aFileOnTheWayIsNamed() throws Exception {
    var file = Files.writeString(folder.resolve("file"), "text");
    assertRefused(file.resolve("new"), "no folder");
    assertThat(file).hasContent("text");
  }

  @Test
  void aLinkThatLeadsNowhereIsNamed() throws Exception {
    SymbolicLinks.make(folder.resolve("link"), folder.resolve("not there"));
    var outcome = Scene.deliver(job, folder.resolve("link/new"));
    assertThat(outcome).isInstanceOf(Delivery.Failed.class);
    assertThat(((Delivery.Failed) outcome).problem().what()).contains("no such file or folder");
    assertThat(folder.resolve("not there")).doesNotExist();
  }

  @Test
  void anEmptyFolderThatIsThereIsNotReplaced() throws Exception {
    var target = Files.createDirectory(folder.resolve("for Bram"));
    var key = Files.readAttributes(target, "unix:ino");
    assertThat(Scene.deliver(job, target)).isInstanceOf(Delivery.Refused.class);
    assertThat(Files.readAttributes(target, "unix:ino")).isEqualTo(key);
    assertThat(target).isEmptyDirectory();
  }

  @Test
  void foldersOnTheWayAreMadeAndGoAgainWhereTheHandOffComesToNothing() throws Exception {
    var handOff = Scene.handOff(job);
    var plan = handOff.rated(4);
    Files.writeString(plan.selects().getFirst().frame().files().getFirst().path(), "changed");
    var outcome =
        handOff.deliver(plan, folder.resolve("a/b/new"), org.framewright.base.Progress.NONE);
    assertThat(outcome).isInstanceOf(Delivery.Failed.class);
    assertThat(folder.resolve("a")).doesNotExist();
    assertThat(outcome.remarks()).isEmpty();
    assertThat(HandOff.nextNumber(job)).isEqualTo(1);
  }

  private static HandOffPlan planned(long... sizes) {
    var files =
        LongStream.of(sizes)
            .mapToObj(size -> new FrameFile(Path.of("a.jpg"), size, Instant.EPOCH, FileRole.JPEG))
            .toList();
    var frame =
        new Frame(
            null, List.of(), Path.of("."), "a", files, null, true); // Only the sizes are asked for.
    var select =
        new Select(frame, "a", null, OptionalInt.empty(), "A", new LinkedHashMap<>(), List.of());
    return new HandOffPlan("all", List.of(select), List.of());
  }

  @Test
  void aPackageNeedsWholeBlocksItsPapersAndSomeToSpare() {
    long papers = (1 << 20) + 10 * 4096;
    assertThat(Target.needed(planned(), 4096)).isEqualTo(papers);
    assertThat(Target.needed(planned(1), 4096)).isEqualTo(papers + 4096 + 1024);
    assertThat(Target.needed(planned(1, 4095), 4096))
        .isEqualTo(papers + 2 * (4096 + 1024) + 4096 / 50);
    assertThat(Target.needed(planned(9000), 4096)).isEqualTo(papers + 3 * 4096 + 1024 + 180);
    assertThat(Target.needed(planned(9000), 512))
        .isEqualTo((1 << 20) + 10 * 512 + 18 * 512 + 1024 + 180);
  }

  @Test
  void aMegabyteThatIsBegunCounts() {
    assertThat(ByteSizes.megabytes(0)).isEqualTo("0 MB");
    assertThat(ByteSizes.megabytes(1)).isEqualTo("1 MB");
    assertThat(ByteSizes.megabytes(1_000_000)).isEqualTo("1 MB");
    assertThat(ByteSizes.megabytes(1_000_001)).isEqualTo("2 MB");
  }

  @Test
  void aPlaceThatWentMeanwhileIsNamed() throws Exception {
    var drive = Files.createDirectory(folder.resolve("drive"));
    var target = Target.of(drive.resolve("for Bram"));
    Files.delete(drive);
    assertThat(target.roomProblem(planned(1), MetadataMode.NONE, 0, 0).orElseThrow().where())
        .contains("drive");
  }
}
