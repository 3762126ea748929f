package org.framewright.ui.preferences;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.framewright.base.Problem;
import org.framewright.day.DayHours;
import org.framewright.day.DayHours.Break;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.WorkingHours;

/** The hours of work as fields: they hold only together. */
final class HoursDraft {
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final Pattern WRITTEN = Pattern.compile("(\\d{1,2})(?:[:.h](\\d{2})?)?");
  private static final Pattern MINUTES = Pattern.compile("\\d{1,4}");

  private final Texts texts;
  private final ZoneId zone;
  private final Entry from;
  private final Entry until;
  private final List<Pause> breaks;

  /** A break: when it begins, and its length in minutes. */
  record Pause(Entry begin, Entry minutes) {
    boolean isEmpty() {
      return begin.written().isEmpty() && minutes.written().isEmpty();
    }
  }

  /**
   * @param commit looks at all of them
   */
  HoursDraft(Texts texts, ZoneId zone, Runnable commit) {
    this.texts = texts;
    this.zone = zone;
    this.from = new Entry("from", commit);
    this.until = new Entry("until", commit);
    this.breaks =
        IntStream.rangeClosed(1, WorkingHours.MOST_BREAKS)
            .mapToObj(
                i -> new Pause(new Entry("break-" + i, commit), new Entry("minutes-" + i, commit)))
            .toList();
  }

  Entry from() {
    return from;
  }

  Entry until() {
    return until;
  }

  List<Pause> breaks() {
    return breaks;
  }

  /** All fields. */
  Stream<Entry> entries() {
    return Stream.concat(
        Stream.of(from, until),
        breaks.stream().flatMap(pause -> Stream.of(pause.begin(), pause.minutes())));
  }

  /** Shows hours that hold. */
  void show(DayHours hours, Optional<Problem> problem) {
    entries().forEach(entry -> entry.show("", Optional.empty()));
    from.show(TIME.format(hours.from()), problem);
    until.show(TIME.format(hours.until()), Optional.empty());
    var pauses = hours.breaks();
    for (int i = 0; i < Math.min(pauses.size(), breaks.size()); i++) {
      breaks.get(i).begin().show(TIME.format(pauses.get(i).from()), Optional.empty());
      breaks
          .get(i)
          .minutes()
          .show(
              "" + Duration.between(pauses.get(i).from(), pauses.get(i).until()).toMinutes(),
              Optional.empty());
    }
  }

  /** The hours that were written; empty where they do not hold, which then stands with them. */
  Optional<DayHours> hours() {
    entries().forEach(entry -> entry.show(Optional.empty()));
    var begin = time(from);
    var end = time(until);
    var pauses = new ArrayList<Break>();
    for (var pause : breaks) {
      if (!pause.isEmpty()) {
        pause(pause, pauses).ifPresent(pauses::add);
      }
    }
    if (begin.isPresent() && end.isPresent() && !begin.get().isBefore(end.get())) {
      wrong(until, "settings.hours.order");
    }
    if (entries().anyMatch(entry -> entry.problem().get().isPresent())) {
      return Optional.empty();
    }
    try {
      return Optional.of(new DayHours(begin.orElseThrow(), end.orElseThrow(), pauses, zone));
    } catch (IllegalArgumentException _) {
      wrong(breaks.getFirst().minutes(), "settings.hours.noneLeft");
      return Optional.empty();
    }
  }

  private Optional<Break> pause(Pause pause, List<Break> before) {
    var begin = time(pause.begin());
    var minutes = minutes(pause.minutes());
    if (begin.isEmpty() || minutes.isEmpty()) {
      return Optional.empty();
    }
    if (minutes.get() >= Duration.between(begin.get(), LocalTime.MAX).toMinutes()) {
      wrong(pause.minutes(), "settings.hours.midnight");
      return Optional.empty();
    }
    var one = new Break(begin.get(), begin.get().plusMinutes(minutes.get()));
    if (before.stream()
        .anyMatch(
            other -> one.from().isBefore(other.until()) && other.from().isBefore(one.until()))) {
      wrong(pause.begin(), "settings.hours.overlap");
      return Optional.empty();
    }
    return Optional.of(one);
  }

  private Optional<LocalTime> time(Entry entry) {
    var matcher = WRITTEN.matcher(entry.written());
    if (matcher.matches()) {
      int hour = Integer.parseInt(matcher.group(1));
      int minute = matcher.group(2) == null ? 0 : Integer.parseInt(matcher.group(2));
      if (hour < 24 && minute < 60) {
        return Optional.of(LocalTime.of(hour, minute));
      }
    }
    wrong(entry, "settings.hours.noTime");
    return Optional.empty();
  }

  private Optional<Long> minutes(Entry entry) {
    if (MINUTES.matcher(entry.written()).matches()) {
      long minutes = Long.parseLong(entry.written());
      if (minutes > 0) {
        return Optional.of(minutes);
      }
    }
    wrong(entry, "settings.hours.noMinutes");
    return Optional.empty();
  }

  private void wrong(Entry entry, String key) {
    entry.show(
        Optional.of(new Problem(texts.get(key, entry.written()), texts.get(key + ".remedy"))));
  }
}
