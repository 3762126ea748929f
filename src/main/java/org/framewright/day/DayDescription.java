package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.framewright.base.ByteSizes;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.base.Text;

/** A day's summary in words, as the command line and the demo print it. */
public final class DayDescription {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private static final Duration SECONDS = Duration.ofSeconds(8);
  private static final int FEWEST_FRAMES = 30;
  private static final int MOST_KINDS = 6;
  private static final Duration FIRST_IN_MINUTES = Duration.ofMinutes(2);

  private DayDescription() {}

  /** The whole summary, a line each. */
  public static List<String> lines(DaySummary summary) {
    var lines = new ArrayList<String>();
    lines.add(
        summary.at().atZone(summary.hours().zone()).format(DAY_AND_TIME) + "  " + states(summary));
    lines.add(
        summary.frames()
            + " frames, "
            + ByteSizes.large(summary.space().used())
            + (summary.unassigned() > 0
                ? "; " + summary.unassigned() + " belong to no setup"
                : ""));
    lines.add("Pace: " + pace(summary));
    summary
        .today()
        .filter(today -> today.setups() != summary.all().setups())
        .ifPresent(today -> lines.add("Today: " + forecast(today, summary)));
    lines.add("All: " + forecast(summary.all(), summary));
    kinds(summary).ifPresent(lines::add);
    lines.add(space(summary.space()));
    seconds(summary).ifPresent(lines::add);
    summary.attention().forEach(line -> lines.add("Look at: " + line.english()));
    return List.copyOf(lines);
  }

  /** The same with how long disks and battery last, and what another order of the rest saves. */
  public static List<String> lines(DaySummary summary, Supplies supplies, OrderOfWork order) {
    var lines = new ArrayList<>(lines(summary));
    int look = summary.attention().size();
    var more = new ArrayList<String>();
    if (!supplies.speed().isEmpty()) {
      more.add(
          supplies.speed().stream()
              .map(Text::english)
              .collect(Collectors.joining("; ", "Speed: ", "")));
    }
    supplies.power().ifPresent(power -> more.add("Power: " + power.english()));
    order
        .gain()
        .ifPresent(
            gain ->
                more.add(
                    "Order: " + gain.english() + "; see: framewright list JOB --propose-order"));
    lines.addAll(lines.size() - look, more);
    return List.copyOf(lines);
  }

  private static String pace(DaySummary summary) {
    var pace = summary.pace();
    if (pace.tooEarly()) {
      var hours = summary.hours();
      return "too early to tell"
          + (pace.times().isEmpty()
              ? ""
              : "; what was shot took next to no time between "
                  + hours.from().format(TIME)
                  + " and "
                  + hours.until().format(TIME));
    }
    return time(pace.mean().orElseThrow())
        + " a setup over "
        + pace.times().size()
        + ", lately "
        + time(pace.recent().orElseThrow());
  }

  /** What each kind costs; nothing is said of one kind only. */
  private static Optional<String> kinds(DaySummary summary) {
    if (summary.kinds().size() < 2) {
      return Optional.empty();
    }
    return Optional.of(
        summary.kinds().stream()
            .limit(MOST_KINDS)
            .map(
                kind ->
                    PlainText.line(kind.kind())
                        + " "
                        + kind.mean()
                            .map(mean -> time(mean) + " a setup over " + kind.shot())
                            .orElse("not shot yet")
                        + (kind.left() > 0 ? ", " + kind.left() + " left" : ""))
            .collect(Collectors.joining("; ", "Kinds: ", "")));
  }

  /** What some seconds more a frame cost; that is easily underrated. */
  private static Optional<String> seconds(DaySummary summary) {
    var planned = summary.space().planned().orElse(0);
    return planned < FEWEST_FRAMES
        ? Optional.empty()
        : Optional.of(
            "Each frame %d s longer: %s more for the %d that are still planned"
                .formatted(SECONDS.toSeconds(), time(SECONDS.multipliedBy(planned)), planned));
  }

  /** How many setups are in each state. */
  public static String states(DaySummary summary) {
    return summary.setups().entrySet().stream()
        .map(state -> state.getValue() + " " + state.getKey().label())
        .collect(Collectors.joining(", "));
  }

  private static String forecast(Forecast forecast, DaySummary summary) {
    if (forecast.setups() == 0) {
      return "nothing is left to shoot";
    }
    var line = new StringBuilder().append(forecast.setups()).append(" left");
    forecast.work().ifPresent(work -> line.append(", ").append(time(work)).append(" of work"));
    forecast.noForecast().ifPresent(why -> line.append("; ").append(why));
    forecast
        .finish()
        .ifPresent(finish -> line.append("; done at ").append(clockTime(finish, summary)));
    if (forecast.earliest().isPresent() && forecast.latest().isPresent()) {
      var earliest = clockTime(forecast.earliest().get(), summary);
      var latest = clockTime(forecast.latest().get(), summary);
      line.append(earliest.equals(latest) ? "" : ", likely between " + earliest + " and " + latest);
    }
    forecast.whyNoRange().ifPresent(why -> line.append("; ").append(why.english()));
    if (forecast.work().isPresent()) {
      forecast
          .takt()
          .filter(takt -> !takt.isZero())
          .ifPresent(
              takt -> line.append("; to be done today, ").append(time(takt)).append(" each"));
    }
    return line.toString();
  }

  private static String space(Space space) {
    var line = new StringBuilder("Space: ").append(ByteSizes.large(space.free())).append(" free");
    if (space.needed().isPresent()) {
      line.append("; the ")
          .append(space.planned().orElseThrow())
          .append(" frames still planned need about ")
          .append(ByteSizes.large(space.needed().getAsLong()));
      if (!space.enough()) {
        line.append(": NOT ENOUGH, make room now");
      }
    }
    return line.toString();
  }

  private static String clockTime(Instant at, DaySummary summary) {
    var zone = summary.hours().zone();
    boolean today = LocalDate.ofInstant(at, zone).equals(LocalDate.ofInstant(summary.at(), zone));
    return clockTime(LocalDateTime.ofInstant(at, zone), today);
  }

  /** {@code 16:20} on this day, {@code 2026-11-24 10:00} on another. */
  public static String clockTime(LocalDateTime at, boolean today) {
    return at.format(today ? TIME : DAY_AND_TIME);
  }

  private static String time(Duration working) {
    return working.compareTo(FIRST_IN_MINUTES) < 0
        ? Durations.words(working)
        : Durations.workingTime(working);
  }
}
