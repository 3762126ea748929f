package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.framewright.base.SmallFiles;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoundedFileTest {
  @TempDir private Path folder;

  @Test
  void readsAFileThatIsNoLargerThanItMayBe() throws Exception {
    for (int size : new int[] {1, 1 << 16, (1 << 16) + 1, 200_000}) {
      var content = new byte[size];
      java.util.Arrays.fill(content, (byte) 7);
      var file = Files.write(folder.resolve("file"), content);
      assertThat(BoundedFile.read(file, size))
          .hasValueSatisfying(read -> assertThat(read).isEqualTo(content));
      assertThat(BoundedFile.read(file, size - 1)).isEmpty();
    }
  }

  @Test
  void readsWhatIsLeftOfAnOpenFile() throws Exception {
    var file = Files.writeString(folder.resolve("file"), "abc");
    try (var channel = FileChannel.open(file)) {
      channel.position(1);
      assertThat(SmallFiles.rest(channel, 2).orElseThrow()).containsExactly('b', 'c');
    }
  }

  @Test
  void followsLinksUnlessItIsAskedNotTo() throws Exception {
    var file = Files.writeString(folder.resolve("file"), "abc");
    var link = SymbolicLinks.make(folder.resolve("link"), file);
    assertThat(BoundedFile.read(link, 3)).isPresent();
    assertThatThrownBy(() -> BoundedFile.read(link, 3, LinkOption.NOFOLLOW_LINKS))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("not a regular file");
    assertThatThrownBy(() -> BoundedFile.read(folder, 3))
        .isInstanceOf(FileSystemException.class)
        .hasMessageContaining("not a regular file");
  }
}
