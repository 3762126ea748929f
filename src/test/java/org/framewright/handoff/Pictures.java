package org.framewright.handoff;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Small whole pictures, written by the JDK's own writers. */
public final class Pictures {
  private Pictures() {}

  /** A picture in a format that the JDK writes: {@code jpg}, {@code png}, {@code tif}. */
  public static byte[] of(String format) throws IOException {
    var out = new ByteArrayOutputStream();
    var image = new BufferedImage(8, 6, BufferedImage.TYPE_INT_RGB);
    if (!ImageIO.write(image, format.equals("tif") ? "tiff" : format, out)) {
      throw new IOException("no writer of " + format);
    }
    return out.toByteArray();
  }

  /** Writes one under a name whose ending says its format. */
  public static Path write(Path file) throws IOException {
    var name = file.getFileName().toString();
    var ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(java.util.Locale.ROOT);
    return Files.write(
        file,
        switch (ending) {
          case "tif", "tiff" -> of("tif");
          case "png" -> of("png");
          case "psd" -> psd();
          default -> of("jpg");
        });
  }

  /**
   * A PSD of 2 x 1 pixels in grey, not packed, by the published specification of the format: head,
   * three empty parts, the picture.
   */
  public static byte[] psd() {
    var head = new byte[] {'8', 'B', 'P', 'S', 0, 1, 0, 0, 0, 0, 0, 0};
    var size = new byte[] {0, 1, 0, 0, 0, 1, 0, 0, 0, 2, 0, 8, 0, 1};
    var rest = new byte[4 + 4 + 4 + 2 + 2];
    var all = new ByteArrayOutputStream();
    all.writeBytes(head);
    all.writeBytes(size);
    all.writeBytes(rest);
    return all.toByteArray();
  }
}
