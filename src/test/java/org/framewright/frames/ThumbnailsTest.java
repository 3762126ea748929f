package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThumbnailsTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);

  @TempDir Path folder;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");

  /**
   * The pictures inside are red with a white top left corner; a JPEG's own main picture is grey.
   */
  @ParameterizedTest
  @CsvSource({"a.jpg,120", "a.cr2,120", "a.cr3,120", "a.heic,120", "a.raf,120"})
  void givesTheEmbeddedPictureOfEachKindOfContainer(String name, int edge) throws IOException {
    var image = Thumbnails.of(write(name, TestContainers.all().get(name)), edge).orElseThrow();
    assertThat(Math.max(image.getWidth(), image.getHeight())).isEqualTo(edge);
    assertThat(isRed(image, image.getWidth() / 2, image.getHeight() / 2)).isTrue();
  }

  /** The stored picture's marked corner is the one of row 0 and column 0. */
  @EachOrientation
  void turnsThePictureUpright(int orientation, boolean lies, boolean right, boolean bottom)
      throws IOException {
    var image = Thumbnails.of(write("a.jpg", camera.jpeg(NOON, orientation)), 160).orElseThrow();
    assertThat(image.getWidth() < image.getHeight()).isEqualTo(lies);
    int far = image.getWidth() - 8;
    int low = image.getHeight() - 8;
    for (boolean x : new boolean[] {false, true}) {
      for (boolean y : new boolean[] {false, true}) {
        boolean marked = x == right && y == bottom;
        assertThat(isRed(image, x ? far : 8, y ? low : 8))
            .as("orientation %d, corner right %s bottom %s", orientation, x, y)
            .isEqualTo(!marked);
      }
    }
  }

  @Test
  void aJpegThatIsLargerThanItsThumbnailGivesItself() throws IOException {
    var image = Thumbnails.of(write("a.jpg", camera.jpeg(NOON)), 300).orElseThrow();
    assertThat(image.getWidth()).isEqualTo(300);
    assertThat(isRed(image, 150, 150)).isFalse();
  }

  @Test
  void aRawWithoutALargerPreviewGivesTheOneItHas() throws IOException {
    var image = Thumbnails.of(write("a.cr2", camera.raw(NOON, 10)), 2000).orElseThrow();
    assertThat(image.getWidth()).isEqualTo(160);
  }

  @Test
  void aPlainRedGreenBluePreviewIsReadToo() throws IOException {
    var preview = new TestCamera.Tiff();
    byte[] rows = new byte[60 * 40 * 3];
    for (int i = 0; i < rows.length; i += 3) {
      rows[i] = (byte) 250;
    }
    preview.number(0x00FE, 1);
    preview.number(0x0100, 60);
    preview.number(0x0101, 40);
    preview.shorts(0x0102, 8, 8, 8);
    preview.shorts(0x0103, 1);
    preview.shorts(0x0106, 2);
    preview.shorts(0x0115, 3);
    preview.data(0x0111, 0x0117, rows);
    var image = Thumbnails.of(write("a.dng", preview.file()), 60).orElseThrow();
    assertThat(image.getWidth()).isEqualTo(60);
    assertThat(isRed(image, 30, 20)).isTrue();
  }

  @Test
  void whatHasNoPreviewGivesNone() throws IOException {
    assertThat(Thumbnails.of(write("a.png", TestContainers.png()), 100)).isEmpty();
    assertThat(Thumbnails.of(write("b.jpg", new byte[] {1, 2, 3}), 100)).isEmpty();
    assertThat(Thumbnails.of(folder.resolve("nothing.jpg"), 100)).isEmpty();
  }

  @Test
  void aFrameGivesTheJpegsPreviewOrElseTheRaws() throws IOException {
    write("a.cr2", camera.raw(NOON, 10));
    write("a.jpg", new byte[] {1, 2, 3});
    var frame = new FrameScanner(folder).scan().frames().getFirst();
    assertThat(Thumbnails.of(frame, 100)).isPresent();
  }

  @Test
  void everyContainerGivesTimeAndBody() throws IOException {
    var containers = Map.copyOf(TestContainers.all());
    for (var entry : containers.entrySet()) {
      if (entry.getKey().endsWith("xmp")) {
        continue;
      }
      var file = write(entry.getKey(), entry.getValue());
      var reading =
          FileReading.of(file, FileRole.of(file).orElseThrow(), new Bytes.Room()).orElseThrow();
      assertThat(reading.problem()).as(entry.getKey()).isEmpty();
      assertThat(reading.capture().time()).as(entry.getKey()).contains(TestContainers.TIME);
      assertThat(reading.capture().camera().orElseThrow().serial())
          .as(entry.getKey())
          .isEqualTo("A-1001");
    }
  }

  private static boolean isRed(BufferedImage image, int x, int y) {
    var colour = new Color(image.getRGB(x, y));
    return colour.getRed() > 180 && colour.getGreen() < 90 && colour.getBlue() < 90;
  }

  private Path write(String name, byte[] content) throws IOException {
    return Files.write(folder.resolve(name), content);
  }
}
