package org.framewright.sample;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;

/**
 * Draws an invented garment on a grey ground with the setup's number on a card, so that a frame can
 * be told from its neighbour at a glance. No fonts are used: a bare server may have none.
 */
final class GarmentDrawing {
  /** The segments that are lit for each digit: top, two above, middle, two below, bottom. */
  private static final int[] LIT = {
    0b1110111, 0b0010010, 0b1011101, 0b1011011, 0b0111010,
    0b1101011, 0b1101111, 0b1010010, 0b1111111, 0b1111011
  };

  private GarmentDrawing() {}

  /** A picture of {@code width} by {@code height}; everything scales with it. */
  static BufferedImage draw(int width, int height, String setup, String view, int variation) {
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    var g = image.createGraphics();
    g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    g.setPaint(
        new GradientPaint(0, 0, new Color(214, 214, 212), 0, height, new Color(150, 150, 149)));
    g.fillRect(0, 0, width, height);

    // The drawing lives in a square of 100 units in the middle of the picture.
    double unit = Math.min(width, height) / 100.0;
    g.translate(width / 2.0 - 50 * unit, height / 2.0 - 50 * unit);
    g.scale(unit, unit);
    var ground = g.getTransform();

    int kind = Math.floorMod(setup.hashCode(), 5);
    var cloth = Color.getHSBColor(Math.floorMod(setup.hashCode() * 31, 360) / 360f, 0.32f, 0.62f);
    g.rotate(Math.toRadians((variation % 7 - 3) * 0.8), 50, 10);
    g.translate(variation % 5 - 2, 0);
    if (view.startsWith("D")) {
      g.translate(50, 30);
      g.scale(2.3, 2.3);
      g.translate(-50, -30);
    }
    shadow(g);
    var shape = shape(kind);
    g.setColor(cloth);
    g.fill(shape);
    var clip = g.getClip();
    g.clip(shape);
    weave(g, cloth, view.startsWith("D"));
    g.setClip(clip);
    g.setColor(cloth.darker());
    g.setStroke(new BasicStroke(0.9f));
    g.draw(shape);
    if (view.startsWith("B")) {
      backSeam(g, kind);
    } else {
      front(g, kind);
    }

    g.setTransform(ground);
    card(g, setup);
    g.dispose();
    return image;
  }

  private static void shadow(Graphics2D g) {
    g.setColor(new Color(0, 0, 0, 28));
    g.fill(new Ellipse2D.Double(22, 88, 56, 7));
  }

  private static Path2D shape(int kind) {
    return switch (kind) {
      case 0 -> // a dress
          outline(
              40, 12, 46, 15, 54, 15, 60, 12, 66, 20, 61, 27, 59, 40, 74, 88, 26, 88, 41, 40, 39,
              27, 34, 20);
      case 1 -> // a coat
          outline(
              41, 10, 50, 16, 59, 10, 70, 15, 80, 56, 72, 59, 66, 34, 68, 86, 32, 86, 34, 34, 28,
              59, 20, 56, 30, 15);
      case 2 -> // trousers
          outline(36, 12, 64, 12, 67, 40, 70, 90, 56, 90, 50, 42, 44, 90, 30, 90, 33, 40);
      case 3 -> // a shirt
          outline(
              40, 14, 50, 18, 60, 14, 74, 22, 82, 44, 72, 49, 66, 38, 66, 76, 34, 76, 34, 38, 28,
              49, 18, 44, 26, 22);
      default -> // a skirt
          outline(38, 22, 62, 22, 76, 82, 62, 79, 50, 83, 38, 79, 24, 82);
    };
  }

  private static Path2D outline(double... points) {
    var path = new Path2D.Double();
    path.moveTo(points[0], points[1]);
    for (int i = 2; i < points.length; i += 2) {
      path.lineTo(points[i], points[i + 1]);
    }
    path.closePath();
    return path;
  }

  private static void weave(Graphics2D g, Color cloth, boolean near) {
    g.setColor(new Color(255, 255, 255, near ? 60 : 26));
    g.setStroke(new BasicStroke(near ? 0.35f : 0.5f));
    double step = near ? 1.6 : 4;
    for (double x = -100; x < 200; x += step) {
      g.draw(new Line2D.Double(x, 0, x + 100, 100));
    }
    g.setColor(new Color(cloth.getRed() / 3, cloth.getGreen() / 3, cloth.getBlue() / 3, 30));
    g.fill(new Rectangle2D.Double(50, 0, 60, 100));
  }

  private static void front(Graphics2D g, int kind) {
    g.setStroke(new BasicStroke(0.7f));
    if (kind == 1 || kind == 3) {
      g.draw(new Line2D.Double(50, 17, 50, 76));
      for (int y = 26; y < 74; y += 10) {
        g.fill(new Ellipse2D.Double(51.5, y, 2.2, 2.2));
      }
    } else {
      g.draw(new Line2D.Double(38, 40, 62, 40));
      g.draw(new Line2D.Double(44, 40, 40, 62));
      g.draw(new Line2D.Double(56, 40, 60, 62));
    }
  }

  private static void backSeam(Graphics2D g, int kind) {
    g.setStroke(
        new BasicStroke(
            0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 4, new float[] {2, 1.4f}, 0));
    g.draw(new Line2D.Double(50, kind == 4 ? 24 : 18, 50, 74));
    g.setColor(new Color(245, 245, 240));
    g.fill(new Rectangle2D.Double(46, kind == 4 ? 24 : 19, 8, 3.4));
  }

  /** A white card at the lower left with the setup's digits in black. */
  private static void card(Graphics2D g, String setup) {
    var digits = setup.chars().filter(c -> (c >= '0' && c <= '9') || c == '-').toArray();
    double width = 4 + digits.length * 7.5;
    g.setColor(new Color(250, 250, 248));
    g.fill(new Rectangle2D.Double(2, 82, width, 16));
    g.setColor(new Color(24, 24, 24));
    g.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    for (int i = 0; i < digits.length; i++) {
      var at = AffineTransform.getTranslateInstance(4.5 + i * 7.5, 84.5);
      int lit = digits[i] == '-' ? 0b0001000 : LIT[digits[i] - '0'];
      for (int segment = 0; segment < 7; segment++) {
        if ((lit & (1 << (6 - segment))) != 0) {
          g.draw(at.createTransformedShape(segment(segment)));
        }
      }
    }
  }

  private static Line2D segment(int index) {
    return switch (index) {
      case 0 -> new Line2D.Double(0.6, 0, 4.4, 0);
      case 1 -> new Line2D.Double(0, 0.6, 0, 4.9);
      case 2 -> new Line2D.Double(5, 0.6, 5, 4.9);
      case 3 -> new Line2D.Double(0.6, 5.5, 4.4, 5.5);
      case 4 -> new Line2D.Double(0, 6.1, 0, 10.4);
      case 5 -> new Line2D.Double(5, 6.1, 5, 10.4);
      default -> new Line2D.Double(0.6, 11, 4.4, 11);
    };
  }
}
