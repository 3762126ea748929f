package org.framewright.share;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Semaphore;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.Thumbnails;

/**
 * Pictures of frames as pages get them: from the small previews, coded anew, so that nothing of
 * what the file says of camera, place or people goes with them. The last ones are kept. Safe from
 * any thread.
 */
final class Pictures {
  /** For a list, and for a whole screen. */
  private static final int SMALL = 320;

  private static final int LARGE = 1600;

  /** A large one has some 300 kB. */
  private static final long MOST_KEPT = 32L << 20;

  private static final float QUALITY = 0.85f;

  private record Key(FrameId frame, int edge) {}

  /** Decoding takes memory: of two at a time, however many ask. */
  private final Semaphore decoding = new Semaphore(2);

  /** Touched under the lock only; those that were asked for longest ago come first. */
  private final LinkedHashMap<Key, byte[]> kept = new LinkedHashMap<>(16, 0.75f, true);

  /** Touched under the lock only: what is being made, for all that ask meanwhile. */
  private final Map<Key, CompletableFuture<Optional<byte[]>>> making = new LinkedHashMap<>();

  private long bytes;

  static boolean isEdge(int edge) {
    return edge == SMALL || edge == LARGE;
  }

  /**
   * A JPEG of at most so many pixels on its longer side; nothing where the frame has no preview
   * that can be read.
   */
  Optional<byte[]> of(Frame frame, int edge) throws IOException, InterruptedException {
    var key = new Key(frame.id(), edge);
    CompletableFuture<Optional<byte[]>> made;
    boolean mine = false;
    synchronized (this) {
      var there = kept.get(key);
      if (there != null) {
        return Optional.of(there);
      }
      made = making.get(key);
      if (made == null) {
        mine = true;
        made = new CompletableFuture<>();
        making.put(key, made);
      }
    }
    if (mine) {
      make(frame, key, made);
    }
    try {
      return made.get();
    } catch (ExecutionException e) {
      throw e.getCause() instanceof IOException failure ? failure : new IOException(e.getCause());
    }
  }

  private void make(Frame frame, Key key, CompletableFuture<Optional<byte[]>> made)
      throws InterruptedException {
    try {
      decoding.acquire();
      try {
        var image = Thumbnails.of(frame, key.edge());
        var jpeg = image.isEmpty() ? Optional.<byte[]>empty() : Optional.of(jpeg(image.get()));
        jpeg.ifPresent(one -> keep(key, one));
        made.complete(jpeg);
      } finally {
        decoding.release();
      }
    } catch (IOException | RuntimeException | Error e) {
      made.completeExceptionally(e);
    } finally {
      synchronized (this) {
        making.remove(key);
      }
      made.completeExceptionally(new IOException("stopped"));
    }
  }

  private synchronized void keep(Key key, byte[] jpeg) {
    var before = kept.put(key, jpeg);
    bytes += jpeg.length - (before == null ? 0 : before.length);
    for (Iterator<byte[]> oldest = kept.values().iterator(); bytes > MOST_KEPT; ) {
      bytes -= oldest.next().length;
      oldest.remove();
    }
  }

  private static byte[] jpeg(BufferedImage image) throws IOException {
    var plain = new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    var pen = plain.createGraphics();
    pen.drawImage(image, 0, 0, Color.BLACK, null);
    pen.dispose();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    var out = new ByteArrayOutputStream();
    try (var stream = new MemoryCacheImageOutputStream(out)) {
      var how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(QUALITY);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(plain, null, null), how);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
