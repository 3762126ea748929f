package org.framewright.studio;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.SequencedMap;
import java.util.UUID;
import org.framewright.job.NumberedLogs;
import org.framewright.job.Receipt;
import org.framewright.job.SealedLine;

/** The logs of one job in the store. */
final class StoredLogs implements NumberedLogs {
  private static final int MOST_LINES = 1000;
  private static final long MOST_BYTES = 8 << 20;

  static final String HEADS =
      "select station, number from framewright.head where job = ? and number > 0 order by station";

  static final String READ =
      """
      select line from (
        select number, line, sum(octet_length(line)) over (order by number) as bytes
        from (
          select number, line from framewright.event
          where job = ? and station = ? and number >= ? order by number limit ?) as ahead
      ) as bounded
      where bytes <= ? or number = ? order by number
      """;

  private final Store store;
  private final UUID job;

  StoredLogs(Store store, UUID job) {
    this.store = store;
    this.job = job;
  }

  @Override
  public SequencedMap<String, Long> heads() throws IOException {
    return store.with(
        connection -> {
          try (var statement = connection.prepareStatement(HEADS)) {
            statement.setObject(1, job);
            var heads = new LinkedHashMap<String, Long>();
            try (var rows = statement.executeQuery()) {
              while (rows.next()) {
                heads.put(rows.getString(1), rows.getLong(2));
              }
            }
            return heads;
          }
        });
  }

  @Override
  public Receipt append(String writer, List<SealedLine> lines) throws IOException {
    return store.with(
        connection -> {
          try (var statement =
              connection.prepareStatement(
                  "select answer, last from framewright.append(?, ?, ?, ?, ?)")) {
            statement.setObject(1, job);
            statement.setString(2, writer);
            statement.setLong(3, lines.getFirst().number());
            statement.setArray(
                4,
                connection.createArrayOf(
                    "int8", lines.stream().map(SealedLine::millis).toArray(Long[]::new)));
            statement.setArray(
                5,
                connection.createArrayOf(
                    "bytea", lines.stream().map(SealedLine::bytes).toArray(byte[][]::new)));
            try (var row = statement.executeQuery()) {
              row.next();
              long last = row.getLong(2);
              return switch (row.getString(1)) {
                case "kept" -> new Receipt.Kept(last);
                case "had" -> new Receipt.Had(last);
                case "gap" -> new Receipt.Gap(last);
                default -> new Receipt.Clash(last);
              };
            }
          }
        });
  }

  @Override
  public List<byte[]> read(String writer, long from) throws IOException {
    return store.with(
        connection -> {
          try (var statement = connection.prepareStatement(READ)) {
            statement.setObject(1, job);
            statement.setString(2, writer);
            statement.setLong(3, from);
            statement.setInt(4, MOST_LINES);
            statement.setLong(5, MOST_BYTES);
            statement.setLong(6, from);
            var lines = new ArrayList<byte[]>();
            try (var rows = statement.executeQuery()) {
              while (rows.next()) {
                lines.add(rows.getBytes(1));
              }
            }
            return lines;
          }
        });
  }
}
