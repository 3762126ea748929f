package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures written by the platform's own writers, read back smaller and in parts. */
class FinishedPicturesTest {
  @TempDir private Path folder;

  private static Frame frame(Path... files) {
    return new Frame(
        new FrameId("any"),
        files[0].getParent(),
        "any",
        Stream.of(files)
            .map(file -> new FrameFile(file, 0, Instant.EPOCH, FileRole.of(file).orElseThrow()))
            .toList(),
        Capture.UNKNOWN,
        true);
  }

  /** Red at the left, blue at the right. */
  private Path picture(String name, int width, int height) throws Exception {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var paint = image.createGraphics();
    paint.setColor(Color.RED);
    paint.fillRect(0, 0, width / 2, height);
    paint.setColor(Color.BLUE);
    paint.fillRect(width / 2, 0, width - width / 2, height);
    paint.dispose();
    var file = folder.resolve(name);
    ImageIO.write(image, name.substring(name.indexOf('.') + 1), file.toFile());
    return file;
  }

  @ParameterizedTest
  @ValueSource(strings = {"jpg", "png", "tiff"})
  void aPictureIsShownSmallerAndAPartOfItAtFullSize(String format) throws Exception {
    var frame = frame(picture("one." + format, 900, 600));
    var small = FinishedPictures.of(frame, 100).orElseThrow();
    assertThat(small.getWidth()).isEqualTo(100);
    assertThat(small.getHeight()).isBetween(66, 67);
    assertThat(new Color(small.getRGB(5, 30)).getRed()).isGreaterThan(200);
    assertThat(new Color(small.getRGB(95, 30)).getBlue()).isGreaterThan(200);
    var part = FinishedPictures.part(frame, 1, 0, 50, 40).orElseThrow();
    assertThat(part.left()).isEqualTo(850);
    assertThat(part.top()).isZero();
    assertThat(part.fullWidth()).isEqualTo(900);
    assertThat(part.picture().getWidth()).isEqualTo(50);
    assertThat(new Color(part.picture().getRGB(25, 20)).getBlue()).isGreaterThan(200);
  }

  @Test
  void theJpegBesideATiffIsShown() throws Exception {
    var frame = frame(picture("one.tiff", 30, 20), picture("one.jpg", 60, 40));
    assertThat(FinishedPictures.of(frame, 100).orElseThrow().getWidth()).isEqualTo(60);
  }

  @Test
  void whatIsNoPictureIsNotShownAndHurtsNobody() throws Exception {
    for (var format : List.of("jpg", "png", "tiff")) {
      var whole = Files.readAllBytes(picture("one." + format, 90, 60));
      for (int length : new int[] {0, 1, 7, 8, 20, whole.length / 2}) {
        var cut = folder.resolve(format.toUpperCase(Locale.ROOT) + length + "." + format);
        Files.write(cut, Arrays.copyOf(whole, length));
        FinishedPictures.of(frame(cut), 50);
        FinishedPictures.part(frame(cut), 0.5, 0.5, 10, 10);
      }
    }
    assertThat(FinishedPictures.of(frame(folder.resolve("gone.jpg")), 50)).isEmpty();
    assertThat(FinishedPictures.part(frame(folder.resolve("gone.tiff")), 0, 0, 5, 5)).isEmpty();
  }

  /** A header of PNG (ISO/IEC 15948, 11.2.2) that claims two thousand million pixels. */
  @Test
  void aPictureThatClaimsToBeTooLargeIsNotDecoded() throws Exception {
    var bytes = Files.readAllBytes(picture("one.png", 90, 60));
    bytes[16] = 0;
    bytes[17] = 0;
    bytes[18] = (byte) 0xB0;
    bytes[20] = 0;
    bytes[21] = 0;
    bytes[22] = (byte) 0xB0;
    var large = Files.write(folder.resolve("large.png"), bytes);
    assertThat(FinishedPictures.of(frame(large), 50)).isEmpty();
  }

  /** As programs write that do not compress: one strip is the whole picture. */
  @Test
  void aLargePictureInOneStripIsReadInBands() throws Exception {
    int width = 4200;
    int height = 4000;
    var file = folder.resolve("large.tif");
    var header = ByteBuffer.allocate(8 + 2 + 10 * 12 + 4 + 6).order(ByteOrder.LITTLE_ENDIAN);
    header.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8).putShort((short) 10);
    int data = header.capacity();
    // Tag, type, count, value: TIFF 6.0, section 2 and 8.
    int[][] fields = {
      {0x100, 4, 1, width},
      {0x101, 4, 1, height},
      {0x102, 3, 3, data - 6},
      {0x103, 3, 1, 1},
      {0x106, 3, 1, 2},
      {0x111, 4, 1, data},
      {0x115, 3, 1, 3},
      {0x116, 4, 1, height},
      {0x117, 4, 1, width * height * 3},
      {0x11C, 3, 1, 1}
    };
    for (var field : fields) {
      header
          .putShort((short) field[0])
          .putShort((short) field[1])
          .putInt(field[2])
          .putInt(field[3]);
    }
    header.putInt(0).putShort((short) 8).putShort((short) 8).putShort((short) 8);
    try (var out = new RandomAccessFile(file.toFile(), "rw")) {
      out.write(header.array());
      out.setLength(data + (long) width * height * 3);
      var red = new byte[width * 3];
      for (int x = 0; x < width; x++) {
        red[x * 3] = (byte) 0xFF;
      }
      for (int y = height - 400; y < height; y++) {
        out.seek(data + (long) y * width * 3);
        out.write(red);
      }
    }
    var small = FinishedPictures.of(frame(file), 420).orElseThrow();
    assertThat(small.getWidth()).isEqualTo(420);
    assertThat(new Color(small.getRGB(200, 20))).isEqualTo(Color.BLACK);
    assertThat(new Color(small.getRGB(200, 390))).isEqualTo(Color.RED);
    var part = FinishedPictures.part(frame(file), 0.5, 1, 20, 10).orElseThrow();
    assertThat(new Color(part.picture().getRGB(5, 5))).isEqualTo(Color.RED);
    assertThat(part.fullHeight()).isEqualTo(height);
  }
}
