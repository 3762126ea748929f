package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.renaming.SystemVolume.WINDOWS_EXFAT;
import static org.framewright.renaming.SystemVolume.WINDOWS_NTFS;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Renames on the volumes of macOS and Windows, whose answers {@link SystemVolume} holds. */
@EnabledOnOs(OS.LINUX)
class SystemVolumesTest {
  @TempDir private Path scratch;
  private Path root;
  private AccentedScene scene;

  private void folder(SystemVolume volume, String name) throws IOException {
    root = Files.createDirectories(scratch.toRealPath().resolve(name));
    scene = AccentedScene.make(root, volume::listed);
  }

  private Renamer renamer(Disk disk) {
    return new Renamer(root, disk, Clock.systemUTC(), () -> "cafe0001");
  }

  @ParameterizedTest
  @EnumSource
  void theSurestRenameThatWorksThereIsTaken(SystemVolume volume) throws IOException {
    folder(volume, "job");
    var disk = new StandInDisk(volume, root);
    disk.settle(root);
    assertThat(disk.guarantee()).isEqualTo(volume.guarantee());
    assertThat(scene.now()).isEqualTo(AccentedScene.before());
  }

  @ParameterizedTest
  @EnumSource
  void filesAreRenamedTakenBackAndRenamedAgain(SystemVolume volume) throws IOException {
    folder(volume, "job");
    var renamer = renamer(new StandInDisk(volume, root));
    var outcome = renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
    assertThat(outcome).isInstanceOf(Outcome.Applied.class);
    assertThat(scene.now()).isEqualTo(AccentedScene.after());

    var batch = ((Outcome.Applied) outcome).batch();
    var undone = (Outcome.Applied) renamer.undo(batch, Progress.NONE);
    assertThat(undone.renames()).allMatch(rename -> rename.status() == Status.DONE);
    assertThat(scene.now()).isEqualTo(AccentedScene.before());

    assertThat(renamer.undo(undone.batch(), Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(scene.now()).isEqualTo(AccentedScene.after());
  }

  @ParameterizedTest
  @EnumSource
  void whatWasRenamedNeedsNoRenameAnyMore(SystemVolume volume) throws IOException {
    folder(volume, "job");
    var renamer = renamer(new StandInDisk(volume, root));
    renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
    var again =
        List.of(
            new RenameRequest(
                Path.of(volume.listed("Caf\u00e9_2.JPG")), Path.of("Caf\u00e9_2.JPG")),
            new RenameRequest(
                Path.of("day 2", volume.listed("\u00fcber.jpg")), Path.of("day 2/\u00fcber.jpg")));
    assertThat(renamer.plan(again).renames())
        .extracting(PlannedRename::status)
        .containsOnly(Status.UNCHANGED);
  }

  @Tag("slow")
  @ParameterizedTest
  @EnumSource
  void killedAnywhereABatchIsWhollyOldOrWhollyNew(SystemVolume volume) throws IOException {
    boolean survived = false;
    int old = 0;
    int renamed = 0;
    for (int point = 0; !survived; point++) {
      folder(volume, "job" + point);
      var crashing = new CrashingDisk(new StandInDisk(volume, root), point);
      try {
        renamer(crashing).apply(renamer(crashing).plan(scene.requests()), Progress.NONE);
      } catch (CrashingDisk.Crash e) {
        // The system lets go of what a process held.
      }
      survived = crashing.survived();
      var after = renamer(new StandInDisk(volume, root));
      assertThat(after.recover()).as("killed at %d", point).isNotInstanceOf(Recovery.Stuck.class);
      var found = scene.now();
      if (found.equals(AccentedScene.before())) {
        old++;
      } else {
        assertThat(found).as("killed at %d", point).isEqualTo(AccentedScene.after());
        renamed++;
        after.undo(after.nextUndo().orElseThrow().id(), Progress.NONE);
        assertThat(scene.now()).as("taken back after %d", point).isEqualTo(AccentedScene.before());
      }
    }
    assertThat(old).isGreaterThan(10);
    assertThat(renamed).isGreaterThan(1);
  }

  /** Two spellings of one name are two files on Linux and NTFS, and each is found as it is. */
  @Test
  void whereTwoSpellingsAreTwoFilesEachIsItself() throws IOException {
    root = scratch.toRealPath();
    Files.writeString(root.resolve("e\u0301.jpg"), "decomposed");
    assumeTrue(!Files.exists(root.resolve("\u00e9.jpg")), "this disk takes both for one");
    var renamer = Renamer.in(root);
    var plan = renamer.plan(List.of(new RenameRequest(Path.of("\u00e9.jpg"), Path.of("x.jpg"))));
    assertThat(plan.renames().getFirst().why())
        .contains("there is no file \u00e9.jpg, but there is");
    var spelled =
        renamer.plan(List.of(new RenameRequest(Path.of("e\u0301.jpg"), Path.of("\u00e9.jpg"))));
    assertThat(spelled.renames().getFirst().status()).isEqualTo(Status.READY);
    renamer.apply(spelled, Progress.NONE);
    assertThat(root.resolve("\u00e9.jpg")).hasContent("decomposed");
    assertThat(root.resolve("e\u0301.jpg")).doesNotExist();
  }

  @Test
  void aMomentsSharingViolationFailsNoBatch() throws IOException {
    var volume = SystemVolume.WINDOWS_NTFS;
    folder(volume, "job");
    var calls = new StandInCalls(volume);
    var renamer = renamer(new StandInDisk(volume, root, calls));
    var plan = renamer.plan(scene.requests());
    calls.violating(32, 5, 33, 32, 32); // ERROR_SHARING_VIOLATION, _ACCESS_DENIED, _LOCK_VIOLATION
    assertThat(renamer.apply(plan, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(scene.now()).isEqualTo(AccentedScene.after());
  }

  @Test
  void whatAnotherProgramKeepsOpenIsToldAndNothingIsRenamed() throws IOException {
    var volume = SystemVolume.WINDOWS_NTFS;
    folder(volume, "job");
    var before = new StandInDisk(volume, root);
    var plan = renamer(before).plan(scene.requests());
    var calls = new StandInCalls(volume);
    var disk = new StandInDisk(volume, root, calls);
    disk.settle(root);
    calls.violating(heldOpenForLong());
    var renamer = renamer(disk);
    var outcome = renamer.apply(plan, Progress.NONE);
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    assertThat(((Outcome.Refused) outcome).why()).contains("holds it open");
    assertThat(scene.now()).isEqualTo(AccentedScene.before());
  }

  private static Integer[] heldOpenForLong() {
    var errors = new Integer[200];
    Arrays.fill(errors, 32);
    return errors;
  }

  /** Microsoft, "CreateFileW" and "FlushFileBuffers": a handle that may write, of a folder. */
  @Test
  void aFolderOfWindowsIsFlushedThroughAHandleOfItsOwn() throws IOException {
    root = scratch.toRealPath();
    var calls = new StandInCalls.FolderCalls(77);
    assertThat(calls.calls().flush(root, WINDOWS_NTFS.traits())).isTrue();
    assertThat(calls.asked)
        .containsExactly("open " + root + " 40000000 7 3 2000000", "flush 77", "close 77");
  }

  @Test
  void aFolderOfWindowsThatIsRefusedIsLetBe() throws IOException {
    root = scratch.toRealPath();
    var calls = new StandInCalls.FolderCalls(-1);
    assertThat(calls.calls().flush(root, WINDOWS_NTFS.traits())).isFalse();
    assertThat(calls.asked).hasSize(1);
  }

  /** Windows-driver-samples, fastfat/flush.c: the flush of another folder does nothing there. */
  @Test
  void onFatOfWindowsTheRootOfTheVolumeIsFlushed() throws IOException {
    root = scratch.toRealPath();
    var calls = new StandInCalls.FolderCalls(77);
    assertThat(calls.calls().flush(root, WINDOWS_EXFAT.traits())).isTrue();
    assertThat(calls.asked).first().isEqualTo("open / 40000000 7 3 2000000");
  }

  /** The runtime of Windows gives files no numbers; BasicFileAttributes.fileKey is null. */
  @Test
  void twoNamesOfOneFileAreBlockedWhereFilesHaveNoNumbers() throws IOException {
    root = scratch.toRealPath();
    Files.writeString(root.resolve("b"), "b");
    Files.createLink(root.resolve("b2"), root.resolve("b"));
    Files.writeString(root.resolve("c"), "c");
    Files.setLastModifiedTime(root.resolve("c"), Files.getLastModifiedTime(root.resolve("b")));
    var plan = swap(WINDOWS_NTFS);
    assertThat(plan.renames())
        .extracting(PlannedRename::status)
        .containsExactly(Status.BLOCKED, Status.BLOCKED, Status.READY);
    assertThat(plan.renames().getFirst().why()).contains("b and b2 are two names of one file");
    // FAT has no links; there nobody is asked.
    assertThat(swap(WINDOWS_EXFAT).ready()).isEqualTo(3);
  }

  private Plan swap(SystemVolume volume) throws IOException {
    return renamer(new StandInDisk(volume, root))
        .plan(
            List.of(
                new RenameRequest(Path.of("b"), Path.of("b2")),
                new RenameRequest(Path.of("b2"), Path.of("b")),
                new RenameRequest(Path.of("c"), Path.of("d"))));
  }
}
