package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Streams of ITU-T T.81, annex B, of markers and segments alone. */
class JpegReaderTest {
  private static final String SCAN = "FFDA 0003 00";
  private static final String NONE = "";
  private static final String NO_END = "it has no end: the JPEG's last bytes are missing";

  private static byte[] hex(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  private static String fault(String hex) throws IOException {
    return Contents.of(Bytes.of(hex(hex))).fault().map(Text::english).orElse(NONE);
  }

  private static String dimensions(String hex) throws IOException {
    return JpegReader.dimensions(Bytes.of(hex(hex)))
        .map(of -> of.width() + " x " + of.height() + (of.progressive() ? " progressive" : ""))
        .orElse(NONE);
  }

  @ParameterizedTest
  @CsvSource({
    // SOI, a segment of a comment, SOS, coded data, EOI (B.1.1.3, B.2.1).
    "FFD8 FFFE 0004 0102 FFDA 0003 00 1234 FFD9",
    "FFD8 FFDA 0003 00 FFD9",
    "FFD8 FFDA 0002 FFD9",
    // Any marker may have fill bytes before it (B.1.1.2).
    "FFD8 FFFFFFFE 0002 FFFF FFDA 0003 00 1234 FFFF FFD9",
    // Markers without a segment: RST0 to RST7, TEM, SOI.
    "FFD8 FFD0 FFD7 FF01 FFD8 FFDA 0003 00 FFD9",
    // A zero behind FF is stuffed data (B.1.1.5), and there may be several scans.
    "FFD8 FFDA 0003 00 12FF00 FFD9",
    "FFD8 FFDA 0003 00 12FF00 FFD0 FFD7 34 FFDA 0003 00 56 FFD9",
    // Something else behind the end.
    "FFD8 FFDA 0003 00 FFD9 00",
    "FFD8 FFDA 0003 00 12 FFD9 FF",
    "FFD8 FFDA 0003 00 12 FFFE 0004 0102 FFD9 0000",
    "FFD8 FFDA 0003 00 12 FFFF FFD9 0000",
    "FFD8 FFDA 0003 00 12 FFFE 0000 FFD9 0000",
  })
  void isWholeWithAnEnd(String hex) throws IOException {
    assertThat(fault(hex)).isEqualTo(NONE);
  }

  @ParameterizedTest
  @CsvSource({
    "FFD8 FFDA 0003 00",
    "FFD8 FFDA 0003 00 FF",
    "FFD8 FFDA 0003 00 FFFE",
    "FFD8 FFDA 0003 00 FFFE 00",
    "FFD8 FFDA 0003 00 FFFE 0004",
    "FFD8 FFDA 0003 00 12 D9",
    "FFD8 FFDA 0003 D9 00",
    "FFD8 FFDA 0003 FF D9",
    "FFD8 FFDA 0003 00 FF00 D9 00",
    "FFD8 FFDA 0003 00 FFD0 D9 00",
    // The end of a thumbnail inside a segment is not the end of the picture.
    "FFD8 FFDA 0003 00 12 FFFE 0006 FFD9 0000 12",
  })
  void isNotWholeWithoutOne(String hex) throws IOException {
    assertThat(fault(hex)).isEqualTo(NO_END);
  }

  @ParameterizedTest
  @CsvSource({
    "FFD8 FFD9, it ends before its picture begins",
    "FFD8 FFFE 0002 FFD9, it ends before its picture begins",
    "FFD8 FFFE 0001 FFDA, a segment at byte 2 has no length",
    "FFD8 FFFE 0002 12, 'there is no marker at byte 6, where one belongs'",
    "FFD8 FFFE 0004 01, a part of 2 bytes at byte 6 lies outside its 7 bytes",
    "FFD8 FFFE 00, 'it ends at byte 5, in the middle of a part'",
  })
  void saysWhatIsWrongBeforeItsPicture(String hex, String fault) throws IOException {
    assertThat(fault(hex)).isEqualTo(fault);
  }

  @Test
  void isKnownByItsFirstThreeBytes() throws IOException {
    assertThat(JpegReader.claims(Bytes.of(hex("FFD8FF")))).isTrue();
    assertThat(JpegReader.claims(Bytes.of(hex("FFD8FE")))).isFalse();
    assertThat(JpegReader.claims(Bytes.of(hex("FFD9FF")))).isFalse();
    assertThat(JpegReader.claims(Bytes.of(hex("FFD8")))).isFalse();
  }

  // The frame header (B.2.2): length, precision, lines, samples a line.
  @ParameterizedTest
  @CsvSource({
    "FFD8 FFC0 000B 08 0078 00A0, 160 x 120",
    "FFD8 FFC1 000B 08 0078 00A0, 160 x 120",
    "FFD8 FFC2 000B 08 0078 00A0, 160 x 120 progressive",
    "FFD8 FFFE 0004 0102 FFFF C0 000B 08 0001 0001, 1 x 1",
    "FFD8 FFD0 FFD7 FF01 FFD8 FFC0 000B 08 0001 0001, 1 x 1",
    "FFD8 FFFE 0000 FFC0 000B 08 0001 0001, 1 x 1",
    "FFD8 FFC3 000B 08 0078 00A0, ''",
    "FFD8 FFC0 000B 08 0000 00A0, ''",
    "FFD8 FFC0 000B 08 0078 0000, ''",
    "FFD8 FFC0 000B 08 0078 00, ''",
    "FFD8 FFDA 0003 00 FFC0 000B 08 0078 00A0, ''",
    "FFD8 FFD9 FFC0 000B 08 0078 00A0, ''",
    "FFD8 FFC4 000B 08 0078 00A0, ''",
    "4949 2A00, ''",
  })
  void readsTheSizeOfBaselineExtendedAndProgressivePictures(String hex, String size)
      throws IOException {
    assertThat(dimensions(hex)).isEqualTo(size);
  }

  @Test
  void findsExifAndXmpInTheirSegments() throws IOException {
    var exif = "457869660000"; // Exif, two zero bytes.
    var xmp =
        HexFormat.of().formatHex("http://ns.adobe.com/xap/1.0/\0".getBytes(StandardCharsets.UTF_8));
    var contents =
        Contents.of(
            Bytes.of(
                hex(
                    "FFD8 FFE1 000B"
                        + exif
                        + "010203 FFE1 0021"
                        + xmp
                        + "0405 FFE1 0004 0607"
                        + SCAN
                        + "FFD9")));
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.exif()).hasSize(1);
    assertThat(contents.exif().getFirst().read(0, 3)).containsExactly(1, 2, 3);
    assertThat(contents.exif().getFirst().size()).isEqualTo(3);
    assertThat(contents.xmp().orElseThrow().read(0, 2)).containsExactly(4, 5);
    assertThat(contents.xmp().orElseThrow().size()).isEqualTo(2);
  }
}
