package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** CRW, MRW, X3F, AVI and MXF at their edges, and such as claim more than is sensible. */
class OldRawsTest {
  private static Contents contents(byte[] file) throws IOException {
    return Contents.of(Bytes.of(file));
  }

  private static ByteBuffer little(byte[] bytes) {
    return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
  }

  private static byte[] format(String name) {
    return TestFormats.all().get(name).clone();
  }

  @Test
  void aCrwSaysItsBodyItsTurnAndItsPreview() throws IOException {
    var contents = contents(format("a.crw"));
    assertThat(contents.said().camera())
        .contains(new Camera("Works", "Studio Body A", "0000004711"));
    assertThat(contents.orientation()).isEqualTo(6);
    assertThat(contents.previews()).hasSize(1);
    assertThat(contents.said().offset()).isEmpty();
  }

  @Test
  void aCrwWithoutSensorDataOrTimeSaysSo() throws IOException {
    var crw = format("a.crw");
    // The root's directory is the last; its first entry is the sensor's data.
    int directory = 26 + little(crw).getInt(crw.length - 4);
    little(crw).putShort(directory + 2, (short) 0x0001);
    assertThat(contents(crw).fault().map(Text::english)).contains("it names no picture data");
    assertThat(CiffReader.time(0)).isEmpty();
    assertThat(CiffReader.time(1)).contains(LocalDateTime.of(1970, 1, 1, 0, 0, 1));
    assertThat(CiffReader.time(Long.MAX_VALUE)).isEmpty();
  }

  @Test
  void aCrwWhoseHeapsLieInsideEachOtherWithoutEndIsNotFollowed() throws IOException {
    var crw = format("a.crw");
    int directory = 26 + little(crw).getInt(crw.length - 4);
    // The directory's first value is the whole heap again.
    little(crw).putShort(directory + 2, (short) 0x300A);
    little(crw).putInt(directory + 4, crw.length - 26).putInt(directory + 8, 0);
    assertThat(contents(crw).fault().orElseThrow().english())
        .contains("more entries than is sensible");
    little(crw).putShort(directory, (short) 0xFFFF);
    assertThat(contents(crw).fault()).isPresent();
  }

  @ParameterizedTest
  @CsvSource({"0,1", "90,6", "180,3", "270,8", "360,1", "-90,8", "45,1"})
  void degreesBecomeExifOrientation(int degrees, int orientation) {
    assertThat(CiffReader.orientation(degrees)).isEqualTo(orientation);
  }

  @Test
  void aMrwNeedsAllRowsOfItsSensor() throws IOException {
    var mrw = format("a.mrw");
    assertThat(contents(mrw).fault()).isEmpty();
    assertThat(contents(mrw).orientation()).isEqualTo(6);
    assertThat(contents(mrw).previews()).isNotEmpty();
    var cut = Arrays.copyOf(mrw, mrw.length - 1);
    assertThat(contents(cut).fault().orElseThrow().english())
        .isEqualTo(
            "its picture data reach to byte %d, but it ends at byte %d"
                .formatted(mrw.length, mrw.length - 1));
    // Twelve bits packed need less.
    mrw[8 + 8 + 16] = 12;
    assertThat(contents(Arrays.copyOf(mrw, mrw.length - 300)).fault()).isEmpty();
    assertThat(contents(Arrays.copyOf(mrw, mrw.length - 301)).fault()).isPresent();
  }

  @Test
  void aMrwWhoseBlocksReachOutsideIsBroken() throws IOException {
    var mrw = format("a.mrw");
    ByteBuffer.wrap(mrw).putInt(12, Integer.MAX_VALUE);
    assertThat(contents(mrw).fault()).isPresent();
    ByteBuffer.wrap(mrw).putInt(4, Integer.MAX_VALUE);
    assertThat(contents(mrw).fault()).isPresent();
  }

  @Test
  void aX3fSaysItsBodyItsTurnAndItsPreview() throws IOException {
    var contents = contents(format("a.x3f"));
    assertThat(contents.said().camera())
        .contains(new Camera("Invented Works", "Studio Body A", "A-1001"));
    assertThat(contents.orientation()).isEqualTo(8);
    assertThat(contents.previews()).hasSize(1);
  }

  @Test
  void aX3fThatClaimsTooMuchOrHasNoImageIsBroken() throws IOException {
    var x3f = format("a.x3f");
    int directory = little(x3f).getInt(x3f.length - 4);
    little(x3f).putInt(directory + 8, 0);
    assertThat(contents(x3f).fault().map(Text::english)).contains("it names no picture data");
    little(x3f).putInt(directory + 8, 257);
    assertThat(contents(x3f).fault().map(Text::english)).contains("it claims 257 parts");
    little(x3f).putInt(directory, 0);
    assertThat(contents(x3f).fault().orElseThrow().english()).contains("its end");
    var properties = format("a.x3f");
    // As many properties as a number can say; they are read no further than the section.
    little(properties).putInt(40 + 8, -1);
    assertThat(contents(properties).fault()).isPresent();
  }

  @ParameterizedTest
  @CsvSource({
    "Wed Nov 25 12:34:56 2026, 2026-11-25T12:34:56",
    "Sun Nov  1 02:03:04 2026, 2026-11-01T02:03:04",
    "2026:11:25 12:34:56, 2026-11-25T12:34:56",
    "2026-11-25 12:34:56, 2026-11-25T12:34:56",
    "yesterday,",
    "Wed Nov 25 12:34:56,",
  })
  void theDateOfAnAviIsReadInBothForms(String text, LocalDateTime time) {
    assertThat(AviReader.time(text)).isEqualTo(Optional.ofNullable(time));
  }

  @Test
  void anAviThatGoesOnInAFurtherChunkIsWholeWithThatOnly() throws IOException {
    var avi = format("a.avi");
    var more =
        TestContainers.join(
            avi,
            "RIFF".getBytes(StandardCharsets.US_ASCII),
            new byte[] {4, 0, 0, 0},
            new byte[] {'A', 'V', 'I', 'X'});
    assertThat(contents(more).fault()).isEmpty();
    assertThat(contents(Arrays.copyOf(more, more.length - 1)).fault().orElseThrow().english())
        .contains("its film reaches to byte");
    assertThat(contents(more).said().time()).contains(TestFormats.TIME);
  }

  @Test
  void anMxfWithoutAFooterMayYetBeFilming() throws IOException {
    var mxf = format("a.mxf");
    assertThat(contents(mxf).isHollow()).isFalse();
    // The header's partition says where the footer lies: behind key, length and 24 bytes.
    ByteBuffer.wrap(mxf).putLong(16 + 4 + 24, 0);
    assertThat(contents(mxf).isHollow()).isTrue();
    assertThat(contents(mxf).fault()).isEmpty();
    assertThat(contents(mxf).said().time()).contains(TestFormats.TIME);
    ByteBuffer.wrap(mxf).putLong(16 + 4 + 24, 5);
    assertThat(contents(mxf).fault().map(Text::english)).contains("its end is missing");
    ByteBuffer.wrap(mxf).putLong(16 + 4 + 24, Long.MAX_VALUE);
    assertThat(contents(mxf).fault().map(Text::english)).contains("its end is missing");
  }

  @Test
  void anMxfWhoseLengthsAreTooLargeIsBroken() throws IOException {
    var mxf = format("a.mxf");
    mxf[16] = (byte) 0x89;
    assertThat(contents(mxf).fault().orElseThrow().english()).contains("a length of 9 bytes");
    mxf[16] = (byte) 0x88;
    assertThat(contents(mxf).fault()).isPresent();
  }

  @Test
  void aClipsOwnWordCountsBeforeItsHeaders() throws IOException {
    var clips = TestFormats.clips();
    assertThat(contents(clips.get("a.mp4")).said())
        .returns(Optional.of(ZoneOffset.UTC), Capture::offset)
        .returns(Optional.empty(), Capture::camera);
    for (var name : List.of("keys.mov", "text.mov", "xml.mp4")) {
      assertThat(contents(clips.get(name)).said())
          .as(name)
          .returns(Optional.of(ZoneOffset.ofHours(1)), Capture::offset)
          .returns(Optional.of(TestFormats.TIME.plusHours(1)), Capture::time)
          .matches(said -> said.camera().orElseThrow().model().equals("Studio Body A"));
    }
    assertThat(contents(clips.get("fields.mov")).said()).returns(Optional.empty(), Capture::offset);
  }

  @ParameterizedTest
  @CsvSource({
    "2026-11-25T13:34:56+0100, 3600",
    "2026-11-25T13:34:56+01:00, 3600",
    "2026-11-25T13:34:56.5-02:30, -9000",
    "2026-11-25T13:34:56Z, 0",
    "2026-11-25T13:34:56,",
  })
  void timesOfClipsAreIso8601(String text, Integer seconds) {
    var dated = ClipReader.dated(text);
    assertThat(dated.time().orElseThrow().withNano(0))
        .isEqualTo(LocalDateTime.of(2026, 11, 25, 13, 34, 56));
    assertThat(dated.offset().map(ZoneOffset::getTotalSeconds))
        .isEqualTo(Optional.ofNullable(seconds));
    assertThat(ClipReader.dated("2026").time()).isEmpty();
    assertThat(ClipReader.dated("").time()).isEmpty();
  }

  @Test
  void aHeaderOfAClipThatCountsFrom1970IsReadAsThat() throws IOException {
    var mp4 = TestFormats.clips().get("a.mp4").clone();
    int at = new String(mp4, StandardCharsets.ISO_8859_1).indexOf("mvhd") + 8;
    ByteBuffer.wrap(mp4).putInt(at, (int) TestFormats.TIME.toEpochSecond(ZoneOffset.UTC));
    assertThat(contents(mp4).said().time()).contains(TestFormats.TIME);
    ByteBuffer.wrap(mp4).putInt(at, 0);
    assertThat(contents(mp4).said().time()).isEmpty();
  }

  @Test
  void whatIsBrokenInsideAClipCostsOnlyWhatItSays() throws IOException {
    var mov = TestFormats.clips().get("keys.mov").clone();
    int at = new String(mov, StandardCharsets.ISO_8859_1).indexOf("keys") + 8;
    ByteBuffer.wrap(mov).putInt(at, Integer.MAX_VALUE).putInt(at + 4, 3);
    var contents = contents(mov);
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.said().time()).contains(TestFormats.TIME);
    var xml = TestFormats.clips().get("xml.mp4").clone();
    xml[new String(xml, StandardCharsets.ISO_8859_1).indexOf("<CreationDate")] = '&';
    assertThat(contents(xml).fault()).isEmpty();
    assertThat(contents(xml).said().offset()).contains(ZoneOffset.UTC);
  }

  @Test
  void aRawsDateCountsWhereItSaysNoOther() throws IOException {
    var ifd = new TestCamera.Tiff();
    ifd.ascii(0x0110, "Studio Body A");
    ifd.ascii(0x0132, "2026:11:25 12:34:56");
    var block = List.of(Bytes.of(ifd.file()));
    assertThat(ExifReader.read(block, true).time()).contains(TestFormats.TIME);
    assertThat(ExifReader.read(block, false).time()).isEmpty();
  }
}
