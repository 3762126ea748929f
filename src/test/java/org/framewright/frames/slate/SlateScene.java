package org.framewright.frames.slate;

import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;

/**
 * A picture of a studio with a slate in it, made from numbers: a card in any turn and tilt before a
 * fabric, a wall or soft shapes, then light, blur, noise and compression. The same seed makes the
 * same picture.
 *
 * @param edge the long side in pixels; the short side is two thirds of it
 * @param share the side of the symbol by the long side; 0 for a picture without a card
 * @param held the symbol of a large card, not that of a small one
 * @param troubles those that are not as usual
 */
public record SlateScene(
    int edge, double share, boolean held, long seed, Map<Trouble, Double> troubles) {

  /** What makes reading hard. */
  public enum Trouble {
    /** Of the card away from the camera, in degrees. */
    TILT(20),
    /** The sigma of the blur, as of focus, by the long side. */
    BLUR(0.0003),
    /** The way of the camera while it was open, by the long side. */
    MOTION(0),
    /** Its sigma in steps of 255. */
    NOISE(4),
    /** Of the card's black and white, 1 full. */
    CONTRAST(1),
    /** On the whole picture, 1 full. */
    LIGHT(1),
    /** The light on the card alone, 1 full. */
    SHADOW(1),
    /** How far half of the card is brightened to white, 1 wholly. */
    GLARE(0),
    /** The part of the symbol that a finger covers. */
    COVERED(0),
    /** Of the JPEG; 1 for none. */
    QUALITY(1);

    private final double usual;

    Trouble(double usual) {
      this.usual = usual;
    }
  }

  /** Of the card's width, as on the printed one. */
  private static final double SYMBOL_IN_CARD = 0.62;

  private static final double CARD_HIGH = 1.41;
  private static final int SAMPLES = 3;

  /** Half of the pictures have fabrics behind the card, the others what a studio has besides. */
  static final List<String> GROUNDS =
      List.of(
          "stripes",
          "checks",
          "gingham",
          "houndstooth",
          "random cells",
          "tartan",
          "signs",
          "out of focus",
          "out of focus",
          "out of focus",
          "out of focus",
          "things",
          "things",
          "paper",
          "paper",
          "dots with rings");

  private static final int GAUSSIANS = 1 << 16;
  private static final float[] GAUSSIAN = gaussian();

  private static float[] gaussian() {
    var random = new Random(20);
    var values = new float[GAUSSIANS];
    for (int i = 0; i < GAUSSIANS; i++) {
      values[i] = (float) random.nextGaussian();
    }
    return values;
  }

  /** A card in plain light, tilted, hardly blurred, with the noise of a low sensitivity. */
  public static SlateScene plain(int edge, double share, long seed) {
    return new SlateScene(edge, share, false, seed, Map.of());
  }

  /** The same tilted by up to 30 degrees and compressed as previews are. */
  static SlateScene usual(int edge, double share, long seed) {
    var random = new Random(~seed);
    return plain(edge, share, seed)
        .with(Trouble.TILT, 30 * random.nextDouble())
        .with(Trouble.QUALITY, 0.75 + 0.15 * random.nextDouble());
  }

  /** Tilted by up to 45 degrees, twice as much blurred, in less light, compressed more. */
  static SlateScene hard(int edge, double share, long seed) {
    var random = new Random(~seed);
    return plain(edge, share, seed)
        .with(Trouble.TILT, 45 * random.nextDouble())
        .with(Trouble.BLUR, 0.0006)
        .with(Trouble.NOISE, 10)
        .with(Trouble.LIGHT, 0.6)
        .with(Trouble.QUALITY, 0.6 + 0.15 * random.nextDouble());
  }

  /** No card. */
  public static SlateScene empty(int edge, long seed) {
    return plain(edge, 0, seed);
  }

  SlateScene with(Trouble trouble, double much) {
    var more = new EnumMap<Trouble, Double>(Trouble.class);
    more.putAll(troubles);
    more.put(trouble, much);
    return new SlateScene(edge, share, held, seed, more);
  }

  /** With the symbol of a large card. */
  SlateScene large() {
    return new SlateScene(edge, share, true, seed, troubles);
  }

  private double of(Trouble trouble) {
    return troubles.getOrDefault(trouble, trouble.usual);
  }

  String ground() {
    return GROUNDS.get(Math.floorMod(seed, GROUNDS.size()));
  }

  int width() {
    return edge;
  }

  int height() {
    return edge * 2 / 3;
  }

  /** The picture; {@code slate} is what its card says, if it has one. */
  GreyPicture picture(Slate slate) {
    var random = new Random(seed);
    var grey = new float[width() * height()];
    ground(grey, random);
    if (share > 0) {
      card(grey, slate, random);
    }
    double blur = of(Trouble.BLUR) * edge;
    for (int i = 0; i < 3 && blur >= 0.3; i++) {
      soften(grey, blur / Math.sqrt(3));
    }
    if (of(Trouble.MOTION) > 0) {
      smear(grey, (int) Math.round(of(Trouble.MOTION) * edge));
    }
    var values = new byte[grey.length];
    float light = (float) of(Trouble.LIGHT);
    float noise = (float) of(Trouble.NOISE);
    int at = random.nextInt(GAUSSIANS);
    for (int i = 0; i < grey.length; i++) {
      // An odd step that changes from row to row, so that the noise has no pattern.
      at = (at + 1 + (i % width() == 0 ? random.nextInt(GAUSSIANS) : 0)) & (GAUSSIANS - 1);
      float value = grey[i] * light + GAUSSIAN[at] * noise;
      values[i] = (byte) Math.clamp(Math.round(value), 0, 255);
    }
    var picture = new GreyPicture(values, width(), height());
    return of(Trouble.QUALITY) < 1 ? compressed(picture) : picture;
  }

  private GreyPicture compressed(GreyPicture picture) {
    var bytes = jpeg(image(picture, BufferedImage.TYPE_BYTE_GRAY), (float) of(Trouble.QUALITY));
    try {
      var raster = ImageIO.read(new ByteArrayInputStream(bytes)).getRaster();
      var values = ((DataBufferByte) raster.getDataBuffer()).getData();
      return new GreyPicture(values, width(), height());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The same as a JPEG in colour, as bodies write it. */
  public byte[] jpeg(Slate slate, float quality) {
    return jpeg(image(picture(slate), BufferedImage.TYPE_INT_RGB), quality);
  }

  static BufferedImage image(GreyPicture picture, int type) {
    var image = new BufferedImage(picture.width(), picture.height(), type);
    var grey = new int[picture.width()];
    for (int y = 0, i = 0; y < picture.height(); y++) {
      for (int x = 0; x < grey.length; x++, i++) {
        grey[x] = picture.values()[i] & 0xFF;
      }
      for (int band = 0; band < image.getRaster().getNumBands(); band++) {
        image.getRaster().setSamples(0, y, grey.length, 1, band, grey);
      }
    }
    return image;
  }

  private static byte[] jpeg(BufferedImage image, float quality) {
    var bytes = new ByteArrayOutputStream();
    var writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (var out = ImageIO.createImageOutputStream(bytes)) {
      var how = writer.getDefaultWriteParam();
      how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      how.setCompressionQuality(quality);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), how);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  // What is behind the card

  private void ground(float[] grey, Random random) {
    int kind = Math.floorMod(seed, GROUNDS.size());
    double period = edge * (0.004 + 0.03 * random.nextDouble());
    double angle = random.nextDouble() * Math.PI;
    double cos = Math.cos(angle) / period;
    double sin = Math.sin(angle) / period;
    float dark = 20 + random.nextInt(60);
    float light = 150 + random.nextInt(100);
    int salt = random.nextInt();
    double lamp = 0.6 + 0.4 * random.nextDouble();
    for (int y = 0, i = 0; y < height(); y++) {
      for (int x = 0; x < width(); x++, i++) {
        double u = x * cos + y * sin;
        double v = y * cos - x * sin;
        double tone =
            switch (kind) {
              case 0 -> half(u); // stripes
              case 1 -> half(u) == half(v) ? 1 : 0; // checks
              case 2 -> (half(u) + half(v)) / 2; // gingham
              case 3 -> houndstooth(u, v);
              case 4 -> cell(u, v, salt); // random cells, as large as modules
              case 5 -> (half(u) + half(u * 2.7) + half(v * 1.3)) / 3; // tartan
              case 6 -> print(u, v, salt); // lines of signs
              case 7, 8, 9, 10 -> 0.5 + 0.5 * Math.sin(u / 7) * Math.cos(v / 9); // out of focus
              case 11, 12 -> things(u, v); // edges and corners of things
              case 15 -> ring(u / 2, v / 2, lamp); // as wide as a symbol's marks
              default -> 0.8; // paper
            };
        double fall = 1 - (1 - lamp) * x / width();
        grey[i] = (float) ((dark + tone * (light - dark)) * fall);
      }
    }
  }

  private static double half(double u) {
    return Math.floor(u) % 2 == 0 ? 1 : 0;
  }

  private static double houndstooth(double u, double v) {
    boolean across = Math.floorMod((long) Math.floor(u), 2) == 0;
    boolean down = Math.floorMod((long) Math.floor(v), 2) == 0;
    return across == down ? (across ? 1 : 0) : half((u + v) * 4);
  }

  /** Some of them have the very widths of the marks in a symbol's corners. */
  private static double ring(double u, double v, double how) {
    double out = Math.hypot(u - Math.floor(u) - 0.5, v - Math.floor(v) - 0.5);
    double dot = 0.08 + 0.3 * (how - 0.6);
    return out < dot || (out > 0.26 && out < 0.36) ? 0 : 1;
  }

  /** Large shapes with straight edges, some dark, some light. */
  private static double things(double u, double v) {
    return (half(u / 11) + half(v / 17 + 0.3) * 0.7 + half((u + v) / 29) * 0.5) / 2.2;
  }

  private static double cell(double u, double v, int salt) {
    long key =
        ((long) Math.floor(u) * 0x9E3779B97F4A7C15L) ^ ((long) Math.floor(v) * 0xC2B2AE3D27D4EB4FL);
    key = (key ^ salt) * 0xD6E8FEB86659FD93L;
    return ((key >>> 33) & 1) == 0 ? 0 : 1;
  }

  /** Short dark strokes in rows, as text has them. */
  private static double print(double u, double v, int salt) {
    return Math.floorMod((long) Math.floor(v), 3) == 0 ? 1 : cell(u * 2, v * 2, salt);
  }

  // The card

  private void card(float[] grey, Slate slate, Random random) {
    var symbol = held ? SlateSymbol.held(slate) : SlateSymbol.small(slate);
    double turn = random.nextDouble() * 2 * Math.PI;
    double axis = random.nextDouble() * 2 * Math.PI;
    double coverAt = random.nextInt(4);
    double[] m = projection(turn, axis, random);
    double[] inverse = inverse(m);
    double reach = 0.5 / SYMBOL_IN_CARD * CARD_HIGH * 1.6 * share * edge + 2;
    double cx = m[2] / m[8];
    double cy = m[5] / m[8];
    double soil = 235 - random.nextInt(40);
    int fromX = (int) Math.max(0, cx - 2 * reach);
    int toX = (int) Math.min(width(), cx + 2 * reach);
    int fromY = (int) Math.max(0, cy - 2 * reach);
    int toY = (int) Math.min(height(), cy + 2 * reach);
    for (int y = fromY; y < toY; y++) {
      for (int x = fromX; x < toX; x++) {
        double sum = 0;
        int inside = 0;
        for (int sample = 0; sample < SAMPLES * SAMPLES; sample++) {
          double px = x + (sample % SAMPLES + 0.5) / SAMPLES;
          int down = sample / SAMPLES;
          double py = y + (down + 0.5) / SAMPLES;
          double w = inverse[6] * px + inverse[7] * py + inverse[8];
          double u = (inverse[0] * px + inverse[1] * py + inverse[2]) / w;
          double v = (inverse[3] * px + inverse[4] * py + inverse[5]) / w;
          double value = card(u, v, symbol, soil, coverAt);
          if (value >= 0) {
            sum += value;
            inside++;
          }
        }
        int i = y * width() + x;
        int samples = SAMPLES * SAMPLES;
        grey[i] = (float) ((sum + grey[i] * (samples - inside)) / samples);
      }
    }
  }

  /** The card at a place, the symbol's middle being 0 and its side 1; less than 0 beside it. */
  private double card(double u, double v, SlateSymbol symbol, double white, double side) {
    double value = bare(u, v, symbol, white, side);
    if (value < 0) {
      return value;
    }
    boolean bright = side < 2 ? u < 0 == side < 1 : v < 0 == side < 3;
    double lit = value * of(Trouble.SHADOW);
    return bright ? lit + of(Trouble.GLARE) * (255 - lit) : lit;
  }

  private double bare(double u, double v, SlateSymbol symbol, double white, double coverAt) {
    double half = 0.5 / SYMBOL_IN_CARD;
    double top = -half * (2 * CARD_HIGH - 1);
    if (u < -half || u > half || v > half || v < top) {
      return -1;
    }
    double black = white - of(Trouble.CONTRAST) * (white - 18);
    if (of(Trouble.COVERED) > 0 && coverAt(u, v, coverAt)) {
      return 120;
    }
    double modules = symbol.side();
    int x = (int) Math.floor((u + 0.5) * modules);
    int y = (int) Math.floor((v + 0.5) * modules);
    if (symbol.isDark(x, y)) {
      return black;
    }
    // The large number, as bars.
    boolean number =
        v > top + 0.1 && v < top + 0.42 && Math.floorMod((int) ((u + half) * 14), 4) == 1;
    return number ? black : white;
  }

  /** A finger from the middle of one side. */
  private boolean coverAt(double u, double v, double side) {
    double into = side == 0 ? u + 0.5 : side == 1 ? 0.5 - u : side == 2 ? v + 0.5 : 0.5 - v;
    double along = side < 2 ? v : u;
    double wide = 0.22;
    return into < of(Trouble.COVERED) / wide && Math.abs(along) < wide / 2;
  }

  /** From the card to the picture, by rows, as seen by a lens of 50 mm on a frame of 36 mm. */
  private double[] projection(double turn, double axis, Random random) {
    double far = 50.0 / 36 / share; // in sides of the symbol
    double c = Math.cos(turn);
    double s = Math.sin(turn);
    double t = Math.toRadians(of(Trouble.TILT));
    double ax = Math.cos(axis);
    double ay = Math.sin(axis);
    // Rodrigues: turned in its plane, then tilted about an axis in the picture's plane.
    double[][] plane = {{c, -s}, {s, c}, {0, 0}};
    var turned = new double[3][2];
    for (int i = 0; i < 2; i++) {
      double px = plane[0][i];
      double py = plane[1][i];
      double along = ax * px + ay * py;
      turned[0][i] = px * Math.cos(t) + ax * along * (1 - Math.cos(t));
      turned[1][i] = py * Math.cos(t) + ay * along * (1 - Math.cos(t));
      turned[2][i] = (ax * py - ay * px) * Math.sin(t);
    }
    double scale = share * edge;
    double margin = Math.min(0.45, share * 0.9);
    double cx = width() * (margin + (1 - 2 * margin) * random.nextDouble());
    double cy = height() * (0.5 + (0.8 - Math.min(0.8, 2.2 * share)) * (random.nextDouble() - 0.5));
    return new double[] {
      scale * far * turned[0][0] + cx * turned[2][0],
      scale * far * turned[0][1] + cx * turned[2][1],
      cx * far,
      scale * far * turned[1][0] + cy * turned[2][0],
      scale * far * turned[1][1] + cy * turned[2][1],
      cy * far,
      turned[2][0],
      turned[2][1],
      far
    };
  }

  private static double[] inverse(double[] m) {
    double[] cofactors = {
      m[4] * m[8] - m[5] * m[7],
      m[2] * m[7] - m[1] * m[8],
      m[1] * m[5] - m[2] * m[4],
      m[5] * m[6] - m[3] * m[8],
      m[0] * m[8] - m[2] * m[6],
      m[2] * m[3] - m[0] * m[5],
      m[3] * m[7] - m[4] * m[6],
      m[1] * m[6] - m[0] * m[7],
      m[0] * m[4] - m[1] * m[3]
    };
    return cofactors; // The scale does not matter to a projection.
  }

  // The lens

  /** A box of about that sigma, across and down; three of them are a Gaussian. */
  private void soften(float[] grey, double sigma) {
    double reach = (Math.sqrt(12 * sigma * sigma + 1) - 1) / 2;
    box(grey, width(), height(), 1, width(), reach);
    box(grey, height(), width(), width(), 1, reach);
  }

  private static void box(
      float[] grey, int length, int lines, int step, int lineStep, double reach) {
    int whole = (int) reach;
    float rest = (float) (reach - whole);
    float all = (float) (2 * reach + 1);
    var line = new float[length + 2 * whole + 2];
    for (int n = 0; n < lines; n++) {
      int start = n * lineStep;
      for (int i = 0; i < line.length; i++) {
        line[i] = grey[start + Math.clamp(i - whole - 1, 0, length - 1) * step];
      }
      float sum = 0;
      for (int i = 1; i <= 2 * whole + 1; i++) {
        sum += line[i];
      }
      for (int i = 0; i < length; i++) {
        float next = line[i + 2 * whole + 2];
        grey[start + i * step] = (sum + rest * (line[i] + next)) / all;
        sum += next - line[i + 1];
      }
    }
  }

  private void smear(float[] grey, int way) {
    if (seed % 2 == 0) {
      box(grey, width(), height(), 1, width(), way / 2.0);
    } else {
      box(grey, height(), width(), width(), 1, way / 2.0);
    }
  }
}
