package org.framewright.ui.settings;

import java.time.DateTimeException;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.framewright.base.PlainText;
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

  /** What is kept is not what it should be. */
  private static final class NotKept extends Exception {
    private static final long serialVersionUID = 1;
    private final transient SettingFault fault;

    NotKept(SettingFault fault) {
      super(fault.word());
      this.fault = fault;
    }
  }

  private record Stretch(LocalTime from, LocalTime until) {
    static Stretch of(Object kept) throws NotKept {
      var matcher = STRETCH.matcher(kept instanceof String text ? text : "");
      try {
        if (matcher.matches()) {
          return new Stretch(LocalTime.parse(matcher.group(1)), LocalTime.parse(matcher.group(2)));
        }
      } catch (DateTimeException _) {
        // Such as 25:00, which is no time either.
      }
      throw new NotKept(
          new SettingFault("noHours", PlainText.line(shortened(String.valueOf(kept)))));
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
      var day =
          hours.isPresent() ? Stretch.of(hours.get()) : new Stretch(usual.from(), usual.until());
      var pauses = breaks.isPresent() ? breaks(breaks.get()) : List.<Break>of();
      return new Kept<>(new DayHours(day.from(), day.until(), pauses, zone), Optional.empty());
    } catch (NotKept e) {
      return new Kept<>(usual, Optional.of(e.fault.inTheFile(HOURS)));
    } catch (IllegalArgumentException _) {
      return new Kept<>(usual, Optional.of(new SettingFault("impossible").inTheFile(HOURS)));
    }
  }

  private static List<Break> breaks(Object kept) throws NotKept {
    if (!(kept instanceof List<?> list) || list.size() > MOST_BREAKS) {
      throw new NotKept(new SettingFault("tooManyBreaks", MOST_BREAKS));
    }
    var pauses = new ArrayList<Break>();
    for (var one : list) {
      var stretch = Stretch.of(one);
      pauses.add(new Break(stretch.from(), stretch.until()));
    }
    return pauses;
  }

  /** Keeps hours. */
  public static void keep(Preferences preferences, DayHours hours) {
    preferences.put(HOURS, hours.from() + "-" + hours.until());
    preferences.put(
        BREAKS, hours.breaks().stream().map(pause -> pause.from() + "-" + pause.until()).toList());
  }
}
