package org.framewright.base;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One work at a time, also on a volume that has no locks. */
class LockFileTest {
  @TempDir private Path folder;
  @TempDir private Path ofThisComputer;
  @TempDir private Path ofAnother;
  private Path lock;
  private Path owner;

  @BeforeEach
  void aVolumeWithoutLocks() throws IOException {
    var share = Recording.on(folder);
    share.withoutLocks();
    lock = share.root().resolve("lock");
    owner = folder.resolve("lock.owner");
  }

  private LockFile here() throws IOException {
    return LockFile.hold(lock, () -> "table-1", ofThisComputer).orElseThrow();
  }

  @Test
  void whereThereAreLocksNothingElseIsWritten() throws IOException {
    try (var _ = LockFile.hold(folder.resolve("lock")).orElseThrow()) {
      assertThat(folder.toFile().list()).containsExactly("lock");
      assertThat(LockFile.hold(folder.resolve("lock"))).isEmpty();
    }
    LockFile.hold(folder.resolve("lock")).orElseThrow().close();
  }

  @Test
  void withoutLocksAFileSaysWhoIsAtWorkAndGoesAfterwards() throws IOException {
    try (var _ = here()) {
      assertThat(owner).content().startsWith("table-1\n");
      assertThat(LockFile.hold(lock, () -> "table-1", ofThisComputer)).isEmpty();
    }
    assertThat(owner).doesNotExist();
    here().close();
  }

  @Test
  void anotherComputerIsNamedAndWaitedFor() throws IOException {
    try (var _ = here()) {
      var other = Recording.on(folder);
      other.withoutLocks();
      assertThatThrownBy(
              () -> LockFile.hold(other.root().resolve("lock"), () -> "table-2", ofAnother))
          .isInstanceOfSatisfying(
              FileProblemException.class,
              e -> {
                assertThat(e.problem().what()).contains("in use by the computer table-1 since 20");
                assertThat(e.problem().where()).endsWith("lock.owner");
                assertThat(e.problem().remedy()).contains("remove this file");
              });
      assertThat(owner).content().startsWith("table-1\n");
    }
    // What failed let go of all that it held.
    LockFile.hold(lock, () -> "table-2", ofAnother).orElseThrow().close();
  }

  @Test
  void whatACrashLeftOnThisComputerIsTakenOver() throws IOException {
    Files.writeString(owner, "table-1\n2026-11-27T09:00:00Z\n");
    try (var _ = here()) {
      assertThat(owner).content().doesNotContain("09:00:00");
    }
    assertThat(owner).doesNotExist();
  }

  @Test
  void anOwnerThatCannotBeReadIsSomebodyElse() throws IOException {
    Files.writeString(owner, "");
    assertThatThrownBy(this::here)
        .isInstanceOf(FileProblemException.class)
        .hasMessageContaining("another computer");
    assertThat(owner).isEmptyFile();
  }

  @Test
  void aFolderOrALinkIsNoLock() throws IOException {
    Files.createDirectory(folder.resolve("lock"));
    assertThatThrownBy(() -> LockFile.hold(folder.resolve("lock")))
        .isInstanceOf(FileSystemException.class);
    var elsewhere = Files.createFile(ofAnother.resolve("file"));
    SymbolicLinks.make(folder.resolve("link"), elsewhere);
    assertThatThrownBy(() -> LockFile.hold(folder.resolve("link")))
        .isInstanceOf(FileSystemException.class);
  }
}
