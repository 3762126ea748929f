package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.handoff.metadata.Samples.packet;
import static org.framewright.handoff.metadata.Samples.segment;
import static org.framewright.handoff.metadata.Samples.utf8;
import static org.framewright.handoff.metadata.Samples.with;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.framewright.handoff.Pictures;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** How a packet comes into a copy: JPEG by ISO/IEC 10918-1, TIFF by TIFF 6.0. */
class PictureCopyTest {
  private static final byte[] EXTENSION = utf8("http://ns.adobe.com/xmp/extension/\0rest");

  @TempDir private Path folder;
  private byte[] jpeg;

  @BeforeEach
  void aPicture() throws Exception {
    jpeg = Pictures.of("jpg");
  }

  private PictureCopy.Outcome embed(byte[] copy) throws Exception {
    Files.write(folder.resolve("copy"), copy);
    Files.deleteIfExists(folder.resolve("made"));
    return PictureCopy.embed(
        folder.resolve("copy"), folder.resolve("made"), Samples.block(), false);
  }

  private byte[] embedded(byte[] copy) throws Exception {
    assertThat(embed(copy)).isInstanceOf(PictureCopy.Outcome.Made.class);
    return Files.readAllBytes(folder.resolve("made"));
  }

  private String left(byte[] copy) throws Exception {
    var outcome = embed(copy);
    assertThat(outcome).isInstanceOf(PictureCopy.Outcome.Left.class);
    assertThat(folder.resolve("made")).doesNotExist();
    return ((PictureCopy.Outcome.Left) outcome).why().english();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  /** What is left of a JPEG without its one packet. */
  private static String withoutPacket(byte[] bytes) {
    var text = text(bytes);
    int name = text.indexOf("http://ns.adobe.com/xap/1.0/\0");
    assertThat(text.indexOf("http://ns.adobe.com/xap/1.0/\0", name + 1)).isNegative();
    int from = name - 4;
    int length = ((bytes[from + 2] & 0xFF) << 8) | (bytes[from + 3] & 0xFF);
    return text.substring(0, from) + text.substring(from + 2 + length);
  }

  @Test
  void everyByteOfAJpegStaysButThePacket() throws Exception {
    assertThat(withoutPacket(embedded(jpeg))).isEqualTo(text(jpeg));
  }

  @Test
  void thePacketComesBehindWhatReadersWantFirst() throws Exception {
    var exif = segment(0xE1, utf8("Exif\0\0..."));
    var made = text(embedded(with(jpeg, exif)));
    assertThat(made.indexOf("ns.adobe.com/xap")).isGreaterThan(made.indexOf("Exif"));
    assertThat(made.indexOf("ns.adobe.com/xap"))
        .isGreaterThan(made.indexOf("JFIF"))
        .isLessThan(made.indexOf("\u00FF\u00DB"));
  }

  @Test
  void aPacketThatIsThereIsMergedWhereItLiesAndItsExtensionStays() throws Exception {
    var note = "xmlns:n=\"http://ns.adobe.com/xmp/note/\" n:HasExtendedXMP=\"AB12\"";
    var before = utf8(packet("<rdf:Description rdf:about=\"\" " + note + "/>"));
    var extension = segment(0xE1, EXTENSION);
    var copy = with(jpeg, Samples.xmpSegment(before), extension);
    var made = embedded(copy);
    assertThat(withoutPacket(made)).isEqualTo(withoutPacket(copy));
    assertThat(text(made)).contains("n:HasExtendedXMP=\"AB12\"").contains("KVO_001_F_0001");
  }

  @Test
  void aPacketWithRoomIsFilledWithoutMovingAnything() throws Exception {
    var roomy = utf8(packet("") + " ".repeat(20_000));
    var copy = with(jpeg, Samples.xmpSegment(roomy));
    var made = embedded(copy);
    assertThat(made).hasSameSizeAs(copy);
    assertThat(withoutPacket(made)).isEqualTo(withoutPacket(copy));
  }

  @Test
  void aCopyThatSaysAllOfItStaysAsItIs() throws Exception {
    assertThat(embed(embedded(jpeg))).isInstanceOf(PictureCopy.Outcome.Same.class);
    assertThat(folder.resolve("made")).doesNotExist();
  }

  @Test
  void somebodysWordsStayAndAreTold() throws Exception {
    var theirs =
        packet(
            "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">"
                + "<dc:creator><rdf:Seq><rdf:li>Else</rdf:li></rdf:Seq></dc:creator></rdf:Description>");
    assertThat(embed(with(jpeg, Samples.xmpSegment(utf8(theirs)))))
        .isEqualTo(new PictureCopy.Outcome.Made(List.of("Creator")));
  }

  @Test
  void aPacketThatWouldBeTooLargeLeavesTheCopyAsItIs() throws Exception {
    // 65502 bytes: XMP specification, part 3.
    var large =
        utf8(
            packet(
                "<rdf:Description rdf:about=\"\" xmlns:e=\"urn:e\" e:a=\""
                    + "a".repeat(62_000)
                    + "\"/>"));
    assertThat(left(with(jpeg, Samples.xmpSegment(large)))).contains("larger than a JPEG can hold");
  }

  @Test
  void aPacketThatJustFitsHasLessRoomToGrow() throws Exception {
    var large =
        utf8(
            packet(
                "<rdf:Description rdf:about=\"\" xmlns:e=\"urn:e\" e:a=\""
                    + "a".repeat(59_000)
                    + "\"/>"));
    assertThat(embed(with(jpeg, Samples.xmpSegment(large))))
        .isInstanceOf(PictureCopy.Outcome.Made.class);
  }

  @Test
  void severalPacketsAreNotDecidedBetween() throws Exception {
    var one = Samples.xmpSegment(utf8(packet("")));
    assertThat(left(with(jpeg, one, one))).contains("several packets");
  }

  @Test
  void dataBehindThePictureAreNotMoved() throws Exception {
    var preview = Samples.joined(jpeg, jpeg);
    assertThat(left(preview)).contains("data behind its picture");
    assertThat(embed(Samples.joined(jpeg, new byte[100])))
        .isInstanceOf(PictureCopy.Outcome.Made.class);
  }

  // CIPA DC-007: offsets of a list of pictures count from the list itself.
  @Test
  void dataBehindThePictureMayMoveWithTheListThatLeadsToThem() throws Exception {
    var list = segment(0xE2, utf8("MPF\0list"));
    var copy = Samples.joined(with(jpeg, list), jpeg);
    var made = text(embedded(copy));
    assertThat(made.indexOf("ns.adobe.com/xap")).isLessThan(made.indexOf("MPF\0list"));
    var packet = Samples.xmpSegment(utf8(packet("")));
    assertThat(left(Samples.joined(with(jpeg, list, packet), jpeg))).contains("data behind");
  }

  @Test
  void aJpegThatIsNoneOrCutIsLeft() throws Exception {
    assertThat(left(Arrays.copyOf(jpeg, 100))).contains("do not lie where it says");
    assertThat(left(new byte[] {(byte) 0xFF, (byte) 0xD8, 1, 2, 3})).contains("do not lie");
    assertThat(left(utf8("not a picture"))).contains("neither a JPEG nor a TIFF");
    assertThat(left(new byte[0])).contains("do not lie");
  }

  @Test
  void aHostilePacketInsideLeavesTheCopyAsItIs() throws Exception {
    var bomb = utf8("<!DOCTYPE x [<!ENTITY a \"a\">]>" + packet("&a;"));
    assertThat(left(with(jpeg, Samples.xmpSegment(bomb)))).contains("document type");
    assertThat(left(with(jpeg, Samples.xmpSegment(utf8("<x:xmpmeta><a>"))))).contains("cut short");
  }

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void everyByteOfATiffStaysButWhereItsFirstDirectoryIs(boolean bigEndian) throws Exception {
    var order = bigEndian ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    for (var tiff :
        List.of(Samples.tiff(order, 42), Samples.joined(Samples.tiff(order, 42), new byte[] {7}))) {
      var made = embedded(tiff);
      assertThat(Arrays.copyOf(made, 4)).isEqualTo(Arrays.copyOf(tiff, 4));
      assertThat(Arrays.copyOfRange(made, 8, tiff.length))
          .isEqualTo(Arrays.copyOfRange(tiff, 8, tiff.length));
      var bytes = ByteBuffer.wrap(made).order(order);
      int directory = bytes.getInt(4);
      assertThat(directory).isGreaterThanOrEqualTo(tiff.length).isEven();
      int count = bytes.getShort(directory);
      assertThat(count).isEqualTo(9);
      int before = 0;
      for (int i = 0; i < count; i++) {
        int tag = bytes.getShort(directory + 2 + 12 * i) & 0xFFFF;
        assertThat(tag).isGreaterThan(before);
        before = tag;
      }
      assertThat(bytes.getInt(directory + 2 + 12 * count)).isZero();
      assertThat(embed(made)).isInstanceOf(PictureCopy.Outcome.Same.class);
    }
  }

  @Test
  void aTiffThatHasAPacketGetsTheNewOneInItsPlace() throws Exception {
    var made = embedded(Samples.tiff(ByteOrder.LITTLE_ENDIAN, 42));
    Files.write(folder.resolve("copy"), made);
    Files.delete(folder.resolve("made"));
    var other =
        Block.of(Samples.studio(Samples.settings()), Samples.select(Samples.columns(), "Hat"));
    assertThat(PictureCopy.embed(folder.resolve("copy"), folder.resolve("made"), other, true))
        .isInstanceOf(PictureCopy.Outcome.Made.class);
    var bytes = ByteBuffer.wrap(Files.readAllBytes(folder.resolve("made")));
    bytes.order(ByteOrder.LITTLE_ENDIAN);
    assertThat(bytes.getShort(bytes.getInt(4))).isEqualTo((short) 9);
    assertThat(text(bytes.array())).contains("Hat; front");
  }

  @Test
  void aBigTiffIsLeft() throws Exception {
    assertThat(left(Samples.tiff(ByteOrder.LITTLE_ENDIAN, 43))).isEqualTo("it is a BigTIFF");
  }

  @Test
  void aTiffWhosePartsLieOutsideIsLeft() throws Exception {
    var far = Samples.tiff(ByteOrder.LITTLE_ENDIAN, 42);
    ByteBuffer.wrap(far).order(ByteOrder.LITTLE_ENDIAN).putInt(4, 1 << 30);
    assertThat(left(far)).contains("do not lie where it says");
    var huge = Samples.tiff(ByteOrder.LITTLE_ENDIAN, 42, 700, 1, 1 << 30, 8);
    assertThat(left(huge)).contains("do not lie where it says");
  }

  @Test
  void onlyJpegTiffAndDngAreMadeToSaySomething() {
    assertThat(List.of("A.JPG", "a.jpeg", "a.tif", "A.TIFF", "a.dng")).allMatch(PictureCopy::takes);
    assertThat(List.of("A.CR3", "a.NEF", "a.heic", "a.png", "a.xmp")).noneMatch(PictureCopy::takes);
  }

  @Test
  void whatWasNotWrittenAsItShouldIsFoundByReadingItAgain() throws Exception {
    var copy = Files.write(folder.resolve("copy"), jpeg);
    var made = folder.resolve("made");
    var rewriting =
        new Rewriting(
            List.of(
                new Rewriting.Piece.Kept(0, 2),
                new Rewriting.Piece.Put(new byte[] {1, 2, 3}),
                new Rewriting.Piece.Kept(2, jpeg.length)));
    rewriting.write(copy, made);
    assertThat(rewriting.isWhatLiesIn(made, copy)).isTrue();
    var written = Files.readAllBytes(made);
    for (int at : new int[] {0, 3, 100, written.length - 1}) {
      var broken = written.clone();
      broken[at] ^= 1;
      Files.write(made, broken);
      assertThat(rewriting.isWhatLiesIn(made, copy)).as("byte " + at).isFalse();
    }
    Files.write(made, Arrays.copyOf(written, written.length - 1));
    assertThat(rewriting.isWhatLiesIn(made, copy)).isFalse();
    Files.write(made, Arrays.copyOf(written, written.length + 1));
    assertThat(rewriting.isWhatLiesIn(made, copy)).isFalse();
  }
}
