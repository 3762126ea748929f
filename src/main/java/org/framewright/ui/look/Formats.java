package org.framewright.ui.look;

import com.ibm.icu.number.LocalizedNumberFormatter;
import com.ibm.icu.number.NumberFormatter;
import com.ibm.icu.number.Precision;
import com.ibm.icu.text.ListFormatter;
import com.ibm.icu.util.MeasureUnit;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.TemporalAccessor;
import java.util.Collection;
import java.util.Locale;

/**
 * Dates, times, numbers, sizes and lists as a language writes them, by the data of Unicode CLDR.
 * What is part of a name, such as a date in a file's name, is not written by this.
 */
public final class Formats {
  private static final int STOPWATCH_IN_MINUTES = 10;
  private static final int SHORT_IN_MINUTES = 120;
  private static final int AN_HOUR = 60;
  private static final long KILO = 1000;

  private final Texts texts;
  private final DateTimeFormatter time;
  private final DateTimeFormatter timeToTheSecond;
  private final DateTimeFormatter day;
  private final DateTimeFormatter soon;
  private final DateTimeFormatter dayAndTime;
  private final LocalizedNumberFormatter number;
  private final LocalizedNumberFormatter oneDecimal;
  private final ListFormatter list;

  Formats(Texts texts) {
    this.texts = texts;
    var locale = texts.locale();
    this.time = DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT).withLocale(locale);
    this.timeToTheSecond = DateTimeFormatter.ofLocalizedTime(FormatStyle.MEDIUM).withLocale(locale);
    this.day = DateTimeFormatter.ofLocalizedPattern("yMMMEd").withLocale(locale);
    this.soon = DateTimeFormatter.ofLocalizedPattern("MMMdjm").withLocale(locale);
    this.dayAndTime =
        DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
            .withLocale(locale);
    this.number = NumberFormatter.withLocale(locale);
    this.oneDecimal = number.precision(Precision.maxFraction(1));
    this.list = ListFormatter.getInstance(locale);
  }

  /** A time of day: {@code 18:40}, {@code 6:40 PM}. */
  public String time(TemporalAccessor at) {
    return time.format(at);
  }

  /** A time of day with its seconds. */
  public String timeToTheSecond(TemporalAccessor at) {
    return timeToTheSecond.format(at);
  }

  /** A day with its weekday: {@code Wed, 25 Nov 2026}, {@code Mi., 25. Nov. 2026}. */
  public String day(LocalDate at) {
    return day.format(at);
  }

  /** A day of these weeks and a time of it: {@code 28 Nov, 10:00}. */
  public String soon(LocalDateTime at) {
    return soon.format(at);
  }

  /** A day and a time of it. */
  public String dayAndTime(LocalDateTime at) {
    return dayAndTime.format(at);
  }

  /** A count. */
  public String number(long count) {
    return number.format(count).toString();
  }

  /** A number with one decimal at most. */
  public String oneDecimal(double value) {
    return oneDecimal.format(value).toString();
  }

  /** What is one with the others: {@code front, back and detail}. */
  public String list(Collection<String> parts) {
    return list.format(parts);
  }

  /** A size of files, in units of thousands: {@code 4.2 GB}, {@code 4,2 Go}. */
  public String size(long bytes) {
    if (bytes < KILO * KILO) {
      return size(bytes, KILO, 0, MeasureUnit.KILOBYTE);
    }
    return bytes < KILO * KILO * KILO
        ? size(bytes, KILO * KILO, 0, MeasureUnit.MEGABYTE)
        : size(bytes, KILO * KILO * KILO, 1, MeasureUnit.GIGABYTE);
  }

  private String size(long bytes, long of, int decimals, MeasureUnit unit) {
    return number
        .unit(unit)
        .unitWidth(NumberFormatter.UnitWidth.SHORT)
        .precision(Precision.fixedFraction(decimals))
        .format((double) bytes / of)
        .toString();
  }

  /** Working time, to the minute: {@code 37 min}, {@code 2 h 5 min}. */
  public String workingTime(Duration duration) {
    long minutes = Math.round(duration.abs().toMillis() / 60_000.0);
    if (minutes < SHORT_IN_MINUTES) {
      return texts.get("time.minutes", minutes);
    }
    return minutes % AN_HOUR == 0
        ? texts.get("time.hours", minutes / AN_HOUR)
        : texts.get("time.hoursAndMinutes", minutes / AN_HOUR, minutes % AN_HOUR);
  }

  /**
   * How long something has gone on: as on a stopwatch at first, {@code 2:05}; from ten minutes on
   * to the minute, since nobody needs more, and a screen that changes every second takes from the
   * battery.
   */
  public String stopwatch(Duration span) {
    if (span.toMinutes() >= STOPWATCH_IN_MINUTES) {
      return workingTime(Duration.ofMinutes(span.toMinutes()));
    }
    return String.format(Locale.ROOT, "%d:%02d", span.toMinutes(), span.toSecondsPart());
  }

  /** How long a stopwatch that has gone on for so long still shows the same. */
  public static Duration stopwatchStays(Duration span) {
    var step =
        span.toMinutes() >= STOPWATCH_IN_MINUTES ? Duration.ofMinutes(1) : Duration.ofSeconds(1);
    return step.minusNanos(span.toNanos() % step.toNanos());
  }
}
