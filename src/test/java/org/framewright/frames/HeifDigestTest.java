package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import javax.imageio.ImageIO;
import org.framewright.base.Sha256;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** HEIF files as ISO/IEC 23008-12 and 14496-12 lay them out, and as other programs write them. */
class HeifDigestTest {
  @TempDir Path temp;

  /** A picture in two tiles with a thumbnail, described by Exif and, if it is rated, by XMP. */
  private static final class Picture {
    private final Random random = new Random(9);
    private final byte[] first = bytes(400);
    private final byte[] second = bytes(300);
    private final byte[] thumbnail = bytes(90);
    private byte[] grid = {0, 0, 0, 1, 0, 64, 0, 32};
    private String brand = "heic";
    private String xmp = "";
    private String typeOfSecond = "hvc1";
    private String typeOfXmp = "application/rdf+xml";
    private int isProtected;
    private int primary = 1;
    private int rotation = 1;
    private int padding;
    private int source;
    private byte[] more = {};

    private byte[] bytes(int count) {
      var bytes = new byte[count];
      random.nextBytes(bytes);
      return bytes;
    }

    byte[] file() throws IOException {
      // Once to learn how long the index is, and once with the offsets that follow from that.
      return file(file(0).length);
    }

    private byte[] file(int end) throws IOException {
      int data = first.length + second.length + thumbnail.length + exif().length + xmp.length();
      int at = end - data - more.length;
      var meta =
          box(
              "meta",
              full(0),
              box("hdlr", full(0), u32(0), ascii("pict"), new byte[13]),
              box("pitm", full(0), u16(primary)),
              index(),
              locations(at),
              box(
                  "iref",
                  full(0),
                  box("dimg", u16(1), u16(2), u16(2), u16(3)),
                  box("thmb", u16(4), u16(1), u16(1)),
                  box("cdsc", u16(5), u16(1), u16(1))),
              properties(),
              box("idat", grid));
      return join(
          box("ftyp", ascii(brand), u32(0), ascii("mif1"), ascii("heic")),
          meta,
          box("free", new byte[padding]),
          // Where descriptions grow, what they lie before moves.
          box("mdat", exif(), first, ascii(xmp), second, thumbnail),
          more);
    }

    private static byte[] exif() {
      return ascii("\0\0\0\0Exif");
    }

    private byte[] index() throws IOException {
      var entries = new ArrayList<byte[]>();
      entries.add(item(1, "grid", 0));
      entries.add(item(2, "hvc1", 0));
      entries.add(item(3, typeOfSecond, isProtected));
      entries.add(item(4, "hvc1", 0));
      entries.add(item(5, "Exif", 0));
      if (!xmp.isEmpty()) {
        entries.add(
            box("infe", full(2), u16(6), u16(0), ascii("mime"), ascii("\0" + typeOfXmp + "\0")));
      }
      return box("iinf", full(0), u16(entries.size()), join(entries.toArray(byte[][]::new)));
    }

    private static byte[] item(int id, String type, int isProtected) throws IOException {
      return box("infe", full(2), u16(id), u16(isProtected), ascii(type), new byte[1]);
    }

    private byte[] locations(int data) throws IOException {
      var out = new ByteArrayOutputStream();
      int at = data;
      out.writeBytes(join(full(1), new byte[] {0x44, 0}, u16(xmp.isEmpty() ? 5 : 6)));
      out.writeBytes(location(1, 1, 0, 0, grid.length));
      out.writeBytes(location(5, 0, 0, at, exif().length));
      at += exif().length;
      out.writeBytes(location(2, 0, source, at, first.length));
      at += first.length;
      if (!xmp.isEmpty()) {
        out.writeBytes(location(6, 0, 0, at, xmp.length()));
        at += xmp.length();
      }
      out.writeBytes(location(3, 0, 0, at, second.length));
      out.writeBytes(location(4, 0, 0, at + second.length, thumbnail.length));
      return box("iloc", out.toByteArray());
    }

    private static byte[] location(int id, int method, int source, int offset, int length)
        throws IOException {
      return join(u16(id), u16(method), u16(source), u16(1), u32(offset), u32(length));
    }

    private byte[] properties() throws IOException {
      var one = box("ispe", full(0), u32(32), u32(32));
      var all = box("ispe", full(0), u32(64), u32(32));
      var codec = box("hvcC", ascii("setup"));
      var turned = box("irot", new byte[] {(byte) rotation});
      return box(
          "iprp",
          box("ipco", one, all, codec, turned),
          box(
              "ipma",
              full(0),
              u32(4),
              join(u16(1), new byte[] {2, 2, (byte) 0x84}),
              join(u16(2), new byte[] {2, 1, (byte) 0x83}),
              join(u16(3), new byte[] {2, 1, (byte) 0x83}),
              join(u16(4), new byte[] {1, (byte) 0x83})));
    }

    Optional<PictureDigest> digest() throws IOException {
      return HeifDigestTest.digest(file());
    }
  }

  private static Optional<PictureDigest> digest(byte[] file) throws IOException {
    try {
      return PictureDigest.of(Bytes.of(file), 64);
    } catch (Malformed e) {
      return Optional.empty();
    }
  }

  private static byte[] join(byte[]... parts) throws IOException {
    var out = new ByteArrayOutputStream();
    for (var part : parts) {
      out.write(part);
    }
    return out.toByteArray();
  }

  private static byte[] box(String type, byte[]... content) throws IOException {
    var inside = join(content);
    return join(u32(8 + inside.length), ascii(type), inside);
  }

  private static byte[] full(int version) {
    return new byte[] {(byte) version, 0, 0, 0};
  }

  private static byte[] u16(int value) {
    return ByteBuffer.allocate(2).putShort((short) value).array();
  }

  private static byte[] u32(int value) {
    return ByteBuffer.allocate(4).putInt(value).array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  @Test
  void aDescriptionThatComesOrGrowsAndMovesTheDataLeavesTheDigest() throws IOException {
    var digest = new Picture().digest();
    assertThat(digest).isPresent();
    for (var xmp : List.of("<x/>", "<x:xmpmeta rating='5'/>".repeat(9))) {
      var rated = new Picture();
      rated.xmp = xmp;
      rated.padding = xmp.length();
      assertThat(rated.digest()).isEqualTo(digest);
    }
  }

  @Test
  void whatMakesThePictureIsInTheDigest() throws IOException {
    var digest = new Picture().digest();
    var others = new ArrayList<Picture>();
    for (int i = 0; i < 6; i++) {
      others.add(new Picture());
    }
    others.get(0).first[7] ^= 1;
    others.get(1).second[299] ^= 1;
    others.get(2).thumbnail[0] ^= 1;
    others.get(3).rotation = 2;
    others.get(4).primary = 2;
    others.get(5).grid = new byte[] {0, 0, 1, 0, 0, 64, 0, 32};
    for (var other : others) {
      assertThat(other.digest()).isPresent().isNotEqualTo(digest);
    }
  }

  @Test
  void whereAnythingElseIsMetThereIsNone() throws IOException {
    var others = new ArrayList<Picture>();
    for (int i = 0; i < 8; i++) {
      others.add(new Picture());
    }
    others.get(0).typeOfSecond = "new1";
    others.get(1).isProtected = 1;
    others.get(2).source = 1;
    others.get(3).brand = "qt  ";
    others.get(4).more = box("moov", new byte[8]);
    others.get(5).more = new byte[3];
    others.get(6).xmp = "x";
    others.get(6).typeOfXmp = "image/png";
    others.get(7).more = box("uuid", new byte[20]);
    for (int i = 0; i < others.size(); i++) {
      assertThat(others.get(i).digest()).as("" + i).isEmpty();
    }
    var cut = new Picture().file();
    assertThat(digest(Arrays.copyOf(cut, cut.length - 40))).isEmpty();
  }

  @Test
  void aShellHasNone() throws IOException {
    var shell = new Picture();
    var bytes = shell.file();
    var large = join(full(0), u32(64), u32(32));
    for (int i = 0; i + large.length < bytes.length; i++) {
      if (Arrays.equals(bytes, i, i + large.length, large, 0, large.length)) {
        bytes[i + 5] = 4; // 262 208 pixels wide.
      }
    }
    assertThat(digest(bytes)).isEmpty();
  }

  @Test
  void hostileFilesAreReadWithinBounds() throws IOException {
    var bytes = new Picture().file();
    var random = new Random(18);
    for (int i = 0; i < 1000; i++) {
      var hostile = bytes.clone();
      for (int k = 0; k < 4; k++) {
        hostile[random.nextInt(520)] = (byte) random.nextInt();
      }
      assertThat(safely(hostile)).isNotNull();
    }
  }

  /** As a person's file is digested: whatever is not understood is none. */
  private Optional<PictureDigest> safely(byte[] bytes) throws IOException {
    return PictureDigest.of(Files.write(temp.resolve("hostile.heic"), bytes));
  }

  /** Encoded and decoded by libheif, described by ExifTool. */
  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"heic", "avif"})
  void filesOfOtherProgramsKeepTheirDigestAndTheirPixels(String ending) throws Exception {
    var jpeg = noise(temp.resolve("a.jpg"));
    var made = temp.resolve("a." + ending);
    run("heif-enc", ending.equals("avif") ? "-A" : "-v", jpeg.toString(), "-o", made.toString());
    var rewritten = Files.copy(made, temp.resolve("b." + ending));
    run(
        "exiftool",
        "-q",
        "-m",
        "-overwrite_original",
        "-Rating=5",
        "-Label=Yes",
        "-Artist=Ines Invented",
        "-ImageDescription=" + "A coat, front ".repeat(20),
        rewritten.toString());
    assertThat(Files.mismatch(made, rewritten)).isNotNegative();
    assertThat(PictureDigest.of(made)).isPresent().isEqualTo(PictureDigest.of(rewritten));
    run("heif-convert", made.toString(), temp.resolve("a.png").toString());
    run("heif-convert", rewritten.toString(), temp.resolve("b.png").toString());
    assertThat(pixels(temp.resolve("a.png"))).isEqualTo(pixels(temp.resolve("b.png")));
  }

  /** A picture that no encoder makes small. */
  private static Path noise(Path file) throws IOException {
    var image = new BufferedImage(160, 120, BufferedImage.TYPE_INT_RGB);
    var random = new Random(6);
    for (int i = 0; i < 160 * 120; i++) {
      image.setRGB(i % 160, i / 160, random.nextInt(1 << 24));
    }
    ImageIO.write(image, "jpeg", file.toFile());
    return file;
  }

  /** The chunks of a PNG's picture (ISO/IEC 15948, 5.3), not those that describe it. */
  private static List<String> pixels(Path png) throws IOException {
    var bytes = ByteBuffer.wrap(Files.readAllBytes(png)).position(8);
    var pixels = new ArrayList<String>();
    while (bytes.hasRemaining()) {
      var content = new byte[bytes.getInt()];
      var type = new byte[4];
      bytes.get(type).get(content).getInt();
      if (List.of("IHDR", "IDAT").contains(new String(type, StandardCharsets.US_ASCII))) {
        pixels.add(Sha256.of(content));
      }
    }
    return pixels;
  }

  private static void run(String... command) throws IOException, InterruptedException {
    Process process;
    try {
      process = new ProcessBuilder(List.of(command)).redirectErrorStream(true).start();
    } catch (IOException e) {
      Assumptions.abort(command[0] + " is not installed");
      return;
    }
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
    Assumptions.assumeTrue(process.exitValue() == 0, command[0] + ": " + said);
  }
}
