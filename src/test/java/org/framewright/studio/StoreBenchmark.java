package org.framewright.studio;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.framewright.job.Receipt;
import org.framewright.job.StoredLines;

/**
 * Many stations on one server: {@code -Dbench.arguments="STATIONS EVENTS_A_SECOND SECONDS
 * LISTENERS"}. Each event is appended by a station of one of fifty sets; the listeners each follow
 * one set, as a screen does: a hint, and then the numbers.
 */
public final class StoreBenchmark {
  private static final int SETS = 50;

  private StoreBenchmark() {}

  public static void main(String[] args) throws Exception {
    int stations = number(args, 0, 200);
    int rate = number(args, 1, 50);
    int seconds = number(args, 2, 60);
    int listeners = number(args, 3, 20);
    try (var server = PlayedServer.own();
        var store = server.store(server.database())) {
      var jobs = new ArrayList<UUID>();
      for (int i = 0; i < SETS; i++) {
        var job = UUID.randomUUID();
        store.add(job, "set " + i, "fields: {}");
        jobs.add(job);
      }
      run(store, jobs, stations, rate, seconds, listeners);
      var started = System.nanoTime();
      int sets = Overview.of(store).sets().size();
      System.out.printf("overview of %d sets: %.1f ms%n", sets, millis(started));
    }
  }

  private static int number(String[] args, int place, int usual) {
    return args.length > place ? Integer.parseInt(args[place]) : usual;
  }

  private static double millis(long since) {
    return (System.nanoTime() - since) / 1e6;
  }

  private static void run(
      Store store, List<UUID> jobs, int stations, int rate, int seconds, int listeners)
      throws Exception {
    Map<String, Long> sentAt = new ConcurrentHashMap<>();
    var appends = new ConcurrentLinkedQueue<Long>();
    var heard = new ConcurrentLinkedQueue<Long>();
    var next = new ConcurrentHashMap<Integer, AtomicLong>();
    var open = new ArrayList<AutoCloseable>();
    for (int i = 0; i < listeners; i++) {
      open.add(listen(store, jobs.get(i % SETS), sentAt, heard));
    }
    Thread.sleep(1_000);
    int events = rate * seconds;
    var left = new CountDownLatch(events);
    try (var clock = Executors.newScheduledThreadPool(1);
        var threads = Executors.newVirtualThreadPerTaskExecutor()) {
      for (int i = 0; i < events; i++) {
        int station = i % stations;
        Runnable append =
            () -> {
              try {
                append(store, jobs, station, next, sentAt, appends);
                left.countDown();
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            };
        var _ =
            clock.schedule(
                () -> threads.execute(append), i * 1_000_000L / rate, TimeUnit.MICROSECONDS);
      }
      left.await();
    }
    Thread.sleep(2_000);
    for (var one : open) {
      one.close();
    }
    long expected = 0;
    for (int i = 0; i < listeners; i++) {
      int set = i % SETS;
      for (int station = set; station < stations; station += SETS) {
        expected += next.getOrDefault(station, new AtomicLong()).get();
      }
    }
    System.out.printf(
        "%d stations, %d events/s for %d s, %d listeners%n", stations, rate, seconds, listeners);
    System.out.printf("appended %d: %s%n", appends.size(), said(appends));
    System.out.printf("heard %d of %d: %s%n", heard.size(), expected, said(heard));
  }

  private static void append(
      Store store,
      List<UUID> jobs,
      int station,
      Map<Integer, AtomicLong> next,
      Map<String, Long> sentAt,
      ConcurrentLinkedQueue<Long> appends)
      throws IOException {
    var counter = next.computeIfAbsent(station, _ -> new AtomicLong());
    synchronized (counter) {
      var line = StoredLines.line("desk" + station, counter.incrementAndGet(), "s");
      long begun = System.nanoTime();
      sentAt.put(line.toString(), begun);
      var answer = store.logs(jobs.get(station % SETS)).append(line.writer(), List.of(line));
      if (!(answer instanceof Receipt.Kept)) {
        throw new IllegalStateException(answer.toString());
      }
      appends.add(System.nanoTime() - begun);
    }
  }

  private static AutoCloseable listen(
      Store store, UUID job, Map<String, Long> sentAt, ConcurrentLinkedQueue<Long> heard) {
    Map<String, Long> read = new ConcurrentHashMap<>();
    return StoreHints.listen(
        store,
        hint -> {
          if (!hint.equals(job.toString())) {
            return;
          }
          try {
            var logs = store.logs(job);
            for (var head : logs.heads().entrySet()) {
              long last = read.getOrDefault(head.getKey(), 0L);
              if (head.getValue() > last) {
                for (var line : logs.read(head.getKey(), last + 1)) {
                  var sent = sentAt.get(new String(line, StandardCharsets.UTF_8));
                  heard.add(System.nanoTime() - sent);
                  last++;
                }
                read.put(head.getKey(), last);
              }
            }
          } catch (IOException e) {
            throw new IllegalStateException(e);
          }
        });
  }

  private static String said(ConcurrentLinkedQueue<Long> times) {
    var sorted = times.stream().sorted().toList();
    return sorted.isEmpty()
        ? "none"
        : "p50 %.0f ms, p99 %.0f ms, most %.0f ms"
            .formatted(
                sorted.get(sorted.size() / 2) / 1e6,
                sorted.get(sorted.size() * 99 / 100) / 1e6,
                sorted.getLast() / 1e6);
  }
}
