package org.framewright.studio;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;

/** Numbers of days and weeks in columns, as the command line prints them. */
public final class NumbersDescription {
  private static final List<String> HEADINGS =
      List.of(
          "Day",
          "Set",
          "Planned",
          "Done",
          "Signed off",
          "Pickups",
          "Dropped",
          "Frames",
          "Selects",
          "On set",
          "Wait",
          "First",
          "Last");

  /** Columns of words stand at the left, numbers and times at the right. */
  private static final int WORDS = 2;

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
  private static final DateTimeFormatter DAY_AND_TIME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT);

  private NumbersDescription() {}

  /** A line for each row; what is not known is left out. */
  public static List<String> lines(Numbers numbers) {
    if (numbers.lines().isEmpty()) {
      return List.of("No set told of a day.");
    }
    var rows = new ArrayList<List<String>>();
    rows.add(HEADINGS);
    numbers.rows().forEach(row -> rows.add(cells(row)));
    var widths = new int[HEADINGS.size()];
    for (var row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], row.get(i).length());
      }
    }
    return rows.stream().map(row -> line(row, widths)).toList();
  }

  private static String line(List<String> cells, int[] widths) {
    var line = new StringBuilder();
    for (int i = 0; i < widths.length; i++) {
      var blanks = " ".repeat(widths[i] - cells.get(i).length());
      line.append(i == 0 ? "" : "  ")
          .append(i < WORDS ? cells.get(i) + blanks : blanks + cells.get(i));
    }
    return line.toString().stripTrailing();
  }

  private static List<String> cells(Numbers.Row row) {
    var setups = row.setups();
    return List.of(
        day(row),
        row.of() == Numbers.Of.SET
            ? PlainText.line(row.name())
            : "all: " + PlainText.counted(row.sets(), "set"),
        number(setups.planned()),
        "" + setups.done(),
        "" + setups.signedOff(),
        "" + setups.pickups(),
        "" + setups.dropped(),
        row.frames().map(frames -> "" + frames.frames()).orElse(""),
        row.frames().map(frames -> number(frames.selects())).orElse(""),
        time(setups.medianOnSet()),
        time(setups.medianWait()),
        row.frames().flatMap(FrameNumbers::first).map(at -> at(at, row.day())).orElse(""),
        row.frames().flatMap(FrameNumbers::last).map(at -> at(at, row.day())).orElse(""));
  }

  private static String day(Numbers.Row row) {
    return switch (row.of()) {
      case SET, DAY -> row.day().map(LocalDate::toString).orElse("no day");
      case WEEK -> row.week().orElse("");
      case ALL -> "in all";
    };
  }

  private static String number(OptionalInt number) {
    return number.isPresent() ? "" + number.getAsInt() : "";
  }

  private static String time(Optional<Duration> time) {
    return time.map(Durations::words).orElse("");
  }

  private static String at(LocalDateTime time, Optional<LocalDate> day) {
    return time.format(day.isPresent() ? TIME : DAY_AND_TIME);
  }
}
