package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Pictures as the JDK writes them; a border of w by h pixels has 2 (w + h) - 4. */
class PictureBorderTest {
  @TempDir private Path folder;

  private static BufferedImage white(int width, int height, int type) {
    var picture = new BufferedImage(width, height, type);
    var pen = picture.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, width, height);
    pen.dispose();
    return picture;
  }

  private Path written(BufferedImage picture, String format) throws IOException {
    var file = folder.resolve("a." + format);
    assertThat(ImageIO.write(picture, format, file.toFile())).isTrue();
    return file;
  }

  private static PictureBorder border(Path file) {
    return ((PictureBorder.Reading.Read) PictureBorder.of(file)).border();
  }

  private static String why(Path file) {
    return ((PictureBorder.Reading.NotRead) PictureBorder.of(file)).why().english();
  }

  @ParameterizedTest
  @CsvSource({
    "jpeg, 1",
    "png, 1",
    "tiff, 1",
    "jpeg, 10",
    "png, 10",
    "tiff, 10",
    "png, 6",
    "png, 2",
    "png, 11",
    "tiff, 11",
    "png, 13",
    "png, 12"
  })
  void whatIsWhiteAllRoundIsWhiteInEveryKindOfFile(String format, int type) throws Exception {
    var picture = white(40, 30, type);
    picture.setRGB(20, 15, Color.BLACK.getRGB());
    var border = border(written(picture, format));
    assertThat(border.pixels()).isEqualTo(136);
    assertThat(border.fartherThan(0)).isZero();
    assertThat(border.farthest()).isZero();
  }

  @ParameterizedTest
  @CsvSource({"0, 0", "39, 0", "17, 0", "0, 29", "39, 29", "0, 12", "39, 12", "21, 29"})
  void onePixelOfAnySideIsSeen(int x, int y) throws Exception {
    var picture = white(40, 30, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(x, y, new Color(255, 252, 254).getRGB());
    for (var format : new String[] {"png", "tiff"}) {
      var border = border(written(picture, format));
      assertThat(border.pixels()).isEqualTo(136);
      assertThat(border.fartherThan(0)).isEqualTo(1);
      assertThat(border.fartherThan(2)).isEqualTo(1);
      assertThat(border.fartherThan(3)).isZero();
      assertThat(border.farthest()).isEqualTo(3);
    }
  }

  @Test
  void whatOneSeesThroughIsNotWhite() throws Exception {
    var picture = white(4, 4, BufferedImage.TYPE_INT_ARGB);
    picture.setRGB(0, 0, 0xFEFFFFFF);
    var border = border(written(picture, "png"));
    assertThat(border.fartherThan(PictureBorder.BLACK)).isEqualTo(1);
    assertThat(border.farthest()).isEqualTo(PictureBorder.BLACK);
  }

  @Test
  void sixteenBitsAreSaidInStepsOfEight() throws Exception {
    var picture = white(8, 8, BufferedImage.TYPE_USHORT_GRAY);
    picture.getRaster().setSample(0, 3, 0, 65535 - 10 * 257);
    var border = border(written(picture, "tiff"));
    assertThat(border.fartherThan(9)).isEqualTo(1);
    assertThat(border.farthest()).isEqualTo(10);
  }

  @ParameterizedTest
  @CsvSource({"1, 1, 1", "1, 9, 9", "9, 1, 9", "2, 2, 4", "2, 9, 18", "3, 3, 8"})
  void eachPixelOfASmallPictureCountsOnce(int width, int height, int pixels) throws Exception {
    var file = written(white(width, height, BufferedImage.TYPE_INT_RGB), "png");
    assertThat(border(file).pixels()).isEqualTo(pixels);
  }

  private static int at(byte[] bytes, int tag) {
    for (int i = 0; i + 12 <= bytes.length; i++) {
      if (ByteBuffer.wrap(bytes).getShort(i) == tag && bytes[i + 2] == 0 && bytes[i + 3] <= 4) {
        return i;
      }
    }
    throw new AssertionError("no tag " + tag);
  }

  /** Fields 273 and 279 of TIFF 6.0: where a strip begins, and how long it is. */
  @ParameterizedTest
  @ValueSource(ints = {273, 279})
  void aTiffThatPromisesMoreThanItHoldsIsNotDecoded(int tag) throws Exception {
    var writer = ImageIO.getImageWritersByFormatName("tiff").next();
    var file = folder.resolve("a.tiff");
    try (var out = ImageIO.createImageOutputStream(file.toFile())) {
      writer.setOutput(out);
      var how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionType("LZW");
      var image = white(64, 8, BufferedImage.TYPE_INT_RGB);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.dispose();
    }
    assertThat(border(file).fartherThan(0)).isZero();
    byte[] bytes = Files.readAllBytes(file);
    int entry = at(bytes, tag);
    ByteBuffer.wrap(bytes)
        .putShort(entry + 2, (short) 4)
        .putInt(entry + 4, 1)
        .putInt(entry + 8, 0x7FFFFFF0);
    Files.write(file, bytes);
    assertThat(PictureBorder.of(file)).isInstanceOf(PictureBorder.Reading.class);
    if (PictureBorder.of(file) instanceof PictureBorder.Reading.Read(var read)) {
      assertThat(tag).as("what there is was read: %s", read.pixels()).isEqualTo(279);
    }
  }

  /** Width of a PNG: bytes 16 to 19 (ISO/IEC 15948, 11.2.2). */
  @Test
  void aPngThatSaysItIsHugeIsNotDecoded() throws Exception {
    var file = written(white(8, 8, BufferedImage.TYPE_INT_RGB), "png");
    byte[] bytes = Files.readAllBytes(file);
    ByteBuffer.wrap(bytes).putInt(16, 1_000_000).putInt(20, 1_000_000);
    Files.write(file, bytes);
    assertThat(why(file)).isIn("it is too large to be decoded", "it cannot be decoded");
  }

  @Test
  void whatIsNoPictureOrNotWholeSaysSo() throws Exception {
    assertThat(why(Files.writeString(folder.resolve("a.jpg"), "no picture")))
        .isEqualTo("it is no JPEG, PNG or TIFF");
    assertThat(why(folder.resolve("gone.jpg"))).isNotEmpty();
    var whole = written(white(300, 300, BufferedImage.TYPE_INT_RGB), "png");
    var link = Files.createSymbolicLink(folder.resolve("link.png"), whole);
    assertThat(why(link)).isNotEmpty();
    byte[] bytes = Files.readAllBytes(whole);
    Files.write(whole, Arrays.copyOf(bytes, bytes.length / 2));
    assertThat(why(whole)).isEqualTo("it cannot be decoded");
  }
}
