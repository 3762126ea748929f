package org.framewright.base;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class SmallFilesTest {
  @TempDir private Path folder;

  private Path file(int bytes) throws IOException {
    return Files.write(folder.resolve("file"), new byte[bytes]);
  }

  private static String refusal(Path file, int most, LinkOption... links) {
    var thrown = new String[1];
    assertThatThrownBy(() -> SmallFiles.read(file, most, links))
        .isInstanceOfSatisfying(
            FileProblemException.class,
            refused -> {
              assertThat(refused.problem().where()).isEqualTo(file.toString());
              assertThat(refused.problem().remedy()).isNotEmpty();
              thrown[0] = refused.problem().what();
            });
    return thrown[0];
  }

  @Test
  void aFileOfTheLargestSizeIsReadWholeAndOneByteMoreIsRefused() throws IOException {
    assertThat(SmallFiles.read(file(200_000), 200_000)).hasSize(200_000);
    assertThat(refusal(file(200_001), 200_000)).contains("larger than 195 kB");
    assertThat(SmallFiles.read(file(0), 0)).isEmpty();
  }

  @Test
  void aFolderIsRefusedAndNothingIsMissing() throws IOException {
    assertThat(refusal(folder, 9)).contains("this is a folder");
    assertThatThrownBy(() -> SmallFiles.read(folder.resolve("none"), 9))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aDeviceIsNotOpened() {
    assertThat(refusal(Path.of("/dev/zero"), 9)).contains("a device or a pipe");
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aLinkIsFollowedOnlyWhereThatIsWanted() throws IOException {
    var link = SymbolicLinks.make(folder.resolve("link"), file(3));
    assertThat(SmallFiles.read(link, 9)).hasSize(3);
    assertThat(refusal(link, 9, LinkOption.NOFOLLOW_LINKS)).contains("this is a link");
  }
}
