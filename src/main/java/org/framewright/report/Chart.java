package org.framewright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A drawing in SVG of the few shapes that charts need, in black, white and grey. {@link
 * ChartDrawer} knows these shapes and no others.
 *
 * @param width in user units, of which 10 are about a millimetre on paper
 * @param height in the same
 * @param said what it shows, for who cannot see it
 */
record Chart(double width, double height, String said, List<Shape> shapes) {
  static final String INK = "#222222";
  static final String GREY = "#8a8a86";
  static final String PALE = "#d8d8d4";
  static final String FAINT = "#efefec";
  static final String WHITE = "#ffffff";

  /** Where a text stands from its place on. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  sealed interface Shape {}

  record Box(double x, double y, double width, double height, String fill, String stroke)
      implements Shape {}

  record Line(
      double x1, double y1, double x2, double y2, String stroke, double width, boolean dashed)
      implements Shape {}

  record Area(List<double[]> points, String fill, String stroke) implements Shape {}

  record Path(List<double[]> points, String stroke, double width, boolean dashed)
      implements Shape {}

  record Words(
      double x, double y, String text, double size, Anchor anchor, boolean bold, String fill)
      implements Shape {}

  /** About how wide a text is: the mean advance of Noto Sans in lower case, rounded up. */
  static double widthOf(String text, double size) {
    return text.codePointCount(0, text.length()) * size * 0.56;
  }

  static final class Drawing {
    private final double width;
    private final List<Shape> shapes = new ArrayList<>();

    Drawing(double width) {
      this.width = width;
    }

    Drawing box(double x, double y, double boxWidth, double boxHeight, String fill) {
      shapes.add(new Box(x, y, boxWidth, boxHeight, fill, INK));
      return this;
    }

    Drawing line(double x1, double y1, double x2, double y2, String stroke, double thick) {
      shapes.add(new Line(x1, y1, x2, y2, stroke, thick, false));
      return this;
    }

    Drawing dashes(double x1, double y1, double x2, double y2, double thick) {
      shapes.add(new Line(x1, y1, x2, y2, INK, thick, true));
      return this;
    }

    Drawing area(List<double[]> points, String fill, String stroke) {
      shapes.add(new Area(List.copyOf(points), fill, stroke));
      return this;
    }

    Drawing path(List<double[]> points, double thick, boolean dashed) {
      shapes.add(new Path(List.copyOf(points), INK, thick, dashed));
      return this;
    }

    Drawing words(double x, double y, String text, double size, Anchor anchor) {
      shapes.add(new Words(x, y, text, size, anchor, false, INK));
      return this;
    }

    Drawing bold(double x, double y, String text, double size, Anchor anchor, String fill) {
      shapes.add(new Words(x, y, text, size, anchor, true, fill));
      return this;
    }

    Chart said(double height, String sentence) {
      return new Chart(width, height, sentence, List.copyOf(shapes));
    }
  }

  /**
   * Writes it into a page, that many millimetres wide. What reads a PDF aloud looks for another
   * attribute than a browser.
   */
  void write(Html html, boolean print, double wide) {
    var style = "width:" + n(wide) + "mm;height:" + n(wide * height / width) + "mm";
    var box = "0 0 " + n(width) + " " + n(height);
    if (print) {
      html.open("svg", "viewBox", box, "alt", said, "style", style);
    } else {
      html.open(
          "svg",
          "xmlns",
          "http://www.w3.org/2000/svg",
          "viewBox",
          box,
          "role",
          "img",
          "aria-label",
          said,
          "style",
          style);
    }
    shapes.forEach(shape -> write(html, shape));
    html.end();
  }

  private static void write(Html html, Shape shape) {
    switch (shape) {
      case Box box ->
          html.empty(
              "rect",
              "x",
              n(box.x()),
              "y",
              n(box.y()),
              "width",
              n(box.width()),
              "height",
              n(box.height()),
              "fill",
              box.fill(),
              "stroke",
              box.stroke(),
              "stroke-width",
              "1.2");
      case Line line ->
          html.empty(
              "line",
              dashed(
                  line.dashed(),
                  "x1",
                  n(line.x1()),
                  "y1",
                  n(line.y1()),
                  "x2",
                  n(line.x2()),
                  "y2",
                  n(line.y2()),
                  "stroke",
                  line.stroke(),
                  "stroke-width",
                  n(line.width())));
      case Area area ->
          html.empty(
              "polygon",
              "points",
              points(area.points()),
              "fill",
              area.fill(),
              "stroke",
              area.stroke(),
              "stroke-width",
              "1.2");
      case Path path ->
          html.empty(
              "polyline",
              dashed(
                  path.dashed(),
                  "points",
                  points(path.points()),
                  "fill",
                  "none",
                  "stroke",
                  path.stroke(),
                  "stroke-width",
                  n(path.width())));
      case Words words ->
          html.element(
              "text",
              words.text(),
              "x",
              n(words.x()),
              "y",
              n(words.y()),
              "font-size",
              n(words.size()),
              "font-weight",
              words.bold() ? "bold" : "normal",
              "text-anchor",
              words.anchor().name().toLowerCase(Locale.ROOT),
              "fill",
              words.fill());
    }
  }

  private static String[] dashed(boolean dashed, String... attributes) {
    if (!dashed) {
      return attributes;
    }
    var with = java.util.Arrays.copyOf(attributes, attributes.length + 2);
    with[attributes.length] = "stroke-dasharray";
    with[attributes.length + 1] = "7 5";
    return with;
  }

  private static String points(List<double[]> points) {
    var text = new StringBuilder();
    for (var point : points) {
      text.append(text.isEmpty() ? "" : " ").append(n(point[0])).append(',').append(n(point[1]));
    }
    return text.toString();
  }

  private static String n(double value) {
    double rounded = Math.round(value * 10) / 10.0;
    return rounded == Math.rint(rounded)
        ? Long.toString((long) rounded)
        : String.format(Locale.ROOT, "%.1f", rounded);
  }
}
