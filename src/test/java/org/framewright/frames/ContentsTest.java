package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is said of whole files of each kind, of cut ones and of others. */
class ContentsTest {

  private static Contents contents(byte[] file) throws IOException {
    return Contents.of(Bytes.of(file));
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.jpg", "a.cr2", "a.cr3", "a.heic", "a.raf", "a.png"})
  void noFileThatIsCutIsTakenForWhole(String name) throws IOException {
    byte[] whole = TestContainers.all().get(name);
    assertThat(contents(whole).fault()).isEmpty();
    // Structure lies in front and at the end; what lies between are pixels.
    for (int length = 0; length < whole.length; length++) {
      if (length == 600) {
        length = Math.max(length, whole.length - 600);
      }
      var cut = contents(Arrays.copyOf(whole, length));
      assertThat(cut.fault().isPresent() || cut.isHollow()).as("cut to %d", length).isTrue();
    }
  }

  @Test
  void saysThatAFileIsEmptyOrOfNoKindThatIsKnown() throws IOException {
    assertThat(contents(new byte[0]).fault().map(Text::english)).contains("it is empty");
    assertThat(
            contents("PNG and more".getBytes(StandardCharsets.US_ASCII)).fault().map(Text::english))
        .contains("its first bytes are those of no picture that is known here");
  }

  @Test
  void takesTheLastOrientationThatMakesSense() {
    var contents = new Contents();
    assertThat(contents.orientation()).isEqualTo(1);
    contents.orientation(6);
    contents.orientation(0);
    contents.orientation(9);
    assertThat(contents.orientation()).isEqualTo(6);
    contents.orientation(1);
    assertThat(contents.orientation()).isEqualTo(1);
  }

  @Test
  void keepsTheFirstPacketOfXmp() {
    var contents = new Contents();
    var first = Bytes.of(new byte[1]);
    contents.xmp(first);
    contents.xmp(Bytes.of(new byte[2]));
    assertThat(contents.xmp()).contains(first);
  }

  // RAF (layout as published by open-source readers)

  private static byte[] raf(String jpeg, String data) {
    byte[] preview = HexFormat.of().parseHex(jpeg);
    byte[] sensor = HexFormat.of().parseHex(data);
    var header = ByteBuffer.allocate(108 + preview.length + sensor.length);
    header.put("FUJIFILMCCD-RAW 0201".getBytes(StandardCharsets.US_ASCII));
    header.position(84);
    header.putInt(108).putInt(preview.length);
    header.putInt(108).putInt(preview.length);
    header.putInt(108 + preview.length).putInt(sensor.length);
    return header.put(preview).put(sensor).array();
  }

  @Test
  void findsThePreviewAndWhatItSaysInARaf() throws IOException {
    var xmp =
        HexFormat.of()
            .formatHex("http://ns.adobe.com/xap/1.0/\0".getBytes(StandardCharsets.US_ASCII));
    var jpeg = "ffd8ffe10021" + xmp + "0405ffda000300ffd9";
    var contents = contents(raf(jpeg, "07"));
    assertThat(contents.fault()).isEmpty();
    assertThat(contents.isHollow()).isFalse();
    assertThat(contents.xmp().orElseThrow().read(0, 2)).containsExactly(4, 5);
    assertThat(contents.previews())
        .singleElement()
        .returns((long) jpeg.length() / 2, one -> one.data().size());
  }

  @Test
  void saysThatThePreviewOfARafIsBrokenAndWhetherItMayYetGrow() throws IOException {
    assertThat(contents(raf("ffd8ffd9", "07")).fault().map(Text::english))
        .contains("its preview is broken: it ends before its picture begins");
    assertThat(contents(raf("ffd8ffda000300ffd9", "00".repeat(16))).isHollow()).isTrue();
  }
}
