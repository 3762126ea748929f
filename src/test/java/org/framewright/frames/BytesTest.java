package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.ClosedChannelException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BytesTest {
  /** Of so many bytes a piece is read at once. */
  private static final int PIECE = 16 << 10;

  @TempDir private Path folder;

  private static Bytes bytes(int... values) {
    var bytes = new byte[values.length];
    for (int i = 0; i < values.length; i++) {
      bytes[i] = (byte) values[i];
    }
    return Bytes.of(bytes);
  }

  private Path file(byte[] content) throws IOException {
    return Files.write(folder.resolve("a.jpg"), content);
  }

  private Path sparse(long length) throws IOException {
    var file = folder.resolve("a.jpg");
    try (var sparse = new RandomAccessFile(file.toFile(), "rw")) {
      sparse.setLength(length);
    }
    return file;
  }

  // What lies inside

  @ParameterizedTest
  @CsvSource({
    "0, 10, true",
    "10, 0, true",
    "9, 1, true",
    "0, 0, true",
    "0, 11, false",
    "11, 0, false",
    "10, 1, false",
    "-1, 1, false",
    "1, -1, false",
    "5, 9223372036854775807, false",
    "9223372036854775807, 5, false",
  })
  void holdsWhatLiesBetweenItsFirstByteAndItsLast(long offset, long length, boolean holds) {
    assertThat(Bytes.of(new byte[10]).holds(offset, length)).isEqualTo(holds);
  }

  @Test
  void aSliceHoldsItsOwnBytesAlone() throws IOException {
    var slice = bytes(0, 1, 2, 3, 4, 5, 6, 7).slice(2, 5).slice(1, 3);
    assertThat(slice.size()).isEqualTo(3);
    assertThat(slice.read(0, 3)).containsExactly(3, 4, 5);
    assertThat(slice.u8(2)).isEqualTo(5);
    assertThat(slice.ascii(0, 1)).isEqualTo("\u0003");
    assertThatThrownBy(() -> slice.u8(3))
        .isInstanceOf(Malformed.class)
        .hasMessage("it ends at byte 3, in the middle of a part");
    assertThatThrownBy(() -> slice.u8(-1)).isInstanceOf(Malformed.class);
    assertThatThrownBy(() -> slice.slice(2, 2))
        .isInstanceOf(Malformed.class)
        .hasMessage("a part of 2 bytes at byte 2 lies outside its 3 bytes");
  }

  @Test
  void saysWhereAPartEndsThatIsNotThere() {
    var ten = Bytes.of(new byte[10]);
    assertThatThrownBy(() -> ten.read(8, 4))
        .isInstanceOf(Malformed.class)
        .hasMessage("it ends at byte 10, where a part reaches to byte 12");
    assertThatThrownBy(() -> ten.read(8, -4))
        .isInstanceOf(Malformed.class)
        .hasMessage("it ends at byte 10, where a part reaches to byte 8");
    assertThatThrownBy(() -> ten.digest(10, 1, MessageDigest.getInstance("SHA-256")))
        .isInstanceOf(Malformed.class)
        .hasMessage("it ends at byte 10, where a part reaches to byte 11");
  }

  @Test
  void readsEightMebibytesAtOnceAndNoMore() throws Exception {
    var large = Bytes.of(new byte[Bytes.MOST_AT_ONCE + 1]);
    assertThat(large.read(1, Bytes.MOST_AT_ONCE)).hasSize(8 << 20);
    large.digest(0, Bytes.MOST_AT_ONCE, MessageDigest.getInstance("SHA-256"));
    assertThatThrownBy(() -> large.read(0, Bytes.MOST_AT_ONCE + 1))
        .isInstanceOf(Malformed.class)
        .hasMessage("a part claims 8388609 bytes, more than is sensible");
  }

  // Numbers

  @Test
  void readsNumbersInBothOrdersWithoutASign() throws IOException {
    var number = bytes(0, 1, 2, 3, 4, 5, 6, 7, 8);
    assertThat(number.u8(1)).isEqualTo(1);
    assertThat(number.u16(1, true)).isEqualTo(0x0102);
    assertThat(number.u16(1, false)).isEqualTo(0x0201);
    assertThat(number.u32(1, true)).isEqualTo(0x01020304);
    assertThat(number.u32(1, false)).isEqualTo(0x04030201);
    assertThat(number.u64(1, true)).isEqualTo(0x0102030405060708L);
    assertThat(number.u64(1, false)).isEqualTo(0x0807060504030201L);
    var high = bytes(0xFF, 0xFE, 0xFD, 0xFC, 0xFB, 0xFA, 0xF9, 0xF8);
    assertThat(high.u8(0)).isEqualTo(0xFF);
    assertThat(high.u16(0, true)).isEqualTo(0xFFFE);
    assertThat(high.u32(0, true)).isEqualTo(0xFFFEFDFCL);
    assertThat(high.u32(0, false)).isEqualTo(0xFCFDFEFFL);
    assertThat(high.u64(0, true)).isEqualTo(Long.MAX_VALUE);
    assertThat(bytes(0x7F, 0, 0, 0, 0, 0, 0, 1).u64(0, true)).isEqualTo(0x7F00000000000001L);
    assertThat(bytes(0, 0, 0, 0, 0, 0, 0, 0).u64(0, true)).isZero();
  }

  @Test
  void readsTextByteByByte() throws IOException {
    var text = bytes('I', 'I', 0xE9);
    assertThat(text.ascii(1, 2)).isEqualTo("I\u00E9");
    assertThat(text.startsWith("II")).isTrue();
    assertThat(text.startsWith("II\u00E9")).isTrue();
    assertThat(text.startsWith("IE")).isFalse();
    assertThat(text.startsWith("II\u00E9I")).isFalse();
  }

  // Files

  @ParameterizedTest
  @CsvSource({
    "0, 1",
    "0, 16384",
    "0, 16385",
    "1, 16384",
    "16383, 1",
    "16383, 2",
    "16384, 1",
    "39999, 1",
    "0, 40000",
    "23616, 16384",
    "23617, 16383",
    "40000, 0",
  })
  void readsEveryPartOfAFile(int offset, int length) throws Exception {
    byte[] content = TestContainers.filled(40_000);
    var part = Arrays.copyOfRange(content, offset, offset + length);
    try (var whole = Bytes.open(file(content))) {
      assertThat(whole.size()).isEqualTo(40_000);
      for (var first : new int[] {0, 20_000, 39_999}) {
        assertThat(whole.u8(first)).isEqualTo(content[first] & 0xFF);
        assertThat(whole.read(offset, length)).isEqualTo(part);
        assertThat(whole.u8(first)).isEqualTo(content[first] & 0xFF);
        var digest = MessageDigest.getInstance("SHA-256");
        whole.digest(offset, length, digest);
        assertThat(digest.digest()).isEqualTo(MessageDigest.getInstance("SHA-256").digest(part));
      }
    }
  }

  @Test
  void readsAFileNoMoreThanFourThousandTimesByTheirPieces() throws IOException {
    try (var file = Bytes.open(sparse(2 * PIECE))) {
      long pieces = Bytes.MOST_IN_ALL / PIECE;
      for (int i = 0; i < pieces; i++) {
        file.u8(i % 2L * PIECE);
      }
      assertThatThrownBy(() -> file.u8(0))
          .isInstanceOf(Malformed.class)
          .hasMessage("its parts lead to more reading than is sensible");
    }
  }

  @Test
  void readsWhatItHasJustReadWithoutAnyCost() throws IOException {
    try (var file = Bytes.open(sparse(PIECE))) {
      for (int i = 0; i < 3 * Bytes.MOST_IN_ALL / PIECE; i++) {
        file.u8(i % 2L * (PIECE - 1));
        assertThat(file.read(0, 0)).isEmpty();
      }
      assertThat(file.read(0, PIECE)).hasSize(PIECE);
    }
  }

  @Test
  void countsLargePartsByTheirLength() throws IOException {
    try (var file = Bytes.open(sparse(Bytes.MOST_AT_ONCE))) {
      for (int i = 0; i < Bytes.MOST_IN_ALL / Bytes.MOST_AT_ONCE; i++) {
        file.read(0, Bytes.MOST_AT_ONCE);
      }
      assertThatThrownBy(() -> file.read(0, PIECE + 1))
          .isInstanceOf(Malformed.class)
          .hasMessage("its parts lead to more reading than is sensible");
    }
  }

  @Test
  void readsAFileFromEndToEndWithoutABoundWhereThatIsAskedFor() throws IOException {
    try (var file = Bytes.open(sparse(2 * PIECE))) {
      var unmetered = file.slice(1, 2 * PIECE - 1).unmetered();
      assertThat(unmetered.size()).isEqualTo(2 * PIECE - 1);
      for (int i = 0; i < 2 * Bytes.MOST_IN_ALL / PIECE; i++) {
        unmetered.u8(i % 2L * PIECE);
      }
      assertThat(file.u8(0)).isZero();
    }
    assertThat(bytes(1, 2, 3).slice(1, 2).unmetered().u8(0)).isEqualTo(2);
  }

  @Test
  void saysThatAFileBecameShorter() throws IOException {
    var path = file(TestContainers.filled(40_000));
    try (var file = Bytes.open(path)) {
      try (var other = new RandomAccessFile(path.toFile(), "rw")) {
        other.setLength(100);
      }
      assertThat(file.read(0, 100)).isEqualTo(TestContainers.filled(100));
      assertThatThrownBy(() -> file.read(0, 101))
          .isInstanceOf(Malformed.class)
          .hasMessage("it became shorter while it was read");
      assertThatThrownBy(() -> file.read(0, 30_000))
          .isInstanceOf(Malformed.class)
          .hasMessage("it became shorter while it was read");
    }
  }

  @Test
  void readsNothingMoreOnceItIsClosed() throws IOException {
    var file = Bytes.open(file(TestContainers.filled(10)));
    file.close();
    assertThatThrownBy(() -> file.u8(0)).isInstanceOf(ClosedChannelException.class);
    var memory = bytes(7);
    memory.close();
    assertThat(memory.u8(0)).isEqualTo(7);
  }
}
