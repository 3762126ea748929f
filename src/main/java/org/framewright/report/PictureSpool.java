package org.framewright.report;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.frames.Frame;
import org.framewright.frames.Thumbnails;

/**
 * Small JPEGs of frames, kept in a temporary file while a report is made: each is made once, and
 * memory holds one at a time.
 */
final class PictureSpool implements AutoCloseable {
  /** Pixels of the long side: 300 a inch at 40 mm. */
  static final int LONG_SIDE = 480;

  private static final float QUALITY = 0.8f;

  /**
   * A picture in the spool.
   *
   * @param number its place
   * @param width in pixels
   * @param height in pixels
   */
  record Kept(int number, long from, int length, int width, int height) {}

  private final Path file;
  private final FileChannel channel;
  private final ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
  private final List<Kept> kept = new ArrayList<>();

  private PictureSpool(Path file, FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  static PictureSpool open() throws IOException {
    var file = Files.createTempFile("framewright-report", ".pictures");
    return new PictureSpool(
        file,
        FileChannel.open(
            file,
            StandardOpenOption.READ,
            StandardOpenOption.WRITE,
            StandardOpenOption.DELETE_ON_CLOSE));
  }

  /** The picture of a frame; nothing if none of its files shows one. */
  Optional<Kept> add(Frame frame) throws IOException {
    var image = Thumbnails.of(frame, LONG_SIDE);
    if (image.isEmpty()) {
      return Optional.empty();
    }
    var opaque = opaque(image.get());
    var jpeg = jpeg(opaque);
    long from = channel.size();
    try {
      channel.position(from);
      DurableFiles.writeFully(channel, ByteBuffer.wrap(jpeg));
    } catch (IOException e) {
      throw FileProblems.named(file, e);
    }
    var one = new Kept(kept.size(), from, jpeg.length, opaque.getWidth(), opaque.getHeight());
    kept.add(one);
    return Optional.of(one);
  }

  int size() {
    return kept.size();
  }

  /** The JPEG of a picture. */
  byte[] bytes(int number) throws IOException {
    var one = kept.get(number);
    var bytes = ByteBuffer.allocate(one.length());
    while (bytes.hasRemaining() && channel.read(bytes, one.from() + bytes.position()) > 0) {
      // Until it is whole.
    }
    return bytes.array();
  }

  /** JPEG has no transparency; what a decoder gives may have. */
  private static BufferedImage opaque(BufferedImage image) {
    if (image.getType() == BufferedImage.TYPE_INT_RGB
        || image.getType() == BufferedImage.TYPE_3BYTE_BGR) {
      return image;
    }
    var drawn = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    var pen = drawn.createGraphics();
    pen.drawImage(image, 0, 0, Color.WHITE, null);
    pen.dispose();
    return drawn;
  }

  private byte[] jpeg(BufferedImage image) throws IOException {
    var bytes = new ByteArrayOutputStream(32 << 10);
    try (var output = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(output);
      var how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(QUALITY);
      writer.write(null, new IIOImage(image, null, null), how);
    } finally {
      writer.setOutput(null);
    }
    return bytes.toByteArray();
  }

  @Override
  public void close() throws IOException {
    writer.dispose();
    channel.close();
    Files.deleteIfExists(file);
  }
}
