package org.framewright.studio;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.day.DayDescription;

/** An overview in words, as the command line prints it. */
public final class OverviewDescription {
  private static final int MOST_CODES = 8;

  private OverviewDescription() {}

  /** Each set with what it needs, a line for each matter. */
  public static List<String> lines(Overview overview, ZoneId zone) {
    var lines = new ArrayList<String>();
    long needing =
        overview.sets().stream().filter(row -> row.need() != SetRow.Need.NOTHING).count();
    int sets = overview.sets().size();
    lines.add(
        sets == 0
            ? "No set was worked on lately."
            : (sets == 1 ? "1 set" : sets + " sets")
                + (needing == 0
                    ? "; none needs a person"
                    : "; " + needing + (needing == 1 ? " needs" : " need") + " a person"));
    overview.sets().forEach(row -> describe(row, zone, lines));
    return lines.stream().map(PlainText::line).toList();
  }

  private static void describe(SetRow row, ZoneId zone, List<String> lines) {
    if (row.now().isEmpty()) {
      lines.add(row.name() + "  no computer told how it stands");
      return;
    }
    var set = row.now().get();
    lines.add(row.name() + "  " + standing(set, row.asked(), zone));
    set.urgent().forEach(urgent -> lines.add("    NOW: " + urgent.english()));
    set.waitingSince()
        .ifPresent(
            since ->
                lines.add(
                    "    Waits for sign-off: "
                        + codes(set)
                        + ", since "
                        + at(since, row.asked(), zone)));
    if (set.pickups() > 0) {
      lines.add("    To be shot again: " + set.pickups());
    }
    if (set.late()) {
      lines.add("    What is planned for today will not be done today");
    }
    set.troubles().forEach(trouble -> lines.add("    Look at: " + trouble.english()));
    if (row.isSilent() || row.behind() > 0) {
      lines.add("    " + age(row, zone));
    }
  }

  private static String standing(SetNow set, Instant asked, ZoneId zone) {
    var line = new StringBuilder();
    line.append(
        set.onSet()
            .map(on -> "on set " + on.setup() + (on.title().isBlank() ? "" : " " + on.title()))
            .orElse("nothing on set"));
    line.append("; ").append(set.done()).append(" of ").append(set.planned()).append(" done");
    set.pace().ifPresent(pace -> line.append(", ").append(time(pace)).append(" a setup lately"));
    if (set.done() < set.planned()) {
      set.finish().ifPresent(finish -> line.append("; done at ").append(at(finish, asked, zone)));
      range(set, asked, zone).ifPresent(range -> line.append(", likely ").append(range));
    }
    return line.toString();
  }

  private static Optional<String> range(SetNow set, Instant asked, ZoneId zone) {
    return set.earliest()
        .flatMap(
            from ->
                set.latest()
                    .map(to -> "between " + at(from, asked, zone) + " and " + at(to, asked, zone)));
  }

  private static String codes(SetNow set) {
    int more = set.waiting().size() - MOST_CODES;
    return String.join(", ", set.waiting().stream().limit(MOST_CODES).toList())
        + (more > 0 ? " and " + more + " more" : "");
  }

  private static String age(SetRow row, ZoneId zone) {
    return row.toldBy().orElse("")
        + " told this at "
        + row.toldAt().map(told -> at(told, row.asked(), zone)).orElse("")
        + (row.behind() > 0
            ? "; " + row.behind() + (row.behind() == 1 ? " event" : " events") + " came since"
            : "");
  }

  private static String at(Instant time, Instant asked, ZoneId zone) {
    var there = time.atZone(zone);
    return DayDescription.clockTime(
        there.toLocalDateTime(), there.toLocalDate().equals(asked.atZone(zone).toLocalDate()));
  }

  private static String time(Duration time) {
    return time.compareTo(Duration.ofMinutes(2)) < 0
        ? Durations.words(time)
        : Durations.workingTime(time);
  }
}
