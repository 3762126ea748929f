package org.framewright.report.chart;

import com.ibm.icu.lang.UCharacter;
import com.ibm.icu.lang.UCharacter.EastAsianWidth;
import com.ibm.icu.lang.UProperty;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A drawing of the few shapes that charts need, which paper, a browser and the app each draw in
 * their own way. Tones are named for how much they stand out, so that each ground has its own.
 *
 * @param width in user units, of which 10 are about a millimetre on paper
 * @param height in the same
 * @param said what it shows, for who cannot see it
 */
public record Chart(double width, double height, String said, List<Shape> shapes) {
  /** How much something stands out from its ground. */
  public enum Tone {
    /** Letters and lines. */
    INK,
    /** What is done. */
    DARK,
    /** Bars. */
    GREY,
    /** Less than bars. */
    MID,
    /** An area behind others. */
    PALE,
    /** Hardly more than the ground. */
    FAINT,
    /** The ground itself. */
    GROUND,
    /** What somebody should look at; ink where there is no colour, so never told by this alone. */
    NEEDS
  }

  public Chart {
    shapes = List.copyOf(shapes);
  }

  /** Where a text stands from its place on. */
  public enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** One of the shapes. */
  public sealed interface Shape {}

  /** A rectangle; without a fill it is the outline of what is not so yet. */
  public record Box(
      double x, double y, double width, double height, Optional<Tone> fill, boolean dashed)
      implements Shape {}

  /** A straight line. */
  public record Line(
      double x1, double y1, double x2, double y2, Tone stroke, double width, boolean dashed)
      implements Shape {}

  /** An area between points. */
  public record Area(List<Point> points, Tone fill, Tone stroke) implements Shape {}

  /** Lines from point to point. */
  public record Path(List<Point> points, Tone stroke, double width, boolean dashed)
      implements Shape {}

  /**
   * A line of text on its base line.
   *
   * @param room how wide it may be; what is longer is cut by who draws it
   */
  public record Words(
      double x,
      double y,
      String text,
      double size,
      Anchor anchor,
      boolean bold,
      Tone fill,
      double room)
      implements Shape {}

  /** A place in the drawing. */
  public record Point(double x, double y) {}

  /** About how wide a text is: mean advances of Noto Sans, rounded up. */
  public static double widthOf(String text, double size) {
    return size * text.codePoints().mapToDouble(Chart::widthOf).sum();
  }

  private static double widthOf(int c) {
    if (c == 'W' || c == 'M' || c == 'm' || c == 'w' || c == '@') {
      return 0.94;
    }
    if (c >= 0x1100) {
      int wide = UCharacter.getIntPropertyValue(c, UProperty.EAST_ASIAN_WIDTH);
      return wide == EastAsianWidth.WIDE || wide == EastAsianWidth.FULLWIDTH ? 1 : 0.56;
    }
    return Character.isUpperCase(c) ? 0.67 : 0.56;
  }

  /** Puts a drawing together. */
  public static final class Drawing {
    private final double width;
    private final List<Shape> shapes = new ArrayList<>();

    /** An empty one. */
    public Drawing(double width) {
      this.width = width;
    }

    /** A bar with an edge. */
    public Drawing box(double x, double y, double boxWidth, double boxHeight, Tone fill) {
      shapes.add(new Box(x, y, boxWidth, boxHeight, Optional.of(fill), false));
      return this;
    }

    /** The outline of a bar that is not there yet. */
    public Drawing outline(double x, double y, double boxWidth, double boxHeight) {
      shapes.add(new Box(x, y, boxWidth, boxHeight, Optional.empty(), true));
      return this;
    }

    /** A line. */
    public Drawing line(double x1, double y1, double x2, double y2, Tone stroke, double thick) {
      shapes.add(new Line(x1, y1, x2, y2, stroke, thick, false));
      return this;
    }

    /** A dashed line. */
    public Drawing dashes(double x1, double y1, double x2, double y2, double thick) {
      shapes.add(new Line(x1, y1, x2, y2, Tone.INK, thick, true));
      return this;
    }

    /** An area. */
    public Drawing area(List<Point> points, Tone fill, Tone stroke) {
      shapes.add(new Area(List.copyOf(points), fill, stroke));
      return this;
    }

    /** Lines from point to point. */
    public Drawing path(List<Point> points, double thick, boolean dashed) {
      shapes.add(new Path(List.copyOf(points), Tone.INK, thick, dashed));
      return this;
    }

    /** A text of ours, which has the room that it needs. */
    public Drawing words(double x, double y, String text, double size, Anchor anchor) {
      shapes.add(new Words(x, y, text, size, anchor, false, Tone.INK, Double.MAX_VALUE));
      return this;
    }

    /** A text that people wrote, in the room that there is for it. */
    public Drawing within(double x, double y, String text, double size, Tone fill, double room) {
      shapes.add(new Words(x, y, text, size, Anchor.START, false, fill, room));
      return this;
    }

    /** A number. */
    public Drawing bold(double x, double y, String text, double size, Anchor anchor, Tone fill) {
      shapes.add(new Words(x, y, text, size, anchor, true, fill, Double.MAX_VALUE));
      return this;
    }

    /** The whole drawing. */
    public Chart said(double height, String sentence) {
      return new Chart(width, height, sentence, List.copyOf(shapes));
    }
  }
}
