package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NoReplaceMoveTest {
  @TempDir private Path folder;

  @Test
  void movesWhereNothingIs() throws IOException {
    var file = Files.writeString(folder.resolve("a"), "mine");
    NoReplaceMove.move(file, folder.resolve("b"));
    assertThat(file).doesNotExist();
    assertThat(folder.resolve("b")).hasContent("mine");
  }

  @Test
  void replacesNothing() throws IOException {
    var file = Files.writeString(folder.resolve("a"), "mine");
    var other = Files.writeString(folder.resolve("b"), "another");
    assertThatExceptionOfType(FileAlreadyExistsException.class)
        .isThrownBy(() -> NoReplaceMove.move(file, other))
        .withMessage(other.toString());
    assertThat(file).hasContent("mine");
    assertThat(other).hasContent("another");
  }

  @Test
  void saysWhatIsNotThere() {
    var none = folder.resolve("none");
    assertThatExceptionOfType(NoSuchFileException.class)
        .isThrownBy(() -> NoReplaceMove.move(none, folder.resolve("b")))
        .withMessage(none.toString());
  }

  /** A file system of Java's own has no native call. */
  @Test
  void movesOnAnotherFileSystemToo() throws IOException {
    try (var zip =
        FileSystems.newFileSystem(folder.resolve("x.zip"), java.util.Map.of("create", "true"))) {
      var file = Files.writeString(zip.getPath("/a"), "mine");
      NoReplaceMove.move(file, zip.getPath("/b"));
      assertThat(Files.readString(zip.getPath("/b"))).isEqualTo("mine");
      assertThat(Files.exists(file)).isFalse();
      Files.writeString(file, "more");
      assertThatExceptionOfType(FileAlreadyExistsException.class)
          .isThrownBy(() -> NoReplaceMove.move(file, zip.getPath("/b")));
    }
  }
}
