package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.framewright.frames.CameraClock;

/** A day's summary in words, as the command line and the story tell it. */
public final class DayDescription {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private DayDescription() {}

  /** The whole summary, a line each. */
  public static List<String> lines(DaySummary summary) {
    var lines = new ArrayList<String>();
    lines.add(
        summary.at().atZone(summary.hours().zone()).format(DAY_AND_TIME) + "  " + states(summary));
    lines.add(
        summary.frames()
            + " frames, "
            + size(summary.space().used())
            + (summary.unassigned() > 0
                ? "; " + summary.unassigned() + " belong to no setup"
                : ""));
    summary
        .pace()
        .mean()
        .ifPresent(
            mean ->
                lines.add(
                    "Pace: "
                        + told(mean)
                        + " a setup over "
                        + summary.pace().times().size()
                        + ", lately "
                        + told(summary.pace().recent().orElseThrow())));
    summary
        .today()
        .filter(today -> today.setups() != summary.all().setups())
        .ifPresent(today -> lines.add("Today: " + told(today, summary)));
    lines.add("All: " + told(summary.all(), summary));
    lines.add(told(summary.space()));
    summary.attention().forEach(line -> lines.add("Look at: " + line));
    return List.copyOf(lines);
  }

  /** How many setups are in each state. */
  public static String states(DaySummary summary) {
    return summary.setups().entrySet().stream()
        .map(state -> state.getValue() + " " + state.getKey().label())
        .collect(Collectors.joining(", "));
  }

  private static String told(Forecast forecast, DaySummary summary) {
    if (forecast.setups() == 0) {
      return "nothing is left to shoot";
    }
    var told = new StringBuilder().append(forecast.setups()).append(" left");
    if (forecast.finish().isEmpty()) {
      return told.append("; no forecast before the first is shot").toString();
    }
    told.append(", ").append(told(forecast.work().orElseThrow())).append(" of work");
    forecast.margin().ifPresent(margin -> told.append(", give or take ").append(told(margin)));
    told.append("; done at ").append(time(forecast.finish().get(), summary));
    if (forecast.earliest().isPresent()) {
      told.append(", between ")
          .append(time(forecast.earliest().get(), summary))
          .append(" and ")
          .append(time(forecast.latest().orElseThrow(), summary));
    }
    forecast
        .takt()
        .filter(takt -> !takt.isZero())
        .ifPresent(takt -> told.append("; to be done today, ").append(told(takt)).append(" each"));
    return told.toString();
  }

  private static String told(Space space) {
    var told = new StringBuilder("Space: ").append(size(space.free())).append(" free");
    if (space.needed().isPresent()) {
      told.append("; the ")
          .append(space.planned().orElseThrow())
          .append(" frames still planned need about ")
          .append(size(space.needed().getAsLong()));
      if (!space.enough()) {
        told.append(": NOT ENOUGH, make room now");
      }
    }
    return told.toString();
  }

  /**
   * How far a body's clock is off, as {@code 12 s slow} or {@code 1 h fast}.
   *
   * @throws java.util.NoSuchElementException where that is not known
   */
  public static String clock(CameraClock clock) {
    double toAdd = clock.offsetSeconds().orElseThrow();
    long seconds = Math.round(Math.abs(toAdd));
    String by;
    if (clock.wholeHours().isPresent()) {
      by = Math.abs(clock.wholeHours().getAsInt()) + " h";
    } else {
      by = seconds < 120 ? seconds + " s" : told(Duration.ofSeconds(seconds));
    }
    return by + (toAdd < 0 ? " fast" : " slow");
  }

  private static String time(Instant at, DaySummary summary) {
    var zone = summary.hours().zone();
    boolean today = LocalDate.ofInstant(at, zone).equals(LocalDate.ofInstant(summary.at(), zone));
    return at.atZone(zone).format(today ? TIME : DAY_AND_TIME);
  }

  private static String told(Duration time) {
    long minutes = Math.round(time.toMillis() / 60_000.0);
    return minutes < 120 ? minutes + " min" : minutes / 60 + " h " + minutes % 60 + " min";
  }

  private static String size(long bytes) {
    if (bytes < 1_000_000_000) {
      return Math.ceilDiv(bytes, 1_000_000) + " MB";
    }
    return String.format(Locale.ROOT, "%.1f GB", bytes / 1e9);
  }
}
