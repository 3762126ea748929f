package org.framewright.sample;

import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import org.framewright.frames.slate.Slate;
import org.framewright.sample.TiffWriter.Directory;

/**
 * An invented camera that writes real files: a JPEG with Exif and a thumbnail, a raw-like companion
 * with an embedded preview, and a sidecar where a frame is rated. Numbers run as DCF (CIPA DC-009)
 * has them: 0001 to 9999 and around again.
 *
 * <p>Tags are those of Exif (CIPA DC-008); the raw companion is a TIFF 6.0 with the tags of the
 * public DNG specification that say what it is. Not safe for use by several threads.
 */
public final class SampleCamera {
  private static final DateTimeFormatter EXIF_TIME =
      DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);
  private static final DateTimeFormatter EXIF_FRACTION =
      DateTimeFormatter.ofPattern("SSS", Locale.ROOT);
  private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] XMP =
      "http://ns.adobe.com/xap/1.0/\0".getBytes(StandardCharsets.US_ASCII);

  /** How large the pictures are; the longer edge in pixels. */
  public enum Size {
    /** Looks like something on a screen: 720 pixels, about 50 kB a file. */
    SMALL(720, 160),
    /** For thousands of frames: 96 pixels, about 5 kB a file. */
    TINY(96, 48);

    private final int edge;
    private final int thumbnail;

    Size(int edge, int thumbnail) {
      this.edge = edge;
      this.thumbnail = thumbnail;
    }
  }

  /** Which files make up a frame, and where a rating is written. */
  public enum Writes {
    /** Raw and JPEG; ratings into a sidecar. */
    RAW_AND_JPEG,
    /** JPEG alone; ratings into a sidecar. */
    JPEG,
    /** JPEG alone; ratings into the JPEG itself, as a body does whose rating button was pressed. */
    JPEG_RATED_INSIDE
  }

  private static final class Drawn {
    private final byte[] jpeg;
    private final byte[] thumbnail;
    private final int width;
    private final int height;

    private Drawn(BufferedImage stored, int thumbnailEdge) {
      jpeg = encode(stored, 0.82f);
      thumbnail = encode(scaled(stored, thumbnailEdge), 0.75f);
      width = stored.getWidth();
      height = stored.getHeight();
    }
  }

  private record Subject(
      String setup, String view, boolean upright, int variation, Optional<Slate> slate) {}

  private final SampleBody body;
  private final Size size;
  private final Writes writes;
  private final Map<Subject, Drawn> drawn = new HashMap<>();
  private int number;
  private int shots;

  /**
   * @param firstNumber the file number of the next frame, 1 to 9999
   */
  public SampleCamera(SampleBody body, Size size, Writes writes, int firstNumber) {
    if (firstNumber < 1 || firstNumber > 9999) {
      throw new IllegalArgumentException("A file number is 1 to 9999, not " + firstNumber);
    }
    this.body = body;
    this.size = size;
    this.writes = writes;
    this.number = firstNumber;
  }

  /** The body that this camera is. */
  public SampleBody body() {
    return body;
  }

  /** Sets the number of the next frame, as a card from another body or a reset does. */
  public void resetNumber(int next) {
    number = next;
  }

  /** Takes one frame and moves to the next number. */
  public SampleFrame take(Exposure exposure) {
    var stem = String.format(Locale.ROOT, "IMG_%04d", number);
    number = number % 9999 + 1;
    shots++;
    var picture = picture(exposure);
    boolean inside = writes == Writes.JPEG_RATED_INSIDE;
    var files = new LinkedHashMap<String, byte[]>();
    if (writes == Writes.RAW_AND_JPEG) {
      files.put(stem + ".DNG", raw(exposure, picture));
    }
    files.put(stem + ".JPG", jpeg(exposure, picture, inside));
    if (exposure.rating().isPresent() && !inside) {
      files.put(stem + ".xmp", xmp(exposure.rating().getAsInt()).getBytes(StandardCharsets.UTF_8));
    }
    return new SampleFrame(stem, exposure.at(), files);
  }

  private Drawn picture(Exposure exposure) {
    // A few variations a setup and view are enough to see that frames differ.
    int variation = size == Size.TINY ? shots % 2 : shots % 3 * 3;
    if (drawn.size() > 64) {
      drawn.clear();
    }
    return drawn.computeIfAbsent(
        new Subject(
            exposure.setup(), exposure.view(), exposure.upright(), variation, exposure.slate()),
        this::draw);
  }

  private Drawn draw(Subject subject) {
    int longer = size.edge;
    int shorter = longer * 2 / 3;
    var seen =
        subject.upright()
            ? GarmentDrawing.draw(
                shorter, longer, subject.setup(), subject.view(), subject.variation())
            : GarmentDrawing.draw(
                longer, shorter, subject.setup(), subject.view(), subject.variation());
    subject.slate().ifPresent(slate -> SlateCard.draw(seen, slate));
    // The sensor always lies level; an upright frame is stored turned, and Exif says so.
    var stored = subject.upright() ? turnedLeft(seen) : seen;
    return new Drawn(stored, size.thumbnail);
  }

  private static BufferedImage turnedLeft(BufferedImage seen) {
    var turned = new BufferedImage(seen.getHeight(), seen.getWidth(), BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < seen.getHeight(); y++) {
      for (int x = 0; x < seen.getWidth(); x++) {
        turned.setRGB(y, seen.getWidth() - 1 - x, seen.getRGB(x, y));
      }
    }
    return turned;
  }

  private static BufferedImage scaled(BufferedImage image, int longer) {
    int width = longer;
    int height = longer * image.getHeight() / image.getWidth();
    var small = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var g = small.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(image, 0, 0, width, height, null);
    g.dispose();
    return small;
  }

  /** A JPEG without the JFIF segment: Exif wants its own segment to come first. */
  private static byte[] encode(BufferedImage image, float quality) {
    var writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try {
      var out = new ByteArrayOutputStream();
      var settings = writer.getDefaultWriteParam();
      settings.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      settings.setCompressionQuality(quality);
      try (var stream = new javax.imageio.stream.MemoryCacheImageOutputStream(out)) {
        writer.setOutput(stream);
        writer.write(null, new IIOImage(image, null, null), settings);
      }
      return withoutJfif(out.toByteArray());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
  }

  private static byte[] withoutJfif(byte[] jpeg) {
    var in = ByteBuffer.wrap(jpeg);
    if ((in.getShort(2) & 0xFFFF) != 0xFFE0) {
      return jpeg;
    }
    int after = 4 + (in.getShort(4) & 0xFFFF);
    var out = new byte[jpeg.length - after + 2];
    out[0] = jpeg[0];
    out[1] = jpeg[1];
    System.arraycopy(jpeg, after, out, 2, jpeg.length - after);
    return out;
  }

  private byte[] jpeg(Exposure exposure, Drawn picture, boolean ratingInside) {
    var main = mainTags(exposure).child(0x8769, exifTags(exposure, picture));
    var thumbnail =
        new Directory()
            .shorts(0x0103, 6)
            .rational(0x011A, 72, 1)
            .rational(0x011B, 72, 1)
            .shorts(0x0128, 2)
            .block(0x0201, picture.thumbnail)
            .longs(0x0202, picture.thumbnail.length);
    var segments = new ByteArrayOutputStream();
    segments.writeBytes(Arrays.copyOf(picture.jpeg, 2));
    segments.writeBytes(segment(EXIF, TiffWriter.write(main, thumbnail)));
    if (ratingInside && exposure.rating().isPresent()) {
      var packet = xmp(exposure.rating().getAsInt()).getBytes(StandardCharsets.UTF_8);
      segments.writeBytes(segment(XMP, packet));
    }
    segments.write(picture.jpeg, 2, picture.jpeg.length - 2);
    return segments.toByteArray();
  }

  private static byte[] segment(byte[] signature, byte[] content) {
    int length = 2 + signature.length + content.length;
    if (length > 0xFFFF) {
      throw new IllegalStateException("A JPEG segment holds at most 65,535 bytes, not " + length);
    }
    var segment = new byte[2 + length];
    ByteBuffer.wrap(segment)
        .putShort((short) 0xFFE1)
        .putShort((short) length)
        .put(signature)
        .put(content);
    return segment;
  }

  private byte[] raw(Exposure exposure, Drawn picture) {
    int width = size == Size.TINY ? 12 : 96;
    int height = width * 2 / 3;
    var sensor =
        new Directory()
            .longs(0x00FE, 0)
            .longs(0x0100, width)
            .longs(0x0101, height)
            .shorts(0x0102, 16)
            .shorts(0x0103, 1)
            .shorts(0x0106, 32803)
            .block(0x0111, sensorData(width, height))
            .shorts(0x0115, 1)
            .longs(0x0116, height)
            .longs(0x0117, 2L * width * height)
            .shorts(0x011C, 1)
            .shorts(0x828D, 2, 2)
            .bytes(0x828E, 0, 1, 1, 2);
    var main =
        mainTags(exposure)
            .longs(0x00FE, 1)
            .longs(0x0100, picture.width)
            .longs(0x0101, picture.height)
            .shorts(0x0102, 8, 8, 8)
            .shorts(0x0103, 7)
            .shorts(0x0106, 6)
            .block(0x0111, picture.jpeg)
            .shorts(0x0115, 3)
            .longs(0x0116, picture.height)
            .longs(0x0117, picture.jpeg.length)
            .shorts(0x011C, 1)
            .shorts(0x0212, 2, 2)
            .child(0x014A, sensor)
            .child(0x8769, exifTags(exposure, picture))
            .bytes(0xC612, 1, 4, 0, 0)
            .bytes(0xC613, 1, 1, 0, 0)
            .ascii(0xC614, body.make() + " " + body.model());
    return TiffWriter.write(main);
  }

  private byte[] sensorData(int width, int height) {
    var noise = new SplittableRandom(shots);
    var data = new byte[2 * width * height];
    var out = ByteBuffer.wrap(data).order(ByteOrder.LITTLE_ENDIAN);
    while (out.hasRemaining()) {
      out.putShort((short) noise.nextInt(512, 15_000));
    }
    return data;
  }

  private Directory mainTags(Exposure exposure) {
    return new Directory()
        .ascii(0x010F, body.make())
        .ascii(0x0110, body.model())
        .shorts(0x0112, exposure.upright() ? 6 : 1)
        .rational(0x011A, 300, 1)
        .rational(0x011B, 300, 1)
        .shorts(0x0128, 2)
        .ascii(0x0132, clock(exposure).format(EXIF_TIME))
        .shorts(0x0213, 1);
  }

  private Directory exifTags(Exposure exposure, Drawn picture) {
    var time = clock(exposure);
    var zone = body.zone().getTotalSeconds() == 0 ? "+00:00" : body.zone().getId();
    var fraction = time.format(EXIF_FRACTION);
    var unique =
        String.format(
            Locale.ROOT,
            "%08x%08x%016x",
            body.serial().hashCode(),
            shots,
            exposure.at().toEpochMilli());
    return new Directory()
        .rational(0x829A, 1, 160)
        .rational(0x829D, 8, 1)
        .shorts(0x8827, 100)
        .undefined(0x9000, "0232".getBytes(StandardCharsets.US_ASCII))
        .ascii(0x9003, time.format(EXIF_TIME))
        .ascii(0x9004, time.format(EXIF_TIME))
        .ascii(0x9010, zone)
        .ascii(0x9011, zone)
        .ascii(0x9012, zone)
        .undefined(0x9101, new byte[] {1, 2, 3, 0})
        .ascii(0x9290, fraction)
        .ascii(0x9291, fraction)
        .ascii(0x9292, fraction)
        .undefined(0xA000, "0100".getBytes(StandardCharsets.US_ASCII))
        .shorts(0xA001, 1)
        .longs(0xA002, picture.width)
        .longs(0xA003, picture.height)
        .ascii(0xA420, unique)
        .ascii(0xA431, body.serial());
  }

  /** What the body's clock shows. */
  private LocalDateTime clock(Exposure exposure) {
    return exposure.at().plus(body.ahead()).atOffset(body.zone()).toLocalDateTime();
  }

  /** A packet with a rating, as the XMP specification lays it out. */
  static String xmp(int rating) {
    return """
    <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
    <x:xmpmeta xmlns:x="adobe:ns:meta/">
     <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
      <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmp:Rating="%d"/>
     </rdf:RDF>
    </x:xmpmeta>
    <?xpacket end="w"?>
    """
        .formatted(rating);
  }
}
