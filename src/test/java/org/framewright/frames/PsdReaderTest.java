package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** By the published specification of the format, "Adobe Photoshop File Formats Specification". */
class PsdReaderTest {
  private record Head(int version, int channels, int height, int width, int depth) {}

  private static final Head SMALL = new Head(1, 1, 2, 3, 8);

  private static byte[] psd(Head head, int compression, byte[] picture) throws IOException {
    return psd(head, new long[] {0, 0, 0}, compression, picture);
  }

  /**
   * @param lengths of the colours, the resources and the layers, as they are said
   */
  private static byte[] psd(Head head, long[] lengths, int compression, byte[] picture)
      throws IOException {
    var bytes = new ByteArrayOutputStream();
    var out = new DataOutputStream(bytes);
    out.writeBytes("8BPS");
    out.writeShort(head.version);
    out.write(new byte[6]);
    out.writeShort(head.channels);
    out.writeInt(head.height);
    out.writeInt(head.width);
    out.writeShort(head.depth);
    out.writeShort(1);
    for (int i = 0; i < 3; i++) {
      if (i == 2 && head.version == 2) {
        out.writeLong(lengths[i]);
      } else {
        out.writeInt((int) lengths[i]);
      }
      out.write(new byte[(int) Math.min(lengths[i], 100)]);
    }
    out.writeShort(compression);
    out.write(picture);
    return bytes.toByteArray();
  }

  private static void read(byte[] file) throws IOException {
    PsdReader.read(Bytes.of(file));
  }

  private static void assertWhole(byte[] file) {
    assertThatCode(() -> read(file)).doesNotThrowAnyException();
    var cut = java.util.Arrays.copyOf(file, file.length - 1);
    assertThatExceptionOfType(IOException.class).isThrownBy(() -> read(cut));
  }

  /** The specification gives 56 channels, and 300 000 pixels for the large form. */
  @ParameterizedTest
  @CsvSource({
    "1, 1, 1, 1, true",
    "56, 1, 1, 8, true",
    "1, 300000, 1, 8, true",
    "1, 1, 300000, 1, true",
    "3, 2, 2, 16, true",
    "3, 2, 2, 32, true",
    "0, 1, 1, 8, false",
    "57, 1, 1, 8, false",
    "1, 0, 1, 8, false",
    "1, 1, 0, 8, false",
    "1, 300001, 1, 8, false",
    "1, 1, 300001, 8, false",
    "1, 1, 1, 0, false",
    "1, 1, 1, 2, false",
    "1, 1, 1, 24, false",
  })
  void aHeadThatDescribesNoPictureIsBroken(
      int channels, int height, int width, int depth, boolean sensible) throws IOException {
    int row = (width * depth + 7) / 8;
    var file =
        psd(
            new Head(1, channels, height, width, depth),
            0,
            new byte[Math.max(1, channels * height * row)]);
    if (sensible) {
      assertWhole(file);
    } else {
      assertThatExceptionOfType(Malformed.class)
          .isThrownBy(() -> read(file))
          .withMessageContaining("its head describes no picture");
    }
  }

  @ParameterizedTest
  @CsvSource({
    "3, 8, 3",
    "3, 1, 1",
    "8, 1, 1",
    "9, 1, 2",
    "3, 16, 6",
    "3, 32, 12",
  })
  void anUnpackedPictureHasAWholeNumberOfBytesARow(int width, int depth, int bytes)
      throws IOException {
    assertWhole(psd(new Head(1, 2, 5, width, depth), 0, new byte[2 * 5 * bytes]));
  }

  @ParameterizedTest
  @CsvSource({"1", "2"})
  void partsBeforeThePictureArePassedByTheirLengths(int version) throws IOException {
    var head = new Head(version, 1, 2, 3, 8);
    assertWhole(psd(head, new long[] {4, 6, 10}, 0, new byte[6]));
  }

  @ParameterizedTest
  @CsvSource({"1, 300", "2, 300", "2, 70000"})
  void aPackedPictureIsAsLongAsItsRowsSay(int version, int row) throws IOException {
    var picture = new ByteArrayOutputStream();
    var out = new DataOutputStream(picture);
    for (int i = 0; i < 2; i++) {
      if (version == 2) {
        out.writeInt(row);
      } else {
        out.writeShort(row);
      }
    }
    out.write(new byte[2 * row]);
    assertWhole(psd(new Head(version, 1, 2, 3, 8), 1, picture.toByteArray()));
  }

  @ParameterizedTest
  @CsvSource({"2", "3"})
  void aPictureInOneStreamHasOneByteAtLeast(int compression) throws IOException {
    assertWhole(psd(SMALL, compression, new byte[1]));
  }

  @Test
  void anUnknownPackingIsSaid() throws IOException {
    var file = psd(SMALL, 4, new byte[6]);
    assertThatExceptionOfType(Malformed.class)
        .isThrownBy(() -> read(file))
        .withMessageContaining("not known here");
  }

  @ParameterizedTest
  @CsvSource({
    "2147483648, the file",
    "4294967296, the file",
    "9223372036854775807, the file",
    "-9223372036854775808, more bytes than there can be",
    "-1, more bytes than there can be",
  })
  void aPartThatClaimsMoreThanThereIsIsBroken(long length, String what) throws IOException {
    var file = psd(new Head(2, 1, 2, 3, 8), new long[] {0, 0, 0}, 0, new byte[6]);
    java.nio.ByteBuffer.wrap(file).putLong(26 + 4 + 4, length);
    var thrown = assertThatExceptionOfType(IOException.class).isThrownBy(() -> read(file));
    if (what.startsWith("more")) {
      thrown.withMessageContaining(what);
    }
  }
}
