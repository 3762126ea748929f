package org.framewright.ui.day;

import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.VPos;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.scene.shape.Line;
import javafx.scene.shape.Polygon;
import javafx.scene.shape.Polyline;
import javafx.scene.shape.Rectangle;
import javafx.scene.shape.Shape;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import org.framewright.report.chart.Chart;
import org.framewright.report.chart.Chart.Point;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.report.chart.ChartWords;
import org.framewright.report.chart.Room;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.WrappedText;

/** Draws a chart as large as it is given room, in letters of the page's size. */
final class ChartView extends Region {
  private static final double DASH = 5;

  /** Makes a chart for a room. */
  @FunctionalInterface
  interface Source {
    Chart in(Room room, ChartWords words);
  }

  private final ChartWords words;

  /** It has the font that the stylesheet gives this page. */
  private final Label measure = new Label();

  private Optional<Source> source = Optional.empty();
  private Optional<Room> drawn = Optional.empty();

  ChartView(Texts texts) {
    this.words = words(texts);
    measure.setVisible(false);
    measure.setManaged(false);
    measure.fontProperty().addListener(_ -> redraw());
    getChildren().add(measure);
    getStyleClass().add("chart");
    setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    setMinSize(0, 0);
    setFocusTraversable(false);
  }

  private static ChartWords words(Texts texts) {
    return new ChartWords() {
      @Override
      public String say(org.framewright.base.Text text) {
        return texts.say(text);
      }

      @Override
      public String number(long count) {
        return texts.formats().number(count);
      }

      @Override
      public String oneDecimal(double value) {
        return texts.formats().oneDecimal(value);
      }

      @Override
      public String time(LocalTime at) {
        return texts.formats().time(at);
      }

      @Override
      public String minutes(Duration time) {
        return texts.formats().workingTime(time);
      }
    };
  }

  /** Shows a chart. */
  void show(Source chart) {
    source = Optional.of(chart);
    redraw();
  }

  private void redraw() {
    drawn = Optional.empty();
    requestLayout();
  }

  @Override
  protected void layoutChildren() {
    measure.autosize();
    var room = new Room(getWidth(), getHeight(), measure.getFont().getSize());
    if (source.isEmpty() || room.width() < room.size() || drawn.filter(room::equals).isPresent()) {
      return;
    }
    drawn = Optional.of(room);
    var chart = source.get().in(room, words);
    setAccessibleText(chart.said());
    var nodes = new ArrayList<Node>(List.of(measure));
    chart.shapes().forEach(shape -> nodes.add(node(shape, room)));
    nodes.forEach(node -> node.setManaged(false));
    getChildren().setAll(nodes);
  }

  private Node node(Chart.Shape shape, Room room) {
    return switch (shape) {
      case Chart.Box box -> box(box);
      case Chart.Line line -> {
        var drawnLine = new Line(line.x1(), line.y1(), line.x2(), line.y2());
        drawnLine.setStrokeWidth(line.width());
        yield styled(drawnLine, line.dashed(), "chart-line-" + word(line.stroke()));
      }
      case Chart.Area area -> {
        var polygon = new Polygon();
        polygon.getPoints().setAll(coordinates(area.points()));
        yield styled(
            polygon, false, "chart-" + word(area.fill()), "chart-line-" + word(area.stroke()));
      }
      case Chart.Path path -> {
        var polyline = new Polyline();
        polyline.getPoints().setAll(coordinates(path.points()));
        polyline.setStrokeWidth(path.width());
        yield styled(polyline, path.dashed(), "chart-path", "chart-line-" + word(path.stroke()));
      }
      case Chart.Words text -> text.room() < Double.MAX_VALUE ? within(text, room) : text(text);
    };
  }

  private static Node box(Chart.Box box) {
    var rectangle = new Rectangle(box.x(), box.y(), box.width(), box.height());
    return styled(
        rectangle,
        box.dashed(),
        box.fill().map(tone -> "chart-" + word(tone)).orElse("chart-outline"),
        "chart-line-ink");
  }

  private static <S extends Shape> S styled(S shape, boolean dashed, String... styles) {
    shape.getStyleClass().addAll(styles);
    if (dashed) {
      shape.getStrokeDashArray().setAll(DASH, DASH);
    }
    return shape;
  }

  private static List<Double> coordinates(List<Point> points) {
    var all = new ArrayList<Double>();
    for (var point : points) {
      all.add(point.x());
      all.add(point.y());
    }
    return all;
  }

  private Text text(Chart.Words words) {
    var text = new Text(words.text());
    var font = measure.getFont();
    boolean bold = words.bold() || font.getStyle().contains("Bold");
    text.setFont(
        Font.font(font.getFamily(), bold ? FontWeight.BOLD : FontWeight.NORMAL, words.size()));
    text.setTextOrigin(VPos.BASELINE);
    double wide = text.getLayoutBounds().getWidth();
    text.setX(
        switch (words.anchor()) {
          case START -> words.x();
          case MIDDLE -> words.x() - wide / 2;
          case END -> words.x() - wide;
        });
    text.setY(words.y());
    text.getStyleClass().add("chart-" + word(words.fill()));
    return text;
  }

  /** What people wrote, in whatever script, and cut where there is no room. */
  private static WrappedText within(Chart.Words words, Room room) {
    var text = WrappedText.of(words.text());
    text.setMostLines(1);
    text.setStyleClasses(
        "chart-words",
        words.size() < room.size() ? "chart-small" : "chart-plain",
        words.fill() == Tone.NEEDS ? "needs" : "plain");
    double high = words.size() * 1.6;
    text.resizeRelocate(words.x(), words.y() - words.size() * 1.15, words.room(), high);
    return text;
  }

  private static String word(Tone tone) {
    return tone.name().toLowerCase(Locale.ROOT);
  }
}
