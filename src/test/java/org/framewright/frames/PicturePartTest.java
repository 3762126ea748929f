package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PicturePartTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);
  private static final int WIDE = 640;
  private static final int HIGH = 400;

  @TempDir Path folder;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");

  /** A JPEG of noise, with an Exif block like a body's. */
  private byte[] noise(int orientation) throws IOException {
    var picture = new BufferedImage(WIDE, HIGH, BufferedImage.TYPE_INT_RGB);
    var random = new Random(7);
    for (int y = 0; y < HIGH; y++) {
      for (int x = 0; x < WIDE; x++) {
        picture.setRGB(x, y, random.nextInt(1 << 24));
      }
    }
    var plain = new ByteArrayOutputStream();
    ImageIO.write(picture, "jpeg", plain);
    byte[] model = camera.jpeg(NOON, orientation);
    int exif = 2 + (((model[4] & 0xFF) << 8) | (model[5] & 0xFF));
    var file = new ByteArrayOutputStream();
    file.write(model, 0, 2 + exif);
    file.write(plain.toByteArray(), 2, plain.size() - 2);
    return file.toByteArray();
  }

  private Frame frame(String name, byte[] content) throws IOException {
    var path = Files.write(folder.resolve(name), content);
    var file = new FrameFile(path, content.length, Instant.EPOCH, FileRole.of(path).orElseThrow());
    return new Frame(new FrameId("a"), folder, "a", List.of(file), Capture.UNKNOWN, true);
  }

  /** The decoder of the JDK gives the stored picture to compare with. */
  @EachOrientation
  void givesEveryPixelOfThePartAsItIsSeen(
      int orientation, boolean lies, boolean right, boolean bottom) throws IOException {
    byte[] content = noise(orientation);
    var stored = ImageIO.read(new ByteArrayInputStream(content));
    int full = lies ? HIGH : WIDE;
    int fullHigh = lies ? WIDE : HIGH;
    var part = PicturePart.of(frame("a.jpg", content), 0.3, 0.6, 90, 70).orElseThrow();
    assertThat(part.fullWidth()).isEqualTo(full);
    assertThat(part.fullHeight()).isEqualTo(fullHigh);
    assertThat(part.left()).isEqualTo((int) Math.round(0.3 * full - 45));
    assertThat(part.top()).isEqualTo((int) Math.round(0.6 * fullHigh - 35));
    assertThat(part.picture().getWidth()).isEqualTo(90);
    assertThat(part.picture().getHeight()).isEqualTo(70);
    for (int y = 0; y < 70; y++) {
      for (int x = 0; x < 90; x++) {
        int across = right ? full - 1 - part.left() - x : part.left() + x;
        int down = bottom ? fullHigh - 1 - part.top() - y : part.top() + y;
        assertThat(part.picture().getRGB(x, y))
            .isEqualTo(lies ? stored.getRGB(down, across) : stored.getRGB(across, down));
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"0,0,0,0", "1,1,540,320", "0.01,0.99,0,320", "-3,7,0,320"})
  void aPartAtTheEdgeLiesAtIt(double x, double y, int left, int top) throws IOException {
    var part = PicturePart.of(frame("a.jpg", noise(1)), x, y, 100, 80).orElseThrow();
    assertThat(part.left()).isEqualTo(left);
    assertThat(part.top()).isEqualTo(top);
    assertThat(part.picture().getWidth()).isEqualTo(100);
  }

  @Test
  void aPictureThatIsSmallerThanThePartIsGivenWhole() throws IOException {
    var part = PicturePart.of(frame("a.jpg", noise(6)), 0.1, 0.1, 5000, 5000).orElseThrow();
    assertThat(part.left()).isZero();
    assertThat(part.top()).isZero();
    assertThat(part.picture().getWidth()).isEqualTo(HIGH);
    assertThat(part.picture().getHeight()).isEqualTo(WIDE);
  }

  /** The pictures inside are 160 by 120; see TestContainers. */
  @ParameterizedTest
  @CsvSource({"a.cr2", "a.cr3", "a.raf"})
  void aRawGivesAPartOfTheLargestPictureInside(String name) throws IOException {
    var part =
        PicturePart.of(frame(name, TestContainers.all().get(name)), 0.5, 0.5, 40, 30).orElseThrow();
    assertThat(part.fullWidth()).isGreaterThanOrEqualTo(160);
    assertThat(part.picture().getWidth()).isEqualTo(40);
  }

  @Test
  void aFrameWithoutAPictureThatCanBeDecodedHasNoPart() throws IOException {
    byte[] torn = noise(1);
    assertThat(PicturePart.of(frame("a.jpg", new byte[] {1, 2, 3}), 0.5, 0.5, 9, 9)).isEmpty();
    assertThat(PicturePart.of(frame("a.jpg", Arrays.copyOf(torn, 30)), 0.5, 0.5, 9, 9)).isEmpty();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> PicturePart.of(frame("a.jpg", torn), 0.5, 0.5, 0, 9));
  }
}
