package org.framewright.studio;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.UUID;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.framewright.base.Text;
import org.framewright.job.NumberedLogs;

/**
 * A PostgreSQL database that keeps the logs of many jobs. It is opened as a user who may append and
 * read, and no more. Safe for several threads.
 */
public final class Store implements AutoCloseable {
  /** The version of its tables that this program goes by. */
  static final int VERSION = 3;

  /** What the server tells about news, by the identity of the job. */
  static final String CHANNEL = "framewright";

  /** The oldest PostgreSQL that will do. */
  static final int OLDEST = 15;

  private static final int MOST_CONNECTIONS = 4;
  private static final Duration PATIENCE = Duration.ofSeconds(8);

  /** Of libraries that talk much; held, since a logger that nobody holds forgets its level. */
  private static final List<Logger> QUIET =
      List.of(
          Logger.getLogger("com.zaxxer.hikari"),
          Logger.getLogger("org.flywaydb"),
          Logger.getLogger("org.postgresql"));

  private final StoreAddress address;
  private final Properties properties;
  private final HikariDataSource pool;

  /** What is done with a connection. */
  @FunctionalInterface
  interface Work<T> {
    T with(Connection connection) throws SQLException;
  }

  private Store(StoreAddress address, Properties properties, HikariDataSource pool) {
    this.address = address;
    this.properties = properties;
    this.pool = pool;
  }

  /** Opens the store of a person's settings. */
  public static Store open(StudioSettings.Kept kept) throws StoreException {
    return open(kept.store(), kept.password());
  }

  /**
   * Opens a store, and looks whether it can be relied on.
   *
   * @throws StoreException if it is not reached, is not prepared, confirms before its disk has an
   *     event, or lets this user change what is kept
   */
  public static Store open(StoreAddress address, String password) throws StoreException {
    QUIET.forEach(logger -> logger.setLevel(Level.OFF));
    var properties = address.properties();
    properties.setProperty("password", password);
    var config = new HikariConfig();
    config.setJdbcUrl(address.jdbc());
    config.setDataSourceProperties(properties);
    config.setPoolName("store");
    config.setMaximumPoolSize(MOST_CONNECTIONS);
    config.setMinimumIdle(0);
    config.setConnectionTimeout(PATIENCE.toMillis());
    config.setInitializationFailTimeout(-1);
    config.setTransactionIsolation("TRANSACTION_READ_COMMITTED");
    // The first one is made here, so that what is wrong is told as the driver says it.
    try (var connection = DriverManager.getConnection(address.jdbc(), properties)) {
      check(connection, address);
    } catch (SQLException e) {
      throw StoreException.of(e, address);
    }
    return new Store(address, properties, new HikariDataSource(config));
  }

  private static void check(Connection connection, StoreAddress address)
      throws SQLException, StoreException {
    try (var statement = connection.createStatement();
        var row =
            statement.executeQuery(
                """
                select current_setting('server_version_num')::int / 10000,
                  current_setting('synchronous_commit'), current_setting('fsync'),
                  framewright.version(),
                  bool_or(has_table_privilege(table_, right_)),
                  has_function_privilege(
                    'framewright.append(uuid,text,bigint,bigint[],bytea[])', 'execute')
                from unnest(array['framewright.event', 'framewright.head', 'framewright.job'])
                    as t (table_),
                  unnest(array['insert', 'update', 'delete', 'truncate']) as r (right_)
                """)) {
      row.next();
      check(row, address);
    }
  }

  private static void check(ResultSet row, StoreAddress address)
      throws SQLException, StoreException {
    int server = row.getInt(1);
    if (server < OLDEST) {
      throw new StoreException(
          Text.of("this server is PostgreSQL {0}", server),
          address.toString(),
          Text.of("Take PostgreSQL {0} or newer.", OLDEST));
    }
    if (row.getString(2).equals("off") || row.getString(3).equals("off")) {
      throw new StoreException(
          Text.of("the store confirms events before they are on its disk"),
          address.toString(),
          Text.of("Let whoever keeps the server set synchronous_commit and fsync to on."));
    }
    int version = row.getInt(4);
    if (version < VERSION) {
      throw new StoreException(
          Text.of("this database is prepared for an older Framewright"),
          address.toString(),
          Text.of(
              "Let its owner prepare it: framewright studio --prepare --store {0}", address.url()));
    }
    if (version > VERSION) {
      throw new StoreException(
          Text.of("this database is prepared for a newer Framewright"),
          address.toString(),
          Text.of("Take the newer one here too."));
    }
    if (row.getBoolean(5)) {
      throw new StoreException(
          Text.of("{0} may do more in the store than append and read", address.user()),
          address.toString(),
          Text.of(
              "Take a user who has the role framewright_station and owns nothing; see"
                  + " docs/studio.md."));
    }
    if (!row.getBoolean(6)) {
      throw StoreException.of(new SQLException("", "42501"), address);
    }
  }

  /**
   * Makes the tables in a database, or brings them up to date. For its owner, who may also make
   * roles; done again it changes nothing.
   *
   * @return how many steps were taken
   */
  public static int prepare(StoreAddress address, String password) throws StoreException {
    QUIET.forEach(logger -> logger.setLevel(Level.OFF));
    var properties = address.properties();
    // As owner of large tables a step may take its time.
    properties.setProperty("socketTimeout", "0");
    properties.setProperty("password", password);
    try (var connection = DriverManager.getConnection(address.jdbc(), properties)) {
      connection.isValid(1);
    } catch (SQLException e) {
      throw StoreException.of(e, address);
    }
    try {
      return Flyway.configure(Store.class.getClassLoader())
          .dataSource(new OneByOne(address, properties))
          .schemas("framewright")
          .defaultSchema("framewright")
          .locations("classpath:org/framewright/studio/migrations")
          .load()
          .migrate()
          .migrationsExecuted;
    } catch (FlywayException e) {
      throw causeOf(e, address);
    }
  }

  private static StoreException causeOf(FlywayException failure, StoreAddress address) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLException e) {
        return e.getSQLState() != null && e.getSQLState().equals("42501")
            ? new StoreException(
                Text.of("{0} may not prepare this database", address.user()),
                address.toString(),
                Text.of(
                    "Take the user who owns the database and may make roles; see"
                        + " docs/studio.md."))
            : StoreException.of(e, address);
      }
    }
    return new StoreException(
        Text.of("the database could not be prepared: {0}", String.valueOf(failure.getMessage())),
        address.toString(),
        Text.of("Nothing was changed by the step that failed; try again."));
  }

  /** Where it is. */
  public StoreAddress address() {
    return address;
  }

  <T> T with(Work<T> work) throws StoreException {
    try (var connection = pool.getConnection()) {
      return work.with(connection);
    } catch (SQLException e) {
      throw StoreException.of(e, address);
    } catch (HikariPool.PoolInitializationException e) {
      throw StoreException.of(new SQLException("", "08001", e), address);
    }
  }

  /** A connection of its own, for whoever waits on it. */
  Connection ownConnection() throws SQLException {
    var own = new Properties();
    own.putAll(properties);
    // Whoever waits hears nothing for long.
    own.setProperty("socketTimeout", "0");
    return DriverManager.getConnection(address.jdbc(), own);
  }

  /**
   * Adds a job, if it is not there yet.
   *
   * @param convention its text in YAML
   */
  public void add(UUID job, String name, String convention) throws StoreException {
    with(
        connection -> {
          try (var statement = connection.prepareStatement("select framewright.add_job(?, ?, ?)")) {
            statement.setObject(1, job);
            statement.setString(2, name);
            statement.setString(3, convention);
            statement.execute();
            return true;
          }
        });
  }

  /** Whether the store has a job. */
  public boolean has(UUID job) throws StoreException {
    return with(
        connection -> {
          try (var statement =
              connection.prepareStatement("select 1 from framewright.job where id = ?")) {
            statement.setObject(1, job);
            try (var rows = statement.executeQuery()) {
              return rows.next();
            }
          }
        });
  }

  /**
   * A job of the store.
   *
   * @param convention its text in YAML
   */
  public record Kept(UUID id, String name, String convention) {}

  /** The jobs of this name, those that were added last first. */
  public List<Kept> named(String name) throws StoreException {
    return with(
        connection -> {
          try (var statement =
              connection.prepareStatement(
                  "select id, name, convention from framewright.job where name = ?"
                      + " order by added desc, id limit 10")) {
            statement.setString(1, name);
            var jobs = new ArrayList<Kept>();
            try (var rows = statement.executeQuery()) {
              while (rows.next()) {
                jobs.add(
                    new Kept(rows.getObject(1, UUID.class), rows.getString(2), rows.getString(3)));
              }
            }
            return jobs;
          }
        });
  }

  /** All jobs, those that were added first first. */
  public List<Kept> all() throws StoreException {
    return with(
        connection -> {
          try (var statement =
                  connection.prepareStatement(
                      "select id, name, convention from framewright.job order by added, id");
              var rows = statement.executeQuery()) {
            var jobs = new ArrayList<Kept>();
            while (rows.next()) {
              jobs.add(
                  new Kept(rows.getObject(1, UUID.class), rows.getString(2), rows.getString(3)));
            }
            return jobs;
          }
        });
  }

  /** The logs of a job. */
  public NumberedLogs logs(UUID job) {
    return new StoredLogs(this, job);
  }

  @Override
  public void close() {
    pool.close();
  }
}
