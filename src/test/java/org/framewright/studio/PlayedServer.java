package org.framewright.studio;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * A PostgreSQL server of a test, on a free port of this computer: the programs among the tests'
 * jars, or installed ones. It is run as root by giving root up, since it refuses to be root.
 */
public final class PlayedServer implements AutoCloseable {
  static final String OWNER = "keeper";
  static final String STATION = "anna";
  public static final String PASSWORD = "never to be seen 7";

  private static final String PACKED = "/postgres-linux-x86_64.txz";
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final AtomicInteger DATABASES = new AtomicInteger();
  private static final boolean ROOT = "root".equals(System.getProperty("user.name"));

  private final Path programs;
  private final Path root;
  private final Path data;
  private int port;
  private Process process;

  private PlayedServer(Path programs, Path root) {
    this.programs = programs;
    this.root = root;
    this.data = root.resolve("data");
  }

  /** One server for all tests that only need a database of their own. */
  private static final class Shared {
    private static final Optional<PlayedServer> SERVER = begun();

    private static Optional<PlayedServer> begun() {
      var found = programs();
      if (found.isEmpty()) {
        return Optional.empty();
      }
      try {
        var server = begin(found.getFirst());
        Runtime.getRuntime()
            .addShutdownHook(
                new Thread(
                    () -> {
                      server.kill();
                      server.clear();
                    }));
        return Optional.of(server);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  /** The server that tests share; a test is skipped where there is none. */
  public static PlayedServer shared() {
    var server = Shared.SERVER;
    assumeTrue(server.isPresent(), "PostgreSQL can not be started here");
    return server.get();
  }

  /** A server of a test's own. */
  static PlayedServer own() throws IOException {
    var found = programs();
    assumeTrue(!found.isEmpty(), "PostgreSQL can not be started here");
    return begin(found.getFirst());
  }

  /** The same, with its data below a folder that its user may look into. */
  static PlayedServer below(Path folder) throws IOException {
    var found = programs();
    assumeTrue(!found.isEmpty(), "PostgreSQL can not be started here");
    return begin(found.getFirst(), Files.createDirectory(folder.resolve("server")));
  }

  /** A server of each version that is there. */
  static List<Path> programs() {
    var found = new ArrayList<Path>();
    var given = System.getenv("FRAMEWRIGHT_POSTGRES");
    if (given != null) {
      found.add(Path.of(given));
    }
    Unpacked.PROGRAMS.ifPresent(found::add);
    try (var versions = Files.list(Path.of("/usr/lib/postgresql"))) {
      versions
          .map(version -> version.resolve("bin"))
          .sorted(Comparator.reverseOrder())
          .forEach(found::add);
    } catch (IOException e) {
      // None is installed.
    }
    found.removeIf(folder -> !Files.isExecutable(folder.resolve("initdb")));
    return found;
  }

  private static final class Unpacked {
    private static final Optional<Path> PROGRAMS = unpacked();

    private static Optional<Path> unpacked() {
      try (var packed = PlayedServer.class.getResourceAsStream(PACKED)) {
        if (packed == null) {
          return Optional.empty();
        }
        var folder = Files.createTempDirectory("postgres-programs");
        Runtime.getRuntime().addShutdownHook(new Thread(() -> remove(folder)));
        Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwxr-xr-x"));
        var tar = new ProcessBuilder("tar", "-xJf", "-", "-C", folder.toString()).start();
        try (var input = tar.getOutputStream()) {
          packed.transferTo(input);
        }
        return tar.waitFor() == 0 ? Optional.of(folder.resolve("bin")) : Optional.empty();
      } catch (IOException e) {
        return Optional.empty();
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  static PlayedServer begin(Path programs) throws IOException {
    return begin(programs, Files.createTempDirectory("postgres-data"));
  }

  private static PlayedServer begin(Path programs, Path root) throws IOException {
    var server = new PlayedServer(programs, root);
    var password = root.resolve("password");
    Files.writeString(password, PASSWORD);
    if (ROOT) {
      var user = root.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(user());
      Files.setOwner(root, user);
      Files.setOwner(password, user);
    }
    server.run(
        "initdb",
        "-D",
        server.data.toString(),
        "-U",
        OWNER,
        "--pwfile=" + password,
        "-A",
        "scram-sha-256",
        "-E",
        "UTF8",
        "--locale=C",
        "--no-sync");
    server.start();
    return server;
  }

  private static String user() {
    try (var users = Files.lines(Path.of("/etc/passwd"))) {
      return users.anyMatch(line -> line.startsWith("postgres:")) ? "postgres" : "nobody";
    } catch (IOException e) {
      return "nobody";
    }
  }

  private ProcessBuilder command(String program, String... arguments) {
    var command = new ArrayList<String>();
    if (ROOT) {
      command.addAll(List.of("setpriv", "--reuid=" + user(), "--clear-groups"));
    }
    command.add(programs.resolve(program).toString());
    command.addAll(List.of(arguments));
    var builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.directory(root.toFile());
    builder.environment().put("LC_ALL", "C");
    return builder;
  }

  private void run(String program, String... arguments) throws IOException {
    var run = command(program, arguments).start();
    var said = new String(run.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    try {
      if (run.waitFor() != 0) {
        throw new IOException(program + ": " + said);
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Starts the server on the data that it has.
   *
   * @param settings such as {@code synchronous_commit=off}
   */
  void start(String... settings) throws IOException {
    if (port == 0) {
      try (var free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
        port = free.getLocalPort();
      }
    }
    var arguments =
        new ArrayList<>(
            List.of("-D", data.toString(), "-p", "" + port, "-h", "127.0.0.1", "-k", ""));
    for (var setting : settings) {
      arguments.add("-c");
      arguments.add(setting);
    }
    var builder = command("postgres", arguments.toArray(String[]::new));
    builder.redirectOutput(ProcessBuilder.Redirect.appendTo(root.resolve("server.log").toFile()));
    process = builder.start();
    long until = System.nanoTime() + PATIENCE.toNanos();
    while (true) {
      try (var _ = connect("postgres", OWNER)) {
        return;
      } catch (SQLException e) {
        if (System.nanoTime() > until) {
          throw new IOException(Files.readString(root.resolve("server.log")), e);
        }
        pause();
        if (!process.isAlive()) {
          // One that was killed may have left a process that is just ending, and holds its memory.
          process = builder.start();
        }
      }
    }
  }

  private static void pause() {
    try {
      Thread.sleep(200);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Starts the server anew with a certificate for its address.
   *
   * @return the certificate, which is its own authority
   */
  Path startEncrypted() throws IOException {
    stop();
    var certificate = root.resolve("server.crt");
    var key = root.resolve("server.key");
    run(
        "/usr/bin/openssl",
        "req",
        "-x509",
        "-newkey",
        "rsa:2048",
        "-nodes",
        "-keyout",
        key.toString(),
        "-out",
        certificate.toString(),
        "-days",
        "2",
        "-subj",
        "/CN=127.0.0.1",
        "-addext",
        "subjectAltName=IP:127.0.0.1");
    start("ssl=on", "ssl_cert_file=" + certificate, "ssl_key_file=" + key);
    return certificate;
  }

  /** SIGKILL for all of its processes. */
  void kill() {
    var all = Stream.concat(process.descendants(), Stream.of(process.toHandle())).toList();
    process.destroyForcibly();
    all.forEach(ProcessHandle::destroyForcibly);
    // Its files are held until the last one is gone.
    all.forEach(one -> one.onExit().completeOnTimeout(one, 10, TimeUnit.SECONDS).join());
  }

  /** Its processes: one that leads the others, and one for each connection. */
  List<ProcessHandle> processes() {
    return Stream.concat(Stream.of(process.toHandle()), process.descendants()).toList();
  }

  /** How many connections of stations there are. */
  int connections() throws SQLException {
    try (var connection = connect("postgres", OWNER);
        var statement = connection.createStatement();
        var row =
            statement.executeQuery(
                "select count(*) from pg_stat_activity where usename = '" + STATION + "'")) {
      row.next();
      return row.getInt(1);
    }
  }

  /** Ends it in order, whoever is connected. */
  void stop() throws IOException {
    run("pg_ctl", "stop", "-D", data.toString(), "-m", "fast", "-w");
  }

  /** Copies the data of a stopped server. */
  void backup() throws IOException {
    copy(data, root.resolve("backup"));
  }

  /** Puts back what was copied. */
  void restore() throws IOException {
    remove(data);
    copy(root.resolve("backup"), data);
  }

  private static void copy(Path from, Path to) throws IOException {
    var cp = new ProcessBuilder("cp", "-a", from.toString(), to.toString()).start();
    try {
      if (cp.waitFor() != 0) {
        throw new IOException("cp " + from);
      }
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A connection past the store, as any user. */
  Connection connect(String database, String user) throws SQLException {
    var properties = new Properties();
    properties.setProperty("user", user);
    properties.setProperty("password", PASSWORD);
    return DriverManager.getConnection(
        "jdbc:postgresql://127.0.0.1:" + port + "/" + database, properties);
  }

  /** What the owner of a database does to it. */
  void execute(String database, String sql) throws SQLException {
    try (var connection = connect(database, OWNER);
        var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }

  /** Changes a setting of the server while it runs, for those too who are connected. */
  void set(String name, String value) throws SQLException {
    execute("postgres", "alter system set " + name + " = " + value);
    execute("postgres", "select pg_reload_conf()");
  }

  /**
   * Lets the store's function confirm what is not on the disk, which it refuses. A test that is to
   * fail needs one that does not.
   */
  void letItNotWait(String database) throws SQLException {
    execute(
        database,
        """
        do $do$ begin
          execute replace(
            pg_get_functiondef('framewright.append(uuid,text,bigint,bigint[],bytea[])'::regprocedure),
            $$current_setting('synchronous_commit') = 'off'$$, 'false');
        end $do$
        """);
  }

  /** A new database without tables. */
  String emptyDatabase() throws SQLException {
    var name = "studio" + DATABASES.incrementAndGet();
    execute("postgres", "create database " + name);
    return name;
  }

  /** A new database that is prepared, with a user who may append and read. */
  public String database() throws SQLException, IOException {
    var name = emptyDatabase();
    Store.prepare(address(name, OWNER), PASSWORD);
    execute(
        "postgres",
        "do $$ begin if not exists (select from pg_roles where rolname = '"
            + STATION
            + "') then create role "
            + STATION
            + " login password '"
            + PASSWORD
            + "' in role framewright_station; end if; end $$");
    return name;
  }

  StoreAddress address(String database, String user) throws StoreException {
    return StoreAddress.parse("postgresql://" + user + "@127.0.0.1:" + port + "/" + database);
  }

  /** A database, opened as a station does. */
  public Store store(String database) throws StoreException {
    return Store.open(address(database, STATION), PASSWORD);
  }

  /** Keeps a database of this server as the store that a computer goes by. */
  public void keep(StudioSettings settings, String database) throws IOException {
    settings.keep(address(database, STATION), PASSWORD);
  }

  String log() throws IOException {
    return Files.readString(root.resolve("server.log"));
  }

  private void clear() {
    remove(root);
  }

  private static void remove(Path folder) {
    try {
      new ProcessBuilder("rm", "-rf", folder.toString())
          .redirectError(ProcessBuilder.Redirect.DISCARD)
          .start()
          .waitFor();
    } catch (IOException | InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public void close() {
    kill();
    clear();
  }
}
