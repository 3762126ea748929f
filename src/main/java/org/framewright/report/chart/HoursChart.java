package org.framewright.report.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.report.chart.Chart.Anchor;
import org.framewright.report.chart.Chart.Drawing;
import org.framewright.report.chart.Chart.Tone;

/**
 * How many setups were finished in each hour of a day, how many an hour it takes from now on, and
 * how many it will be at the pace of late.
 *
 * @param finished when each was
 * @param hours the hours of work
 * @param needed setups an hour that it takes to be done with this day's; none on other days
 * @param ahead what the pace of late gives; none on other days and where it is too early to tell
 */
public record HoursChart(
    List<LocalTime> finished, DayHours hours, Optional<Double> needed, Optional<Ahead> ahead) {
  /** A takt below this is no plan any more. */
  private static final Duration SHORTEST = Duration.ofMinutes(3);

  /** More labels than these have no room. */
  private static final int MOST_LABELS = 10;

  public HoursChart {
    finished = List.copyOf(finished);
  }

  /**
   * What is still to come.
   *
   * @param now from when on
   * @param each how long a setup takes
   * @param left how many there are
   */
  public record Ahead(Instant now, Duration each, int left) {}

  /**
   * Of a day.
   *
   * @param today whether that day is the summary's own
   */
  public static HoursChart of(DaySummary summary, List<LocalTime> finished, boolean today) {
    if (!today) {
      return new HoursChart(finished, summary.hours(), Optional.empty(), Optional.empty());
    }
    var left = summary.today().filter(one -> one.setups() > 0).orElse(summary.all());
    return new HoursChart(
        finished,
        summary.hours(),
        summary
            .today()
            .flatMap(one -> one.takt())
            .filter(takt -> takt.compareTo(SHORTEST) > 0)
            .map(takt -> 3600.0 / takt.toSeconds()),
        summary
            .pace()
            .recent()
            .filter(each -> each.compareTo(Duration.ZERO) > 0 && left.setups() > 0)
            .map(each -> new Ahead(summary.at(), each, left.setups())));
  }

  /** Drawn in some room. */
  public Chart in(Room room, ChartWords words) {
    int from = hours.from().getHour();
    int until = (int) Math.ceil(hours.until().toSecondOfDay() / 3600.0);
    for (var time : finished) {
      from = Math.min(from, time.getHour());
      until = Math.max(until, time.getHour() + 1);
    }
    var counts = new int[until - from];
    for (var time : finished) {
      counts[time.getHour() - from]++;
    }
    return draw(room, words, from, counts, ahead(from, counts.length));
  }

  /** How many setups each hour will bring, until none is left. */
  private double[] ahead(int from, int length) {
    var coming = new double[length];
    if (ahead.isEmpty()) {
      return coming;
    }
    var now = ahead.get().now();
    var day = LocalDate.ofInstant(now, hours.zone());
    double left = ahead.get().left();
    for (int i = 0; i < length && left > 0; i++) {
      var begin = day.atTime(from + i, 0).atZone(hours.zone()).toInstant();
      var end = begin.plus(Duration.ofHours(1));
      var worked = hours.between(begin.isBefore(now) ? now : begin, end);
      coming[i] = Math.min(left, (double) worked.toMillis() / ahead.get().each().toMillis());
      left -= coming[i];
    }
    return coming;
  }

  private Chart draw(Room room, ChartWords words, int from, int[] counts, double[] coming) {
    double size = room.size();
    double small = size * 0.87;
    double side = size / 3;
    double base = room.height() - 2 * size;
    double top = size * 1.7;
    var drawing = new Drawing(room.width());
    double most = needed.orElse(1.0);
    int busiest = 0;
    for (int i = 0; i < counts.length; i++) {
      most = Math.max(most, counts[i] + coming[i]);
      busiest = counts[i] > counts[busiest] ? i : busiest;
    }
    double step = (room.width() - 2 * side) / counts.length;
    for (int i = 0; i < counts.length; i++) {
      double high = counts[i] / most * (base - top);
      double x = side + i * step;
      if (coming[i] > 0.05) {
        double more = coming[i] / most * (base - top);
        drawing.outline(x + step * 0.14, base - high - more, step * 0.72, more);
      }
      if (counts[i] > 0) {
        drawing.box(x + step * 0.14, base - high, step * 0.72, high, Tone.GREY);
        boolean inside = high > size * 1.4;
        drawing.bold(
            x + step / 2,
            inside ? base - high + size * 1.13 : base - high - size * 0.3,
            words.number(counts[i]),
            size,
            Anchor.MIDDLE,
            Tone.INK);
      }
      if (counts.length <= MOST_LABELS || i % 2 == 0) {
        drawing.words(
            x + step * 0.14,
            base + size * 1.27,
            Integer.toString((from + i) % 24),
            small,
            Anchor.START);
      }
    }
    drawing.line(side, base, room.width() - side, base, Tone.INK, size / 15);
    if (needed.isPresent()) {
      double y = base - needed.get() / most * (base - top);
      drawing.dashes(side, y, room.width() - side, y, size * 0.08);
      drawing.words(
          room.width() - side,
          size * 1.1,
          words.say(Text.of("needed: {0} an hour", words.oneDecimal(needed.get()))),
          small,
          Anchor.END);
    }
    return drawing.said(room.height(), said(words, from, counts[busiest], busiest));
  }

  private String said(ChartWords words, int from, int most, int busiest) {
    var said =
        finished.isEmpty()
            ? words.say(Text.of("No setup was finished on this day."))
            : words.say(
                Text.of(
                    "{0} finished; most of them, {1}, from {2} on.",
                    words.say(Text.counted("{0} setup", "{0} setups", finished.size())),
                    words.number(most),
                    words.time(LocalTime.of((from + busiest) % 24, 0))));
    return needed.isEmpty()
        ? said
        : words.say(
            Text.of(
                "{0} To be done on this day it takes {1} an hour from now on.",
                said, words.oneDecimal(needed.get())));
  }
}
