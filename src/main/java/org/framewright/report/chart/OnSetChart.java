package org.framewright.report.chart;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.day.TimeOnSet;
import org.framewright.job.JobState;
import org.framewright.report.chart.Chart.Anchor;
import org.framewright.report.chart.Chart.Drawing;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * How long the last setups took, a bar each; one that took far longer than the others is marked and
 * has its note beside it.
 *
 * @param bars the latest last
 */
public record OnSetChart(List<Bar> bars) {
  /** Of the width, for names and for notes. */
  private static final double NAMES = 0.36;

  private static final double NOTES = 0.2;
  private static final double MOST_ROW = 2.2;

  /** More than a chart has room for, and enough for those who hear it. */
  private static final int LONGEST = 120;

  public OnSetChart {
    bars = List.copyOf(bars);
  }

  /**
   * One setup.
   *
   * @param name its code and its title
   * @param time its working time
   * @param outlier whether that is far off the others
   * @param note what was said of it; may be empty
   */
  public record Bar(String name, Duration time, boolean outlier, String note) {}

  /** Of these times, with what the list and the log say of each setup. */
  public static OnSetChart of(List<TimeOnSet> times, ShotList list, JobState state) {
    return new OnSetChart(times.stream().map(time -> bar(time, list, state)).toList());
  }

  private static Bar bar(TimeOnSet time, ShotList list, JobState state) {
    var setup = list.setup(time.setup());
    var title = setup.map(Setup::title).orElse("");
    var note = state.of(time.setup()).reason().or(() -> setup.flatMap(Setup::note)).orElse("");
    return new Bar(
        shortened(time.setup() + " " + title), time.time(), time.outlier(), shortened(note));
  }

  private static String shortened(String words) {
    var line = PlainText.line(words.strip());
    return line.codePointCount(0, line.length()) <= LONGEST
        ? line
        : line.substring(0, line.offsetByCodePoints(0, LONGEST)) + "…";
  }

  /** How many bars there is room for. */
  public static int fitting(Room room) {
    return Math.max(1, (int) (room.height() / (room.size() * 1.55)));
  }

  /** The last of them, as many as there is room for. */
  public Chart in(Room room, ChartWords words) {
    var shown = bars.subList(Math.max(0, bars.size() - fitting(room)), bars.size());
    double size = room.size();
    double row = Math.min(room.height() / Math.max(1, shown.size()), size * MOST_ROW);
    var drawing = new Drawing(room.width());
    long longest = shown.stream().mapToLong(bar -> bar.time().toMillis()).max().orElse(0);
    double left = room.width() * NAMES;
    boolean noted = shown.stream().anyMatch(bar -> bar.outlier() && !bar.note().isEmpty());
    double figures =
        shown.stream()
                .mapToDouble(bar -> Chart.widthOf(words.minutes(bar.time()), size))
                .max()
                .orElse(0)
            + size;
    double notes = noted ? room.width() * NOTES : 0;
    double wide = Math.max(size, room.width() - left - figures - notes);
    for (int i = 0; i < shown.size(); i++) {
      var bar = shown.get(i);
      double y = i * row;
      double base = y + row / 2 + size * 0.35;
      var tone = bar.outlier() ? Tone.NEEDS : Tone.GREY;
      double length =
          longest == 0 ? 0 : Math.max(1, wide * bar.time().toMillis() / (double) longest);
      drawing.within(0, base, bar.name(), size, Tone.INK, left - size * 0.7);
      drawing.box(left, y + row * 0.22, length, row * 0.56, tone);
      var ink = bar.outlier() ? Tone.NEEDS : Tone.INK;
      drawing.bold(
          left + length + size * 0.5, base, words.minutes(bar.time()), size, Anchor.START, ink);
      if (bar.outlier()) {
        // Told apart without colour, too.
        drawing.line(left - size * 0.3, y + row * 0.1, left - size * 0.3, y + row * 0.9, ink, 3);
        drawing.within(room.width() - notes, base, bar.note(), size * 0.87, ink, notes);
      }
    }
    return drawing.said(room.height(), said(shown, words));
  }

  private static String said(List<Bar> shown, ChartWords words) {
    if (shown.isEmpty()) {
      return words.say(Text.of("No setup was shot yet."));
    }
    return shown.stream().map(bar -> said(bar, words)).collect(Collectors.joining(" "));
  }

  private static String said(Bar bar, ChartWords words) {
    var time = words.minutes(bar.time());
    if (!bar.outlier()) {
      return words.say(Text.of("{0}: {1}.", bar.name(), time));
    }
    return bar.note().isEmpty()
        ? words.say(Text.of("{0}: {1}, far more than most.", bar.name(), time))
        : words.say(Text.of("{0}: {1}, far more than most ({2}).", bar.name(), time, bar.note()));
  }
}
