package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.day.DayHours;
import org.framewright.job.OtherJob;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.shotlist.Setup;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Setups that go from one set to another through a store. */
@Tag("slow")
class StoredMovesTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private PlayedServer server;
  private String database;
  private Store store;
  private OwnSet winter;
  private OwnSet summer;
  private Moves moves;

  @BeforeEach
  void twoSetsOfOneStore() throws Exception {
    server = PlayedServer.shared();
    database = server.database();
    store = server.store(database);
    winter = set("Winter", 3);
    summer = set("Summer", 2);
    moves = Moves.of(store);
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private OwnSet set(String title, int setups) throws Exception {
    clock.pass(Duration.ofSeconds(1)); // No two jobs begin at one moment.
    var parent = Files.createDirectories(root.resolve(title));
    var folder = SetScene.job(parent, title, setups, clock, "desk").folder();
    var set =
        OwnSet.open(store, folder, DayHours.usual(ZoneOffset.UTC), clock, new Station("desk"));
    set.follow();
    return set;
  }

  private static OtherJob other(OwnSet set) {
    return new OtherJob(set.id(), set.job().name());
  }

  private SetupMove ask(String code) throws Exception {
    return moves.ask(other(winter), other(summer), code, "Mara");
  }

  @Test
  void aSetupIsAskedForGivenAndTaken() throws Exception {
    var columns = new LinkedHashMap<String, String>();
    columns.put("Zip", "no");
    columns.put("Colour", "black");
    winter.job().changeSetup(new Setup("003", "Coat", List.of(), OptionalInt.of(4), columns));
    var move = ask("003");
    assertThat(MoveDescription.word(move)).isEqualTo("asked");
    winter.follow();
    assertThat(MoveDescription.word(moves.now(move))).isEqualTo("on-its-way");
    assertThat(moves.open(winter.id())).hasSize(1);
    assertThat(summer.follow().brought()).isEqualTo(1);
    assertThat(MoveDescription.word(moves.now(move))).isEqualTo("arrived");
    winter.follow();
    assertThat(winter.job().shotList().codes()).containsExactly("001", "002");
    assertThat(summer.job().shotList().codes()).containsExactly("001", "002", "003");
    assertThat(summer.job().setup("003")).isEqualTo(winter.job().moves().given("3").get().setup());
    assertThat(summer.job().setup("003").columns().keySet()).containsExactly("Zip", "Colour");
    assertThat(moves.open(winter.id())).isEmpty();
    assertThat(moves.recent(7)).isEqualTo(List.of(moves.now(move)));
    assertThat(moves.recent(7).getFirst().by()).isEqualTo("Mara");
  }

  @Test
  void whoeverSaysItFirstIsRight() throws Exception {
    var move = ask("003");
    winter.follow();
    var one = moves.now(move);
    assertThat(MoveDescription.word(moves.takeBack(one))).isEqualTo("stays");
    summer.follow();
    winter.follow();
    assertThat(winter.job().shotList().codes()).hasSize(3);
    assertThat(summer.job().shotList().codes()).hasSize(2);
    // The answer was lost, and it is said again; somebody else says something else.
    var book = new StoredMoves(store);
    assertThat(book.step(one, MoveStep.Kind.TAKEN, "desk", SetupMove.facts("003"))).isFalse();
    assertThat(Moves.takeBack(book, one, "producer")).isTrue();
    assertThat(moves.now(move).steps()).hasSize(2);
  }

  @Test
  void aSetIsToldAtOnceThatSomethingIsAskedOfIt() throws Exception {
    var told = new LinkedBlockingQueue<String>();
    try (var _ = StoreHints.listen(store, told::offer)) {
      String first = null;
      for (int i = 0; i < 100 && first == null; i++) {
        ask("003"); // It may not have begun to listen yet.
        first = told.poll(100, TimeUnit.MILLISECONDS);
      }
      assertThat(first).isEqualTo(winter.id().toString());
    }
  }

  @Test
  void whatWasDecidedIsNeverChanged() throws Exception {
    ask("003");
    winter.follow();
    for (var change :
        List.of(
            "update framewright.move set code = '9'",
            "delete from framewright.move_step",
            "truncate framewright.move_step, framewright.move",
            "insert into framewright.move_step select * from framewright.move_step")) {
      assertThatThrownBy(
              () ->
                  store.with(
                      connection -> {
                        try (var statement = connection.createStatement()) {
                          return statement.execute(change);
                        }
                      }))
          .isInstanceOf(StoreException.class);
      if (!change.startsWith("insert")) {
        try (var owner = server.connect(database, PlayedServer.OWNER);
            var statement = owner.createStatement()) {
          assertThatThrownBy(() -> statement.execute(change))
              .isInstanceOf(SQLException.class)
              .hasMessageContaining("never changed or removed");
        }
      }
    }
  }
}
