package org.framewright.job;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.framewright.base.FileProblemException;
import org.framewright.base.FileProblems;
import org.framewright.disk.SymbolicLinks;
import org.framewright.frames.FrameId;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Folders that look like a job and are not what they should be. */
@DisabledOnOs(OS.WINDOWS)
class JobFolderTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;
  private Path own;

  @BeforeEach
  void aJob() throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    JobStartTest.convention(), root, JobStartTest.VALUES, clock, JobStartTest.DESK))
            .job();
    own = job.folder().resolve(".framewright");
  }

  private void cannotBeOpened(String what, Path where) {
    assertTimeoutPreemptively(
        Duration.ofMinutes(1),
        () ->
            assertThatThrownBy(() -> Job.open(job.folder(), clock, JobStartTest.DESK))
                .satisfies(
                    thrown -> {
                      var problem =
                          thrown instanceof JobException of
                              ? of.problem()
                              : FileProblems.of((IOException) thrown);
                      assertThat(problem.what()).contains(what);
                      assertThat(problem.where()).contains(where.toString());
                      assertThat(problem.remedy()).isNotBlank();
                    }));
  }

  @Test
  void readsNoConventionThroughALink() throws Exception {
    var convention = own.resolve("convention.yaml");
    var elsewhere = Files.move(convention, root.resolve("elsewhere.yaml"));
    SymbolicLinks.make(convention, elsewhere);
    cannotBeOpened("a link, and a plain file is needed here", convention);
    Files.delete(convention);
    SymbolicLinks.make(convention, Path.of("/dev/zero"));
    cannotBeOpened("a link", convention);
    Files.delete(convention);
    Files.createDirectory(convention);
    cannotBeOpened("a folder, and a plain file is needed here", convention);
  }

  @Test
  void doesNotWaitAtAPipe() throws Exception {
    var convention = own.resolve("convention.yaml");
    Files.delete(convention);
    assertThat(new ProcessBuilder("mkfifo", "" + convention).start().waitFor()).isZero();
    cannotBeOpened("a device or a pipe", convention);
  }

  @Test
  void followsNoLinkInPlaceOfItsOwnFolder() throws Exception {
    var elsewhere = Files.move(own, root.resolve("elsewhere"));
    SymbolicLinks.make(own, elsewhere);
    cannotBeOpened("a link, and the job needs a folder here", own);
    Files.delete(own);
    Files.writeString(own, "");
    cannotBeOpened("a file, and the job needs a folder here", own);
    Files.delete(own);
    Files.move(elsewhere, own);
    var log = Files.move(own.resolve("log"), root.resolve("log"));
    SymbolicLinks.make(own.resolve("log"), log);
    cannotBeOpened("a link, and the job needs a folder here", own.resolve("log"));
    Files.delete(own.resolve("log"));
    cannotBeOpened("the job's log is missing", own.resolve("log"));
  }

  @Test
  void saysWhereAConventionIsNotWhatItShouldBe() throws Exception {
    var convention = own.resolve("convention.yaml");
    var text = Files.readString(convention);
    Files.writeString(convention, text.replace("day: {", "day: {{"));
    cannotBeOpened("the job's convention cannot be read", Path.of(convention + ", line "));
    Files.write(convention, new byte[] {(byte) 0xC3, 0x28});
    cannotBeOpened("not text in UTF-8", convention);
    Files.writeString(convention, text + "#" + "x".repeat(1 << 20));
    cannotBeOpened("larger than 1024 kB", convention);
    Files.writeString(convention, "\uFEFF" + text);
    assertThat(Job.open(job.folder(), clock, JobStartTest.DESK).values())
        .isEqualTo(JobStartTest.VALUES);
  }

  @Test
  void neverComesBackInPartsOnceItWasMovedAway() throws Exception {
    var moved = Files.move(job.folder(), root.resolve("moved"));
    assertThatThrownBy(job::refresh)
        .isInstanceOf(FileProblemException.class)
        .hasMessageContaining("the job's log is not there any more");
    for (var attempt :
        new Attempt[] {
          () -> job.select(List.of(new FrameId("a")), true, "Ana"), () -> job.takeBack()
        }) {
      assertThatThrownBy(attempt::run).isInstanceOf(FileProblemException.class);
    }
    assertThat(root.resolve(JobStartTest.NAME)).doesNotExist();
    assertThat(Job.open(moved, clock, JobStartTest.DESK).state()).isEqualTo(job.state());
  }

  private interface Attempt {
    Object run() throws Exception;
  }

  @Test
  void keepsItsTimeWhateverAnEventIsDated() throws Exception {
    Lines.append(
        own.resolve("log/far.jsonl"),
        Lines.event(
            "far",
            1,
            "9999-12-31T23:59:59.999Z",
            "\"marked\",\"setup\":\"1\",\"state\":\"on-set\""));
    var found = Job.open(job.folder(), clock, JobStartTest.DESK);
    assertThat(found.now()).isEqualTo("2026-11-23T09:00:00Z");
    assertThat(found.state().onSet()).isPresent();
    assertThat(found.tally().frames()).isZero();
    assertThat(found.mark("1", SetupState.SHOT, MarkDetails.NONE).setups()).containsKey("1");
    assertThat(found.warnings()).anyMatch(line -> line.contains("clock of far"));
  }

  @Test
  void showsOtherPeoplesTextSafely() throws Exception {
    Lines.append(
        own.resolve("log/odd.jsonl"),
        Lines.event(
            "odd",
            1,
            "2026-11-23T08:00:00Z",
            "\"marked\",\"setup\":\"a\\u001b[2J\\nb\",\"state\":\"shot\""));
    var found = Job.open(job.folder(), clock, JobStartTest.DESK);
    assertThat(found.warnings())
        .singleElement()
        .asString()
        .contains("Setup a\\u{1B}[2J\\u{A}b was worked on");
  }

  // A station's name

  @Test
  void readsAFileUpToItsGreatestSizeOnly() throws Exception {
    var file = Files.writeString(root.resolve("file"), "x".repeat(2048));
    assertThat(PlainFiles.read(file, 2048)).hasSize(2048);
    assertThatThrownBy(() -> PlainFiles.read(file, 2047)).isInstanceOf(FileProblemException.class);
    assertThatThrownBy(() -> PlainFiles.read(root.resolve("none"), 9))
        .isInstanceOf(NoSuchFileException.class);
    assertThat(PlainFiles.look(file.resolve("below"))).isEmpty();
    assertThat(PlainFiles.look(file)).isPresent();
  }

  @Test
  void givesAStationANewNameOnceWhereItsFileWasEmptied() throws Exception {
    var file =
        Files.writeString(Files.createDirectories(root.resolve("settings")).resolve("station"), "");
    var station = Station.kept(file);
    assertThat(file).hasContent(station.name() + "\n");
    assertThat(Station.kept(file)).isEqualTo(station);
    Files.writeString(file, "../../evil\n");
    assertThat(Station.kept(file).name()).matches(".+-[0-9a-f]{8}");
    Files.write(file, "x".repeat(100_000).getBytes(StandardCharsets.UTF_8));
    assertThat(Station.kept(file).name()).hasSizeLessThan(63);
  }

  @Test
  void goesByANameOfItsOwnWhereTheSettingsCannotBeWritten() throws Exception {
    Files.writeString(root.resolve("settings"), "a file");
    var station = Station.kept(root.resolve("settings/station"));
    assertThat(station.name()).matches(".+-[0-9a-f]{8}");
    assertThat(root.resolve("settings")).hasContent("a file");
    Files.createDirectories(root.resolve("other/station"));
    assertThat(Station.kept(root.resolve("other/station")).name()).matches(".+-[0-9a-f]{8}");
    assertThat(root.resolve("other/station")).isEmptyDirectory();
  }
}
