package org.framewright.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * When people work on a day of the job.
 *
 * @param from the day's first moment of work
 * @param until its end
 * @param breaks within it, in order, none overlapping another
 * @param zone where the set is
 */
public record DayHours(LocalTime from, LocalTime until, List<Break> breaks, ZoneId zone) {

  /** A break, its end not counted in. */
  public record Break(LocalTime from, LocalTime until) {
    public Break {
      if (!from.isBefore(until)) {
        throw new IllegalArgumentException("A break ends after it begins: " + from + "-" + until);
      }
    }
  }

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
    var day = LocalDate.EPOCH;
    return between(at(day, from), at(day, until));
  }

  /** The working time between two instants; nothing where the second is not later. */
  public Duration between(Instant begin, Instant end) {
    var sum = Duration.ZERO;
    if (!begin.isBefore(end)) {
      return sum;
    }
    var last = LocalDate.ofInstant(end, zone);
    for (var day = LocalDate.ofInstant(begin, zone); !day.isAfter(last); day = day.plusDays(1)) {
      for (var stretch : stretches(day)) {
        var start = later(begin, stretch.from());
        var stop = stretch.until().isBefore(end) ? stretch.until() : end;
        if (start.isBefore(stop)) {
          sum = sum.plus(Duration.between(start, stop));
        }
      }
    }
    return sum;
  }

  /** When this much work is done if it begins at an instant; nights and breaks are not worked. */
  public Instant after(Instant begin, Duration work) {
    var left = work;
    for (var day = LocalDate.ofInstant(begin, zone); ; day = day.plusDays(1)) {
      for (var stretch : stretches(day)) {
        var start = later(begin, stretch.from());
        if (start.isBefore(stretch.until())) {
          var room = Duration.between(start, stretch.until());
          if (left.compareTo(room) <= 0) {
            return start.plus(left);
          }
          left = left.minus(room);
        }
      }
    }
  }

  private record Stretch(Instant from, Instant until) {}

  private List<Stretch> stretches(LocalDate day) {
    var stretches = new ArrayList<Stretch>();
    var begin = from;
    for (var pause : breaks) {
      if (pause.until().isAfter(begin) && pause.from().isBefore(until)) {
        if (begin.isBefore(pause.from())) {
          stretches.add(new Stretch(at(day, begin), at(day, pause.from())));
        }
        begin = pause.until();
      }
    }
    if (begin.isBefore(until)) {
      stretches.add(new Stretch(at(day, begin), at(day, until)));
    }
    return stretches;
  }

  private Instant at(LocalDate day, LocalTime time) {
    return day.atTime(time).atZone(zone).toInstant();
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }
}
