package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.handoff.metadata.Samples.utf8;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.framewright.handoff.Pictures;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The older data: IPTC-NAA IIM version 4; image resources by the published PSD specification. */
class IimTest {
  @TempDir private Path folder;

  private static byte[] dataset(int number, byte[] value) {
    return ByteBuffer.allocate(5 + value.length)
        .put(new byte[] {0x1C, 2, (byte) number})
        .putShort((short) value.length)
        .put(value)
        .array();
  }

  private static byte[] dataset(int number, String value) {
    return dataset(number, utf8(value));
  }

  private static byte[] resource(int id, byte[] data) {
    return ByteBuffer.allocate(12 + data.length + data.length % 2)
        .put(utf8("8BIM"))
        .putShort((short) id)
        .putShort((short) 0)
        .putInt(data.length)
        .put(data)
        .array();
  }

  private List<String> conflicts(byte[] file) throws Exception {
    return PictureCopy.read(Files.write(folder.resolve("copy"), file))
        .orElseThrow()
        .conflicts(Samples.block());
  }

  private List<String> inJpeg(byte[]... datasets) throws Exception {
    var resources =
        Samples.joined(
            utf8("Photoshop 3.0\0"),
            resource(0x03ED, new byte[] {1}),
            resource(0x0404, Samples.joined(datasets)));
    return conflicts(Samples.with(Pictures.of("jpg"), Samples.segment(0xED, resources)));
  }

  @Test
  void whatSaysOtherIsNamed() throws Exception {
    assertThat(
            inJpeg(
                dataset(5, "old title"),
                dataset(80, "Inès Vander"),
                dataset(110, "Agency"),
                dataset(55, "20251231")))
        .containsExactly("Credit Line", "Title", "Date Created");
  }

  @Test
  void whatSaysTheSameOrNothingIsNoConflict() throws Exception {
    assertThat(
            inJpeg(
                dataset(5, "KVO_001_F_0001"),
                dataset(110, " "),
                dataset(55, "20261123"),
                dataset(25, "001"),
                dataset(25, "Wool coat <grey>"),
                dataset(25, "front"),
                dataset(25, "another")))
        .isEmpty();
    assertThat(conflicts(Pictures.of("jpg"))).isEmpty();
  }

  @Test
  void theOldLettersAreUnderstood() throws Exception {
    assertThat(inJpeg(dataset(80, "Inès Vander".getBytes(StandardCharsets.ISO_8859_1)))).isEmpty();
  }

  @Test
  void whatHadNoRoomForAllOfItIsTheSame() throws Exception {
    assertThat(inJpeg(dataset(103, "2026-11-23_KVO_look-book"))).isEmpty();
    assertThat(inJpeg(dataset(103, "2026-11-23_KVO"))).containsExactly("Job Id");
  }

  @Test
  void aTiffHasThemInAFieldOfItsOwn() throws Exception {
    var tiff = Samples.tiff(ByteOrder.LITTLE_ENDIAN, 42, 33723, 1, 14, 0);
    var iim = dataset(5, "old title");
    var all = Samples.joined(tiff, iim);
    // The field is the last of the directory; its value is where the data come behind the picture.
    ByteBuffer.wrap(all).order(ByteOrder.LITTLE_ENDIAN).putInt(8 + 2 + 8 * 12 + 8, tiff.length);
    assertThat(conflicts(all)).containsExactly("Title");
  }

  @Test
  void cutDataAreReadAsFarAsTheyGo() {
    var whole = Samples.joined(dataset(5, "old title"), dataset(110, "Agency"));
    for (int length = 0; length < whole.length; length++) {
      var cut = Arrays.copyOf(whole, length);
      assertThat(Iim.of(cut).conflicts(Samples.block())).hasSizeLessThanOrEqualTo(1);
      assertThat(Iim.inResources(cut)).isEmpty();
    }
    var resources = resource(0x0404, whole);
    for (int length = 0; length < resources.length - 1; length++) {
      assertThat(Iim.inResources(Arrays.copyOf(resources, length))).isEmpty();
    }
    assertThat(Iim.inResources(resources)).hasValue(whole);
  }
}
