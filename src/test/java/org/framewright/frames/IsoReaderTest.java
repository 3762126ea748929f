package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.frames.TestCamera.box;
import static org.framewright.frames.TestContainers.join;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Boxes of ISO/IEC 14496-12, put together one by one; section 8.11.3 is that of {@code iloc}. */
class IsoReaderTest {
  private static final byte[] HEIC = box("ftyp", ascii("heic\0\0\0\0mif1heic"));
  private static final byte[] CRX = box("ftyp", ascii("crx \0\0\0\1crx isom"));
  private static final String MISSING = "its picture data are missing";

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static byte[] hex(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", ""));
  }

  private static byte[] uuid(String id, byte[]... parts) {
    return box("uuid", join(hex(id), join(parts)));
  }

  private static Contents contents(byte[]... parts) throws IOException {
    return Contents.of(Bytes.of(join(parts)));
  }

  private static String fault(byte[]... parts) throws IOException {
    return contents(parts).fault().map(Text::english).orElse("");
  }

  // Boxes

  @Test
  void isKnownByItsFirstBox() throws IOException {
    assertThat(IsoReader.claims(Bytes.of(HEIC))).isTrue();
    assertThat(IsoReader.claims(Bytes.of(ascii("\0\0\0\10ftyp")))).isTrue();
    assertThat(IsoReader.claims(Bytes.of(ascii("\0\0\0\10ftyq")))).isFalse();
    assertThat(IsoReader.claims(Bytes.of(ascii("\0\0\0\10fty")))).isFalse();
  }

  @Test
  void needsAnIndexAndARawItsDataToo() throws IOException {
    assertThat(fault(HEIC)).isEqualTo(MISSING);
    assertThat(fault(HEIC, box("mdat", new byte[4]))).isEqualTo(MISSING);
    assertThat(fault(HEIC, box("meta", new byte[4]))).isEmpty();
    assertThat(fault(HEIC, box("moov"))).isEmpty();
    assertThat(fault(CRX, box("moov"))).isEqualTo(MISSING);
    assertThat(fault(CRX, box("moov"), box("mdat"))).isEqualTo(MISSING);
    assertThat(fault(CRX, box("moov"), box("mdat", new byte[1]))).isEmpty();
    assertThat(fault(HEIC, box("meta", new byte[3]))).isEqualTo("its index is cut off");
  }

  // Section 4.2: a size of 1 stands for a 64-bit one behind the type, 0 for all that is left.
  @Test
  void readsSizesOfBothLengthsAndOneToTheEnd() throws IOException {
    var large = join(hex("00000001"), ascii("mdat"), hex("0000000000000011 07"));
    assertThat(fault(CRX, box("moov"), large)).isEmpty();
    assertThat(fault(CRX, large, box("moov"))).isEmpty();
    var empty = join(hex("00000001"), ascii("mdat"), hex("0000000000000010"));
    assertThat(fault(CRX, box("moov"), empty)).isEqualTo(MISSING);
    var rest = join(hex("00000000"), ascii("mdat"), new byte[] {7});
    assertThat(fault(CRX, box("moov"), rest)).isEmpty();
    assertThat(fault(CRX, rest, box("moov"))).as("the rest is data").isEqualTo(MISSING);
  }

  @ParameterizedTest
  @CsvSource({
    "00000007 6D646174, a box at byte 24 claims a size below its header's",
    "00000001 6D646174 000000000000000F, a box at byte 24 claims a size below its header's",
    "00000009 6D646174, 'a box at byte 24 claims 9 bytes, but only 8 are left'",
    "00000001 6D646174 FFFFFFFFFFFFFFFF, "
        + "'a box at byte 24 claims 9223372036854775807 bytes, but only 16 are left'",
    "00000008 6D6461, 'a box at byte 24 claims 8 bytes, but only 7 are left'",
    "000000, 'it ends at byte 27, in the middle of a part'",
  })
  void saysWhichBoxClaimsWhatItHasNot(String box, String fault) throws IOException {
    assertThat(fault(HEIC, hex(box))).isEqualTo(fault);
  }

  @Test
  void readsAsManyBoxesAsAFileMayHave() throws IOException {
    var parts = new byte[4094][];
    java.util.Arrays.fill(parts, box("free"));
    assertThat(fault(HEIC, join(parts), box("moov"))).isEmpty();
    assertThat(fault(HEIC, join(parts), box("moov"), box("free")))
        .isEqualTo("it has more than 4096 boxes");
    assertThat(fault(HEIC, box("moov", join(parts)))).isEmpty();
    assertThat(fault(HEIC, box("moov", join(parts), box("free"))))
        .isEqualTo("it has more than 4096 boxes");
  }

  @Test
  void mayYetGrowWhereItEndsInZeros() throws IOException {
    assertThat(contents(HEIC, box("moov"), box("mdat", new byte[16])).isHollow()).isTrue();
    assertThat(contents(HEIC, box("moov"), box("mdat", new byte[15])).isHollow()).isFalse();
  }

  // CR3 (layout as published by open-source readers)

  private static final String METADATA = "85c0b687820f11e08111f4ce462b6a48";
  private static final String PREVIEW = "eaf42b5e1c984b88b9fbb7dc406e4d16";
  private static final String XMP = "be7acfcb97a942e89c71999491e3afac";
  private static final byte[] JPEG = hex("FFD8FF01");

  @Test
  void findsTheExifAndThePicturesOfARaw() throws IOException {
    var metadata =
        uuid(
            METADATA,
            box("CMT1", new TestCamera("Body", "1").description(8)),
            box("CMT2", hex("0102")),
            box("CMT3", hex("0304")),
            box("THMB", new byte[16], JPEG));
    var contents =
        contents(
            CRX,
            box("moov", box("free"), metadata),
            uuid(XMP, hex("0506")),
            uuid(PREVIEW, new byte[8], box("free", JPEG, JPEG), box("PRVW", new byte[29], JPEG)),
            box("mdat", new byte[1]));
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.orientation()).isEqualTo(8);
    assertThat(contents.exif()).hasSize(2);
    assertThat(contents.exif().getLast().read(0, 2)).containsExactly(1, 2);
    assertThat(contents.xmp().orElseThrow().read(0, 2)).containsExactly(5, 6);
    assertThat(contents.previews()).hasSize(2);
    assertThat(contents.previews()).allSatisfy(one -> assertThat(one.data().size()).isEqualTo(4));
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "31, 1", "32, 0"})
  void looksForAPictureInTheFirstThirtyTwoBytesOfItsBox(int before, int found) throws IOException {
    var thumbnail = uuid(METADATA, box("THMB", new byte[before], JPEG, JPEG));
    assertThat(contents(CRX, box("moov", thumbnail)).previews()).hasSize(found);
  }

  @ParameterizedTest
  @ValueSource(strings = {"FFD8", "FFD8FE", "FFD9FF"})
  void takesNothingForAPictureThatDoesNotBeginAsOne(String start) throws IOException {
    var thumbnail = uuid(METADATA, box("THMB", new byte[16], hex(start)));
    assertThat(contents(CRX, box("moov", thumbnail)).previews()).isEmpty();
    var shortest = uuid(METADATA, box("THMB", new byte[16], hex("FFD8FF")));
    assertThat(contents(CRX, box("moov", shortest)).previews()).hasSize(1);
  }

  @Test
  void passesOverBoxesOfOthersAndBrokenPreviews() throws IOException {
    var moov = box("moov");
    var data = box("mdat", new byte[1]);
    assertThat(fault(CRX, moov, data, box("uuid", new byte[15]))).isEmpty();
    assertThat(fault(CRX, moov, data, uuid("00112233445566778899aabbccddeeff"))).isEmpty();
    assertThat(fault(CRX, moov, data, uuid(PREVIEW, new byte[8]))).isEmpty();
    assertThat(fault(CRX, moov, data, uuid(PREVIEW, new byte[8], hex("00000003 50525657"))))
        .as("a picture is whole without its preview")
        .isEmpty();
    assertThat(fault(CRX, box("moov", uuid(METADATA, hex("00000003 434D5431"))), data))
        .isEqualTo("a box at byte 0 claims a size below its header's");
  }

  @Test
  void readsBoxesToTheLastEightBytesOfAnother() throws IOException {
    // Fewer bytes than a header's are left over.
    assertThat(fault(HEIC, box("moov", new byte[7]))).isEmpty();
    assertThat(fault(HEIC, box("moov", hex("00000007 00000000"))))
        .isEqualTo("a box at byte 0 claims a size below its header's");
  }

  // Items of HEIF

  private static byte[] infe(int version, int id, String type) {
    var entry = ByteBuffer.allocate(version > 2 ? 14 : 12);
    entry.put((byte) version).put(new byte[3]);
    if (version > 2) {
      entry.putInt(id);
    } else {
      entry.putShort((short) id);
    }
    return box("infe", entry.putShort((short) 0).put(ascii(type)).array());
  }

  private static byte[] iinf(byte[]... entries) {
    return box("iinf", new byte[] {0, 0, 0, 0, 0, (byte) entries.length}, join(entries));
  }

  private static byte[] meta(byte[]... boxes) {
    return box("meta", new byte[4], join(boxes));
  }

  private static byte[] iloc(String hex) {
    return box("iloc", hex(hex));
  }

  /** The picture's first bytes stand at byte 24, behind the box that names the file's kind. */
  private static byte[] data(String hex) {
    return join(HEIC, box("mdat", hex(hex)));
  }

  private static final String PICTURE = "FFD8FFAABBCC";

  private static byte[] picture(byte[] meta) throws IOException {
    var found = contents(data(PICTURE), meta).previews();
    return found.isEmpty()
        ? null
        : found.getFirst().data().read(0, (int) found.getFirst().data().size());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        // Version 0: offsets and lengths of four bytes, none for the base; one item, number 1.
        "00000000 4400 0001 0001 0000 0001 00000020 00000006",
        // Of eight bytes.
        "00000000 8800 0001 0001 0000 0001 0000000000000020 0000000000000006",
        // With a base of four, and of eight.
        "00000000 4440 0001 0001 0000 0000001E 0001 00000002 00000006",
        "00000000 4480 0001 0001 0000 000000000000001E 0001 00000002 00000006",
        // The base alone, and a length of zero for all that is left.
        "00000000 0440 0001 0001 0000 00000020 0001 00000006",
        // Version 1: how it is found, and an index of four bytes that is passed over.
        "01000000 4404 0001 0001 0000 0000 0001 00000000 00000020 00000006",
        // Version 2: numbers of four bytes.
        "02000000 4400 00000001 00000001 0000 0000 0001 00000020 00000006",
        // Another item before it, of two parts.
        "00000000 4400 0002 0002 0000 0002 00000020 00000001 00000021 00000001"
            + " 0001 0000 0001 00000020 00000006",
        // Another item that is found in a way that is not known here.
        "01000000 4400 0002 0002 0002 0000 0001 FFFFFFFF 00000001"
            + " 0001 0000 0000 0001 00000020 00000006",
      })
  void findsAPictureWhereItsIndexSays(String index) throws IOException {
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), iloc(index)))).isEqualTo(hex(PICTURE));
  }

  @Test
  void readsNumbersOfItemsOfFourBytes() throws IOException {
    var index = iloc("02000000 4400 00000001 00010001 0000 0000 0001 00000020 00000006");
    assertThat(picture(meta(iinf(infe(3, 0x10001, "jpeg")), index))).isEqualTo(hex(PICTURE));
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), index))).isNull();
    var wide = box("iinf", new byte[] {1, 0, 0, 0, 0, 0, 0, 1}, infe(3, 0x10001, "jpeg"));
    assertThat(picture(meta(wide, index))).isEqualTo(hex(PICTURE));
  }

  @Test
  void findsAPictureInsideTheIndexItself() throws IOException {
    var index = iloc("01000000 4400 0001 0001 0001 0000 0001 00000001 00000003");
    var idat = box("idat", hex("00FFD8FF"));
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), index, idat))).isEqualTo(hex("FFD8FF"));
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), index))).isNull();
  }

  @Test
  void takesALengthOfZeroForAllThatIsLeft() throws IOException {
    var index = iloc("01000000 4400 0001 0001 0001 0000 0001 00000001 00000000");
    var idat = box("idat", hex("00FFD8FF77"));
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), index, idat))).isEqualTo(hex("FFD8FF77"));
  }

  @Test
  void passesOverWhatIsNoPicture() throws IOException {
    var index = iloc("00000000 4400 0001 0001 0000 0001 00000020 00000006");
    assertThat(picture(meta(iinf(infe(2, 1, "hvc1")), index))).isNull();
    assertThat(picture(meta(iinf(infe(2, 7, "jpeg")), index))).isNull();
    assertThat(picture(meta(iinf(infe(1, 1, "jpeg")), index))).isNull();
    assertThat(picture(meta(iinf(box("free", new byte[13])), index))).isNull();
    assertThat(picture(meta(iinf(box("infe")), index))).isNull();
    assertThat(fault(data(PICTURE), meta(iinf(box("infe")), index))).isEmpty();
    assertThat(picture(meta(index))).isNull();
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg"))))).isNull();
    var parts = iloc("00000000 4400 0001 0001 0000 0002 00000020 00000003 00000023 00000003");
    assertThat(picture(meta(iinf(infe(2, 1, "jpeg")), parts))).isNull();
  }

  // ISO/IEC 23008-12, annex A: the item begins with the distance to its TIFF header.
  @ParameterizedTest
  @CsvSource({"00000000 010203, 010203", "00000002 01020304, 0304", "00000000 07, 07"})
  void findsTheExifBehindItsDistance(String item, String exif) throws IOException {
    int length = hex(item).length;
    var index = iloc("00000000 4400 0001 0001 0000 0001 00000020 %08X".formatted(length));
    var contents = contents(data(item), meta(iinf(infe(2, 1, "Exif")), index));
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.exif()).hasSize(1);
    var block = contents.exif().getFirst();
    assertThat(block.read(0, (int) block.size())).isEqualTo(hex(exif));
  }

  @ParameterizedTest
  @ValueSource(strings = {"00000000", "00000001 01", "FFFFFFFF 01"})
  void findsNoExifBehindTheEndOfItsItem(String item) throws IOException {
    int length = hex(item).length;
    var index = iloc("00000000 4400 0001 0001 0000 0001 00000020 %08X".formatted(length));
    var contents = contents(data(item), meta(iinf(infe(2, 1, "Exif")), index));
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.exif()).isEmpty();
  }

  @Test
  void saysWhatIsWrongWithItsIndex() throws IOException {
    var items = iinf(infe(2, 1, "jpeg"));
    assertThat(
            fault(
                data(PICTURE),
                meta(items, iloc("00000000 4200 0001 0001 0000 0001 00000020 0006"))))
        .isEqualTo("its index has numbers of 2 bytes");
    var whole = data(PICTURE).length + meta(items, iloc("00".repeat(22))).length;
    var last = "00000000 4400 0001 0001 0000 0001 %08X 00000001".formatted(whole - 1);
    assertThat(fault(data(PICTURE), meta(items, iloc(last)))).isEmpty();
    var behind = "00000000 4400 0001 0001 0000 0001 %08X 00000001".formatted(whole);
    assertThat(fault(data(PICTURE), meta(items, iloc(behind))))
        .isEqualTo("a part of its picture lies outside its %d bytes".formatted(whole));
    assertThat(fault(data(PICTURE), meta(items, iloc("00000000 4400 1001"))))
        .isEqualTo("its index claims 4097 items");
    assertThat(fault(data(PICTURE), meta(items, iloc("00000000 4400 1000"))))
        .isEqualTo("it ends at byte 8, in the middle of a part");
  }

  @Test
  void countsThePartsOfAllItemsTogether() throws IOException {
    var items = iinf(infe(2, 1, "jpeg"));
    var most = "00000000 0000 0002 0001 0000 FFFF 0002 0000 0001";
    assertThat(fault(data(PICTURE), meta(items, iloc(most)))).isEmpty();
    var more = "00000000 0000 0002 0001 0000 FFFF 0002 0000 0002";
    assertThat(fault(data(PICTURE), meta(items, iloc(more))))
        .isEqualTo("its index claims more than 65536 parts");
  }
}
