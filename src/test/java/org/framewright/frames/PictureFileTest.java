package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.framewright.base.Text;
import org.framewright.disk.SymbolicLinks;
import org.framewright.handoff.Pictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The JPEG, TIFF and PNG are made by the JDK's writers; the PSD by its published specification. */
class PictureFileTest {
  @TempDir private Path folder;

  private java.util.Optional<String> fault(byte[] bytes) throws IOException {
    return PictureFile.fault(Files.write(folder.resolve("picture"), bytes)).map(Text::english);
  }

  /** A PSD of 3 x 2 pixels in grey, packed by rows (PackBits), with 5 bytes of layers. */
  private static byte[] packed(int version) throws IOException {
    var bytes = new ByteArrayOutputStream();
    var out = new DataOutputStream(bytes);
    out.writeBytes("8BPS");
    out.writeShort(version);
    out.write(new byte[6]);
    out.writeShort(1);
    out.writeInt(2);
    out.writeInt(3);
    out.writeShort(8);
    out.writeShort(1);
    out.writeInt(0);
    out.writeInt(0);
    if (version == 2) {
      out.writeLong(5);
    } else {
      out.writeInt(5);
    }
    out.write(new byte[5]);
    out.writeShort(1);
    for (int row = 0; row < 2; row++) {
      if (version == 2) {
        out.writeInt(2);
      } else {
        out.writeShort(2);
      }
    }
    out.write(new byte[] {-2, 7, -2, 9});
    return bytes.toByteArray();
  }

  @ParameterizedTest
  @ValueSource(strings = {"jpg", "tif", "png", "psd"})
  void aWholePictureHasNoFaultAndACutOneHas(String format) throws IOException {
    var whole = format.equals("psd") ? Pictures.psd() : Pictures.of(format);
    assertThat(fault(whole)).isEmpty();
    for (int length = 0; length < whole.length; length += Math.max(1, whole.length / 40)) {
      assertThat(fault(Arrays.copyOf(whole, length))).as("%d bytes", length).isPresent();
    }
    assertThat(fault(Arrays.copyOf(whole, whole.length - 1))).isPresent();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void aPackedPsdIsWholeWithItsLastRow(int version) throws IOException {
    var whole = packed(version);
    assertThat(fault(whole)).isEmpty();
    for (int length = 0; length < whole.length; length++) {
      assertThat(fault(Arrays.copyOf(whole, length))).as("%d bytes", length).isPresent();
    }
  }

  @Test
  void noByteOfAPsdBreaksIt() throws IOException {
    var whole = packed(2);
    for (int at = 0; at < whole.length; at++) {
      for (int value : new int[] {0, 1, 0x7F, 0x80, 0xFF}) {
        var other = whole.clone();
        other[at] = (byte) value;
        assertThat(fault(other)).isNotNull();
      }
    }
    var old = whole.clone();
    old[5] = 9;
    assertThat(fault(old)).contains("it is of version 9, which is not known here");
  }

  /** A BigTIFF of 2 x 2 pixels in grey, in two strips, as its published design lays it out. */
  private static byte[] bigTiff(ByteOrder order) {
    var out = ByteBuffer.allocate(16 + 8 + 2 * 20 + 8 + 4).order(order);
    out.put((order == ByteOrder.BIG_ENDIAN ? "MM" : "II").getBytes(StandardCharsets.US_ASCII));
    out.putShort((short) 43).putShort((short) 8).putShort((short) 0).putLong(16);
    out.putLong(2);
    // Offsets as two numbers of four bytes, counts as two of two: both fit into their field.
    out.putShort((short) 0x0111).putShort((short) 4).putLong(2).putInt(72).putInt(74);
    out.putShort((short) 0x0117).putShort((short) 3).putLong(2);
    out.putShort((short) 2).putShort((short) 2).putInt(0);
    out.putLong(0);
    return out.put(new byte[] {1, 2, 3, 4}).array();
  }

  @ParameterizedTest
  @ValueSource(strings = {"MM", "II"})
  void aBigTiffIsWholeWithItsLastStrip(String order) throws IOException {
    var whole = bigTiff(order.equals("MM") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN);
    assertThat(fault(whole)).isEmpty();
    for (int length = 0; length < whole.length; length++) {
      assertThat(fault(Arrays.copyOf(whole, length))).as("%d bytes", length).isPresent();
    }
    for (int at = 0; at < whole.length; at++) {
      for (int value : new int[] {0, 1, 0x7F, 0x80, 0xFF}) {
        var other = whole.clone();
        other[at] = (byte) value;
        assertThat(fault(other)).isNotNull();
      }
    }
  }

  /**
   * A WebP as RFC 9649, section 2, lays it out: one chunk, here of an odd length and its padding.
   */
  private static byte[] webp(String chunk) {
    var out = ByteBuffer.allocate(12 + 8 + 6).order(ByteOrder.LITTLE_ENDIAN);
    out.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(18);
    out.put(("WEBP" + chunk).getBytes(StandardCharsets.US_ASCII)).putInt(5);
    return out.put(new byte[6]).array();
  }

  @Test
  void aWebpIsWholeWithItsLastChunkAndHoldsAPicture() throws IOException {
    var whole = webp("VP8L");
    assertThat(fault(whole)).isEmpty();
    for (int length = 0; length < whole.length; length++) {
      assertThat(fault(Arrays.copyOf(whole, length))).as("%d bytes", length).isPresent();
    }
    assertThat(fault(webp("EXIF"))).contains("it names no picture data");
  }

  @Test
  void whatIsNoPictureSaysSo() throws IOException {
    assertThat(fault("a text".getBytes(StandardCharsets.UTF_8)).orElseThrow())
        .contains("no picture");
    assertThat(PictureFile.fault(folder.resolve("none"))).isPresent();
    assertThat(PictureFile.fault(folder)).isPresent();
    var link = SymbolicLinks.make(folder.resolve("link"), folder.resolve("picture"));
    assertThat(PictureFile.fault(link)).isPresent();
  }
}
