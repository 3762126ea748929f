package org.framewright.renaming;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.framewright.base.Progress;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What people see of a batch that was begun and not ended. */
@DisabledOnOs(OS.WINDOWS)
class InterruptedBatchTest {
  private static final Instant AT = Instant.parse("2026-11-23T10:00:00Z");

  @TempDir private Path folder;
  private Path root;
  private Renamer renamer;

  @BeforeEach
  void aFolderOfFiles() throws IOException {
    root = folder.toRealPath();
    for (var name : List.of("a", "b", "c")) {
      Files.writeString(root.resolve(name), name);
    }
    renamer = Renamer.in(root);
  }

  private static List<RenameRequest> requests() {
    return List.of(request("a", "x"), request("b", "y"), request("c", "z"));
  }

  private static RenameRequest request(String from, String to) {
    return new RenameRequest(Path.of(from), Path.of(to));
  }

  private void crash(int point) throws IOException {
    var disk = new CrashingDisk(new NioDisk(root, MoverFallback.movers()), point);
    var crashing = new Renamer(root, disk, Clock.fixed(AT, ZoneOffset.UTC), () -> "cafe0001");
    var plan = crashing.plan(requests());
    assertThat(catchThrowable(() -> crashing.apply(plan, Progress.NONE)))
        .isInstanceOf(CrashingDisk.Crash.class);
  }

  /** Crashes amid the renames: some files have their new names, and some do not. */
  private void crashAmid() throws IOException {
    for (int point = 1; point < 40; point++) {
      crash(point);
      boolean some = Files.exists(root.resolve("x")) || Files.exists(root.resolve("y"));
      if (some && Files.exists(root.resolve("c"))) {
        return;
      }
      renamer.recover();
      if (Files.exists(root.resolve("x"))) {
        renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
      }
    }
    throw new AssertionError("no crash amid the renames");
  }

  @Test
  void aFolderWithoutBatchesHasNothingToRecover() throws IOException {
    assertThat(renamer.interrupted()).isEmpty();
    assertThat(renamer.recover()).isInstanceOf(Recovery.Nothing.class);
    assertThat(renamer.close()).isInstanceOf(Recovery.Nothing.class);
    assertThat(root.toFile().list()).containsExactlyInAnyOrder("a", "b", "c");
    var empty = renamer.prune(AT, true);
    assertThat(empty.dropped()).isEmpty();
    assertThat(empty.kept()).isEmpty();
  }

  @Test
  void itIsNamedWithItsTimeAndSizeUntilItIsRecovered() throws IOException {
    crashAmid();
    var interrupted = renamer.interrupted().orElseThrow();
    assertThat(interrupted.batch()).endsWith("-cafe0001");
    assertThat(interrupted.at()).isEqualTo(AT);
    assertThat(interrupted.renames()).isEqualTo(3);
    assertThat(renamer.batches().getLast().state()).isEqualTo(BatchState.OPEN);

    assertThat(renamer.recover())
        .isInstanceOfAny(Recovery.RolledBack.class, Recovery.Finished.class);
    assertThat(renamer.interrupted()).isEmpty();
    assertThat(root.resolve("a").toFile().exists() && root.resolve("x").toFile().exists())
        .isFalse();
  }

  @Test
  void nothingElseIsRenamedBeforeItIsRecovered() throws IOException {
    crashAmid();
    Files.writeString(root.resolve("d"), "d");
    var plan = renamer.plan(List.of(request("d", "w")));
    assertThat(renamer.apply(plan, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Refused.class, refused -> assertThat(refused.why()).contains("interrupted"));
    assertThat(root.resolve("d")).exists();
    renamer.recover();
    assertThat(renamer.apply(renamer.plan(List.of(request("d", "w"))), Progress.NONE))
        .isInstanceOf(Outcome.Applied.class);
  }

  @Test
  void whoeverIsAtWorkOnItIsNotInterrupted() throws IOException {
    crashAmid();
    var lock = root.resolve(".framewright/renames/lock");
    assertThat(lock).exists();
    try (var held = new NioDisk(root, List.of()).lock(lock).orElseThrow()) {
      assertThat(held).isNotNull();
      assertThat(renamer.interrupted()).isEmpty();
      assertThat(renamer.recover()).isInstanceOf(Recovery.Refused.class);
    }
    assertThat(renamer.interrupted()).isPresent();
  }

  @Test
  void itIsKeptWhenOldJournalsAreDropped() throws IOException {
    crashAmid();
    var kept = renamer.prune(AT.plusSeconds(1), true).kept();
    assertThat(kept).extracting(Batch::state).contains(BatchState.OPEN);
    assertThat(renamer.interrupted()).isPresent();
  }

  @Test
  void aVolumeWhoseRenamesArePlainlyNotAtomicIsSaid() throws IOException {
    var exfat = new NioDisk(Traits.of("exfat", false), MoverFallback.movers());
    var careful = new Renamer(root, exfat, Clock.systemUTC(), () -> "cafe0002");
    assertThat(careful.volumeWarning().orElseThrow()).contains("exfat").contains("power cut");
    var ext4 = new NioDisk(Traits.of("ext4", false), MoverFallback.movers());
    assertThat(new Renamer(root, ext4, Clock.systemUTC(), () -> "cafe0003").volumeWarning())
        .isEmpty();
    assertThat(careful.root()).isEqualTo(root);
  }

  @Test
  void aPlanOfAnotherFolderIsRefused(@TempDir Path other) throws IOException {
    Files.writeString(other.resolve("a"), "a");
    var plan = Renamer.in(other).plan(List.of(request("a", "x")));
    assertThat(renamer.apply(plan, Progress.NONE))
        .isInstanceOfSatisfying(
            Outcome.Refused.class, refused -> assertThat(refused.why()).contains("was made for"));
  }
}
