package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.copies.Copier;
import org.framewright.copies.CopyOutcome;
import org.framewright.copies.CopyPlan;
import org.framewright.copies.device.Commands;
import org.framewright.copies.device.LoopVolume;
import org.framewright.copies.device.Volumes;
import org.framewright.disk.Strace;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Cards and backups on real volumes that fail: a card that cannot be read, a disk that is pulled.
 */
@Tag("slow")
class CopiesOnVolumesTest {
  private static final int FILES = 5;
  private static final int SIZE = 3 << 20;

  @TempDir(cleanup = CleanupMode.ON_SUCCESS)
  Path scratch;

  private Path real;
  private Path job;

  @BeforeEach
  void aJob() throws IOException {
    real = scratch.toRealPath();
    job = Ran.startIn(Files.createDirectory(real.resolve("laptop")));
  }

  /** Frames, a voice memo, a hidden index. */
  private static List<Path> fill(Path card) throws IOException {
    var files = new ArrayList<Path>();
    var random = new Random(4);
    for (int i = 0; i < FILES; i++) {
      var bytes = new byte[SIZE + i * 513];
      random.nextBytes(bytes);
      files.add(write(card.resolve("DCIM/100STUDI/A_000" + i + ".RAW"), bytes));
    }
    files.add(write(card.resolve("DCIM/100STUDI/A_0001.WAV"), new byte[70]));
    files.add(write(card.resolve("MISC/.index"), new byte[1]));
    return files;
  }

  private static Path write(Path file, byte[] bytes) throws IOException {
    Files.createDirectories(file.getParent());
    Files.write(file, bytes);
    return Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2026-11-23T09:00:07.5Z")));
  }

  private Path folder(String name) throws IOException {
    return Files.createDirectory(real.resolve(name));
  }

  private List<String> program(Object... words) {
    var program = new ArrayList<String>();
    program.add("-Dframewright.settings=" + real.resolve("settings"));
    program.add(Framewright.class.getName());
    for (var word : words) {
      program.add(word.toString());
    }
    return program;
  }

  /** Everything about every file and folder that a look from outside can tell. */
  private static SortedMap<String, String> state(Path folder) throws IOException {
    var state = new TreeMap<String, String>();
    try (var paths = Files.walk(folder)) {
      for (var path : paths.toList()) {
        var all = new TreeMap<>(Files.readAttributes(path, "unix:*", LinkOption.NOFOLLOW_LINKS));
        all.remove("dev");
        all.remove("rdev");
        all.remove("fileKey");
        state.put(folder.relativize(path).toString(), all.toString());
      }
      // Contents last: on a volume that can be written, reading moves the time of access.
      for (var path : List.copyOf(state.keySet())) {
        var file = folder.resolve(path);
        if (Files.isRegularFile(file)) {
          state.merge(path, Sha256.of(Files.readAllBytes(file)), String::concat);
        }
      }
    }
    return state;
  }

  // ---- a card that cannot be read

  @Test
  void aCardOfWhichAFileCannotBeReadIsNeverClear() throws Exception {
    var files = fill(folder("A1"));
    for (var name : List.of("one", "two")) {
      assertThat(
              Ran.run("copy", job, "--from", real.resolve("A1"), "--to", real.resolve(name))
                  .status())
          .isZero();
    }
    var strace = Strace.in(real).on(files.subList(2, 3));
    for (var when : List.of("1", "2", "3", "1+")) {
      var run =
          strace.run(
              program("copies", job, "--card", real.resolve("A1"), "--needed", "1", "--json"),
              "pread64,read:error=EIO:when=" + when);
      assertThat(strace.injected()).as("a read failed").isTrue();
      assertThat(run.status()).as(run.output()).isEqualTo(1);
      assertThat(run.output())
          .contains("\"answer\" : \"not-yet\"", "A_0002.RAW")
          // The look at the picture and the reading of the whole file may fail each.
          .containsAnyOf("\"rule\" : \"read\"", "\"rule\" : \"whole-pictures\"")
          .contains("the disk could not read or write it")
          .doesNotContain("may-be-cleared", "Exception", "\tat ");
    }
  }

  @Test
  void aCopyReadsAgainThenNamesTheFileAndGoesOn() throws Exception {
    var files = fill(folder("A1"));
    var strace = Strace.in(real).on(files.subList(2, 3));
    var once =
        strace.run(
            program("copy", job, "--from", real.resolve("A1"), "--to", real.resolve("once")),
            "pread64,read:error=EIO:when=1");
    assertThat(strace.injected()).isTrue();
    assertThat(once.status()).as(once.output()).isZero();
    var always =
        strace.run(
            program("copy", job, "--from", real.resolve("A1"), "--to", real.resolve("always")),
            "pread64,read:error=EIO:when=1+");
    assertThat(always.status()).as(always.output()).isEqualTo(1);
    assertThat(always.output())
        .contains("A_0002.RAW", "the disk could not read or write it")
        .doesNotContain("Exception", "\tat ");
    assertThat(real.resolve("always/DCIM/100STUDI/A_0002.RAW")).doesNotExist();
    assertThat(real.resolve("always/DCIM/100STUDI/A_0003.RAW")).exists();
    assertThat(parts(real.resolve("always"))).isEmpty();
  }

  @Test
  void aCopyOfACardThatFailsEndsWithTheWordToStopUsingIt() throws Exception {
    var files = fill(folder("A1"));
    var strace = Strace.in(real).on(files);
    var run =
        strace.run(
            program("copy", job, "--from", real.resolve("A1"), "--to", real.resolve("to")),
            "pread64,read:error=EIO:when=1+");
    assertThat(run.status()).as(run.output()).isEqualTo(4);
    assertThat(run.output()).contains("Stop using this card").doesNotContain("Exception", "\tat ");
    assertThat(real.resolve("to")).doesNotExist();
  }

  private static List<Path> parts(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return files.filter(file -> file.toString().endsWith(".part")).toList();
    }
  }

  // ---- a disk that fails while it is copied to

  /** Does something once so many MiB were read. */
  private static Progress at(int mebibytes, Runnable action) {
    return new Progress() {
      private boolean done;

      @Override
      public void step(int now, int total) {
        if (now >= mebibytes && !done) {
          done = true;
          action.run();
        }
      }
    };
  }

  private CopyOutcome copy(Path from, Progress progress, Path... to) throws Exception {
    return new Copier(Volumes.ofThisSystem())
        .copy(Job.open(job, Clock.systemUTC()), CopyPlan.of(from, List.of(to)), progress);
  }

  @Test
  void aDiskThatFillsUpGetsNothingHalfMadeAndTheOtherOneGetsAll() throws Exception {
    fill(folder("A1"));
    var full = folder("full");
    Commands.runOrSkip(List.of("mount", "-t", "tmpfs", "-o", "size=24m", "none", full.toString()));
    try {
      // Another program takes the room while the copy runs.
      Runnable filler =
          () -> {
            try (var out = Files.newOutputStream(full.resolve("filler"))) {
              for (int i = 0; i < 100; i++) {
                out.write(new byte[1 << 20]);
              }
            } catch (IOException e) {
              // It is full now.
            }
          };
      var outcome = copy(real.resolve("A1"), at(5, filler), full, real.resolve("other"));
      var report = ((CopyOutcome.Done) outcome).report();
      assertThat(report.isWhole()).isFalse();
      var target = report.targets().getFirst();
      assertThat(target.failed()).isNotEmpty();
      assertThat(target.failed().getFirst().what()).isEqualTo("the disk is full");
      assertThat(report.targets().getLast().verified()).isEqualTo(FILES + 2);
      assertThat(parts(full)).isEmpty();
      for (var copied : copied(full, real.resolve("A1"))) {
        assertThat(Files.mismatch(copied, real.resolve("A1").resolve(full.relativize(copied))))
            .isEqualTo(-1);
      }
      Files.delete(full.resolve("filler"));
      var again = ((CopyOutcome.Done) copy(real.resolve("A1"), Progress.NONE, full)).report();
      assertThat(again.isWhole()).isTrue();
      assertThat(again.targets().getFirst().failed()).isEmpty();
    } finally {
      Commands.run(List.of("umount", "-l", full.toString()));
    }
  }

  private static List<Path> copied(Path folder, Path card) throws IOException {
    try (var files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .filter(file -> Files.exists(card.resolve(folder.relativize(file))))
          .toList();
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 4, 8, 15})
  void aDiskThatIsPulledOutIsToldAndNothingIsWrittenWhereItWas(int moment) throws Exception {
    fill(folder("A1"));
    try (var volume = LoopVolume.of(folder("volume"), "ext4")) {
      var target = volume.folder();
      var outcome = copy(real.resolve("A1"), at(moment, volume::pullOut), target);
      var report =
          outcome instanceof CopyOutcome.Done done
              ? done.report()
              : ((CopyOutcome.Stopped) outcome).report();
      assertThat(report.isWhole()).isFalse();
      assertThat(report.targets().getFirst().failed().getFirst().what())
          .isEqualTo("the drive or the server is gone");
      assertThat(target).as("the folder that it was mounted on").isEmptyDirectory();

      volume.takeOutAndPutIn();
      var again = ((CopyOutcome.Done) copy(real.resolve("A1"), Progress.NONE, target)).report();
      assertThat(again.isWhole()).isTrue();
      assertThat(again.targets().getFirst().failed()).isEmpty();
      assertThat(parts(target)).isEmpty();
      assertThat(job.resolve(".framewright/copies")).isEmptyDirectory();
    }
  }

  @Test
  void aCardThatIsPulledOutEndsTheCopy() throws Exception {
    try (var volume = LoopVolume.of(folder("volume"), "ext4")) {
      fill(volume.folder());
      var outcome = copy(volume.folder(), at(5, volume::pullOut), real.resolve("to"));
      assertThat(outcome)
          .isInstanceOfSatisfying(
              CopyOutcome.Stopped.class,
              stopped -> {
                assertThat(stopped.problem().what()).contains("is not connected any more");
                assertThat(stopped.report().targets().getFirst().copied()).isBetween(1, FILES);
              });
      volume.takeOutAndPutIn();
      var again = copy(volume.folder(), Progress.NONE, real.resolve("to"));
      // The volume has a folder of its own that an ext4 always has, and that is empty.
      assertThat(((CopyOutcome.Done) again).report().isWhole()).isTrue();
    }
  }

  // ---- a card whose lock is closed

  @ParameterizedTest
  @ValueSource(strings = {"ext4", "exfat"})
  void aLockedCardIsComparedAndCopiedAndStaysByteForByteAsItWas(String type) throws Exception {
    try (var volume = LoopVolume.of(folder("volume"), type)) {
      fill(volume.folder());
      if (type.equals("ext4")) {
        volume.lock();
      }
      var image = sha256(volume.image());
      var before = state(volume.folder());
      var copied =
          Ran.run("copy", job, "--from", volume.folder(), "--to", real.resolve("one"), "--mhl");
      assertThat(copied.status()).as(copied.toString()).isZero();
      var ran = Ran.run("copies", job, volume.folder(), real.resolve("one"), "--mhl");
      assertThat(ran.status()).as(ran.toString()).isEqualTo(1);
      assertThat(ran.out()).contains("card mount (7 files");
      if (type.equals("ext4")) {
        assertThat(state(volume.folder())).isEqualTo(before);
        assertThat(sha256(volume.image())).isEqualTo(image);
      } else {
        assertThat(withoutAccess(state(volume.folder()))).isEqualTo(withoutAccess(before));
      }
    }
  }

  /** Only a closed lock keeps a system from noting when a file was read. */
  private static List<String> withoutAccess(SortedMap<String, String> state) {
    return state.values().stream()
        .map(text -> text.replaceAll("lastAccessTime=[^,}]*", ""))
        .toList();
  }

  private static String sha256(Path file) {
    try {
      return Sha256.of(Files.readAllBytes(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
