package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A job folder that was copied to another disk is still the job: its renames can be taken back. */
class CopiedFolderTest {
  /** What a copy does to the times of files. */
  enum Times {
    /** {@code cp -a}, {@code rsync -a}. */
    KEPT,
    /** FAT and exFAT, in steps of two seconds. */
    ROUNDED,
    /** {@code cp -r}, and many a cloud. */
    NEW
  }

  private static final FileTime AT =
      FileTime.from(1_795_000_001_123_456_789L, TimeUnit.NANOSECONDS);

  @TempDir Path scratch;
  private Path root;
  private Path copy;

  @BeforeEach
  void folders() throws IOException {
    root = Files.createDirectory(scratch.toRealPath().resolve("job"));
    copy = root.resolveSibling("copy");
  }

  @ParameterizedTest
  @EnumSource
  void undoTakesBackInACopyAndRedoDoesItAgain(Times times) throws IOException {
    make("a", "bb", "ccc", "d", "e");
    var before = files(root);
    var batch = applied(root, "a", "x", "bb", "ccc", "ccc", "bb", "d", "D", "e", "sub/e");
    var after = files(root);
    copy(times);
    var undone = undo(copy, batch);
    assertThat(files(copy)).isEqualTo(before);
    assertThat(undone.evidence())
        .isEqualTo(times == Times.NEW ? Evidence.COPIES_BY_SIZE : Evidence.COPIES_BY_TIME);
    assertThat(undone.needsAPerson()).isFalse();
    var redone = undo(copy, undone.batch());
    assertThat(redone.evidence()).isEqualTo(Evidence.SAME_FILES);
    assertThat(files(copy)).isEqualTo(after);
    assertThat(files(root)).isEqualTo(after);
  }

  @ParameterizedTest
  @EnumSource
  void aFileOfAnotherSizeIsLeftAndReported(Times times) throws IOException {
    make("a", "bb");
    var batch = applied(root, "a", "x", "bb", "y");
    copy(times);
    Files.writeString(copy.resolve("x"), "quite another file");
    var undone = undo(copy, batch);
    assertThat(undone.renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.SKIPPED, Status.DONE);
    assertThat(undone.renames().getFirst().why()).contains("x was changed or replaced");
    assertThat(files(copy))
        .containsOnly(Map.entry("x", "quite another file"), Map.entry("bb", "bb"));
  }

  @ParameterizedTest
  @EnumSource(names = {"KEPT", "ROUNDED"})
  void whereTheCopyKeptTimesAFileOfAnotherTimeIsLeft(Times times) throws IOException {
    make("a", "b");
    var batch = applied(root, "a", "x", "b", "y");
    copy(times);
    Files.writeString(copy.resolve("x"), "z");
    assertThat(undo(copy, batch).renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.SKIPPED, Status.DONE);
    assertThat(files(copy)).containsOnly(Map.entry("x", "z"), Map.entry("b", "b"));
  }

  @Test
  void aTimeMoreThanTwoSecondsOffIsAnotherTime() throws IOException {
    make("a", "b", "c");
    var batch = applied(root, "a", "x", "b", "y", "c", "z");
    copy(Times.KEPT);
    shift("y", 2_000_000_000L);
    shift("z", 2_000_000_001L);
    assertThat(undo(copy, batch).renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.DONE, Status.DONE, Status.SKIPPED);
  }

  @Test
  void aGroupStaysWholeInACopyToo() throws IOException {
    make("1.raw", "1.jpg");
    var renamer = Renamer.in(root);
    var plan =
        renamer.plan(
            List.of(
                new RenameRequest(Path.of("1.raw"), Path.of("x.raw"), "1"),
                new RenameRequest(Path.of("1.jpg"), Path.of("x.jpg"), "1")));
    var batch = ((Outcome.Applied) renamer.apply(plan, Progress.NONE)).batch();
    copy(Times.NEW);
    Files.writeString(copy.resolve("x.jpg"), "edited and longer");
    assertThat(Renamer.in(copy).undo(batch, Progress.NONE)).isInstanceOf(Outcome.Nothing.class);
    assertThat(files(copy)).containsOnlyKeys("x.raw", "x.jpg");
  }

  @Test
  void whereTheFolderWasNotCopiedAReplacedFileIsAnotherFile() throws IOException {
    make("a", "b");
    var batch = applied(root, "a", "x", "b", "y");
    var other = Files.writeString(root.resolve("other"), "z");
    Files.setLastModifiedTime(other, AT);
    Files.move(other, root.resolve("x"), StandardCopyOption.REPLACE_EXISTING);
    assertThat(undo(root, batch).renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.SKIPPED, Status.DONE);
  }

  @Test
  void aFolderThatWasOnlyMovedHoldsTheVeryFiles() throws IOException {
    make("a");
    var batch = applied(root, "a", "x");
    Files.move(root, copy);
    assertThat(undo(copy, batch).evidence()).isEqualTo(Evidence.SAME_FILES);
    assertThat(files(copy)).containsOnlyKeys("a");
  }

  @ParameterizedTest
  @EnumSource
  void aJournalOfAnEarlierVersionIsBelievedInACopyThatKeptTimes(Times times) throws IOException {
    make("a", "b");
    var batch = applied(root, "a", "x", "b", "y");
    var journal = root.resolve(".framewright/renames").resolve(batch + ".jsonl");
    JournalForge.change(journal, home(journal), "");
    Files.write(journal, end(journal), StandardOpenOption.APPEND);
    copy(times);
    var outcome = Renamer.in(copy).undo(batch, Progress.NONE);
    if (times == Times.NEW) {
      assertThat(outcome).isInstanceOf(Outcome.Nothing.class);
    } else {
      assertThat(outcome).isInstanceOf(Outcome.Applied.class);
      assertThat(files(copy)).containsOnlyKeys("a", "b");
    }
    assertThat(undo(root, batch).evidence()).isEqualTo(Evidence.SAME_FILES);
  }

  @ParameterizedTest
  @EnumSource
  void onAVolumeWithoutFileNumbersHashesTell(Times times) throws IOException {
    make("a", "b", "c");
    var batch = applied(exfat(root), "a", "x", "b", "y", "c", "z");
    copy(times);
    Files.writeString(copy.resolve("y"), "!");
    Files.setLastModifiedTime(copy.resolve("y"), Files.getLastModifiedTime(copy.resolve("x")));
    for (var renamer : List.of(Renamer.in(copy), exfat(copy))) {
      var outcome = renamer.undo(batch, Progress.NONE);
      if (renamer.nextRedo().isEmpty()) {
        assertThat(outcome).isInstanceOf(Outcome.Nothing.class);
        continue;
      }
      assertThat(outcome)
          .isInstanceOfSatisfying(
              Outcome.Applied.class,
              undone ->
                  assertThat(undone.renames())
                      .extracting(PlannedRename::status)
                      .containsExactly(Status.DONE, Status.SKIPPED, Status.DONE));
      assertThat(files(copy))
          .containsOnly(Map.entry("a", "a"), Map.entry("y", "!"), Map.entry("c", "c"));
      return;
    }
    throw new AssertionError("neither took the batch back");
  }

  @ParameterizedTest
  @EnumSource
  void anInterruptedBatchIsRecoveredInACopyOrStandsStillWhole(Times times) throws IOException {
    int recovered = 0;
    int points = 0;
    for (int point = times == Times.NEW ? 1 : 0; ; point += 9) {
      var place = Files.createDirectory(scratch.toRealPath().resolve(times + " " + point));
      var scene = Scene.make(place);
      if (!crashedApply(scene, point)) {
        break;
      }
      points++;
      copy = place.resolveSibling(times + " copy " + point);
      copyTree(place, copy, times);
      var copied = Scene.at(copy);
      var then = copied.now();
      switch (Renamer.in(copy).recover()) {
        case Recovery.RolledBack _ -> {
          recovered++;
          assertThat(copied.now()).as("point " + point).isEqualTo(scene.before());
        }
        case Recovery.Finished _ -> {
          recovered++;
          assertThat(copied.now()).as("point " + point).isEqualTo(scene.after());
        }
        case Recovery.Stuck stuck -> {
          assertThat(copied.now()).as("point " + point).isEqualTo(then);
          assertThat(stuck.files()).allSatisfy(f -> assertThat(f.remedy()).isNotEmpty());
        }
        case Recovery.Nothing _ ->
            assertThat(copied.now()).as("point " + point).isIn(scene.before(), scene.after());
        case Recovery.Refused refused -> throw new AssertionError(refused.toString());
      }
    }
    assertThat(points).isGreaterThan(6);
    assertThat(recovered).isGreaterThan(3);
  }

  /** Two files of one size and one time that swap their names: nothing shows which is which. */
  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void whereNothingSaysFilesApartARecoveryInACopyMovesNothing(boolean timesKept)
      throws IOException {
    make("a", "b");
    var batch = applied(root, "a", "b", "b", "a");
    JournalForge.open(root.resolve(".framewright/renames").resolve(batch + ".jsonl"));
    copy(timesKept ? Times.KEPT : Times.NEW);
    var then = files(copy);
    assertThat(Renamer.in(copy).recover())
        .isInstanceOfSatisfying(
            Recovery.Stuck.class,
            stuck -> assertThat(stuck.files().getFirst().why()).contains("nothing shows"));
    assertThat(files(copy)).isEqualTo(then);
    assertThat(Renamer.in(root).recover()).isInstanceOf(Recovery.Finished.class);
  }

  // ---- helpers

  private void make(String... names) throws IOException {
    Files.createDirectories(root.resolve("sub"));
    for (var name : names) {
      Files.writeString(root.resolve(name), name);
      Files.setLastModifiedTime(root.resolve(name), AT);
    }
  }

  private void shift(String name, long nanos) throws IOException {
    var later = FileTime.from(AT.to(TimeUnit.NANOSECONDS) + nanos, TimeUnit.NANOSECONDS);
    Files.setLastModifiedTime(copy.resolve(name), later);
  }

  private static Renamer exfat(Path folder) throws IOException {
    var disk = new NioDisk(Traits.of("exfat", false), MoverFallback.movers());
    return new Renamer(folder.toRealPath(), disk, Clock.systemUTC(), () -> "0a1b2c3d");
  }

  private static String applied(Path folder, String... pairs) throws IOException {
    return applied(Renamer.in(folder), pairs);
  }

  private static String applied(Renamer renamer, String... pairs) throws IOException {
    var requests = new ArrayList<RenameRequest>();
    for (int i = 0; i < pairs.length; i += 2) {
      requests.add(new RenameRequest(Path.of(pairs[i]), Path.of(pairs[i + 1])));
    }
    var outcome = renamer.apply(renamer.plan(requests), Progress.NONE);
    assertThat(outcome).isInstanceOf(Outcome.Applied.class);
    return ((Outcome.Applied) outcome).batch();
  }

  private static Outcome.Applied undo(Path folder, String batch) throws IOException {
    var outcome = Renamer.in(folder).undo(batch, Progress.NONE);
    assertThat(outcome).isInstanceOf(Outcome.Applied.class);
    return (Outcome.Applied) outcome;
  }

  private static boolean crashedApply(Scene scene, int point) throws IOException {
    var disk = new CrashingDisk(new NioDisk(scene.root(), MoverFallback.movers()), point);
    var renamer = new Renamer(scene.root(), disk, Clock.systemUTC(), () -> "cafe0001");
    try {
      renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
      return false;
    } catch (CrashingDisk.Crash e) {
      return true;
    }
  }

  private static String home(Path journal) throws IOException {
    var line = Files.readAllLines(journal).getFirst();
    int at = line.indexOf(",\"home\":");
    return line.substring(at, line.indexOf(',', at + 1));
  }

  private static byte[] end(Path journal) throws IOException {
    var commit = Files.readAllLines(journal).getLast().substring("{\"commit\":\"".length());
    return JournalWriter.end(
        BatchState.DONE, AT.toInstant(), commit.substring(0, commit.indexOf('"')));
  }

  private void copy(Times times) throws IOException {
    copyTree(root, copy, times);
  }

  private static void copyTree(Path from, Path to, Times times) throws IOException {
    try (var all = Files.walk(from)) {
      for (var path : all.toList()) {
        var target = to.resolve(from.relativize(path));
        if (Files.isDirectory(path)) {
          Files.createDirectory(target);
        } else {
          Files.write(target, Files.readAllBytes(path));
          long time =
              Files.readAttributes(path, BasicFileAttributes.class)
                  .lastModifiedTime()
                  .to(TimeUnit.NANOSECONDS);
          switch (times) {
            case KEPT ->
                Files.setLastModifiedTime(target, FileTime.from(time, TimeUnit.NANOSECONDS));
            case ROUNDED -> {
              long even = Math.floorDiv(time, 2_000_000_000L) * 2_000_000_000L;
              Files.setLastModifiedTime(target, FileTime.from(even, TimeUnit.NANOSECONDS));
            }
            case NEW -> {
              long now = time + TimeUnit.DAYS.toNanos(3);
              Files.setLastModifiedTime(target, FileTime.from(now, TimeUnit.NANOSECONDS));
            }
          }
        }
      }
    }
  }

  private static Map<String, String> files(Path folder) throws IOException {
    var files = new TreeMap<String, String>();
    try (var all = Files.walk(folder)) {
      for (var file : all.filter(path -> Files.isRegularFile(path)).toList()) {
        var path = folder.relativize(file);
        if (!path.startsWith(Folders.OURS)) {
          files.put(path.toString(), Files.readString(file));
        }
      }
    }
    return files;
  }
}
