package org.framewright.cli;

import java.time.LocalTime;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.day.DayHours;
import org.framewright.ui.settings.Places;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.WorkingHours;
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
      description =
          "Hours of work, such as 09:00-18:00. Where not given, those of the app's page of"
              + " settings.")
  private Optional<String> hours = Optional.empty();

  @Option(
      names = "--break",
      paramLabel = "FROM-UNTIL",
      description =
          "A break; may be given several times. Where neither hours nor a break are given, those of"
              + " the settings; with hours and no break, 13:00-14:00 if the hours go round it.")
  private List<String> breaks = new ArrayList<>();

  boolean isGiven() {
    return hours.isPresent() || !breaks.isEmpty();
  }

  /** What was given, else what is set, in the zone of this computer. */
  DayHours hours(Output output) throws CommandFailure {
    try {
      if (hours.isEmpty()) {
        var set = set(output);
        return breaks.isEmpty() ? set : new DayHours(set.from(), set.until(), breaks(), set.zone());
      }
      var from = time(hours.get(), 0);
      var until = time(hours.get(), 1);
      var pauses = breaks();
      if (breaks.isEmpty() && from.isBefore(LUNCH.from()) && until.isAfter(LUNCH.until())) {
        pauses.add(LUNCH);
      }
      return new DayHours(from, until, pauses, ZoneId.systemDefault());
    } catch (IllegalArgumentException e) {
      throw CommandFailure.badInput(e.getMessage(), "Write times as in 09:00-18:00.");
    }
  }

  private List<DayHours.Break> breaks() {
    var pauses = new ArrayList<DayHours.Break>();
    for (var one : breaks) {
      pauses.add(new DayHours.Break(time(one, 0), time(one, 1)));
    }
    return pauses;
  }

  /** Those of the settings; where these are not to be used, the usual ones, and that is told. */
  static DayHours set(Output output) {
    var file = Places.usual().preferences();
    var kept =
        WorkingHours.kept(
            Preferences.read(
                file,
                Runnable::run,
                _ -> output.err().println(file + ": the settings cannot be read.")),
            ZoneId.systemDefault());
    if (kept.fault().isPresent()) {
      output
          .err()
          .println(
              file
                  + ": the hours of work that are set cannot be used; reckoned with "
                  + kept.value().from()
                  + "-"
                  + kept.value().until()
                  + ". Correct them on the page of settings, or give --hours.");
    }
    return kept.value();
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
