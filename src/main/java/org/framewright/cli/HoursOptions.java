package org.framewright.cli;

import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.framewright.day.DayHours;
import picocli.CommandLine.Option;

/** Hours of work, as options of a command. */
final class HoursOptions {
  /** Common practice, no source. */
  private static final DayHours.Break LUNCH =
      new DayHours.Break(LocalTime.of(13, 0), LocalTime.of(14, 0));

  private static final int SHOWN = 40;

  @Option(
      names = "--hours",
      paramLabel = "FROM-UNTIL",
      defaultValue = "09:00-18:00",
      description = "Hours of work, ${DEFAULT-VALUE} where not given.")
  private String hours;

  @Option(
      names = "--break",
      paramLabel = "FROM-UNTIL",
      description =
          "A break; may be given several times. Where none is given, 13:00-14:00 if the hours"
              + " go round it.")
  private List<String> breaks = new ArrayList<>();

  /** What was given, in the zone of this computer. */
  DayHours hours() throws CommandFailure {
    try {
      var from = time(hours, 0);
      var until = time(hours, 1);
      var pauses = new ArrayList<DayHours.Break>();
      for (var one : breaks) {
        pauses.add(new DayHours.Break(time(one, 0), time(one, 1)));
      }
      if (breaks.isEmpty() && from.isBefore(LUNCH.from()) && until.isAfter(LUNCH.until())) {
        pauses.add(LUNCH);
      }
      return new DayHours(from, until, pauses, ZoneId.systemDefault());
    } catch (IllegalArgumentException e) {
      throw CommandFailure.badInput(e.getMessage(), "Write times as in 09:00-18:00.");
    }
  }

  private static LocalTime time(String text, int which) {
    var parts = List.of(text.split("-", -1));
    if (parts.size() != 2) {
      throw new IllegalArgumentException(quoted(text) + " is not a stretch of time");
    }
    try {
      return LocalTime.parse(parts.get(which).strip());
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException(quoted(parts.get(which)) + " is not a time", e);
    }
  }

  private static String quoted(String text) {
    return '"' + (text.length() > SHOWN ? text.substring(0, SHOWN) + "..." : text) + '"';
  }
}
