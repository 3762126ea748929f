package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderFilesTest {
  @TempDir private Path folder;

  private void write(String... names) throws Exception {
    for (var name : names) {
      Files.createDirectories(folder.resolve(name).getParent());
      Files.writeString(folder.resolve(name), name);
    }
  }

  @Test
  void givesFilesByTheirPathsAndTheirSizes() throws Exception {
    write("b", "a/x", "a.txt", "c/d/e");
    var below = FolderFiles.below(folder);
    assertThat(below.files())
        .extracting(FolderFiles.Found::name)
        .containsExactly("a.txt", "a/x", "b", "c/d/e");
    assertThat(below.files()).extracting(FolderFiles.Found::bytes).containsExactly(5L, 3L, 1L, 5L);
    assertThat(below.files().getLast().path()).isEqualTo(folder.resolve("c/d/e"));
    assertThat(below.others()).isEmpty();
    assertThat(below.all()).isTrue();
  }

  @Test
  void passesOverFoldersThatAreHiddenAndThoseOfTheSystem() throws Exception {
    write(".git/x", "System Volume Information/x", "$RECYCLE.BIN/x", "__MACOSX/x", ".file", "a");
    assertThat(FolderFiles.below(folder).files())
        .extracting(FolderFiles.Found::name)
        .containsExactly(".file", "a");
    assertThat(FolderFiles.below(folder.resolve(".git")).files()).hasSize(1);
  }

  @Test
  void namesLinksPipesAndFoldersThatAreTooDeep() throws Exception {
    write("a");
    SymbolicLinks.make(folder.resolve("z link"), folder.resolve("a"));
    SymbolicLinks.make(folder.resolve("a link"), folder);
    HandOffRecordsTest.pipe(folder.resolve("pipe"));
    write("d/".repeat(63) + "file");
    Files.createDirectories(folder.resolve("d/".repeat(64)));
    var below = FolderFiles.below(folder);
    assertThat(below.files())
        .extracting(FolderFiles.Found::name)
        .containsExactly("a", "d/".repeat(63) + "file");
    assertThat(below.others())
        .extracting(other -> other.name() + ": " + other.problem().what())
        .containsExactly(
            "a link: this is a link, and links are not followed",
            "d/".repeat(63) + "d: this folder is too deep to look into",
            "pipe: this is neither a file nor a folder",
            "z link: this is a link, and links are not followed");
    assertThat(below.others())
        .allSatisfy(
            other -> {
              assertThat(other.problem().where()).isEqualTo(folder.resolve(other.name()) + "");
              assertThat(other.problem().remedy()).isNotBlank();
            });
  }

  @Test
  void aFolderThatIsNotThereIsAnError() {
    assertThatThrownBy(() -> FolderFiles.below(folder.resolve("nothing")))
        .isInstanceOf(NoSuchFileException.class);
  }
}
