package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.zip.Deflater;
import javax.imageio.ImageIO;
import org.framewright.base.Text;
import org.framewright.disk.SymbolicLinks;
import org.framewright.frames.PictureHeader.Kind;
import org.framewright.frames.PictureHeader.Model;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * JPEG, PNG and TIFF are written by the JDK; PSD, PSB and the layers of a TIFF are built by the
 * published specifications of these formats, profiles by ICC.1.
 */
class PictureHeaderTest {
  @TempDir private Path folder;

  static byte[] written(String format, int type) throws IOException {
    var out = new ByteArrayOutputStream();
    assertThat(ImageIO.write(new BufferedImage(8, 6, type), format, out)).isTrue();
    return out.toByteArray();
  }

  private static PictureHeader header(byte[] file) throws IOException {
    return switch (PictureHeader.of(Bytes.of(file))) {
      case PictureHeader.Reading.Read(PictureHeader header) -> header;
      case PictureHeader.Reading.NotRead(Text why) -> throw new AssertionError(why);
    };
  }

  @ParameterizedTest
  @CsvSource({
    "jpeg, 1, JPEG, RGB, 8, 0", // TYPE_INT_RGB
    "jpeg, 10, JPEG, GREY, 8, 0", // TYPE_BYTE_GRAY
    "png, 1, PNG, RGB, 8, 0",
    "png, 2, PNG, RGB, 8, 1", // TYPE_INT_ARGB
    "png, 10, PNG, GREY, 8, 0",
    "png, 11, PNG, GREY, 16, 0", // TYPE_USHORT_GRAY
    "png, 13, PNG, INDEXED, 8, 0", // TYPE_BYTE_INDEXED
    "tiff, 1, TIFF, RGB, 8, 0",
    "tiff, 2, TIFF, RGB, 8, 1",
    "tiff, 10, TIFF, GREY, 8, 0",
    "tiff, 11, TIFF, GREY, 16, 0",
  })
  void whatTheJdkWroteIsReadAsThat(
      String format, int type, Kind kind, Model model, int bits, int extra) throws IOException {
    var file = written(format, type);
    var header = header(file);
    assertThat(header.kind()).isEqualTo(kind);
    assertThat(header.size()).isEqualTo(new PictureHeader.Size(8, 6, false));
    assertThat(header.colour()).isEqualTo(new PictureHeader.Colour(model, bits, extra));
    assertThat(header.layers()).isZero();
    assertThat(header.pages()).isEqualTo(1);
    assertThat(header.bytes()).isEqualTo(file.length);
    assertThat(header.profile()).isEmpty();
  }

  @Test
  void aFileOfManyPicturesIsCountedAndReducedOnesAreNot() throws IOException {
    assertThat(header(tiff(ByteOrder.LITTLE_ENDIAN, 3, new byte[0])).pages()).isEqualTo(3);
    var reduced = tiff(ByteOrder.BIG_ENDIAN, 2, new byte[0]);
    // The first value of the second directory's first field, NewSubfileType.
    var second = ByteBuffer.wrap(reduced).getInt(8 + 2 + FIELDS * 12);
    ByteBuffer.wrap(reduced).putInt(second + 2 + 8, 1);
    assertThat(header(reduced).pages()).isEqualTo(1);
  }

  @Test
  void aBigTiffIsToldFromATiff() throws IOException {
    var header = header(bigTiff());
    assertThat(header.kind()).isEqualTo(Kind.BIGTIFF);
    assertThat(header.size()).isEqualTo(new PictureHeader.Size(9, 7, false));
    assertThat(header.colour()).isEqualTo(new PictureHeader.Colour(Model.RGB, 16, 0));
  }

  private static final int FIELDS = 7;

  /** Directories one behind the other, without picture data; the first has the layers. */
  static byte[] tiff(ByteOrder order, int pages, byte[] layers) {
    int size = 2 + FIELDS * 12 + 4;
    var file = ByteBuffer.allocate(8 + pages * size + layers.length).order(order);
    file.put(
        order == ByteOrder.BIG_ENDIAN
            ? "MM".getBytes(StandardCharsets.US_ASCII)
            : "II".getBytes(StandardCharsets.US_ASCII));
    file.putShort((short) 42).putInt(8);
    for (int page = 0; page < pages; page++) {
      file.putShort((short) FIELDS);
      number(file, 0x00FE, 4, 0);
      number(file, 0x0100, 4, 60);
      number(file, 0x0101, 4, 40);
      number(file, 0x0102, 3, 8);
      number(file, 0x0106, 3, 1);
      number(file, 0x0112, 3, 6);
      if (page == 0 && layers.length > 0) {
        file.putShort((short) 0x935C).putShort((short) 7).putInt(layers.length);
        file.putInt(8 + pages * size);
      } else {
        number(file, 0x0115, 3, 1);
      }
      file.putInt(page == pages - 1 ? 0 : file.position() + 4);
    }
    return file.put(layers).array();
  }

  private static void number(ByteBuffer file, int tag, int type, int value) {
    file.putShort((short) tag).putShort((short) type).putInt(1);
    if (type == 3) {
      file.putShort((short) value).putShort((short) 0);
    } else {
      file.putInt(value);
    }
  }

  private static byte[] bigTiff() {
    int fields = 5;
    var file = ByteBuffer.allocate(16 + 8 + fields * 20 + 8).order(ByteOrder.LITTLE_ENDIAN);
    file.put("II".getBytes(StandardCharsets.US_ASCII))
        .putShort((short) 43)
        .putShort((short) 8)
        .putShort((short) 0);
    file.putLong(16).putLong(fields);
    for (int[] field : new int[][] {{0x100, 9}, {0x101, 7}, {0x102, 16}, {0x106, 2}, {0x115, 3}}) {
      file.putShort((short) field[0]).putShort((short) 3).putLong(1);
      file.putLong(field[1]);
    }
    return file.putLong(0).array();
  }

  /** "Photoshop TIFF Technical Notes": in a little-endian file its words are turned round, too. */
  static byte[] layersOfTiff(ByteOrder order, int count) {
    var data = ByteBuffer.allocate(36 + 12 + 4 + 12 + 4).order(order);
    data.put("Adobe Photoshop Document Data Block\0".getBytes(StandardCharsets.US_ASCII));
    word(data, "8BIM");
    word(data, "Patt");
    data.putInt(3).put(new byte[4]);
    word(data, "8BIM");
    word(data, "Layr");
    data.putInt(4).putShort((short) count).putShort((short) 0);
    return data.array();
  }

  private static void word(ByteBuffer data, String word) {
    var text = data.order() == ByteOrder.BIG_ENDIAN ? word : new StringBuilder(word).reverse();
    data.put(text.toString().getBytes(StandardCharsets.US_ASCII));
  }

  @ParameterizedTest
  @CsvSource({"LITTLE_ENDIAN, 3, 3", "BIG_ENDIAN, 3, 3", "BIG_ENDIAN, -2, 2"})
  void theLayersOfATiffAreCounted(String order, int said, int layers) throws IOException {
    var endian = order.startsWith("B") ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
    var header = header(tiff(endian, 1, layersOfTiff(endian, said)));
    assertThat(header.layers()).isEqualTo(layers);
    assertThat(header.size()).isEqualTo(new PictureHeader.Size(60, 40, true));
    assertThat(header.size().seenWidth()).isEqualTo(40);
    assertThat(header.size().seenHeight()).isEqualTo(60);
  }

  /**
   * A PSD or PSB.
   *
   * @param resources image resources as they lie there
   * @param layers the section of layers and masks, without its length
   */
  static byte[] psd(int version, int channels, int depth, int mode, byte[] resources, byte[] layers)
      throws IOException {
    var bytes = new ByteArrayOutputStream();
    var out = new DataOutputStream(bytes);
    out.writeBytes("8BPS");
    out.writeShort(version);
    out.write(new byte[6]);
    out.writeShort(channels);
    out.writeInt(2);
    out.writeInt(3);
    out.writeShort(depth);
    out.writeShort(mode);
    out.writeInt(0);
    out.writeInt(resources.length);
    out.write(resources);
    if (version == 2) {
      out.writeLong(layers.length);
    } else {
      out.writeInt(layers.length);
    }
    out.write(layers);
    out.writeShort(0);
    out.write(new byte[channels * 2 * 3 * depth / 8]);
    return bytes.toByteArray();
  }

  /** Layers of 8 bits a channel: the length of what tells of them, and their number. */
  static byte[] plainLayers(int version, int count) {
    var data = ByteBuffer.allocate(version == 2 ? 10 : 6);
    return (version == 2 ? data.putLong(2) : data.putInt(2)).putShort((short) count).array();
  }

  /** Layers of 16 bits: nothing in their usual place, no masks, then a block of their own. */
  static byte[] deepLayers(int version, int count) {
    int wide = version == 2 ? 8 : 4;
    var data = ByteBuffer.allocate(wide + 4 + 8 + wide + 4);
    data.position(wide + 4);
    data.put("8BIMLr16".getBytes(StandardCharsets.US_ASCII));
    return (version == 2 ? data.putLong(4) : data.putInt(4)).putShort((short) count).array();
  }

  static byte[] resource(int id, byte[] content) {
    var data = ByteBuffer.allocate(4 + 2 + 2 + 4 + content.length + content.length % 2);
    data.put("8BIM".getBytes(StandardCharsets.US_ASCII)).putShort((short) id).putShort((short) 0);
    return data.putInt(content.length).put(content).array();
  }

  static byte[] joined(byte[]... parts) {
    var all = new ByteArrayOutputStream();
    Arrays.stream(parts).forEach(all::writeBytes);
    return all.toByteArray();
  }

  private static byte[] resolution(int perInch) {
    var data = ByteBuffer.allocate(16);
    data.putInt(perInch << 16).putShort((short) 1).putShort((short) 1);
    return data.putInt(perInch << 16).putShort((short) 1).putShort((short) 1).array();
  }

  @ParameterizedTest
  @CsvSource({
    "1, 3, 8, 3, PSD, RGB, 0",
    "2, 4, 16, 3, PSB, RGB, 1",
    "1, 4, 8, 4, PSD, CMYK, 0",
    "1, 3, 8, 9, PSD, LAB, 0",
    "1, 2, 8, 1, PSD, GREY, 1",
    "1, 1, 8, 2, PSD, INDEXED, 0",
    "1, 2, 8, 7, PSD, OTHER, 2"
  })
  void thePsdsHeadSaysKindAndChannels(
      int version, int channels, int depth, int mode, Kind kind, Model model, int extra)
      throws IOException {
    var header = header(psd(version, channels, depth, mode, new byte[0], new byte[0]));
    assertThat(header.kind()).isEqualTo(kind);
    assertThat(header.size()).isEqualTo(new PictureHeader.Size(3, 2, false));
    assertThat(header.colour()).isEqualTo(new PictureHeader.Colour(model, depth, extra));
    assertThat(header.layers()).isZero();
    assertThat(header.resolution()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2})
  void thePsdsLayersProfileAndResolutionAreRead(int version) throws IOException {
    var resources = joined(resource(1005, resolution(300)), resource(1039, textProfile("Studio")));
    for (var layers : List.of(plainLayers(version, -4), deepLayers(version, 4))) {
      var header = header(psd(version, 3, 16, 3, resources, layers));
      assertThat(header.layers()).isEqualTo(4);
      assertThat(header.profile())
          .isEqualTo(Optional.of(new PictureHeader.Profile("Studio", true)));
      assertThat(header.resolution())
          .isEqualTo(Optional.of(new PictureHeader.Resolution(300, 300)));
    }
  }

  /** ICC.1:2001-04, 6.5.17: a count, then so many bytes of ASCII, the last of them zero. */
  static byte[] textProfile(String name) {
    var text = (name + "\0").getBytes(StandardCharsets.US_ASCII);
    var tag = ByteBuffer.allocate(12 + text.length);
    tag.put("desc".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(text.length).put(text);
    return profile(tag.array());
  }

  /** ICC.1:2022, 10.15: records of language, country, length and place; the texts in UTF-16. */
  private static byte[] localisedProfile(Map<String, String> names) {
    int size = 16 + names.size() * 12 + 2 * String.join("", names.values()).length();
    var tag = ByteBuffer.allocate(size);
    tag.put("mluc".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(names.size()).putInt(12);
    int at = 16 + names.size() * 12;
    for (var name : names.entrySet()) {
      var text = name.getValue().getBytes(StandardCharsets.UTF_16BE);
      tag.put(name.getKey().getBytes(StandardCharsets.US_ASCII)).putInt(text.length).putInt(at);
      at += text.length;
    }
    names.values().forEach(text -> tag.put(text.getBytes(StandardCharsets.UTF_16BE)));
    return profile(tag.array());
  }

  private static byte[] profile(byte[] tag) {
    var profile = ByteBuffer.allocate(128 + 4 + 12 + tag.length);
    profile.putInt(0, profile.capacity());
    profile.put(36, "acsp".getBytes(StandardCharsets.US_ASCII)).position(128);
    profile.putInt(1).put("desc".getBytes(StandardCharsets.US_ASCII)).putInt(144);
    return profile.putInt(tag.length).put(tag).array();
  }

  private static String name(byte[] profile) throws IOException {
    return IccProfile.of(Bytes.of(profile)).description();
  }

  @Test
  void aProfilesNameIsReadInBothOfItsForms() throws IOException {
    assertThat(name(textProfile("Studio RGB"))).isEqualTo("Studio RGB");
    var names = new LinkedHashMap<String, String>();
    names.put("deDE", "Studio-Farben");
    names.put("enGB", "Studio colours");
    assertThat(name(localisedProfile(names))).isEqualTo("Studio colours");
    names.remove("enGB");
    assertThat(name(localisedProfile(names))).isEqualTo("Studio-Farben");
  }

  @Test
  void aProfileThatClaimsAnythingHasNoNameAndDoesNoHarm() throws IOException {
    var whole = textProfile("Studio");
    for (int length = 0; length < whole.length; length++) {
      assertThat(IccProfile.of(Bytes.of(Arrays.copyOf(whole, length)))).isNotNull();
    }
    var many = whole.clone();
    ByteBuffer.wrap(many).putInt(128, -1).putInt(136, -1);
    assertThat(name(many)).isEmpty();
    var endless = localisedProfile(Map.of("enGB", "Studio"));
    ByteBuffer.wrap(endless).putInt(144 + 8, -1);
    assertThat(name(endless)).isNotNull();
    var endlessName = textProfile("n".repeat(5000));
    assertThat(name(endlessName)).hasSize(256);
  }

  /** In pieces as ICC.1 annex B.4 has them: number and count behind the name. */
  private static byte[] jpeg(byte[] profile, int pieces, int count) throws IOException {
    var whole = written("jpeg", BufferedImage.TYPE_INT_RGB);
    var out = new ByteArrayOutputStream();
    out.write(whole, 0, 2);
    // The pieces need not be in order.
    for (int i = pieces; i >= 1; i--) {
      int from = profile.length * (i - 1) / pieces;
      var part = Arrays.copyOfRange(profile, from, profile.length * i / pieces);
      var segment = ByteBuffer.allocate(4 + 14 + part.length);
      segment.putShort((short) 0xFFE2).putShort((short) (16 + part.length));
      segment.put("ICC_PROFILE\0".getBytes(StandardCharsets.US_ASCII));
      out.write(segment.put((byte) i).put((byte) count).put(part).array());
    }
    out.write(whole, 2, whole.length - 2);
    return out.toByteArray();
  }

  @Test
  void theProfileOfAJpegIsJoinedOfItsPieces() throws IOException {
    var profile = textProfile("Studio RGB");
    for (int pieces = 1; pieces <= 4; pieces++) {
      assertThat(header(jpeg(profile, pieces, pieces)).profile())
          .isEqualTo(Optional.of(new PictureHeader.Profile("Studio RGB", true)));
    }
    // Without one of its pieces nobody knows what it says.
    assertThat(header(jpeg(profile, 2, 3)).profile())
        .isEqualTo(Optional.of(new PictureHeader.Profile("", true)));
  }

  @Test
  void theProfileOfTheJdkHasTheNameThatItGives() throws IOException {
    var profile = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
    assertThat(header(jpeg(profile, 2, 2)).profile().orElseThrow().description())
        .containsIgnoringCase("sRGB");
  }

  /** A PNG of the JDK with a chunk behind its head; readers here do not look at the checksum. */
  private static byte[] png(String type, byte[] data) throws IOException {
    var whole = written("png", BufferedImage.TYPE_INT_RGB);
    var chunk = ByteBuffer.allocate(12 + data.length).putInt(data.length);
    chunk.put(type.getBytes(StandardCharsets.US_ASCII)).put(data);
    int head = 8 + 25;
    return joined(
        Arrays.copyOf(whole, head), chunk.array(), Arrays.copyOfRange(whole, head, whole.length));
  }

  private static byte[] packed(byte[] content) {
    var deflater = new Deflater();
    deflater.setInput(content);
    deflater.finish();
    var room = new byte[content.length + 100];
    int length = deflater.deflate(room);
    deflater.end();
    return Arrays.copyOf(room, length);
  }

  @Test
  void aPngSaysItsProfileItsResolutionOrThatItIsSrgb() throws IOException {
    var named =
        joined("any\0\0".getBytes(StandardCharsets.US_ASCII), packed(textProfile("Studio")));
    assertThat(header(png("iCCP", named)).profile())
        .isEqualTo(Optional.of(new PictureHeader.Profile("Studio", true)));
    assertThat(header(png("sRGB", new byte[1])).profile())
        .isEqualTo(Optional.of(new PictureHeader.Profile("sRGB IEC61966-2.1", false)));
    var metre = ByteBuffer.allocate(9).putInt(11811).putInt(11811).put((byte) 1).array();
    assertThat(header(png("pHYs", metre)).resolution().orElseThrow().across())
        .isBetween(299.9, 300.1);
    assertThat(header(png("tRNS", new byte[6])).colour().extra()).isEqualTo(1);
  }

  @Tag("slow")
  @Test
  void aPackedProfileThatIsHugeIsNotUnpackedWhole() throws IOException {
    var bomb = joined("x\0\0".getBytes(StandardCharsets.US_ASCII), packed(new byte[64 << 20]));
    assertThat(header(png("iCCP", bomb)).profile())
        .isEqualTo(Optional.of(new PictureHeader.Profile("", true)));
  }

  @Test
  void aRawATextAndALinkAreNotRead() throws IOException {
    var raw =
        Files.write(folder.resolve("a.dng"), new TestCamera("A", "1").raw(TestFormats.TIME, 9));
    assertThat(why(raw)).contains("a raw");
    var sensor = tiff(ByteOrder.LITTLE_ENDIAN, 1, new byte[0]);
    // TIFF/EP: a PhotometricInterpretation of 32803 is the pattern of a sensor.
    ByteBuffer.wrap(sensor)
        .order(ByteOrder.LITTLE_ENDIAN)
        .putShort(8 + 2 + 4 * 12 + 8, (short) 32803);
    assertThat(why(Files.write(folder.resolve("a.tif"), sensor))).contains("a raw");
    assertThat(why(Files.writeString(folder.resolve("a.jpg"), "a text")))
        .contains("no picture that is known here");
    assertThat(why(Files.createFile(folder.resolve("empty.png")))).isNotEmpty();
    assertThat(why(folder.resolve("nothing.png"))).isNotEmpty();
    assertThat(why(SymbolicLinks.make(folder.resolve("link.tif"), raw))).isNotEmpty();
  }

  private static String why(Path file) {
    return ((PictureHeader.Reading.NotRead) PictureHeader.of(file)).why().english();
  }

  private static Map<String, byte[]> samples() throws IOException {
    var samples = new LinkedHashMap<String, byte[]>();
    samples.put("jpeg", jpeg(textProfile("Studio"), 3, 3));
    samples.put(
        "png",
        png(
            "iCCP",
            joined("x\0\0".getBytes(StandardCharsets.US_ASCII), packed(textProfile("Studio")))));
    samples.put("tiff", written("tiff", BufferedImage.TYPE_INT_ARGB));
    samples.put("layers", tiff(ByteOrder.BIG_ENDIAN, 3, layersOfTiff(ByteOrder.BIG_ENDIAN, 2)));
    samples.put("bigtiff", bigTiff());
    var resources = joined(resource(1005, resolution(300)), resource(1039, textProfile("S")));
    samples.put("psd", psd(1, 3, 8, 3, resources, plainLayers(1, 2)));
    samples.put("psb", psd(2, 3, 16, 3, resources, deepLayers(2, 2)));
    samples.put("heif", TestContainers.heif("heic"));
    samples.put("avif", TestContainers.heif("avif"));
    return samples;
  }

  @Test
  void whatIsCutOrAlteredIsReadToAnAnswer() throws IOException {
    var random = new Random(11);
    for (var sample : samples().entrySet()) {
      var whole = sample.getValue();
      for (int i = 0; i < 400; i++) {
        var altered = Arrays.copyOf(whole, i < 200 ? whole.length * i / 200 : whole.length);
        for (int n = i < 200 ? 0 : 1 + random.nextInt(8); n > 0; n--) {
          altered[random.nextInt(Math.min(400, altered.length))] =
              (byte) (random.nextInt(3) == 0 ? -1 : random.nextInt(256));
        }
        var file = Files.write(folder.resolve("altered"), altered);
        assertThat(PictureHeader.of(file))
            .as(sample.getKey() + " " + i)
            .isNotEqualTo(
                new PictureHeader.Reading.NotRead(Text.of("its structure cannot be understood")));
      }
    }
  }
}
