package org.framewright.report;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.framewright.base.Text;
import org.framewright.day.DayHours;
import org.framewright.day.TimeOnSet;
import org.framewright.report.chart.Chart;
import org.framewright.report.chart.Chart.Anchor;
import org.framewright.report.chart.Chart.Drawing;
import org.framewright.report.chart.Chart.Point;
import org.framewright.report.chart.Chart.Tone;
import org.framewright.report.chart.HoursChart;
import org.framewright.report.chart.OnSetChart;
import org.framewright.report.chart.Room;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/** The charts of a day: where setups stand, how many by the hour, how far and how much longer. */
final class DayCharts {
  private static final double WIDE = 880;
  private static final double HIGH = 520;
  private static final double SIZE = 30;
  private static final int MOST_DAYS = 8;

  /** Of a chart across the page. */
  private static final double FULL = 1800;

  private static final double SMALL = 28;
  private static final double ROW = 46;

  /** What stands on a page together. */
  private static final int MOST_BARS = 40;

  private final JobFacts facts;
  private final Words words;

  DayCharts(JobFacts facts, Words words) {
    this.facts = facts;
    this.words = words;
  }

  // States

  /** One bar, a part for each state, as long as it has setups. */
  Optional<Chart> states() {
    int all = facts.setups().size();
    if (all == 0) {
      return Optional.empty();
    }
    double width = FULL;
    double high = 62;
    double size = 29;
    var drawing = new Drawing(width);
    double at = 2;
    boolean second = false;
    double taken = 0;
    double takenBelow = 0;
    var said = new ArrayList<String>();
    for (var state :
        List.of(
            SetupState.SIGNED_OFF,
            SetupState.SHOT,
            SetupState.ON_SET,
            SetupState.PICKUP,
            SetupState.TO_SHOOT,
            SetupState.DROPPED)) {
      int count = facts.count(state);
      if (count == 0) {
        continue;
      }
      double wide = (width - 6) * count / all;
      drawing.box(at, 1, wide, high, fill(state));
      var number = words.number(count);
      boolean inside = Chart.widthOf(number, size + 4) < wide;
      var label = inside ? words.state(state) : number + "\u00a0" + words.state(state);
      if (inside) {
        drawing.bold(
            at + wide / 2,
            43,
            number,
            size + 4,
            Anchor.MIDDLE,
            state == SetupState.SIGNED_OFF ? Tone.GROUND : Tone.INK);
      }
      double labelWide = Chart.widthOf(label, size);
      double from = Math.max(0, Math.min(at + wide / 2 - labelWide / 2, width - labelWide));
      boolean below = from < taken;
      if (below) {
        from = Math.min(Math.max(from, takenBelow), width - labelWide);
        second = true;
        takenBelow = from + labelWide + 16;
      } else {
        taken = from + labelWide + 16;
      }
      drawing.words(from, high + (below ? 74 : 38), label, size, Anchor.START);
      said.add(words.say(Text.of("{0} {1}", words.number(count), words.state(state))));
      at += wide;
    }
    return Optional.of(
        drawing.said(
            high + (second ? 84 : 48),
            words.say(Text.of("Of {0}: {1}.", words.setups(all), String.join(", ", said)))));
  }

  private static Tone fill(SetupState state) {
    return switch (state) {
      case SIGNED_OFF -> Tone.DARK;
      case SHOT -> Tone.GREY;
      case ON_SET -> Tone.MID;
      case PICKUP -> Tone.PALE;
      case TO_SHOOT -> Tone.GROUND;
      case DROPPED -> Tone.FAINT;
    };
  }

  // Hours

  /** How many setups were finished in each hour of the report's day, and how many it takes. */
  Chart hours() {
    var zone = facts.zone();
    return HoursChart.of(
            facts.summary(),
            facts.finishedOnDay().values().stream()
                .map(time -> time.atZone(zone).toLocalTime())
                .toList(),
            facts.isToday())
        .in(new Room(WIDE, HIGH, SIZE), words);
  }

  // Time on set

  /** How long each setup took that was finished on the report's day; the last of many. */
  Optional<Chart> onSet() {
    var times = timesOnDay();
    if (times.isEmpty()) {
      return Optional.empty();
    }
    var last = times.subList(Math.max(0, times.size() - MOST_BARS), times.size());
    var room = new Room(FULL, last.size() * ROW, SMALL);
    return Optional.of(
        OnSetChart.of(last, facts.job().shotList(), facts.standing().state()).in(room, words));
  }

  private List<TimeOnSet> timesOnDay() {
    var finished = facts.finishedOnDay().keySet().stream().map(Setup::code).toList();
    return facts.onSet().stream().filter(one -> finished.contains(one.setup())).toList();
  }

  /** What the bars of {@link #onSet} are of, in words. */
  String onSetSaid() {
    var times = timesOnDay();
    int all = times.size();
    var so =
        words.say(
            times.stream().anyMatch(TimeOnSet::outlier)
                ? Text.of(
                    "Working time from one setup to the next; a black bar is far more than most"
                        + " took.")
                : Text.of("Working time from one setup to the next."));
    return all > MOST_BARS
        ? words.say(
            Text.of("{0} The last {1} of {2}.", so, words.number(MOST_BARS), words.number(all)))
        : so;
  }

  // How far, and how much longer

  /** The working days that a chart shows side by side, without the nights between them. */
  private record Days(List<LocalDate> days, DayHours hours, double width) {
    double x(Instant time) {
      var date = LocalDate.ofInstant(time, hours.zone());
      int place = -1;
      for (int i = 0; i < days.size() && !days.get(i).isAfter(date); i++) {
        place = i;
      }
      if (place < 0) {
        return 0;
      }
      double step = width / days.size();
      if (!days.get(place).equals(date)) {
        return (place + 1) * step;
      }
      var worked = hours.between(date.atStartOfDay(hours.zone()).toInstant(), time);
      return (place + Math.min(1, (double) worked.toMillis() / hours.length().toMillis())) * step;
    }
  }

  /** Setups done over the days, and when the rest is likely done. */
  Optional<Chart> progress() {
    if (facts.finished().isEmpty()) {
      return Optional.empty();
    }
    var hours = facts.summary().hours();
    var forecast = facts.summary().all();
    var now = facts.now();
    double left = 58;
    double base = HIGH - 60;
    double top = 56;
    var days = new Days(days(), hours, WIDE - left - 12);
    double all = Math.max(1, facts.wanted());
    var drawing = new Drawing(WIDE);
    double step = days.width() / days.days().size();
    for (int i = 0; i < days.days().size(); i++) {
      if (i > 0) {
        drawing.line(left + i * step, top, left + i * step, base, Tone.PALE, 1.6);
      }
      if (days.days().size() <= 5 || i % 2 == 0) {
        drawing.words(
            left + i * step + 4, base + 38, words.briefDay(days.days().get(i)), 24, Anchor.START);
      }
    }
    double full = y(all, all, base, top);
    drawing.dashes(left, full, WIDE - 12, full, 2);
    drawing.words(left - 8, full + 9, words.number(facts.wanted()), 26, Anchor.END);
    drawing.words(left - 8, base + 9, "0", 26, Anchor.END);

    double here = left + days.x(now);
    double height = y(facts.done(), all, base, top);
    boolean likely = forecast.setups() > 0 && forecast.finish().isPresent();
    if (likely && forecast.earliest().isPresent() && forecast.latest().isPresent()) {
      drawing.area(
          List.of(
              new Point(here, height),
              new Point(left + days.x(forecast.earliest().get()), full),
              new Point(left + days.x(forecast.latest().get()), full)),
          Tone.PALE,
          Tone.GREY);
    }
    if (likely) {
      drawing.path(
          List.of(new Point(here, height), new Point(left + days.x(forecast.finish().get()), full)),
          2.4,
          true);
    }
    var course = new ArrayList<Point>();
    int done = 0;
    for (var time : facts.finished().values()) {
      double x = left + days.x(time);
      course.add(new Point(x, y(done, all, base, top)));
      course.add(new Point(x, y(++done, all, base, top)));
    }
    course.addFirst(new Point(left, base));
    course.add(new Point(Math.max(here, course.getLast().x()), height));
    drawing.path(course, 4, false);
    drawing.line(left, base, WIDE - 12, base, Tone.INK, 2);
    if (facts.done() > 0 && facts.done() < all) {
      drawing.bold(
          Math.min(here, WIDE - 80) - 10,
          height - 14,
          words.number(facts.done()),
          SIZE,
          Anchor.END,
          Tone.INK);
    }
    return Optional.of(drawing.said(HIGH, said()));
  }

  private static double y(double count, double all, double base, double top) {
    return base - count / all * (base - top);
  }

  /** Those on which something was finished, today, and those until the latest likely end. */
  private List<LocalDate> days() {
    var zone = facts.zone();
    var days = new TreeSet<LocalDate>();
    facts.finished().values().forEach(time -> days.add(LocalDate.ofInstant(time, zone)));
    var forecast = facts.summary().all();
    if (forecast.setups() > 0) {
      var today = LocalDate.ofInstant(facts.now(), zone);
      days.add(today);
      var end = forecast.latest().or(forecast::finish).map(time -> LocalDate.ofInstant(time, zone));
      for (var day = today;
          end.isPresent() && !day.isAfter(end.get()) && days.size() < 2 * MOST_DAYS;
          day = day.plusDays(1)) {
        days.add(day);
      }
    }
    var all = new ArrayList<>(days);
    int from = 0;
    while (all.size() - from > MOST_DAYS && all.get(from).isBefore(facts.day())) {
      from++;
    }
    return List.copyOf(all.subList(from, Math.min(all.size(), from + 2 * MOST_DAYS)));
  }

  /** How far it is and when it is likely done, in words. */
  String said() {
    var so = words.say(Text.of("{0} of {1} are done.", facts.done(), words.setups(facts.wanted())));
    var forecast = facts.summary().all();
    if (forecast.setups() == 0) {
      return words.say(Text.of("{0} Nothing is left to shoot.", so));
    }
    if (forecast.finish().isEmpty()) {
      return words.say(Text.of("{0} It is too early to tell when the rest is done.", so));
    }
    var today = LocalDate.ofInstant(facts.now(), facts.zone());
    var end = words.near(forecast.finish().get(), today);
    if (forecast.earliest().isEmpty() || forecast.latest().isEmpty()) {
      return words.say(Text.of("{0} The rest is done at about {1}.", so, end));
    }
    var earliest = words.near(forecast.earliest().get(), today);
    var latest = words.near(forecast.latest().get(), today);
    return earliest.equals(latest)
        ? words.say(Text.of("{0} The rest is done at about {1}.", so, end))
        : words.say(
            Text.of(
                "{0} The rest is done at about {1}, likely between {2} and {3}.",
                so, end, earliest, latest));
  }
}
