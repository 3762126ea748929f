package org.framewright.ui.settings;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.day.DayHours;
import org.framewright.day.DayHours.Break;

/**
 * The hours of work that a person set, as stretches such as {@code 09:00-18:00}: the same words as
 * the command line takes.
 */
public final class WorkingHours {
  /** So many breaks of a day are kept. */
  public static final int MOST_BREAKS = 3;

  private static final String HOURS = "hours";
  private static final String BREAKS = "hours.breaks";
  private static final Pattern STRETCH = Pattern.compile("(\\d{2}:\\d{2})-(\\d{2}:\\d{2})");
  private static final int SHOWN = 40;

  private record Stretch(LocalTime from, LocalTime until) {
    static Stretch of(Object kept) {
      var matcher = STRETCH.matcher(kept instanceof String text ? text : "");
      if (!matcher.matches()) {
        throw new IllegalArgumentException(
            PlainText.line(shortened(String.valueOf(kept))) + " is not a stretch of time");
      }
      try {
        return new Stretch(LocalTime.parse(matcher.group(1)), LocalTime.parse(matcher.group(2)));
      } catch (DateTimeException e) {
        throw new IllegalArgumentException(kept + " is not a stretch of time", e);
      }
    }

    private static String shortened(String text) {
      return text.length() > SHOWN ? text.substring(0, SHOWN) + "\u2026" : text;
    }
  }

  private WorkingHours() {}

  /** The hours that are kept; the usual ones where none are, or what is there are none. */
  public static Kept<DayHours> kept(Preferences preferences, ZoneId zone) {
    var usual = DayHours.usual(zone);
    var hours = preferences.any(HOURS);
    var breaks = preferences.any(BREAKS);
    if (hours.isEmpty() && breaks.isEmpty()) {
      return new Kept<>(usual, Optional.empty());
    }
    try {
      var day = hours.map(Stretch::of).orElseGet(() -> new Stretch(usual.from(), usual.until()));
      return new Kept<>(
          new DayHours(
              day.from(), day.until(), breaks.map(WorkingHours::breaks).orElse(List.of()), zone),
          Optional.empty());
    } catch (IllegalArgumentException e) {
      return new Kept<>(
          usual,
          Optional.of(
              TextSetting.inTheFile(
                  HOURS,
                  new Problem(
                      String.valueOf(e.getMessage()),
                      "Set the hours anew; until then they are 9 to 18 with a break at 13."))));
    }
  }

  private static List<Break> breaks(Object kept) {
    if (!(kept instanceof List<?> list) || list.size() > MOST_BREAKS) {
      throw new IllegalArgumentException("these are not at most " + MOST_BREAKS + " breaks");
    }
    return list.stream()
        .map(Stretch::of)
        .map(stretch -> new Break(stretch.from(), stretch.until()))
        .toList();
  }

  /** Keeps hours. */
  public static void keep(Preferences preferences, DayHours hours) {
    preferences.put(HOURS, hours.from() + "-" + hours.until());
    preferences.put(
        BREAKS, hours.breaks().stream().map(pause -> pause.from() + "-" + pause.until()).toList());
  }
}
