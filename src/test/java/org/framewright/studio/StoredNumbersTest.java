package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers of two jobs as the store has them, and who may change them. */
@Tag("slow")
class StoredNumbersTest {
  private static final LocalDate MONDAY = LocalDate.of(2026, 11, 23);

  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final DayHours hours = DayHours.usual(ZoneOffset.UTC);
  private PlayedServer server;
  private String database;
  private Store store;
  private OwnSet winter;
  private OwnSet summer;

  @BeforeEach
  void twoJobs() throws Exception {
    server = PlayedServer.shared();
    database = server.database();
    store = server.store(database);
    winter = set("Winter");
    summer = set("Summer");
    winter.job().mark("001", SetupState.ON_SET, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(10));
    winter.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    clock.pass(Duration.ofMinutes(4));
    winter.job().mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    summer.job().mark("002", SetupState.SHOT, MarkDetails.NONE);
    winter.follow();
    summer.follow();
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private OwnSet set(String title) throws Exception {
    clock.pass(Duration.ofSeconds(1)); // No two jobs begin at one moment.
    var parent = Files.createDirectories(root.resolve(title));
    var folder = SetScene.job(parent, title, 3, clock, "desk").folder();
    return OwnSet.open(store, folder, hours, clock, new Station("desk"));
  }

  private List<Numbers.Line> lines() throws IOException {
    return Numbers.of(store, Optional.empty(), Optional.empty()).lines();
  }

  private static NumbersRows rows(Store store, OwnSet set) {
    return new NumbersRows(store, set.id(), DayHours.usual(ZoneOffset.UTC));
  }

  @Test
  void eachSetAndDayIsReadAsItWasTold() throws Exception {
    var lines = lines();
    assertThat(lines.stream().map(Numbers.Line::name))
        .containsExactly(summer.job().name(), winter.job().name());
    for (int i = 0; i < 2; i++) {
      var job = List.of(summer, winter).get(i).job();
      var scan = job.scan();
      var told = JobNumbers.of(job, scan, job.standing(scan), hours);
      assertThat(lines.get(i).day()).contains(MONDAY);
      assertThat(lines.get(i).setups()).isEqualTo(told.setups().get(MONDAY));
      assertThat(lines.get(i).frames()).isEmpty();
    }
    assertThat(lines.getLast().setups().medianOnSet()).contains(Duration.ofMinutes(10));
    assertThat(lines.getLast().setups().medianWait()).contains(Duration.ofMinutes(4));
  }

  @Test
  void whatChangesReplacesWhatWasTold() throws Exception {
    clock.pass(Duration.ofMinutes(1));
    winter.job().mark("001", SetupState.PICKUP, MarkDetails.NONE);
    winter.follow();
    var setups = lines().getLast().setups();
    assertThat(setups.done()).isZero();
    assertThat(setups.signedOff()).isZero();
    assertThat(setups.pickups()).isEqualTo(1);
    clock.pass(Duration.ofDays(1));
    winter.job().mark("001", SetupState.SHOT, MarkDetails.NONE);
    winter.follow();
    assertThat(lines().getLast().day()).contains(MONDAY.plusDays(1));
    assertThat(lines().getLast().setups().planned()).hasValue(3);
    assertThat(lines()).hasSize(2);
  }

  @Test
  void whoKnowsFewerEventsReplacesNothing() throws Exception {
    boolean told =
        store.with(
            connection -> {
              try (var statement =
                  connection.prepareStatement("select framewright.tell_numbers(?, 0, '[]')")) {
                statement.setObject(1, winter.id());
                try (var row = statement.executeQuery()) {
                  row.next();
                  return row.getBoolean(1);
                }
              }
            });
    assertThat(told).isFalse();
    assertThat(lines()).hasSize(2);
  }

  /** Folders may be copies of each other: frames are not counted twice. */
  @Test
  void ofSeveralComputersTheOneWithMostFramesOfADayCounts() throws Exception {
    var rows = rows(store, winter);
    rows.tellFrames("desk", "[{\"day\":\"2026-11-23\",\"frames\":40}]");
    rows.tellFrames(
        "cart",
        "[{\"day\":\"2026-11-23\",\"frames\":30},{\"day\":\"2026-11-25\",\"frames\":5,\"selects\":2},"
            + "{\"day\":\"infinity\",\"frames\":1}]");
    var frames =
        lines().stream()
            .filter(line -> line.job().equals(winter.id()))
            .map(line -> line.day() + " " + line.frames().orElseThrow().frames())
            .toList();
    assertThat(frames)
        .containsExactly("Optional[2026-11-23] 40", "Optional[2026-11-25] 5", "Optional.empty 1");
    rows.tellFrames("desk", "[{\"day\":\"2026-11-23\",\"frames\":20}]");
    assertThat(lines().get(1).frames().orElseThrow().frames()).isEqualTo(30);
  }

  @Test
  void onlyTheDaysThatAreAskedForAreRead() throws Exception {
    var rows = rows(store, winter);
    rows.tellFrames(
        "cart", "[{\"day\":\"2026-11-25\",\"frames\":5},{\"day\":\"infinity\",\"frames\":1}]");
    var from = Optional.of(MONDAY.plusDays(1));
    assertThat(Numbers.of(store, from, Optional.empty()).lines()).hasSize(1);
    assertThat(Numbers.of(store, Optional.empty(), from).lines()).hasSize(2);
    assertThat(Numbers.of(store, Optional.of(MONDAY), Optional.of(MONDAY)).lines()).hasSize(2);
    assertThat(lines()).hasSize(4);
  }

  @Test
  void allIsMadeAnewFromTheEvents() throws Exception {
    var before = lines();
    server.execute(database, "delete from framewright.numbers_setups");
    assertThat(lines()).isEmpty();
    for (var set : List.of(winter, summer)) {
      var brought =
          Job.bring(
              set.job().convention(),
              Files.createDirectories(root.resolve("brought")),
              store.logs(set.id()),
              clock,
              new Station("cart"));
      var cart = Job.open(brought, clock, new Station("cart"));
      NumbersRows.tell(store, cart, cart.scan(), hours);
    }
    assertThat(lines()).isEqualTo(before);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "insert into framewright.numbered select id, 1 from framewright.job",
        "update framewright.numbers_setups set done = 0",
        "delete from framewright.numbers_frames",
        "truncate framewright.numbered cascade"
      })
  void aStationChangesThemByTheFunctionsOnly(String sql) {
    assertThatThrownBy(
            () -> {
              try (var connection = server.connect(database, PlayedServer.STATION);
                  var statement = connection.createStatement()) {
                statement.execute(sql);
              }
            })
        .isInstanceOf(SQLException.class)
        .hasMessageContaining("permission denied");
  }
}
