package org.framewright.ui.day;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.framewright.report.chart.HoursChart;
import org.framewright.report.chart.OnSetChart;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.ViewWords;

/**
 * The day in words and figures.
 *
 * @param at the time of day that they are of
 * @param said what there is to say besides the figures
 * @param onSet none where nothing was shot yet
 * @param lines what to look at
 * @param noList whether there is no list yet
 */
record DayShown(
    String at,
    List<Figure> figures,
    List<String> said,
    Optional<HoursChart> hours,
    Optional<OnSetChart> onSet,
    List<LookLine> lines,
    boolean noList) {
  /** No window has room for more. */
  private static final int MOST_BARS = 30;

  DayShown {
    figures = List.copyOf(figures);
    said = List.copyOf(said);
    lines = List.copyOf(lines);
  }

  static DayShown of(DayNow now, Texts texts, ViewWords views) {
    var summary = now.summary();
    var at = summary.at().atZone(summary.hours().zone());
    boolean noList = now.view().list().setups().isEmpty();
    var figures = new DayFigures(now, texts);
    return new DayShown(
        texts.formats().time(at),
        noList ? List.of(figures.space()) : figures.all(),
        noList ? List.of() : figures.said(),
        noList ? Optional.empty() : Optional.of(HoursChart.of(summary, now.finished(), true)),
        onSet(now),
        new LookLines(now, texts, views, LocalDate.from(at)).all(),
        noList);
  }

  private static Optional<OnSetChart> onSet(DayNow now) {
    var times = now.times();
    return times.isEmpty()
        ? Optional.empty()
        : Optional.of(
            OnSetChart.of(
                times.subList(Math.max(0, times.size() - MOST_BARS), times.size()),
                now.view().list(),
                now.view().state()));
  }
}
