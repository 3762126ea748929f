package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Directories of TIFF 6.0, section 2, put together field by field. */
class TiffReaderTest {
  private static final int SHORT = 3;
  private static final int LONG = 4;
  private static final int STRIP_OFFSETS = 0x0111;
  private static final int STRIP_COUNTS = 0x0117;

  /** A file of a fixed size, filled with ones, in which directories are put where they belong. */
  private static final class File {
    private final ByteBuffer bytes;

    File(int size) {
      this(size, ByteOrder.LITTLE_ENDIAN, 42);
    }

    File(int size, ByteOrder order, int magic) {
      this.bytes = ByteBuffer.allocate(size).order(order);
      Arrays.fill(bytes.array(), (byte) 1);
      byte sign = (byte) (order == ByteOrder.BIG_ENDIAN ? 'M' : 'I');
      bytes.put(sign).put(sign).putShort((short) magic).putInt(8);
    }

    /** A field of one number, in its four bytes. */
    static int[] field(int tag, int type, int value) {
      return new int[] {tag, type, 1, value};
    }

    /** A field of several, at an offset. */
    static int[] fields(int tag, int type, int count, int at) {
      return new int[] {tag, type, count, at};
    }

    File directory(int at, int next, int[]... fields) {
      bytes.position(at);
      bytes.putShort((short) fields.length);
      for (var field : fields) {
        bytes.putShort((short) field[0]).putShort((short) field[1]).putInt(field[2]);
        if (field[1] == SHORT && field[2] == 1) {
          bytes.putShort((short) field[3]).putShort((short) 0);
        } else {
          bytes.putInt(field[3]);
        }
      }
      bytes.putInt(next);
      return this;
    }

    File numbers(int at, int... numbers) {
      bytes.position(at);
      for (int number : numbers) {
        bytes.putInt(number);
      }
      return this;
    }

    File put(int at, int... values) {
      for (int i = 0; i < values.length; i++) {
        bytes.put(at + i, (byte) values[i]);
      }
      return this;
    }

    Contents contents() throws IOException {
      return Contents.of(Bytes.of(bytes.array()));
    }

    String fault() throws IOException {
      return contents().fault().map(Text::english).orElse("");
    }
  }

  private static int[][] strip(int at, int length, int[]... more) {
    var fields = new int[more.length + 2][];
    fields[0] = File.field(STRIP_OFFSETS, LONG, at);
    fields[1] = File.field(STRIP_COUNTS, LONG, length);
    System.arraycopy(more, 0, fields, 2, more.length);
    return fields;
  }

  // What it is

  @ParameterizedTest
  @CsvSource({
    "49492A0008000000, true",
    "4D4D002A00000008, true",
    "4949550008000000, true",
    "4949524F08000000, true",
    "4949525308000000, true",
    "4949002A08000000, false",
    "4D4D2A0000000008, false",
    "494D2A0008000000, false",
    "4D492A0008000000, false",
    "49492B0008000000, false",
    "49492A00080000, false",
  })
  void isKnownByItsOrderAndItsNumber(String hex, boolean known) throws IOException {
    assertThat(TiffReader.claims(Bytes.of(java.util.HexFormat.of().parseHex(hex))))
        .isEqualTo(known);
  }

  // Whether it is whole

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void isWholeWhereItsDataReachToItsLastByteAndNoFurther(boolean bigEndian) throws IOException {
    var order = bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    assertThat(new File(100, order, 42).directory(8, 0, strip(90, 10)).fault()).isEmpty();
    assertThat(new File(100, order, 42).directory(8, 0, strip(90, 11)).fault())
        .isEqualTo("its picture data reach to byte 101, but it ends at byte 100");
  }

  @ParameterizedTest
  @CsvSource({"0x0144, 0x0145", "0x0201, 0x0202", "0x0111, 0x0117"})
  void looksAtTilesStripsAndJpegs(String offsets, String counts) throws IOException {
    int at = Integer.decode(offsets);
    int length = Integer.decode(counts);
    assertThat(
            new File(100)
                .directory(8, 0, File.field(at, LONG, 50), File.field(length, LONG, 50))
                .fault())
        .isEmpty();
    assertThat(
            new File(100)
                .directory(8, 0, File.field(at, LONG, 50), File.field(length, LONG, 51))
                .fault())
        .isEqualTo("its picture data reach to byte 101, but it ends at byte 100");
    assertThat(new File(100).directory(8, 0, File.field(at, LONG, 50)).fault())
        .isEqualTo("it names no picture data");
    assertThat(new File(100).directory(8, 0, File.field(length, LONG, 50)).fault())
        .isEqualTo("it names no picture data");
  }

  @Test
  void looksAtEveryStrip() throws IOException {
    var offsets = File.fields(STRIP_OFFSETS, LONG, 3, 60);
    var counts = File.fields(STRIP_COUNTS, LONG, 3, 72);
    assertThat(
            new File(100)
                .directory(8, 0, offsets, counts)
                .numbers(60, 84, 90, 95)
                .numbers(72, 6, 5, 5)
                .fault())
        .isEmpty();
    assertThat(
            new File(100)
                .directory(8, 0, offsets, counts)
                .numbers(60, 84, 90, 95)
                .numbers(72, 6, 5, 6)
                .fault())
        .isEqualTo("its picture data reach to byte 101, but it ends at byte 100");
  }

  @Test
  void readsStripsOfShortNumbersToo() throws IOException {
    assertThat(
            new File(100)
                .directory(
                    8, 0, File.field(STRIP_OFFSETS, SHORT, 90), File.field(STRIP_COUNTS, SHORT, 11))
                .fault())
        .isEqualTo("its picture data reach to byte 101, but it ends at byte 100");
  }

  @Test
  void namesNoPictureDataWhereTheirFieldsHoldNoWholeNumbers() throws IOException {
    // Type 5 is a fraction, type 12 a double: no offset is one.
    for (int type : new int[] {1, 2, 5, 6, 7, 8, 9, 10, 11, 12}) {
      assertThat(
              new File(100)
                  .directory(8, 0, File.field(STRIP_OFFSETS, type, 60), strip(60, 1)[1])
                  .fault())
          .as("type %d", type)
          .isEqualTo("it names no picture data");
    }
  }

  @Test
  void readsNoNumbersOfWhichSomeLieBehindItsEnd() throws IOException {
    var contents =
        new File(100)
            .directory(8, 0, File.fields(STRIP_OFFSETS, LONG, 3, 95), strip(8, 1)[1])
            .contents();
    assertThat(contents.fault().map(Text::english)).contains("it names no picture data");
    assertThat(contents.isHollow()).isTrue();
  }

  @Test
  void saysWhatItLacks() throws IOException {
    assertThat(new File(100).numbers(4, 0).fault())
        .isEqualTo("it has no directory of its contents");
    assertThat(new File(100).directory(8, 0).fault()).isEqualTo("it names no picture data");
    assertThat(new File(100).directory(8, 0, File.field(STRIP_OFFSETS, LONG, 60)).fault())
        .isEqualTo("it names no picture data");
    assertThat(new File(100).numbers(4, 100).fault())
        .isEqualTo("it ends at byte 100, in the middle of a part");
  }

  @Test
  void followsDirectoriesBehindAndBelowEachOther() throws IOException {
    // The second one has a child.
    var file =
        new File(200)
            .directory(8, 60, strip(190, 10))
            .directory(60, 0, File.field(0x014A, LONG, 120))
            .directory(120, 0, strip(190, 11));
    assertThat(file.fault())
        .isEqualTo("its picture data reach to byte 201, but it ends at byte 200");
    assertThat(file.directory(60, 0, File.field(0x8769, LONG, 120)).fault())
        .as("fields of the Exif are of no picture")
        .isEmpty();
    assertThat(
            file.directory(60, 0, File.field(0x8769, LONG, 120))
                .directory(120, 150)
                .directory(150, 0, strip(190, 11))
                .fault())
        .as("nothing follows the Exif")
        .isEmpty();
  }

  @Test
  void readsADirectoryWithoutTheNextOnesPlaceAtTheEndOfTheFile() throws IOException {
    var cut = Arrays.copyOf(new File(38).directory(8, 77, strip(8, 10)).bytes.array(), 37);
    assertThat(Contents.of(Bytes.of(cut)).fault()).isEmpty();
    assertThat(new File(38).directory(8, 77, strip(8, 10)).fault())
        .isEqualTo("it ends at byte 38, in the middle of a part");
  }

  @Test
  void readsAsManyFieldsAsADirectoryMayHave() throws IOException {
    var fields = new int[4096][];
    Arrays.fill(fields, File.field(0x0100, LONG, 1));
    fields[4094] = strip(8, 1)[0];
    fields[4095] = strip(8, 1)[1];
    assertThat(new File(8 + 2 + 12 * 4096 + 4 + 20).directory(8, 0, fields).fault()).isEmpty();
    var more = Arrays.copyOf(fields, 4097);
    more[4096] = fields[0];
    assertThat(new File(8 + 2 + 12 * 4097 + 4 + 20).directory(8, 0, more).fault())
        .isEqualTo("a directory at byte 8 claims 4097 fields");
  }

  @Test
  void readsSixtyFourDirectoriesAndNoMore() throws IOException {
    for (int count : new int[] {64, 65}) {
      var file = new File(3000);
      for (int i = 0; i < count - 1; i++) {
        file.directory(8 + i * 40, 8 + (i + 1) * 40, strip(8, 1));
      }
      file.directory(8 + (count - 1) * 40, 0, strip(3000, 1));
      assertThat(file.fault().isEmpty()).as("%d directories", count).isEqualTo(count > 64);
    }
  }

  @Test
  void passesOverFieldsOfTypesThatItDoesNotKnow() throws IOException {
    for (int type : new int[] {0, 14, 255}) {
      var unknown = File.fields(0x0100, type, 1000, 5000);
      var contents = new File(100).directory(8, 0, strip(8, 1, unknown)).contents();
      assertThat(contents.fault()).isEmpty();
      assertThat(contents.isHollow()).isFalse();
    }
  }

  // Whether it may yet grow

  /** The sizes of the types of TIFF 6.0, section 2, and of a directory's offset (13). */
  @ParameterizedTest
  @CsvSource({
    "1, 1", "2, 1", "3, 2", "4, 4", "5, 8", "6, 1", "7, 1", "8, 2", "9, 4", "10, 8", "11, 4",
    "12, 8", "13, 4"
  })
  void mayYetGrowWhereAFieldsValueLiesBehindItsEnd(int type, int size) throws IOException {
    int count = 40 / size;
    var inside = File.fields(0x0100, type, count, 60);
    assertThat(new File(100).directory(8, 0, strip(8, 1, inside)).contents().isHollow()).isFalse();
    var outside = File.fields(0x0100, type, count, 61);
    assertThat(new File(100).directory(8, 0, strip(8, 1, outside)).contents().isHollow()).isTrue();
    var more = File.fields(0x9000, type, count + 1, 60);
    assertThat(new File(100).directory(8, 0, strip(8, 1, more)).contents().isHollow()).isTrue();
    var inField = File.fields(0x9000, type, 4 / size, 5000);
    assertThat(new File(100).directory(8, 0, strip(8, 1, inField)).contents().isHollow())
        .as("a value of up to four bytes lies in the field itself")
        .isFalse();
  }

  @Test
  void mayYetGrowWhereItsLastSixteenBytesAreZero() throws IOException {
    var zeros = new int[16];
    var file = new File(100).directory(8, 0, strip(8, 1));
    assertThat(file.put(84, zeros).contents().isHollow()).isTrue();
    assertThat(file.put(84, 1).contents().isHollow()).isFalse();
    assertThat(file.put(84, zeros).put(99, 1).contents().isHollow()).isFalse();
    var none = new Contents();
    TiffReader.noteIfHollow(Bytes.of(new byte[3]), none);
    assertThat(none.isHollow()).isTrue();
  }

  // Previews

  /** A directory of plain rows of 8-bit red, green and blue, two by one. */
  private static int[][] rows(int[]... changed) {
    var fields =
        new int[][] {
          File.field(0x00FE, LONG, 1),
          File.field(0x0100, LONG, 2),
          File.field(0x0101, LONG, 1),
          File.field(0x0102, SHORT, 8),
          File.field(0x0103, SHORT, 1),
          File.field(0x0106, SHORT, 2),
          File.field(0x0111, LONG, 200),
          File.field(0x0115, SHORT, 3),
          File.field(0x0117, LONG, 6),
        };
    for (var field : changed) {
      for (int i = 0; i < fields.length; i++) {
        if (fields[i][0] == field[0]) {
          fields[i] = field;
        }
      }
    }
    return fields;
  }

  private static int previews(int[][] fields) throws IOException {
    return new File(300).directory(8, 0, fields).contents().previews().size();
  }

  @Test
  void takesAReducedPictureOfPlainRowsForAPreview() throws IOException {
    var contents = new File(206).directory(8, 0, rows()).put(200, 1, 2, 3, 4, 5, 6).contents();
    assertThat(contents.previews())
        .singleElement()
        .satisfies(
            preview -> {
              assertThat(preview.rgb()).isTrue();
              assertThat(preview.width()).isEqualTo(2);
              assertThat(preview.height()).isEqualTo(1);
              assertThat(preview.data().read(0, 6)).containsExactly(1, 2, 3, 4, 5, 6);
              assertThat(preview.data().size()).isEqualTo(6);
            });
    assertThat(new File(205).directory(8, 0, rows()).contents().previews()).isEmpty();
  }

  @Test
  void takesNoOtherPictureForOne() throws IOException {
    assertThat(previews(rows())).isEqualTo(1);
    assertThat(previews(rows(File.field(0x00FE, LONG, 0)))).as("the main picture").isZero();
    assertThat(previews(rows(File.field(0x0100, LONG, 3)))).as("too few bytes").isZero();
    assertThat(previews(rows(File.field(0x0101, LONG, 2)))).as("too few bytes").isZero();
    assertThat(previews(rows(File.field(0x0100, LONG, 0)))).as("no width").isZero();
    assertThat(previews(rows(File.field(0x0101, LONG, 0)))).as("no height").isZero();
    assertThat(previews(rows(File.field(0x0102, SHORT, 16)))).as("of 16 bits").isZero();
    assertThat(previews(rows(File.field(0x0103, SHORT, 5)))).as("compressed").isZero();
    assertThat(previews(rows(File.field(0x0106, SHORT, 6)))).as("of other colours").isZero();
    assertThat(previews(rows(File.field(0x0115, SHORT, 4)))).as("of four colours").isZero();
    assertThat(previews(rows(File.field(0x0117, LONG, 5)))).as("too few bytes").isZero();
    assertThat(previews(rows(File.field(0x0117, LONG, 7)))).as("more than enough").isEqualTo(1);
  }

  @Test
  void takesTheMainPictureForAPreviewWhereTheRawIsAChildOfItOrTheFileIsNoTiff() throws IOException {
    var fields = Arrays.copyOf(rows(File.field(0x00FE, LONG, 0)), 10);
    fields[9] = File.field(0x014A, LONG, 0);
    assertThat(previews(fields)).isEqualTo(1);
    var main = rows(File.field(0x00FE, LONG, 0));
    assertThat(
            new File(300, ByteOrder.LITTLE_ENDIAN, 0x4F52)
                .directory(8, 0, main)
                .contents()
                .previews())
        .hasSize(1);
  }

  @Test
  void takesRowsOfUpTo2048PixelsForAPreview() throws IOException {
    for (int tag : new int[] {0x0100, 0x0101}) {
      for (int pixels : new int[] {2048, 2049}) {
        int other = tag == 0x0100 ? 0x0101 : 0x0100;
        var fields =
            rows(
                File.field(tag, LONG, pixels),
                File.field(other, LONG, 1),
                File.field(0x0117, LONG, pixels * 3));
        assertThat(new File(7000).directory(8, 0, fields).contents().previews())
            .hasSize(pixels == 2048 ? 1 : 0);
      }
    }
  }

  @Test
  void takesStripsThatFollowEachOtherForOne() throws IOException {
    var fields =
        rows(File.fields(STRIP_OFFSETS, LONG, 2, 220), File.fields(STRIP_COUNTS, LONG, 2, 228));
    var together = new File(300).directory(8, 0, fields).numbers(220, 200, 203).numbers(228, 3, 3);
    assertThat(together.contents().previews()).hasSize(1);
    assertThat(together.numbers(220, 200, 204).contents().previews()).isEmpty();
    assertThat(together.numbers(220, 200, 203).numbers(228, 3, 2).contents().previews()).isEmpty();
    var unequal = rows(File.fields(STRIP_OFFSETS, LONG, 2, 220), File.field(STRIP_COUNTS, LONG, 6));
    assertThat(new File(300).directory(8, 0, unequal).numbers(220, 200, 203).contents().previews())
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"6, 1", "7, 1", "5, 0", "8, 0"})
  void takesAStripThatIsCompressedAsJpegForAPreview(int compression, int previews)
      throws IOException {
    var jpeg = strip(200, 3, File.field(0x0103, SHORT, compression));
    assertThat(new File(300).directory(8, 0, jpeg).put(200, 0xFF, 0xD8, 0xFF).contents().previews())
        .hasSize(previews);
  }

  @Test
  void takesNoSeveralStripsOfJpegForOne() throws IOException {
    var several =
        new int[][] {
          File.fields(STRIP_OFFSETS, LONG, 2, 220),
          File.fields(STRIP_COUNTS, LONG, 2, 228),
          File.field(0x0103, SHORT, 7)
        };
    var file =
        new File(300)
            .directory(8, 0, several)
            .numbers(220, 200, 203)
            .numbers(228, 3, 3)
            .put(200, 0xFF, 0xD8, 0xFF);
    assertThat(file.contents().previews()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"3, FFD8, 1", "2, FFD8, 0", "101, FFD8, 0", "100, FFD8, 1", "3, FFD9, 0"})
  void takesAJpegForAPreviewThatLiesInTheFileAndBeginsAsOne(int length, String start, int previews)
      throws IOException {
    int begin = Integer.parseInt(start, 16);
    var contents =
        new File(300)
            .directory(8, 0, File.field(0x0201, LONG, 200), File.field(0x0202, LONG, length))
            .put(200, begin >> 8, begin)
            .contents();
    assertThat(contents.previews()).hasSize(previews);
    if (previews == 1) {
      assertThat(contents.previews().getFirst().data().size()).isEqualTo(length);
      assertThat(contents.previews().getFirst().rgb()).isFalse();
    }
  }

  // The way up, and what else is said

  @Test
  void takesTheFirstOrientationThatIsGiven() throws IOException {
    var file =
        new File(200)
            .directory(8, 60, strip(8, 1))
            .directory(60, 100, File.field(0x0112, SHORT, 6))
            .directory(100, 0, File.field(0x0112, SHORT, 3));
    assertThat(file.contents().orientation()).isEqualTo(6);
  }

  @ParameterizedTest
  @CsvSource({"0, 1", "1, 1", "8, 8", "9, 1", "-1, 1"})
  void takesAnOrientationFromOneToEight(int written, int taken) throws IOException {
    var file = new File(200).directory(8, 0, strip(8, 1, File.field(0x0112, SHORT, written)));
    assertThat(file.contents().orientation()).isEqualTo(taken);
  }

  @Test
  void findsThePacketOfXmp() throws IOException {
    var file = new File(200).directory(8, 0, strip(8, 1, File.fields(0x02BC, 1, 5, 190)));
    var packet = file.put(190, 1, 2, 3, 4, 5).contents().xmp().orElseThrow();
    assertThat(packet.read(0, (int) packet.size())).containsExactly(1, 2, 3, 4, 5);
    var outside = new File(194).directory(8, 0, strip(8, 1, File.fields(0x02BC, 1, 5, 190)));
    assertThat(outside.contents().xmp()).isEmpty();
  }

  // RW2: a JPEG in a field, and data to the end (layout as published by open-source readers)

  private static File rw2(int data) {
    return new File(200, ByteOrder.LITTLE_ENDIAN, 0x55)
        .directory(8, 0, File.fields(0x002E, 7, 20, 100), File.field(0x0118, LONG, data))
        .put(100, 0xFF, 0xD8, 0xFF, 0xDA, 0, 2);
  }

  @Test
  void findsTheJpegAndTheDataOfAnRw2() throws IOException {
    assertThat(rw2(199).fault()).isEmpty();
    assertThat(rw2(200).fault())
        .isEqualTo("its picture data reach to byte 200, but it ends at byte 200");
    assertThat(rw2(199).contents().previews())
        .singleElement()
        .returns(20L, one -> one.data().size());
    // The same fields of another file say nothing.
    var other = new File(200).directory(8, 0, File.fields(0x002E, 7, 20, 100));
    assertThat(other.put(100, 0xFF, 0xD8).contents().previews()).isEmpty();
  }

  @Test
  void readsTheExifOfTheJpegInAnRw2() throws IOException {
    var file =
        new File(200, ByteOrder.LITTLE_ENDIAN, 0x55)
            .directory(8, 0, File.fields(0x002E, 7, 30, 100), File.field(0x0118, LONG, 199))
            .put(100, 0xFF, 0xD8, 0xFF, 0xE1, 0, 11, 'E', 'x', 'i', 'f', 0, 0, 7, 8, 9)
            .put(115, 0xFF, 0xDA, 0, 2);
    var exif = file.contents().exif();
    assertThat(exif).hasSize(2);
    assertThat(exif.getLast().read(0, 3)).containsExactly(7, 8, 9);
    // A raw is whole without its preview.
    assertThat(file.put(115, 0, 0).fault()).isEmpty();
  }

  // Blocks inside other files

  @Test
  void leavesOutAPreviewThatIsBroken() throws IOException {
    var contents = new Contents();
    TiffReader.readPreviews(Bytes.of(new File(12).bytes.array()), contents);
    TiffReader.readPreviews(Bytes.of(new byte[8]), contents);
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.previews()).isEmpty();
  }

  @Test
  void findsPreviewsAndTheWayUpInABlock() throws IOException {
    var contents = new Contents();
    var block =
        new File(300)
            .directory(8, 60, File.field(0x0112, SHORT, 8), File.field(0x8769, LONG, 120))
            .directory(60, 0, File.field(0x0201, LONG, 200), File.field(0x0202, LONG, 9))
            .directory(120, 0, File.field(0x0201, LONG, 200), File.field(0x0202, LONG, 9))
            .put(200, 0xFF, 0xD8);
    TiffReader.readPreviews(Bytes.of(block.bytes.array()), contents);
    assertThat(contents.orientation()).isEqualTo(8);
    assertThat(contents.previews()).as("the Exif has no preview").hasSize(1);
  }

  @Test
  void keepsThirtyTwoPreviewsAndSixteenBlocksOfExif() throws IOException {
    var contents = new Contents();
    var block = Bytes.of(new TestCamera("Body", "1").description(1));
    IntStream.range(0, 40)
        .forEach(
            _ -> {
              contents.preview(Preview.jpeg(block));
              contents.exif(block);
            });
    assertThat(contents.previews()).hasSize(32);
    assertThat(contents.exif()).hasSize(16);
    contents.exifWithPreviews(block);
    assertThat(contents.exif()).hasSize(16);
  }
}
