package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Keys, lengths and values as SMPTE ST 336 and ST 377-1 lay them out [numbers from memory]. */
class MxfReaderTest {
  private static final String HEADER = "060e2b34020501010d01020101020400";
  private static final String FOOTER = "060e2b34020501010d01020101040400";
  private static final String FILL = "060e2b34010101020301021001000000";
  private static final String MATERIAL = "060e2b34025301010d01010101013600";
  private static final String SOURCE = "060e2b34025301010d01010101013700";
  private static final String TRACK = "060e2b34025301010d01010101013b00";
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0, 0);
  private static final LocalDateTime LATER =
      LocalDateTime.of(2026, 12, 31, 23, 59, 58, 500_000_000);

  private static byte[] join(List<byte[]> parts) {
    return TestContainers.join(parts.toArray(byte[][]::new));
  }

  /** A key, its length in so many bytes (0: in the short form), and the value. */
  private static byte[] klv(String key, int lengthBytes, byte[] value) {
    var length = ByteBuffer.allocate(lengthBytes + 1);
    if (lengthBytes == 0) {
      length.put((byte) value.length);
    } else {
      length.put((byte) (0x80 | lengthBytes));
      for (int i = lengthBytes - 1; i >= 0; i--) {
        length.put((byte) (i > 3 ? 0 : value.length >>> (8 * i)));
      }
    }
    return TestContainers.join(HexFormat.of().parseHex(key), length.array(), value);
  }

  private static byte[] partition(String key, long footer) {
    return klv(key, 3, ByteBuffer.allocate(88).putLong(24, footer).put(87, (byte) 1).array());
  }

  private static byte[] item(int tag, byte[] value) {
    return ByteBuffer.allocate(4 + value.length)
        .putShort((short) tag)
        .putShort((short) value.length)
        .put(value)
        .array();
  }

  private static byte[] created(LocalDateTime time) {
    return item(
        0x4405,
        ByteBuffer.allocate(8)
            .putShort((short) time.getYear())
            .put((byte) time.getMonthValue())
            .put((byte) time.getDayOfMonth())
            .put((byte) time.getHour())
            .put((byte) time.getMinute())
            .put((byte) time.getSecond())
            .put((byte) (time.getNano() / 4_000_000))
            .array());
  }

  private static byte[] mxf(byte[]... sets) {
    var parts = new ArrayList<byte[]>();
    long footer = partition(HEADER, 0).length;
    for (var set : sets) {
      footer += set.length;
    }
    parts.add(partition(HEADER, footer));
    parts.addAll(List.of(sets));
    parts.add(partition(FOOTER, footer));
    return join(parts);
  }

  private static Contents contents(byte[] file) throws IOException {
    return Contents.of(Bytes.of(file));
  }

  private static java.util.Optional<LocalDateTime> time(byte[]... sets) throws IOException {
    var contents = contents(mxf(sets));
    assertThat(contents.fault()).isEmpty();
    return contents.said().time();
  }

  @Test
  void theMaterialsTimeGoesBeforeThatOfASource() throws IOException {
    var material = klv(MATERIAL, 3, created(LATER));
    var source = klv(SOURCE, 3, created(NOON));
    assertThat(time(source, material)).contains(LATER);
    assertThat(time(material, source)).contains(LATER);
    assertThat(time(source)).contains(NOON);
    assertThat(time(source, klv(SOURCE, 3, created(LATER)))).contains(NOON);
    assertThat(time(klv(MATERIAL, 3, new byte[0]), source)).contains(NOON);
    assertThat(time(klv(TRACK, 3, created(NOON)))).isEmpty();
    assertThat(time()).isEmpty();
  }

  /** Basic Encoding Rules: up to 127 in one byte, else the number of bytes that follow. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 3, 4, 8})
  void aLengthHasOneByteOrSaysHowMany(int lengthBytes) throws IOException {
    var filler = klv(FILL, lengthBytes, new byte[100]);
    assertThat(time(filler, klv(MATERIAL, lengthBytes, created(NOON)))).contains(NOON);
  }

  @ParameterizedTest
  @CsvSource({"0, 127", "1, 128", "1, 255", "2, 256", "2, 65535", "3, 65536"})
  void theGreatestLengthOfEachFormIsRead(int lengthBytes, int length) throws IOException {
    assertThat(time(klv(FILL, lengthBytes, new byte[length]), klv(MATERIAL, 3, created(NOON))))
        .contains(NOON);
  }

  @Test
  void theItemIsFoundAmongOthers() throws IOException {
    var items =
        List.of(
            item(0x3C0A, new byte[16]),
            item(0x4405, new byte[4]), // Not a time by its length.
            item(0x4401, new byte[300]),
            created(NOON),
            created(LATER));
    assertThat(time(klv(MATERIAL, 3, join(items)))).contains(NOON);
    assertThat(time(klv(MATERIAL, 3, item(0x4404, created(NOON))))).isEmpty();
  }

  @Test
  void aTimeThatIsNoneIsNotTaken() throws IOException {
    var never = created(NOON);
    never[4 + 2] = 13;
    assertThat(time(klv(MATERIAL, 3, never))).isEmpty();
    assertThat(time(klv(MATERIAL, 3, never), klv(SOURCE, 3, created(NOON)))).contains(NOON);
  }

  @Test
  void aHeaderEndsWithTheNextPartitionOrWithWhatIsNoKey() throws IOException {
    var body = partition("060e2b34020501010d01020101030400", 0);
    assertThat(time(body, klv(MATERIAL, 3, created(NOON)))).contains(NOON);
    assertThat(time(klv(FILL, 3, new byte[1]), body, klv(MATERIAL, 3, created(NOON)))).isEmpty();
    assertThat(
            time(
                klv("00000000020501010d01020101030400", 3, new byte[1]),
                klv(MATERIAL, 3, created(NOON))))
        .isEmpty();
  }

  @Test
  void aLengthBeyondTheFileIsBroken() throws IOException {
    var file = mxf(klv(MATERIAL, 8, created(NOON)));
    int length = partition(HEADER, 0).length + 16;
    for (long claimed : new long[] {file.length + 1L, Long.MAX_VALUE, Long.MIN_VALUE, -1}) {
      var other = file.clone();
      ByteBuffer.wrap(other).putLong(length + 1, claimed);
      assertThat(contents(other).fault().orElseThrow().english())
          .contains("claims more than the file holds");
    }
  }

  @Test
  void anMxfIsWholeWithTheLastByteOfItsFooter() throws IOException {
    var file = mxf(klv(MATERIAL, 3, created(NOON)));
    assertThat(contents(file).fault()).isEmpty();
    for (int length = file.length - partition(FOOTER, 0).length; length < file.length; length++) {
      var cut = java.util.Arrays.copyOf(file, length);
      assertThat(contents(cut).fault().orElseThrow().english())
          .as("%d bytes", length)
          .matches("its end is missing|it ends at byte " + length + ", in the middle of a part");
    }
  }
}
