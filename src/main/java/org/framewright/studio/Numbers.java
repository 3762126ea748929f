package org.framewright.studio;

import java.io.IOException;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.IsoFields;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.function.Function;

/**
 * The numbers of all jobs, a line for each set and day, as their computers told them.
 *
 * @param lines by day, those of no day last, then by the job's name
 */
public record Numbers(List<Line> lines) {
  /**
   * One set on one day.
   *
   * @param name of its job
   * @param day nothing for what belongs to no day
   * @param frames nothing where no computer told of any
   */
  public record Line(
      UUID job,
      String name,
      Optional<LocalDate> day,
      SetupNumbers setups,
      Optional<FrameNumbers> frames) {
    /** Its week as ISO 8601 writes it, such as {@code 2026-W48}. */
    public Optional<String> week() {
      return day.map(Numbers::week);
    }
  }

  /**
   * A line, or the sum of several.
   *
   * @param of what it is about
   * @param week as ISO 8601 writes it; nothing for what belongs to no day, and for the sum of all
   * @param day nothing for what belongs to no day, and for sums of more than one
   * @param name of the job; empty for sums
   * @param sets how many jobs are in it
   */
  public record Row(
      Of of,
      Optional<String> week,
      Optional<LocalDate> day,
      String name,
      int sets,
      SetupNumbers setups,
      Optional<FrameNumbers> frames) {}

  /** What a row is about. */
  public enum Of {
    SET,
    DAY,
    WEEK,
    ALL
  }

  private static final String LINES =
      """
      select j.id, j.name, day, n.planned, coalesce(n.done, 0), coalesce(n.signed_off, 0),
        coalesce(n.pickups, 0), coalesce(n.dropped, 0), n.on_set, n.waits,
        f.frames, f.selects, f.first_taken, f.last_taken
      from (select * from framewright.numbers_setups where day between ? and ?) as n
      full join (
        select distinct on (job, day) * from framewright.numbers_frames where day between ? and ?
        order by job, day, frames desc, station) as f using (job, day)
      join framewright.job j on j.id = job
      order by day, j.name, j.id
      """;

  private static final LocalDate LAST = LocalDate.of(9999, 12, 31);

  public Numbers {
    lines = List.copyOf(lines);
  }

  /**
   * Reads them. Of frames that several computers counted, those of the one that has most of a day
   * count, since folders may be copies.
   *
   * @param from the first day
   * @param until the last day; where one of them is given, what belongs to no day is left out
   */
  public static Numbers of(Store store, Optional<LocalDate> from, Optional<LocalDate> until)
      throws IOException {
    boolean all = from.isEmpty() && until.isEmpty();
    // The driver takes these for before and after all days.
    var first = from.orElse(LocalDate.MIN);
    var last = until.orElse(all ? LocalDate.MAX : LAST);
    return new Numbers(
        store.with(
            connection -> {
              try (var statement = connection.prepareStatement(LINES)) {
                statement.setObject(1, first);
                statement.setObject(2, last);
                statement.setObject(3, first);
                statement.setObject(4, last);
                var lines = new ArrayList<Line>();
                try (var rows = statement.executeQuery()) {
                  while (rows.next()) {
                    lines.add(line(rows));
                  }
                }
                return lines;
              }
            }));
  }

  private static Line line(ResultSet row) throws SQLException {
    var day = row.getObject(3, LocalDate.class);
    return new Line(
        row.getObject(1, UUID.class),
        row.getString(2),
        day.equals(JobNumbers.NO_DAY) ? Optional.empty() : Optional.of(day),
        new SetupNumbers(
            number(row, 4),
            row.getInt(5),
            row.getInt(6),
            row.getInt(7),
            row.getInt(8),
            times(row.getArray(9)),
            times(row.getArray(10))),
        number(row, 11).isEmpty()
            ? Optional.empty()
            : Optional.of(
                new FrameNumbers(
                    row.getInt(11),
                    number(row, 12),
                    Optional.ofNullable(row.getObject(13, LocalDateTime.class)),
                    Optional.ofNullable(row.getObject(14, LocalDateTime.class)))));
  }

  private static OptionalInt number(ResultSet row, int column) throws SQLException {
    int number = row.getInt(column);
    return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(number);
  }

  private static List<Duration> times(Array seconds) throws SQLException {
    return seconds == null
        ? List.of()
        : Arrays.stream((Integer[]) seconds.getArray()).map(Duration::ofSeconds).toList();
  }

  private static String week(LocalDate day) {
    return String.format(
        Locale.ROOT,
        "%04d-W%02d",
        day.get(IsoFields.WEEK_BASED_YEAR),
        day.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR));
  }

  /**
   * All lines, each day's sum after its lines, each week's after its days, and that of all at the
   * end. Medians are those of all setups of a sum.
   */
  public List<Row> rows() {
    var rows = new ArrayList<Row>();
    for (var week : grouped(lines, Line::week)) {
      for (var day : grouped(week, Line::day)) {
        day.forEach(line -> rows.add(sum(Of.SET, List.of(line))));
        rows.add(sum(Of.DAY, day));
      }
      if (week.getFirst().day().isPresent()) {
        rows.add(sum(Of.WEEK, week));
      }
    }
    if (!lines.isEmpty()) {
      rows.add(sum(Of.ALL, lines));
    }
    return List.copyOf(rows);
  }

  /** Lines that follow each other and have something in common. */
  private static List<List<Line>> grouped(List<Line> lines, Function<Line, ?> by) {
    var groups = new ArrayList<List<Line>>();
    int from = 0;
    for (int i = 1; i <= lines.size(); i++) {
      if (i == lines.size() || !by.apply(lines.get(i)).equals(by.apply(lines.get(from)))) {
        groups.add(lines.subList(from, i));
        from = i;
      }
    }
    return groups;
  }

  private static Row sum(Of of, List<Line> lines) {
    var first = lines.getFirst();
    return new Row(
        of,
        of == Of.ALL ? Optional.empty() : first.week(),
        of == Of.SET || of == Of.DAY ? first.day() : Optional.empty(),
        of == Of.SET ? first.name() : "",
        (int) lines.stream().map(Line::job).distinct().count(),
        SetupNumbers.sum(lines.stream().map(Line::setups).toList()),
        lines.stream().flatMap(line -> line.frames().stream()).reduce(FrameNumbers::plus));
  }
}
