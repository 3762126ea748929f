package org.framewright.studio;

import java.io.IOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.framewright.job.OtherJob;
import org.framewright.shotlist.SetupState;

/** The moves of a store. */
final class StoredMoves implements MoveBook {
  private static final String MOVES =
      """
      select m.id, m.giver, g.name, m.taker, t.name, m.setup, m.code, m.asked_by, m.at
      from framewright.move m
      join framewright.job g on g.id = m.giver join framewright.job t on t.id = m.taker
      """;

  private final Store store;
  private final Map<UUID, Known> known = new HashMap<>();

  /** What was read, and of how many rows: rows are only added. */
  private record Known(long rows, List<SetupMove> moves) {}

  private record SetupOf(UUID job, String setup) {}

  StoredMoves(Store store) {
    this.store = store;
  }

  @Override
  public synchronized List<SetupMove> of(UUID job) throws IOException {
    var before = Optional.ofNullable(known.get(job));
    long rows = rows(job);
    if (before.filter(one -> one.rows() == rows).isPresent()) {
      return before.get().moves();
    }
    var read = read(MOVES + "where m.giver = ? or m.taker = ? order by m.at, m.id", job, job);
    known.put(job, new Known(rows, read));
    return read;
  }

  /** The moves that were asked for within some days, of all sets. */
  List<SetupMove> recent(int days) throws IOException {
    return read(
        MOVES + "where m.at > clock_timestamp() - ? * interval '1 day' order by m.at, m.id", days);
  }

  /** What is to be shot at a set, as one of its computers told it last. */
  List<Moves.ToShoot> toShoot(UUID job) throws IOException {
    return store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement(
                  "select setup, title from framewright.search_setup where job = ? and state = ?")) {
            statement.setObject(1, job);
            statement.setString(2, SetupState.TO_SHOOT.word());
            var setups = new ArrayList<Moves.ToShoot>();
            try (var row = statement.executeQuery()) {
              while (row.next()) {
                setups.add(new Moves.ToShoot(row.getString(1), row.getString(2)));
              }
            }
            return setups;
          }
        });
  }

  private long rows(UUID job) throws IOException {
    return store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement(
                  """
                  select (select count(*) from framewright.move where giver = ? or taker = ?)
                    + (select count(*) from framewright.move_step where giver = ? or taker = ?)
                  """)) {
            for (int i = 1; i <= 4; i++) {
              statement.setObject(i, job);
            }
            try (var row = statement.executeQuery()) {
              row.next();
              return row.getLong(1);
            }
          }
        });
  }

  private List<SetupMove> read(String query, Object... values) throws IOException {
    return store.with(
        connection -> {
          var moves = new ArrayList<SetupMove>();
          var setups = new LinkedHashMap<SetupOf, List<MoveStep>>();
          try (var statement = connection.prepareStatement(query)) {
            for (int i = 0; i < values.length; i++) {
              statement.setObject(i + 1, values[i]);
            }
            try (var row = statement.executeQuery()) {
              while (row.next()) {
                var move = move(row);
                moves.add(move);
                setups.put(new SetupOf(move.from().id(), move.key()), new ArrayList<>());
              }
            }
          }
          try (var statement =
              connection.prepareStatement(
                  """
                  select s.giver, s.setup, s.number, s.move, s.kind, s.station, s.at, s.facts
                  from framewright.move_step s
                  join unnest(?::uuid[], ?::text[]) as asked (giver, setup) using (giver, setup)
                  order by s.number
                  """)) {
            statement.setArray(
                1,
                connection.createArrayOf(
                    "uuid", setups.keySet().stream().map(SetupOf::job).toArray()));
            statement.setArray(
                2,
                connection.createArrayOf(
                    "text", setups.keySet().stream().map(SetupOf::setup).toArray()));
            try (var row = statement.executeQuery()) {
              while (row.next()) {
                setups
                    .get(new SetupOf(row.getObject(1, UUID.class), row.getString(2)))
                    .add(step(row));
              }
            }
          }
          return moves.stream()
              .map(move -> with(move, setups.get(new SetupOf(move.from().id(), move.key()))))
              .toList();
        });
  }

  private static SetupMove move(ResultSet row) throws SQLException {
    return new SetupMove(
        row.getObject(1, UUID.class),
        new OtherJob(row.getObject(2, UUID.class), row.getString(3)),
        new OtherJob(row.getObject(4, UUID.class), row.getString(5)),
        row.getString(7),
        row.getString(8),
        row.getTimestamp(9).toInstant(),
        List.of());
  }

  private static MoveStep step(ResultSet row) throws SQLException {
    return new MoveStep(
        row.getInt(3),
        row.getObject(4, UUID.class),
        MoveStep.Kind.of(row.getString(5)),
        row.getString(6),
        row.getTimestamp(7).toInstant(),
        row.getString(8));
  }

  private static SetupMove with(SetupMove move, List<MoveStep> steps) {
    return new SetupMove(
        move.id(), move.from(), move.to(), move.code(), move.by(), move.asked(), steps);
  }

  @Override
  public void ask(SetupMove move) throws IOException {
    store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.ask_move(?, ?, ?, ?, ?, ?)")) {
            statement.setObject(1, move.id());
            statement.setObject(2, move.from().id());
            statement.setObject(3, move.to().id());
            statement.setString(4, move.key());
            statement.setString(5, move.code());
            statement.setString(6, move.by());
            statement.execute();
            return true;
          }
        });
  }

  @Override
  public boolean step(SetupMove move, MoveStep.Kind kind, String station, String facts)
      throws IOException {
    return store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select framewright.step_move(?, ?, ?, ?, ?)")) {
            statement.setObject(1, move.id());
            statement.setInt(2, move.next());
            statement.setString(3, kind.word());
            statement.setString(4, station);
            statement.setString(5, facts);
            try (var row = statement.executeQuery()) {
              row.next();
              return row.getBoolean(1);
            }
          }
        });
  }
}
