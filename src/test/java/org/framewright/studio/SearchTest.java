package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.framewright.day.DayHours;
import org.framewright.frames.Frame;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is found in two jobs, and who may change what things are found by. */
@Tag("slow")
class SearchTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
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
    winter =
        set(
            "Winter",
            setup("001", "Manteau écru", Map.of("EAN", "4006381 333931", "Model", "Ines Ørsted")),
            setup("002", "Coat, black", Map.of("EAN", "", "Model", "Jo")));
    summer = set("Summer", setup("A-12", "Coats for the beach", Map.of("Model", "Mira")));
    winter.job().mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Petra Klamm"));
    winter.follow();
    summer.follow();
  }

  @AfterEach
  void close() {
    if (store != null) {
      store.close();
    }
  }

  private static Setup setup(String code, String title, Map<String, String> columns) {
    return new Setup(code, title, List.of(), OptionalInt.empty(), new LinkedHashMap<>(columns));
  }

  private OwnSet set(String title, Setup... setups) throws Exception {
    clock.pass(Duration.ofSeconds(1)); // No two jobs begin at one moment.
    var parent = Files.createDirectories(root.resolve(title));
    var job = SetScene.job(parent, title, 0, clock, "desk");
    job.importList(new ShotList(List.of(setups)));
    return open(job.folder(), "desk");
  }

  private OwnSet open(Path folder, String station) throws Exception {
    return OwnSet.open(store, folder, DayHours.usual(ZoneOffset.UTC), clock, new Station(station));
  }

  private List<String> found(String words) throws IOException {
    return Search.of(store, words, 20).stream()
        .map(hit -> hit.setup().orElse("-") + " " + String.join("; ", hit.matched()))
        .toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "manteau ECRU       | 001 title: Manteau écru",
        "mant               | 001 title: Manteau écru",
        "nteau              | 001 title: Manteau écru",
        "mantaeu            | 001 title: Manteau écru",
        "4006381333931      | 001 gtin: 4006381333931",
        "04006381333931     | 001 gtin: 4006381333931",
        "333931             | 001 gtin: 4006381333931",
        "orsted             | 001 person: Ines Ørsted",
        "klamm              | 002 person: Jo, Petra Klamm",
        "coat petra         | 002 title: Coat, black; person: Jo, Petra Klamm",
        "a12                | A-12 setup: A-12",
        "beach summer       | A-12 title: Coats for the beach"
      })
  void aSetupIsFoundByWhatIsSaidOfIt(String words, String hit) throws Exception {
    var found = found(words);
    assertThat(found).hasSize(1);
    assertThat(found.getFirst()).startsWith(hit);
  }

  @Test
  void theSameWordComesBeforeOneThatBeginsWithIt() throws Exception {
    assertThat(found("coat").stream().map(hit -> hit.split(" ", 2)[0]))
        .containsExactly("002", "A-12");
    assertThat(found("coats").stream().map(hit -> hit.split(" ", 2)[0])).containsExactly("A-12");
  }

  @Test
  void aClientIsFoundInAllJobs() throws Exception {
    assertThat(found("kvo")).hasSize(3).allMatch(hit -> hit.contains("client: Kvo"));
    assertThat(Search.of(store, "kvo", 2)).hasSize(2);
  }

  @Test
  void aHitSaysItsJobDayAndState() throws Exception {
    var hit = Search.of(store, "black", 20).getFirst();
    assertThat(hit.name()).isEqualTo(winter.job().name());
    assertThat(hit.day().toString()).isEqualTo("2026-11-23");
    assertThat(hit.state()).contains(SetupState.SIGNED_OFF);
    assertThat(SearchDescription.lines(List.of(hit), 20).getFirst())
        .isEqualTo("2026-11-23  " + winter.job().name() + "  002 Coat, black  signed off");
  }

  @Test
  void aFrameIsFoundByItsName() throws Exception {
    Files.createDirectories(winter.job().framesFolder());
    var rows = new SearchRows(store, winter.id());
    rows.tell("desk", List.of(new FrameRange("001", "kvo", 120, 130)));
    rows.tell("cart", List.of(new FrameRange("", "kvo", 131, 131)));
    assertThat(found("KVO_0123.NEF")).contains("001 frame: KVO_0123.NEF");
    assertThat(found("kvo131")).contains("- frame: kvo131");
    assertThat(found("kvo_0132")).isEmpty();
    rows.tell("desk", List.of(new FrameRange("001", "kvo", 125, 130)));
    assertThat(found("KVO_0123")).isEmpty();
    assertThat(found("kvo131")).isNotEmpty();
  }

  @Test
  void theNamesOfFramesAreToldAsTheyArrive() throws Exception {
    var camera =
        new SampleCamera(
            SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 500);
    winter.job().mark("001", SetupState.ON_SET, MarkDetails.NONE);
    for (int frame = 0; frame < 3; frame++) {
      clock.pass(Duration.ofSeconds(10));
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(winter.job().framesFolder());
      clock.pass(Duration.ofMillis(500));
      winter.job().recordArrivals(winter.job().scan());
    }
    winter.follow();
    var stems = winter.job().scan().frames().stream().map(Frame::stem).toList();
    assertThat(stems).hasSize(3);
    for (var stem : stems) {
      assertThat(found(stem + ".JPG")).contains("001 frame: " + stem + ".JPG");
    }
    var folder = winter.job().framesFolder();
    Files.move(folder, folder.resolveSibling("put away"));
    Files.createDirectory(folder);
    clock.pass(Duration.ofMinutes(1));
    open(winter.job().folder(), "desk").follow();
    assertThat(found(stems.getLast())).contains("001 frame: " + stems.getLast());
  }

  @Test
  void whatChangesIsFoundAsItIsNow() throws Exception {
    winter.job().importList(new ShotList(List.of(setup("001", "Hat", Map.of()))));
    clock.pass(Duration.ofMinutes(1));
    winter.follow();
    assertThat(found("manteau")).isEmpty();
    assertThat(found("hat")).hasSize(1);
  }

  @Test
  void whoKnowsFewerEventsReplacesNothing() throws Exception {
    boolean told =
        store.with(
            connection -> {
              try (var statement =
                  connection.prepareStatement(
                      "select framewright.tell_search(?, 0, '', '[]', '{}')")) {
                statement.setObject(1, winter.id());
                try (var row = statement.executeQuery()) {
                  row.next();
                  return row.getBoolean(1);
                }
              }
            });
    assertThat(told).isFalse();
    assertThat(found("manteau")).hasSize(1);
  }

  @Test
  void allIsMadeAnewFromTheEvents() throws Exception {
    server.execute(database, "delete from framewright.search_setup");
    server.execute(database, "delete from framewright.search_word");
    assertThat(found("manteau")).isEmpty();
    var brought =
        Job.bring(
            winter.job().convention(),
            Files.createDirectories(root.resolve("brought")),
            store.logs(winter.id()),
            clock,
            new Station("cart"));
    var cart = Job.open(brought, clock, new Station("cart"));
    SearchRows.tell(store, cart, cart.scan());
    assertThat(found("nteau")).hasSize(1);
    assertThat(store.all().stream().map(Store.Kept::id)).containsExactly(winter.id(), summer.id());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'; drop table framewright.event; --",
        "%",
        "_",
        "\\",
        "\\'",
        "' | '",
        "coat' | 'x",
        ":*",
        "a:*b & !c",
        "\"",
        "\u0000",
        "\uD83D",
        "$1 ? {fn now()}",
        "外套",
        "пальто 4",
        "((((",
        "e\u0301\u0301\u0301"
      })
  void hostileWordsAreHarmless(String words) throws Exception {
    assertThat(Search.of(store, words, 20)).isEmpty();
    assertThat(found("manteau")).hasSize(1);
  }

  @Test
  void longAndManyWordsAreHarmless() throws Exception {
    assertThat(found("x".repeat(1_000_000))).isEmpty();
    assertThat(found("word ".repeat(100_000))).isEmpty();
    var many = new StringBuilder();
    for (int i = 0; i < 10_000; i++) {
      many.append('w').append(i).append(' ');
    }
    assertThat(found(many.toString())).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "insert into framewright.search_word values ('x')",
        "update framewright.search_setup set title = 'x'",
        "delete from framewright.search_frames",
        "truncate framewright.searched cascade"
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
