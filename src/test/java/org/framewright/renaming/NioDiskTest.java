package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** What is written of a journal is on the disk when a call returns, in the order that matters. */
@DisabledOnOs(OS.WINDOWS)
class NioDiskTest {
  private static final int EDGE = 64 * 1024;

  @TempDir private Path folder;
  private Recording recording;
  private Path root;
  private NioDisk disk;

  @BeforeEach
  void aRecordedDisk() throws IOException {
    recording = Recording.on(folder);
    root = recording.root();
    disk = new NioDisk(Traits.of("ext4", false), MoverFallback.movers());
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private List<String> kinds() {
    return recording.ops().stream().map(op -> op.getClass().getSimpleName()).toList();
  }

  private DiskOp last() {
    return recording.ops().getLast();
  }

  @Test
  void aNewFileIsWrittenInItsPartsAndThenFlushed() throws IOException {
    disk.write(root.resolve("journal"), List.of(bytes("one,"), bytes("two,"), bytes("three")));
    assertThat(folder.resolve("journal")).hasContent("one,two,three");
    assertThat(last()).isInstanceOf(DiskOp.Force.class);
    assertThat(kinds().stream().filter("Force"::equals)).hasSize(1);
    assertThatThrownBy(() -> disk.write(root.resolve("journal"), List.of()))
        .isInstanceOf(FileAlreadyExistsException.class);
  }

  @Test
  void aTailReplacesWhatFollowedAndIsFlushed() throws IOException {
    disk.write(root.resolve("journal"), List.of(bytes("head, and an old tail")));
    recording.clear();
    disk.writeTail(root.resolve("journal"), 4, bytes("; new"));
    assertThat(folder.resolve("journal")).hasContent("head; new");
    assertThat(last()).isInstanceOf(DiskOp.Force.class);
  }

  @Test
  void aNewFolderIsFlushedInTheOneThatHoldsIt() throws IOException {
    disk.makeFolder(root.resolve("renames"));
    assertThat(kinds()).last().isEqualTo("Force");
    assertThat(last().toString()).doesNotContain("renames");
    recording.clear();
    disk.makeFolder(root.resolve("renames"));
    assertThat(kinds()).doesNotContain("Force");
    Files.writeString(folder.resolve("file"), "");
    assertThatThrownBy(() -> disk.makeFolder(root.resolve("file")))
        .isInstanceOf(FileAlreadyExistsException.class);
  }

  @Test
  void namesAreFlushedWithTheirFolder() throws IOException {
    disk.sync(root);
    assertThat(kinds()).containsExactly("Force");
  }

  @Test
  void readsFromAPositionOnAndNoMoreThanThereIs() throws IOException {
    Files.writeString(folder.resolve("file"), "0123456789");
    assertThat(disk.read(root.resolve("file"), 3, 4)).isEqualTo(bytes("3456"));
    assertThat(disk.read(root.resolve("file"), 8, 9)).isEqualTo(bytes("89"));
    assertThat(disk.read(root.resolve("file"), 10, 9)).isEmpty();
    assertThat(disk.read(root.resolve("file"), 99, 9)).isEmpty();
  }

  // By this runtime's own SHA-256.
  @Test
  void theHashIsThatOfBothEnds() throws Exception {
    for (int size : new int[] {0, 5, EDGE, EDGE + 7, 3 * EDGE}) {
      var content = new byte[size];
      new Random(size).nextBytes(content);
      Files.write(folder.resolve("file"), content);
      var digest = MessageDigest.getInstance("SHA-256");
      digest.update(Arrays.copyOf(content, Math.min(size, EDGE)));
      digest.update(Arrays.copyOfRange(content, Math.max(0, size - EDGE), size));
      assertThat(disk.hash(root.resolve("file")))
          .as("%d bytes", size)
          .isEqualTo(HexFormat.of().formatHex(digest.digest()));
    }
  }

  @Test
  void aVolumeHasANumberAndAFolderAHomeWhereNumbersAreStable() throws IOException {
    assertThat(disk.volume(folder)).isEqualTo(disk.volume(folder)).isNotEmpty();
    assertThat(disk.volume(folder)).isEqualTo(Files.getAttribute(folder, "unix:dev").toString());
    var one = Files.createDirectory(folder.resolve("one"));
    var two = Files.createDirectory(folder.resolve("two"));
    assertThat(disk.home(one)).isEqualTo(disk.home(one)).isNotEqualTo(disk.home(two));
    assertThat(disk.home(one)).startsWith(Files.getAttribute(one, "unix:ino").toString());
    var unstable = new NioDisk(Traits.of("exfat", false), MoverFallback.movers());
    assertThat(unstable.home(one)).isEmpty();
    Files.writeString(one.resolve("file"), "x");
    assertThat(unstable.look(one.resolve("file")).seen().key()).isEmpty();
    assertThat(disk.look(one.resolve("file")).seen().key())
        .isEqualTo(Files.getAttribute(one.resolve("file"), "unix:ino").toString());
  }

  @Test
  void aPlaceholderGoesAndAnyOtherFileStays() throws IOException {
    var taken = Files.writeString(folder.resolve("taken"), "a frame");
    assertThat(disk.removePlaceholder(taken)).isFalse();
    assertThat(taken).exists();
    var mark = Files.writeString(folder.resolve("mark"), mark());
    assertThat(disk.removePlaceholder(mark)).isTrue();
    assertThat(mark).doesNotExist();
  }

  private static String mark() {
    return "framewright: this name is reserved by a rename in progress\n";
  }

  @Test
  void aSecondNameGoesOnlyIfBothAreOneFile() throws IOException {
    var one = Files.writeString(folder.resolve("one"), "a frame");
    var copy = Files.writeString(folder.resolve("copy"), "a frame");
    assertThat(disk.dropSecondName(one, copy)).isFalse();
    assertThat(copy).exists();
    var link = Files.createLink(folder.resolve("link"), one);
    assertThat(disk.dropSecondName(one, link)).isTrue();
    assertThat(link).doesNotExist();
    assertThat(one).hasContent("a frame");
    // One name twice is no second name.
    assertThat(disk.dropSecondName(one, one)).isFalse();
    assertThat(one).exists();
  }

  @Test
  void aLockIsHeldOnceAndFreeAfterwards() throws IOException {
    var file = folder.resolve("lock");
    var held = disk.lock(file).orElseThrow();
    assertThat(disk.lock(file)).isEmpty();
    held.close();
    disk.lock(file).orElseThrow().close();
    assertThatThrownBy(() -> disk.lock(folder)).isInstanceOf(FileSystemException.class);
    assertThatThrownBy(() -> disk.lock(folder)).isInstanceOf(FileSystemException.class);
    assertThatThrownBy(() -> disk.lock(folder.resolve("none/lock")))
        .isInstanceOf(IOException.class);
  }
}
