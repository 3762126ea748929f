package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import org.framewright.job.Job;
import org.framewright.job.JobMirror;
import org.framewright.job.MarkDetails;
import org.framewright.job.Receipt;
import org.framewright.job.Station;
import org.framewright.job.StoredLines;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A server that is killed while stations write, and one that comes back from an older copy. */
@Tag("slow")
class StoreKilledTest {
  private static final int WRITERS = 8;

  @TempDir private Path root;

  /**
   * Writers append, one event after the other, until the server is killed.
   *
   * @return for each the number of the last event that was confirmed
   */
  private static List<Long> confirmedUntilKilled(PlayedServer server, Store store, UUID job)
      throws Exception {
    var confirmed = new ArrayList<AtomicLong>();
    var threads = new ArrayList<Thread>();
    for (int i = 0; i < WRITERS; i++) {
      var last = new AtomicLong();
      var writer = "desk" + i;
      confirmed.add(last);
      threads.add(
          Thread.ofPlatform()
              .start(
                  () -> {
                    try {
                      while (true) {
                        long next = last.get() + 1;
                        var answer =
                            store.logs(job).append(writer, StoredLines.lines(writer, next, next));
                        if (!(answer instanceof Receipt.Kept)) {
                          return;
                        }
                        last.set(next);
                      }
                    } catch (IOException e) {
                      // Killed.
                    }
                  }));
    }
    for (int i = 0; i < 600 && sum(confirmed) < 400; i++) {
      Thread.sleep(50);
    }
    server.kill();
    for (var thread : threads) {
      thread.join();
    }
    return confirmed.stream().map(AtomicLong::get).toList();
  }

  private static long sum(List<AtomicLong> numbers) {
    return numbers.stream().mapToLong(AtomicLong::get).sum();
  }

  /** How many confirmed events are not there after the server was started again. */
  private static long lost(PlayedServer server, String database, UUID job, List<Long> confirmed)
      throws Exception {
    server.start();
    long lost = 0;
    try (var store = server.store(database)) {
      var heads = store.logs(job).heads();
      for (int i = 0; i < WRITERS; i++) {
        lost += Math.max(0, confirmed.get(i) - heads.getOrDefault("desk" + i, 0L));
      }
    }
    return lost;
  }

  @Test
  void noConfirmedEventIsLostWhenTheServerIsKilled() throws Exception {
    try (var server = PlayedServer.own()) {
      var database = server.database();
      var job = UUID.randomUUID();
      List<Long> confirmed;
      try (var store = server.store(database)) {
        store.add(job, "Winter", "fields: {}");
        confirmed = confirmedUntilKilled(server, store, job);
      }
      assertThat(confirmed.stream().mapToLong(one -> one).sum()).isPositive();
      assertThat(lost(server, database, job, confirmed)).isZero();
    }
  }

  /** The proof that the test above can fail: with a commit that does not wait, events are lost. */
  @Test
  void withoutACommitThatWaitsTheyAreLost() throws Exception {
    try (var server = PlayedServer.own()) {
      var database = server.database();
      var job = UUID.randomUUID();
      List<Long> confirmed;
      try (var store = server.store(database)) {
        store.add(job, "Winter", "fields: {}");
        server.letItNotWait(database);
      }
      server.stop();
      server.start("wal_writer_delay=10s", "wal_writer_flush_after=1GB");
      try (var store = server.store(database)) {
        server.execute("postgres", "alter database " + database + " set synchronous_commit = off");
        confirmed = confirmedUntilKilled(server, store, job);
      }
      server.start();
      server.execute("postgres", "alter database " + database + " reset synchronous_commit");
      server.kill();
      assertThat(lost(server, database, job, confirmed)).isPositive();
    }
  }

  @Test
  void aServerThatCameBackFromAnOlderCopyGetsFromTheStationsWhatItLacks() throws Exception {
    try (var server = PlayedServer.own()) {
      var database = server.database();
      var desk = SetScene.job(root, "Winter", 40, Clock.systemUTC(), "desk");
      var job = OwnSet.id(desk);
      var clock = Clock.systemUTC();
      try (var store = server.store(database)) {
        store.add(job, desk.name(), desk.convention().yaml());
        JobMirror.of(desk.folder(), clock, new Station("desk"), store.logs(job)).exchange();
      }
      server.stop();
      server.backup();
      server.start();
      tick(desk, 1, 30);
      String whole;
      try (var store = server.store(database)) {
        var mirror = JobMirror.of(desk.folder(), clock, new Station("desk"), store.logs(job));
        mirror.exchange();
        whole = stored(store, job);
        server.stop();
        server.restore();
        server.start();
        assertThat(stored(store, job)).isNotEqualTo(whole);
        assertThat(mirror.exchange().sent()).isEqualTo(30);
        assertThat(mirror.told()).isEmpty();
        assertThat(stored(store, job)).isEqualTo(whole);
      }
    }
  }

  private static String stored(Store store, UUID job) throws IOException {
    for (int i = 0; ; i++) {
      try {
        return store.logs(job).read("desk", 1).stream()
            .map(line -> new String(line, StandardCharsets.UTF_8))
            .collect(Collectors.joining("\n"));
      } catch (StoreException e) {
        if (i == 20) {
          throw e; // A pool has a few dead connections after a restart, and lets go of each.
        }
      }
    }
  }

  private static void tick(Job job, int from, int to) throws Exception {
    for (int i = from; i <= to; i++) {
      job.mark("%03d".formatted(i), SetupState.SHOT, MarkDetails.NONE);
    }
  }
}
