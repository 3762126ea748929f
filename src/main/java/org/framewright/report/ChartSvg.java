package org.framewright.report;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.framewright.report.chart.Chart;
import org.framewright.report.chart.Chart.Area;
import org.framewright.report.chart.Chart.Box;
import org.framewright.report.chart.Chart.Line;
import org.framewright.report.chart.Chart.Path;
import org.framewright.report.chart.Chart.Point;
import org.framewright.report.chart.Chart.Shape;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.report.chart.Chart.Words;

/**
 * Writes a chart as SVG, in black, white and grey. {@link ChartDrawer} knows the elements that this
 * writes and no others.
 */
final class ChartSvg {
  private static final String CUT = "\u2026";

  private ChartSvg() {}

  private static String colour(Tone tone) {
    return switch (tone) {
      case INK, NEEDS -> "#222222";
      case DARK -> "#3a3a38";
      case GREY -> "#8a8a86";
      case MID -> "#b4b4b0";
      case PALE -> "#d8d8d4";
      case FAINT -> "#efefec";
      case GROUND -> "#ffffff";
    };
  }

  /** What is wider than its room, by the width that its letters have on average. */
  private static String cut(Words words) {
    var text = words.text();
    if (Chart.widthOf(text, words.size()) <= words.room()) {
      return text;
    }
    double room = words.room() - Chart.widthOf(CUT, words.size());
    int end = 0;
    while (end < text.length()) {
      int next = text.offsetByCodePoints(end, 1);
      room -= Chart.widthOf(text.substring(end, next), words.size());
      if (room < 0) {
        break;
      }
      end = next;
    }
    return text.substring(0, end).strip() + CUT;
  }

  /**
   * Writes it into a page, that many millimetres wide. What reads a PDF aloud looks for another
   * attribute than a browser.
   */
  static void write(Chart chart, Html html, boolean print, double wide) {
    double width = chart.width();
    double height = chart.height();
    var said = chart.said();
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
    chart.shapes().forEach(shape -> write(html, shape));
    html.end();
  }

  private static void write(Html html, Shape shape) {
    switch (shape) {
      case Box box ->
          html.empty(
              "rect",
              dashed(
                  box.dashed(),
                  "x",
                  n(box.x()),
                  "y",
                  n(box.y()),
                  "width",
                  n(box.width()),
                  "height",
                  n(box.height()),
                  "fill",
                  box.fill().map(ChartSvg::colour).orElse("none"),
                  "stroke",
                  colour(Tone.INK),
                  "stroke-width",
                  "1.2"));
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
                  colour(line.stroke()),
                  "stroke-width",
                  n(line.width())));
      case Area area ->
          html.empty(
              "polygon",
              "points",
              points(area.points()),
              "fill",
              colour(area.fill()),
              "stroke",
              colour(area.stroke()),
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
                  colour(path.stroke()),
                  "stroke-width",
                  n(path.width())));
      case Words words ->
          html.element(
              "text",
              cut(words),
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
              colour(words.fill()));
    }
  }

  private static String[] dashed(boolean dashed, String... attributes) {
    if (!dashed) {
      return attributes;
    }
    var with = Arrays.copyOf(attributes, attributes.length + 2);
    with[attributes.length] = "stroke-dasharray";
    with[attributes.length + 1] = "7 5";
    return with;
  }

  private static String points(List<Point> points) {
    var text = new StringBuilder();
    for (var point : points) {
      text.append(text.isEmpty() ? "" : " ").append(n(point.x())).append(',').append(n(point.y()));
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
