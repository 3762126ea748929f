package org.framewright.handoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.NoSuchElementException;
import org.framewright.base.SmallFiles;
import org.framewright.disk.SymbolicLinks;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BoundedFileTest {
  @TempDir private Path folder;

  private static List<String> lines(String text) {
    var lines = new ArrayList<String>();
    for (var line : BoundedFile.lines(text.getBytes(StandardCharsets.ISO_8859_1))) {
      lines.add(line.number() + " " + line.text().orElse("none"));
    }
    return lines;
  }

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

  @Test
  void endsLinesAtEveryLineEndThatIsInUse() {
    assertThat(lines("")).isEmpty();
    assertThat(lines("a")).containsExactly("1 a");
    assertThat(lines("a\nb\rc\r\nd")).containsExactly("1 a", "2 b", "3 c", "4 d");
    assertThat(lines("a\n")).containsExactly("1 a");
    assertThat(lines("a\r")).containsExactly("1 a");
    assertThat(lines("a\r\n")).containsExactly("1 a");
    assertThat(lines("\n\r\r\n")).containsExactly("1 ", "2 ", "3 ");
  }

  @Test
  void saysWhichLinesAreNoText() {
    assertThat(lines("a\n\u00E9\nb\0\n\0\nc"))
        .containsExactly("1 a", "2 none", "3 none", "4 none", "5 c");
  }

  @Test
  void hasNoLineBehindTheLast() {
    var lines = BoundedFile.lines(new byte[] {'a'}).iterator();
    lines.next();
    assertThat(lines.hasNext()).isFalse();
    assertThatThrownBy(lines::next).isInstanceOf(NoSuchElementException.class);
  }
}
