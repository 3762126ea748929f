package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * When people work on a day of the job. Nothing is reckoned over more than {@link #MOST_DAYS} days,
 * so that a clock that was set wrongly costs no time.
 *
 * @param from the day's first moment of work
 * @param until its end
 * @param breaks within it, in order, none overlapping another
 * @param zone where the set is
 */
public record DayHours(LocalTime from, LocalTime until, List<Break> breaks, ZoneId zone) {
  /** A year; no setup takes longer, and no forecast beyond it is worth a word. */
  public static final int MOST_DAYS = 366;

  private static final Instant FIRST = Instant.parse("0001-01-01T00:00:00Z");
  private static final Instant LAST = Instant.parse("9999-01-01T00:00:00Z");

  /** A break, its end not counted in. */
  public record Break(LocalTime from, LocalTime until) {
    public Break {
      if (!from.isBefore(until)) {
        throw new IllegalArgumentException("A break ends after it begins: " + from + "-" + until);
      }
    }
  }

  /**
   * @throws IllegalArgumentException where the day does not end after it begins, two breaks
   *     overlap, or the breaks leave no time to work; the message says so in words
   */
  public DayHours {
    if (!from.isBefore(until)) {
      throw new IllegalArgumentException("A day ends after it begins: " + from + "-" + until);
    }
    breaks = breaks.stream().sorted(Comparator.comparing(Break::from)).toList();
    for (int i = 1; i < breaks.size(); i++) {
      if (breaks.get(i).from().isBefore(breaks.get(i - 1).until())) {
        throw new IllegalArgumentException("Two breaks overlap at " + breaks.get(i).from());
      }
    }
    if (stretches(from, until, breaks).isEmpty()) {
      throw new IllegalArgumentException(
          "The breaks leave no time to work between " + from + " and " + until);
    }
  }

  /** Nine to six with an hour at one: 480 minutes. Common practice, no source. */
  public static DayHours usual(ZoneId zone) {
    return new DayHours(
        LocalTime.of(9, 0),
        LocalTime.of(18, 0),
        List.of(new Break(LocalTime.of(13, 0), LocalTime.of(14, 0))),
        zone);
  }

  /** The working time of a whole day. */
  public Duration length() {
    return stretches(from, until, breaks).stream()
        .map(stretch -> Duration.between(stretch.from(), stretch.until()))
        .reduce(Duration.ZERO, Duration::plus);
  }

  /**
   * The working time between two instants, of a longer stretch that of its first {@link #MOST_DAYS}
   * days; nothing where the second is not later.
   */
  public Duration between(Instant begin, Instant end) {
    var start = within(begin);
    var stop = within(end);
    var sum = Duration.ZERO;
    if (!start.isBefore(stop)) {
      return sum;
    }
    var first = LocalDate.ofInstant(start, zone);
    var last = earlier(LocalDate.ofInstant(stop, zone), first.plusDays(MOST_DAYS - 1));
    for (var day = first; !day.isAfter(last); day = day.plusDays(1)) {
      for (var stretch : on(day)) {
        var from = later(start, stretch.from());
        var until = stretch.until().isBefore(stop) ? stretch.until() : stop;
        if (from.isBefore(until)) {
          sum = sum.plus(Duration.between(from, until));
        }
      }
    }
    return sum;
  }

  /**
   * When this much work is done if it begins at an instant; nights and breaks are not worked. None
   * if that takes more than {@link #MOST_DAYS} days.
   */
  public Optional<Instant> after(Instant begin, Duration work) {
    var start = within(begin);
    var left = work;
    var first = LocalDate.ofInstant(start, zone);
    for (int i = 0; i < MOST_DAYS; i++) {
      for (var stretch : on(first.plusDays(i))) {
        var from = later(start, stretch.from());
        if (from.isBefore(stretch.until())) {
          var room = Duration.between(from, stretch.until());
          if (left.compareTo(room) <= 0) {
            return Optional.of(from.plus(left));
          }
          left = left.minus(room);
        }
      }
    }
    return Optional.empty();
  }

  /** An instant of the years 1 to 9998: what lies outside becomes the first or the last of them. */
  static Instant within(Instant time) {
    return time.isBefore(FIRST) ? FIRST : time.isAfter(LAST) ? LAST : time;
  }

  /** Whether two instants are of one day where the set is. */
  boolean isOneDay(Instant one, Instant other) {
    return LocalDate.ofInstant(within(one), zone).equals(LocalDate.ofInstant(within(other), zone));
  }

  private record Stretch<T>(T from, T until) {}

  private List<Stretch<Instant>> on(LocalDate day) {
    return stretches(from, until, breaks).stream()
        .map(stretch -> new Stretch<>(at(day, stretch.from()), at(day, stretch.until())))
        .toList();
  }

  private static List<Stretch<LocalTime>> stretches(
      LocalTime from, LocalTime until, List<Break> breaks) {
    var stretches = new ArrayList<Stretch<LocalTime>>();
    var begin = from;
    for (var pause : breaks) {
      if (pause.until().isAfter(begin) && pause.from().isBefore(until)) {
        if (begin.isBefore(pause.from())) {
          stretches.add(new Stretch<>(begin, pause.from()));
        }
        begin = pause.until();
      }
    }
    if (begin.isBefore(until)) {
      stretches.add(new Stretch<>(begin, until));
    }
    return stretches;
  }

  /**
   * The moment of a local time. Where clocks are put forward some are left out: they all become the
   * moment at which that happens, so that nothing between them counts.
   */
  private Instant at(LocalDate day, LocalTime time) {
    var local = day.atTime(time);
    var change = zone.getRules().getTransition(local);
    return change != null && change.isGap() ? change.getInstant() : local.atZone(zone).toInstant();
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private static LocalDate earlier(LocalDate one, LocalDate other) {
    return one.isBefore(other) ? one : other;
  }
}
