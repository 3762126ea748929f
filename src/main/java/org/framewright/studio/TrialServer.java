package org.framewright.studio;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import org.framewright.base.OwnFolder;
import org.framewright.base.Text;

/**
 * A PostgreSQL server for a trial, with a prepared store. It listens on this computer only, its
 * passwords are known to nobody, and nothing is left of it.
 */
final class TrialServer implements AutoCloseable {
  private static final String OWNER = "keeper";
  private static final String STATION = "producer";
  private static final String DATABASE = "studio";

  /** Another program may take the port between finding it and starting. */
  private static final int MOST_STARTS = 3;

  private static final int PATIENCE_SECONDS = 60;

  private final ServerPrograms programs;
  private final ServerAccount account;
  private final Path folder;
  private final String password = random();
  private int port;

  private TrialServer(ServerPrograms programs, ServerAccount account, Path folder) {
    this.programs = programs;
    this.account = account;
    this.folder = folder;
  }

  /**
   * Makes and starts a server.
   *
   * @param own an empty folder that this user made; the server is below it
   * @throws StoreException if the server does not run
   */
  static TrialServer begin(ServerPrograms programs, Path own) throws IOException {
    var account = ServerAccount.of(own);
    var folder = Files.createTempDirectory(own, "server");
    var server = new TrialServer(programs, account, folder);
    try {
      server.make(own);
      server.start();
      server.prepare();
      return server;
    } catch (IOException | RuntimeException e) {
      try {
        server.close();
      } catch (IOException more) {
        e.addSuppressed(more);
      }
      throw e;
    }
  }

  private static String random() {
    var bytes = new byte[16];
    new SecureRandom().nextBytes(bytes);
    return HexFormat.of().formatHex(bytes);
  }

  private Path data() {
    return folder.resolve("data");
  }

  private void make(Path own) throws IOException {
    // Readable for this user only, as all temporary files are that Java makes.
    var secret = Files.createTempFile(folder, "secret", "");
    Files.writeString(secret, password);
    account.own(own, List.of(folder, secret));
    run(
        "initdb",
        "-D",
        data().toString(),
        "-U",
        OWNER,
        "--pwfile=" + secret,
        "--auth=scram-sha-256",
        "--encoding=UTF8",
        "--locale=C",
        "--no-sync");
    Files.delete(secret);
  }

  private void start() throws IOException {
    for (int starts = 1; ; starts++) {
      port = freePort();
      Files.writeString(
          data().resolve("postgresql.conf"),
          """

          listen_addresses = '127.0.0.1'
          port = %d
          unix_socket_directories = ''
          max_connections = 20
          shared_buffers = 16MB
          """
              .formatted(port),
          StandardOpenOption.APPEND);
      try {
        run(
            "pg_ctl",
            "start",
            "-D",
            data().toString(),
            "-l",
            folder.resolve("log").toString(),
            "-w",
            "-t",
            "" + PATIENCE_SECONDS);
        return;
      } catch (StoreException e) {
        var log = folder.resolve("log");
        if (!Files.exists(log)) {
          throw e;
        }
        if (starts == MOST_STARTS || !Files.readString(log).contains("could not bind")) {
          throw failed("pg_ctl", gist(log));
        }
        Files.delete(log);
      }
    }
  }

  private static int freePort() throws IOException {
    try (var free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }

  private void prepare() throws StoreException {
    execute("postgres", "create database " + DATABASE);
    Store.prepare(address(OWNER, DATABASE), password);
    execute(
        DATABASE,
        "create role "
            + STATION
            + " login password '"
            + password
            + "' in role framewright_station");
  }

  /** What the owner of the database does to it. */
  void execute(String database, String sql) throws StoreException {
    var address = address(OWNER, database);
    var properties = address.properties();
    properties.setProperty("password", password);
    try (var connection = DriverManager.getConnection(address.jdbc(), properties);
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw StoreException.of(e, address);
    }
  }

  /** A set told nothing for some minutes more than it did. */
  void silence(UUID job, int minutes) throws StoreException {
    execute(
        DATABASE,
        "update framewright.standing set at = at - interval '%d minutes' where job = '%s'"
            .formatted(minutes, job));
  }

  /** The store, as computers of sets open it. */
  Store store() throws StoreException {
    return Store.open(address(STATION, DATABASE), password);
  }

  private StoreAddress address(String user, String database) {
    return new StoreAddress(
        user, "127.0.0.1", port, database, new LinkedHashMap<>(Map.of("sslmode", "disable")));
  }

  private void run(String program, String... arguments) throws IOException {
    var command = new ArrayList<>(account.before());
    command.add(ServerPlaces.program(programs.folder(), program).orElseThrow().toString());
    command.addAll(List.of(arguments));
    // A file and no pipe: the server that pg_ctl starts holds on to it.
    var said = Files.createTempFile(folder.getParent(), "said", "");
    try {
      var builder = new ProcessBuilder(command).directory(folder.toFile());
      builder.redirectErrorStream(true).redirectOutput(said.toFile());
      // Settings of this user's that are meant for other servers.
      builder.environment().keySet().removeIf(name -> name.startsWith("PG"));
      builder.environment().put("LC_ALL", "C");
      var process = builder.start();
      process.getOutputStream().close();
      if (!process.waitFor(2L * PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw failed(program, "");
      }
      if (process.exitValue() != 0) {
        throw failed(program, gist(said));
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw failed(program, "");
    }
  }

  /** The line that says why something failed; the last one where none does. */
  private static String gist(Path said) throws IOException {
    var lines =
        new String(Files.readAllBytes(said), StandardCharsets.UTF_8)
            .lines()
            .map(String::strip)
            .filter(line -> !line.isEmpty())
            .toList();
    return lines.stream()
        .filter(line -> line.contains("error:") || line.contains("FATAL:"))
        .findFirst()
        .orElse(lines.isEmpty() ? "" : lines.getLast());
  }

  private StoreException failed(String program, String said) {
    return new StoreException(
        Text.of("{0} of PostgreSQL {1} failed: {2}", program, programs.version(), said),
        programs.folder().toString(),
        Text.of("Try again. If it fails again, set this PostgreSQL up anew."));
  }

  /** Ends the server and removes all of it. */
  @Override
  public void close() throws IOException {
    try {
      if (Files.exists(data().resolve("postmaster.pid"))) {
        run("pg_ctl", "stop", "-D", data().toString(), "-m", "immediate", "-w");
      }
    } finally {
      OwnFolder.remove(folder);
    }
  }
}
