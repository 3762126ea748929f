package org.framewright.studio;

import java.io.IOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * All sets of a store, those that need a person most first. It is read from one row a set and the
 * last numbers of all logs; no event is looked at, however many there are.
 *
 * @param sets in order
 */
public record Overview(List<SetRow> sets) {
  /** A job in which nothing was done for so long is over. */
  public static final Duration RECENT = Duration.ofDays(7);

  /** Sets of now are found first, so that it does not matter how many there were in all years. */
  static final String SETS =
      """
      with recent as (
        select id from framewright.job where added > now() - ? * interval '1 second'
        union
        select job from framewright.standing where at > now() - ? * interval '1 second'
        union
        select job from framewright.head
        where number > 0 and at > now() - ? * interval '1 second')
      select j.id, j.name, s.facts::text, s.station, s.at,
        greatest(0, coalesce(h.events, 0) - coalesce(s.events, 0)), h.at,
        clock_timestamp()
      from recent
      join framewright.job j on j.id = recent.id
      left join framewright.standing s on s.job = j.id
      left join lateral (
        select sum(number) as events, max(at) filter (where number > 0) as at
        from framewright.head where job = j.id) h on true
      """;

  private static final Comparator<SetRow> ORDER =
      Comparator.comparing(SetRow::need)
          .thenComparing(row -> row.now().flatMap(SetNow::waitingSince).orElse(Instant.MAX))
          .thenComparing(row -> row.now().flatMap(SetNow::finish).orElse(Instant.MAX))
          .thenComparing(SetRow::name)
          .thenComparing(SetRow::job);

  public Overview {
    sets = sets.stream().sorted(ORDER).toList();
  }

  /** The sets in which something was done within {@link #RECENT}. */
  public static Overview of(Store store) throws IOException {
    return of(store, RECENT);
  }

  /** The sets in which something was done, or which were added, within some time. */
  public static Overview of(Store store, Duration within) throws IOException {
    return new Overview(
        store.with(
            connection -> {
              try (var statement = connection.prepareStatement(SETS)) {
                for (int i = 1; i <= 3; i++) {
                  statement.setLong(i, within.toSeconds());
                }
                var sets = new ArrayList<SetRow>();
                try (var rows = statement.executeQuery()) {
                  while (rows.next()) {
                    sets.add(row(rows));
                  }
                }
                return sets;
              }
            }));
  }

  private static SetRow row(ResultSet row) throws SQLException {
    return new SetRow(
        row.getObject(1, UUID.class),
        row.getString(2),
        Optional.ofNullable(row.getString(3)).flatMap(SetNow::read),
        Optional.ofNullable(row.getString(4)),
        time(row.getTimestamp(5)),
        row.getLong(6),
        time(row.getTimestamp(7)),
        row.getTimestamp(8).toInstant());
  }

  private static Optional<Instant> time(Timestamp time) {
    return Optional.ofNullable(time).map(Timestamp::toInstant);
  }
}
