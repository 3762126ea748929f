package org.framewright.report;

import com.ibm.icu.number.LocalizedNumberFormatter;
import com.ibm.icu.number.NumberFormatter;
import com.ibm.icu.number.Precision;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.TemporalAccessor;
import java.util.Locale;
import org.framewright.base.CoreTexts;
import org.framewright.base.Durations;
import org.framewright.base.Text;
import org.framewright.report.chart.ChartWords;
import org.framewright.shotlist.SetupState;

/** The words of a report, and its dates, times and numbers as the language writes them. */
final class Words implements ChartWords {
  /** English of this country where none says how dates are written: day first, 24 hours. */
  private static final String COUNTRY = "GB";

  private final CoreTexts texts;
  private final ZoneId zone;
  private final DateTimeFormatter time;
  private final DateTimeFormatter day;
  private final DateTimeFormatter briefDay;
  private final DateTimeFormatter dayAndTime;
  private final LocalizedNumberFormatter number;
  private final LocalizedNumberFormatter oneDecimal;

  Words(Locale language, ZoneId zone) {
    this.texts =
        CoreTexts.in(
            language.getCountry().isEmpty() && language.getLanguage().equals("en")
                ? new Locale.Builder().setLanguage("en").setRegion(COUNTRY).build()
                : language);
    this.zone = zone;
    var locale = texts.locale();
    time = DateTimeFormatter.ofLocalizedTime(FormatStyle.SHORT).withLocale(locale);
    day = DateTimeFormatter.ofLocalizedPattern("yMMMMEEEEd").withLocale(locale);
    briefDay = DateTimeFormatter.ofLocalizedPattern("MMMEd").withLocale(locale);
    dayAndTime =
        DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT)
            .withLocale(locale);
    number = NumberFormatter.withLocale(locale);
    oneDecimal = number.precision(Precision.maxFraction(1));
  }

  Locale locale() {
    return texts.locale();
  }

  @Override
  public String say(Text text) {
    return texts.say(text);
  }

  /** A time of day at the place of the shoot. */
  String time(Instant at) {
    return time(at.atZone(zone));
  }

  String time(TemporalAccessor at) {
    return time.format(at).replace('\u202f', '\u00a0');
  }

  @Override
  public String time(LocalTime at) {
    return time((TemporalAccessor) at);
  }

  /** A day in full. */
  String day(LocalDate at) {
    return day.format(at);
  }

  /** A day of these weeks. */
  String briefDay(LocalDate at) {
    return briefDay.format(at);
  }

  /** A time of a day, with the day where it is another one than that. */
  String near(Instant at, LocalDate today) {
    var then = at.atZone(zone);
    return then.toLocalDate().equals(today)
        ? time(at)
        : say(Text.of("{0}, {1}", briefDay(then.toLocalDate()), time(at)));
  }

  String dayAndTime(Instant at) {
    return dayAndTime.format(at.atZone(zone)).replace('\u202f', '\u00a0');
  }

  @Override
  public String number(long count) {
    return number.format(count).toString();
  }

  @Override
  public String oneDecimal(double value) {
    return oneDecimal.format(value).toString();
  }

  /** Working time: {@code 37 min}, with a space at which no line ends. */
  @Override
  public String minutes(Duration time) {
    return Durations.workingTime(time).replace(' ', '\u00a0');
  }

  String state(SetupState state) {
    return say(stateText(state));
  }

  private static Text stateText(SetupState state) {
    return switch (state) {
      case TO_SHOOT -> Text.of("to shoot");
      case ON_SET -> Text.of("on set");
      case SHOT -> Text.of("shot");
      case SIGNED_OFF -> Text.of("signed off");
      case PICKUP -> Text.of("pickup");
      case DROPPED -> Text.of("dropped");
    };
  }

  String frames(int count) {
    return say(Text.counted("{0} frame", "{0} frames", count));
  }

  String setups(int count) {
    return say(Text.counted("{0} setup", "{0} setups", count));
  }
}
