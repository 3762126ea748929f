package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.lang.System.Logger.Level;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.framewright.base.Progress;
import org.framewright.disk.Volume;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Renames on other file systems than the one of the tests, and through real power cuts of theirs.
 */
@Tag("slow")
class VolumeTest {
  @TempDir(cleanup = CleanupMode.ON_SUCCESS)
  Path scratch;

  private final Map<String, Integer> tally = new TreeMap<>();

  private Volume volume(String type) throws IOException {
    return switch (type) {
      case "ext4" -> Volume.loop(scratch, "ext4", 32, "mkfs.ext4", "-q", "-F");
      case "xfs" -> Volume.loop(scratch, "xfs", 320, "mkfs.xfs", "-q", "-f");
      case "btrfs" -> Volume.loop(scratch, "btrfs", 128, "mkfs.btrfs", "-q", "-f");
      case "ntfs" ->
          Volume.made(
              scratch, "ntfs", 16, List.of("mkfs.ntfs", "-q", "-F", "-Q"), List.of("ntfs-3g"));
      case "exfat" ->
          Volume.made(
              scratch,
              "exfat",
              16,
              List.of("mkfs.exfat"),
              List.of("mount", "-t", "exfat-fuse", "-o", "loop"));
      default -> throw new IllegalArgumentException(type);
    };
  }

  @ParameterizedTest
  @ValueSource(strings = {"ext4", "xfs"})
  void aPowerCutAtAnyMomentOfAnApplyEndsWhollyOldOrWhollyNew(String type, TestReporter reporter)
      throws Exception {
    int points = 0;
    try (var volume = volume(type)) {
      // Every change has a moment before and a moment after; steps of five meet both kinds.
      for (int point = 0; crashedApply(volume.root(), point, true); point += 5) {
        volume.cutPower();
        endsWhole(Scene.at(volume.root().resolve("scene" + point)));
        points++;
      }
    }
    report(reporter, type, points + " power cuts: " + tally);
    assertThat(points).isGreaterThan(12);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ext4", "xfs", "btrfs", "ntfs", "exfat"})
  void anApplyThatCrashesAtAnyMomentEndsWholeOnEveryFileSystem(String type, TestReporter reporter)
      throws Exception {
    int points = 0;
    try (var volume = volume(type)) {
      for (int point = 0; crashedApply(volume.root(), point, false); point += 3) {
        endsWhole(Scene.at(volume.root().resolve("scene" + point)));
        points++;
      }
    }
    report(reporter, type, points + " crashes: " + tally);
    assertThat(points).isGreaterThan(20);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ext4: NATIVE", "xfs: NATIVE", "btrfs: NATIVE", "ntfs: LINKED", "exfat: RESERVED"})
  void appliesUndoesAndReportsTheGuarantee(String expected) throws Exception {
    var type = expected.substring(0, expected.indexOf(':'));
    try (var volume = volume(type)) {
      var scene = Scene.make(volume.root());
      var renamer = Renamer.in(volume.root());
      var outcome = renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
      assertThat(outcome)
          .isInstanceOfSatisfying(
              Outcome.Applied.class,
              applied -> {
                assertThat(type + ": " + applied.guarantee()).isEqualTo(expected);
                assertThat(applied.needsAPerson()).isFalse();
              });
      assertThat(scene.now()).isEqualTo(scene.after());
      var undone = renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
      assertThat(undone)
          .isInstanceOfSatisfying(
              Outcome.Applied.class, applied -> assertThat(applied.needsAPerson()).isFalse());
      assertThat(scene.now()).isEqualTo(scene.before());
    }
  }

  /** This mount shows every name in lower case, whatever was written. */
  @Test
  void onAMountThatIgnoresCaseSwapsAndCaseChangesLoseNothing() throws Exception {
    var mkfs = List.of("mkfs.ntfs", "-q", "-F", "-Q");
    var mounting = List.of("lowntfs-3g", "-o", "ignore_case");
    try (var volume = Volume.made(scratch, "lowntfs", 16, mkfs, mounting)) {
      for (var name : List.of("a", "b", "case", "plain")) {
        Files.writeString(volume.root().resolve(name), name);
      }
      var renamer = Renamer.in(volume.root());
      var plan =
          renamer.plan(
              List.of(
                  new RenameRequest(Path.of("a"), Path.of("B")),
                  new RenameRequest(Path.of("b"), Path.of("A")),
                  new RenameRequest(Path.of("case"), Path.of("CASE")),
                  new RenameRequest(Path.of("plain"), Path.of("new"))));
      assertThat(plan.ready()).isEqualTo(4);
      assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
      assertThat(Scene.at(volume.root()).now())
          .containsExactlyInAnyOrderEntriesOf(
              Map.of("a", "b", "b", "a", "case", "case", "new", "plain"));
    }
  }

  @Test
  void onAFullVolumeNothingIsBegun() throws Exception {
    try (var volume = Volume.tmpfs(scratch, 256)) {
      var scene = Scene.make(volume.root());
      var renamer = Renamer.in(volume.root());
      var plan = renamer.plan(scene.requests());
      var filler = volume.root().resolve("filler");
      fill(filler);
      assertThat(renamer.apply(plan, Progress.NONE))
          .isInstanceOfSatisfying(
              Outcome.Refused.class,
              refused -> assertThat(refused.why()).contains("cannot be written"));
      Files.delete(filler);
      assertThat(scene.now()).isEqualTo(scene.before());
      assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
      assertThat(scene.now()).isEqualTo(scene.after());
    }
  }

  @Test
  void onAReadOnlyVolumeNothingIsBegun() throws Exception {
    try (var volume = Volume.tmpfs(scratch, 256)) {
      var scene = Scene.make(volume.root());
      var renamer = Renamer.in(volume.root());
      var plan = renamer.plan(scene.requests());
      volume.remountReadOnly();
      assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Refused.class);
      assertThat(scene.now()).isEqualTo(scene.before());
    }
  }

  @Test
  void aFolderOnAnotherVolumeIsBlocked() throws Exception {
    try (var volume = Volume.tmpfs(scratch, 256)) {
      Files.writeString(scratch.resolve("a"), "a");
      var plan =
          Renamer.in(scratch)
              .plan(
                  List.of(
                      new RenameRequest(Path.of("a"), volume.root().getFileName().resolve("a"))));
      assertThat(plan.renames().getFirst().why()).contains("another volume");
    }
  }

  private static void report(TestReporter reporter, String type, String what) {
    reporter.publishEntry(type, what);
    System.getLogger(VolumeTest.class.getName()).log(Level.INFO, type + ": " + what);
  }

  private static void fill(Path file) throws IOException {
    try (var out = Files.newOutputStream(file)) {
      var block = new byte[1024];
      for (boolean full = false; !full; ) {
        try {
          out.write(block);
        } catch (IOException e) {
          full = true;
        }
      }
    }
  }

  /** False if the point lies behind the end of the apply. */
  private boolean crashedApply(Path volume, int point, boolean flushed) throws Exception {
    var root = Files.createDirectory(volume.resolve("scene" + point));
    var scene = Scene.make(root);
    if (flushed) {
      assertThat(Volume.run(List.of("sync", "-f", root.toString()))).isTrue();
    }
    var disk = new CrashingDisk(new NioDisk(root, MoverFallback.movers()), point);
    var renamer = new Renamer(root, disk, Clock.systemUTC(), () -> "cafe0001");
    try {
      renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
      return false;
    } catch (CrashingDisk.Crash e) {
      return true;
    }
  }

  private void endsWhole(Scene scene) throws IOException {
    var recovery = Renamer.in(scene.root()).recover();
    assertThat(recovery)
        .isNotInstanceOf(Recovery.Stuck.class)
        .isNotInstanceOf(Recovery.Refused.class);
    var now = scene.now();
    assertThat(now).isIn(scene.before(), scene.after());
    tally.merge(
        recovery.getClass().getSimpleName() + (now.equals(scene.before()) ? " old" : " new"),
        1,
        Integer::sum);
  }
}
