package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.framewright.job.NumberedLogs;
import org.framewright.job.Receipt;
import org.framewright.job.SealedLine;
import org.framewright.job.StoredLines;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Tag("slow")
class StoreTest {
  private final UUID job = UUID.randomUUID();
  private PlayedServer server;
  private String database;
  private Store store;
  private NumberedLogs logs;

  @BeforeEach
  void aJobInADatabase() throws Exception {
    server = PlayedServer.shared();
    database = server.database();
    store = server.store(database);
    store.add(job, "Winter", "fields: {}");
    logs = store.logs(job);
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private static List<SealedLine> lines(long from, long to) {
    return StoredLines.lines("desk", from, to);
  }

  @Test
  void theAnswerIsByTheNumberAlone() throws Exception {
    assertThat(logs.append("desk", lines(2, 3))).isEqualTo(new Receipt.Gap(0));
    assertThat(logs.append("desk", lines(1, 3))).isEqualTo(new Receipt.Kept(3));
    assertThat(logs.append("desk", lines(1, 3))).isEqualTo(new Receipt.Had(3));
    assertThat(logs.append("desk", lines(2, 2))).isEqualTo(new Receipt.Had(3));
    assertThat(logs.append("desk", lines(3, 5))).isEqualTo(new Receipt.Kept(5));
    assertThat(logs.append("desk", lines(7, 7))).isEqualTo(new Receipt.Gap(5));
    assertThat(logs.append("desk", List.of(StoredLines.line("desk", 5, "other"))))
        .isEqualTo(new Receipt.Clash(5));
    assertThat(
            logs.append(
                "desk",
                List.of(StoredLines.line("desk", 5, "other"), StoredLines.line("desk", 6, "new"))))
        .isEqualTo(new Receipt.Clash(5));
    assertThat(logs.heads()).containsOnlyKeys("desk").containsEntry("desk", 5L);
    assertThat(read("desk", 1)).isEqualTo(lines(1, 5).toString());
    assertThat(read("desk", 4)).isEqualTo(lines(4, 5).toString());
    assertThat(read("desk", 6)).isEqualTo("[]");
  }

  private String read(String writer, long from) throws Exception {
    return logs.read(writer, from).stream()
        .map(line -> new String(line, StandardCharsets.UTF_8))
        .toList()
        .toString();
  }

  @Test
  void jobsAndWritersHaveLogsOfTheirOwn() throws Exception {
    var other = UUID.randomUUID();
    store.add(other, "Summer", "fields: {}");
    logs.append("desk", lines(1, 2));
    logs.append("cart", StoredLines.lines("cart", 1, 1));
    store.logs(other).append("desk", lines(1, 1));
    assertThat(logs.heads()).containsEntry("desk", 2L).containsEntry("cart", 1L).hasSize(2);
    assertThat(store.logs(other).heads()).containsEntry("desk", 1L).hasSize(1);
    assertThat(store.has(other)).isTrue();
    assertThat(store.has(UUID.randomUUID())).isFalse();
  }

  /** Sixteen connections send the same events, in pieces that overlap. */
  @Test
  void whateverIsSentAtOnceIsKeptOnce() throws Exception {
    var runs = new ArrayList<Callable<Long>>();
    for (int thread = 0; thread < 16; thread++) {
      runs.add(
          () -> {
            long kept = 0;
            for (long from = 1; from <= 100; from += 5) {
              if (logs.append("desk", lines(from, from + 7)) instanceof Receipt.Kept) {
                kept++;
              }
            }
            return kept;
          });
    }
    long kept = 0;
    try (var threads = Executors.newFixedThreadPool(16)) {
      for (var run : threads.invokeAll(runs)) {
        kept += run.get();
      }
    }
    assertThat(kept).isEqualTo(20);
    assertThat(read("desk", 1)).isEqualTo(lines(1, 103).toString());
  }

  @Test
  void aLongLogIsReadInPieces() throws Exception {
    for (long from = 1; from <= 2400; from += 400) {
      logs.append("desk", lines(from, from + 399));
    }
    var read = new ArrayList<String>();
    while (read.size() < 2400) {
      var piece = logs.read("desk", read.size() + 1);
      assertThat(piece).hasSizeBetween(1, 1000);
      piece.forEach(line -> read.add(new String(line, StandardCharsets.UTF_8)));
    }
    assertThat(read.toString()).isEqualTo(lines(1, 2400).toString());
  }

  // Who may do what

  @ParameterizedTest
  @ValueSource(
      strings = {
        "update framewright.event set line = 'x'",
        "delete from framewright.event",
        "truncate framewright.event cascade",
        "delete from framewright.head",
        "update framewright.head set number = 0",
        "truncate framewright.head cascade",
        "delete from framewright.job",
        "update framewright.job set name = 'x'",
        "truncate framewright.job cascade"
      })
  void nothingIsChangedOrRemovedNotEvenByItsOwner(String sql) throws Exception {
    logs.append("desk", lines(1, 2));
    try (var connection = server.connect(database, PlayedServer.OWNER);
        var statement = connection.createStatement()) {
      assertThatThrownBy(() -> statement.execute(sql))
          .isInstanceOfSatisfying(
              SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo("0A000"));
    }
    assertThat(read("desk", 1)).isEqualTo(lines(1, 2).toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "insert into framewright.event values (gen_random_uuid(), 'x', 1, 1, '{}')",
        "insert into framewright.job values (gen_random_uuid(), 'x', 'x')",
        "insert into framewright.head values (gen_random_uuid(), 'x', 1)",
        "update framewright.standing set events = 0",
        "delete from framewright.standing",
        "update framewright.event set line = 'x'",
        "create table framewright.mine (x int)",
        "drop table framewright.event",
        "alter table framewright.event disable trigger all",
        "create or replace function framewright.version() returns int language sql as 'select 9'",
        "select framewright.grow()"
      })
  void aStationAppendsAndReadsAndNoMore(String sql) throws Exception {
    try (var connection = server.connect(database, PlayedServer.STATION);
        var statement = connection.createStatement()) {
      assertThatThrownBy(() -> statement.execute(sql))
          .isInstanceOfSatisfying(
              SQLException.class, e -> assertThat(e.getSQLState()).isEqualTo("42501"));
    }
  }

  @Test
  void whoMayDoMoreThanAStationIsNotLetIn() throws Exception {
    assertThatThrownBy(
            () -> Store.open(server.address(database, PlayedServer.OWNER), PlayedServer.PASSWORD))
        .hasMessageContaining("may do more in the store than append and read");
  }

  @Test
  void whoHasNotTheRoleIsToldWhatToAskFor() throws Exception {
    server.execute(
        "postgres",
        "do $$ begin if not exists (select from pg_roles where rolname = 'guest') then"
            + " create role guest login password '"
            + PlayedServer.PASSWORD
            + "'; end if; end $$");
    assertThatThrownBy(() -> Store.open(server.address(database, "guest"), PlayedServer.PASSWORD))
        .isInstanceOfSatisfying(
            StoreException.class,
            e -> assertThat(e.problem().remedy()).contains("grant framewright_station to guest"));
  }

  // What a store must be

  @Test
  void aStoreThatConfirmsBeforeItsDiskHasAnEventIsRefused() throws Exception {
    server.execute("postgres", "alter database " + database + " set synchronous_commit = off");
    assertThatThrownBy(() -> server.store(database))
        .hasMessageContaining("confirms events before they are on its disk");
  }

  /** Whatever is set later, for one user or one session. */
  @Test
  void anEventIsNotTakenWhereTheCommitDoesNotWait() throws Exception {
    server.execute(
        "postgres", "alter role anna in database " + database + " set synchronous_commit = off");
    try (var connection = server.connect(database, PlayedServer.STATION);
        var statement = connection.createStatement()) {
      var line = "'{}'::bytea";
      assertThatThrownBy(
              () ->
                  statement.execute(
                      "select framewright.append('"
                          + job
                          + "', 'desk', 1, array[1], array["
                          + line
                          + "])"))
          .hasMessageContaining("synchronous_commit is off");
    }
    assertThat(logs.heads()).isEmpty();
  }

  @Test
  void aDatabaseThatIsNotPreparedIsToldFromOneThatIsNotThere() throws Exception {
    var empty = server.emptyDatabase();
    server.execute("postgres", "grant connect on database " + empty + " to anna");
    assertThatThrownBy(() -> server.store(empty))
        .isInstanceOfSatisfying(
            StoreException.class,
            e -> assertThat(e.problem().remedy()).contains("studio --prepare --store"));
    assertThatThrownBy(() -> server.store("nothere"))
        .hasMessageContaining("the server has no database nothere");
  }

  @Test
  void aWrongPasswordIsToldAndNeverSaid() throws Exception {
    var address = server.address(database, PlayedServer.STATION);
    assertThatThrownBy(() -> Store.open(address, "wrong secret 9"))
        .hasMessageContaining("does not let anna in")
        .satisfies(
            e -> {
              for (Throwable one = e; one != null; one = one.getCause()) {
                assertThat(one.toString()).doesNotContain("wrong secret 9");
              }
            });
    assertThat(server.log()).doesNotContain("wrong secret 9").doesNotContain(PlayedServer.PASSWORD);
  }

  @Test
  void aServerThatIsNotThereIsNotReached() throws Exception {
    var nobody = StoreAddress.parse("postgresql://anna@127.0.0.1:1/studio");
    assertThatThrownBy(() -> Store.open(nobody, "x"))
        .isInstanceOfSatisfying(StoreException.class, e -> assertThat(e.reached()).isFalse());
  }

  @Test
  void preparingAgainChangesNothing() throws Exception {
    logs.append("desk", lines(1, 1));
    assertThat(Store.prepare(server.address(database, PlayedServer.OWNER), PlayedServer.PASSWORD))
        .isZero();
    assertThat(read("desk", 1)).isEqualTo(lines(1, 1).toString());
    assertThatThrownBy(
            () ->
                Store.prepare(
                    server.address(server.emptyDatabase(), PlayedServer.STATION),
                    PlayedServer.PASSWORD))
        .hasMessageContaining("anna may not prepare this database");
  }

  // Hints

  @Test
  void theServerSaysThatSomethingCame() throws Exception {
    var heard = new CountDownLatch(1);
    try (var _ =
        StoreHints.listen(
            store,
            hint -> {
              if (hint.equals(job.toString())) {
                heard.countDown();
              }
            })) {
      for (int i = 1; i < 100 && heard.getCount() > 0; i++) {
        logs.append("desk", lines(i, i)); // It may not have begun to listen yet.
        if (heard.await(100, TimeUnit.MILLISECONDS)) {
          break;
        }
      }
    }
    assertThat(heard.getCount()).isZero();
  }
}
