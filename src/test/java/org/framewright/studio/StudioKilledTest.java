package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.framewright.studio.LoadedStudio.Tick;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * Stations in processes of their own tick without rest; some of them are killed, then the server,
 * then all. Nothing that the server confirmed is lost there, and nothing that a station had ticked
 * is lost in the end.
 */
@Tag("slow")
@Timeout(240)
class StudioKilledTest {
  private static final int STATIONS = 12;
  private static final int IN_SET = 3;
  private static final int PROCESSES = 3;

  @TempDir private Path root;

  /** What the store has of each station, by its number. */
  private static Map<Integer, Long> stored(PlayedServer server, String database)
      throws IOException {
    try (var store = server.store(database)) {
      return store.all().stream()
          .map(Store.Kept::id)
          .flatMap(job -> heads(store, job).entrySet().stream())
          .filter(head -> head.getKey().startsWith("desk"))
          .collect(
              Collectors.toMap(
                  head -> Integer.parseInt(head.getKey().substring("desk".length())),
                  Map.Entry::getValue));
    }
  }

  private static Map<String, Long> heads(Store store, UUID job) {
    try {
      return store.logs(job).heads();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * A station's log has nothing but its ticks, so that the number of an event is that of a tick.
   */
  private static long lost(Map<Tick, Long> ticks, Map<Integer, Long> stored) {
    long lost = 0;
    for (int i = 0; i < STATIONS; i++) {
      lost += Math.max(0, LoadedStudio.last(ticks, i) - stored.getOrDefault(i, 0L));
    }
    return lost;
  }

  /** Kills some stations, the server and the rest under load; the server is started again. */
  private static void kill(PlayedServer server, LoadedStudio studio) throws Exception {
    studio.order(0, 60);
    awaitKept(studio, studio.kept().size() + 200);
    studio.kill(1);
    awaitKept(studio, studio.kept().size() + 200);
    server.kill();
    studio.kill();
    server.start();
  }

  private static void awaitKept(LoadedStudio studio, int wanted) throws InterruptedException {
    for (int i = 0; i < 600 && studio.kept().size() < wanted; i++) {
      Thread.sleep(50);
    }
    assertThat(studio.kept())
        .as(() -> String.join("\n", studio.others()))
        .hasSizeGreaterThanOrEqualTo(wanted);
  }

  private LoadedStudio begin(PlayedServer server, String database) throws Exception {
    var address = server.address(database, PlayedServer.STATION);
    return LoadedStudio.begin("framewright", address, root, STATIONS, IN_SET, PROCESSES);
  }

  @Test
  void noTickIsLostWhenTheServerAndStationsAreKilledUnderLoad() throws Exception {
    try (var server = PlayedServer.own()) {
      var database = server.database();
      try (var studio = begin(server, database)) {
        kill(server, studio);
        assertThat(lost(studio.kept(), stored(server, database))).isZero();
        studio.revive();
        for (int i = 0; i < 600 && lost(studio.ticked(), stored(server, database)) > 0; i++) {
          Thread.sleep(100);
        }
        assertThat(lost(studio.ticked(), stored(server, database))).isZero();
        assertThat(studio.others()).noneMatch(line -> line.startsWith("told"));
      }
    }
  }

  /** The proof that the test above can fail; what the server lost, the folders still have. */
  @Test
  void withoutACommitThatWaitsTheServerLosesThemAndTheStationsSendThemAgain() throws Exception {
    try (var server = PlayedServer.own()) {
      var database = server.database();
      server.letItNotWait(database);
      server.stop();
      server.start("wal_writer_delay=10s", "wal_writer_flush_after=1GB");
      try (var studio = begin(server, database)) {
        // A store that does not wait is let in by nobody: each has met it before.
        studio.run(STATIONS, 3);
        awaitKept(studio, STATIONS);
        server.set("synchronous_commit", "off");
        kill(server, studio);
        server.set("synchronous_commit", "on");
        assertThat(lost(studio.kept(), stored(server, database))).isPositive();
        studio.revive();
        for (int i = 0; i < 600 && lost(studio.ticked(), stored(server, database)) > 0; i++) {
          Thread.sleep(100);
        }
        assertThat(lost(studio.ticked(), stored(server, database))).isZero();
      }
    }
  }
}
