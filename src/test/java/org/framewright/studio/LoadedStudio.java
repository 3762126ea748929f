package org.framewright.studio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Stations in processes of their own, and what they said: see {@link LoadedStations}. */
final class LoadedStudio implements AutoCloseable {
  /** A tick, by its station and number. */
  record Tick(int station, long number) {}

  private final String kind;
  private final StoreAddress address;
  private final Path root;
  private final int stations;
  private final int inSet;
  private final List<Some> processes = new ArrayList<>();
  private final Map<Tick, Long> ticked = new ConcurrentHashMap<>();
  private final Map<Tick, Long> kept = new ConcurrentHashMap<>();

  /** How long it took from a tick until it was seen, in nanoseconds. */
  private final Queue<Long> seen = new ConcurrentLinkedQueue<>();

  private final Queue<String> others = new ConcurrentLinkedQueue<>();

  /** A process, which has some of the stations. */
  private final class Some {
    final int first;
    final int count;
    final Process process;
    final PrintWriter orders;
    final Thread reading;
    private int said;

    Some(int first, int count) {
      this.first = first;
      this.count = count;
      process = begun();
      orders = new PrintWriter(process.getOutputStream(), true, StandardCharsets.UTF_8);
      reading = Thread.ofPlatform().daemon().start(this::read);
    }

    private Process begun() {
      try {
        // A station of a real studio is warm for hours; with one compiler these are in seconds.
        return new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                LoadedStations.class.getName(),
                kind,
                address.url(),
                root.toString(),
                "" + inSet,
                "" + first,
                "" + count)
            .redirectError(ProcessBuilder.Redirect.appendTo(root.resolve("errors").toFile()))
            .start();
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }

    private void read() {
      try (var lines =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8))) {
        for (var line = lines.readLine(); line != null; line = lines.readLine()) {
          heard(line);
        }
      } catch (IOException e) {
        // Killed.
      }
      synchronized (this) {
        said = Integer.MAX_VALUE;
        notifyAll();
      }
    }

    private void heard(String line) {
      var words = line.split(" ", -1);
      switch (words[0]) {
        case "ready", "done" -> {
          synchronized (this) {
            said++;
            notifyAll();
          }
        }
        case "tick" -> ticked.put(tick(words), Long.parseLong(words[3]));
        case "kept" -> kept.put(tick(words), Long.parseLong(words[3]));
        case "seen" -> {
          var from = ticked.get(tick(words));
          if (from != null) {
            seen.add(Long.parseLong(words[3]) - from);
          }
        }
        default -> others.add(line);
      }
    }

    private static Tick tick(String[] words) {
      return new Tick(Integer.parseInt(words[1]), Long.parseLong(words[2]));
    }

    synchronized void await(int times) throws InterruptedException {
      while (said < times) {
        wait();
      }
      said -= said == Integer.MAX_VALUE ? 0 : times;
    }
  }

  private LoadedStudio(String kind, StoreAddress address, Path root, int stations, int inSet) {
    this.kind = kind;
    this.address = address;
    this.root = root;
    this.stations = stations;
    this.inSet = inSet;
  }

  /**
   * Begins the processes, and waits until all stations are there.
   *
   * @param kind of stations, see {@link LoadedStations}
   * @param root where the folders of all stations are, made if they are not
   */
  static LoadedStudio begin(
      String kind, StoreAddress address, Path root, int stations, int inSet, int processes)
      throws Exception {
    var studio = new LoadedStudio(kind, address, root, stations, inSet);
    if (kind.equals("framewright") && !Files.exists(root.resolve("desk0"))) {
      studio.makeFolders();
    }
    int each = (stations + processes - 1) / processes;
    for (int first = 0; first < stations; first += each) {
      studio.processes.add(studio.new Some(first, Math.min(each, stations - first)));
    }
    for (var some : studio.processes) {
      some.await(1);
    }
    return studio;
  }

  /** A job a set, and a copy of its folder for each of its stations. */
  private void makeFolders() throws Exception {
    for (int set = 0; set * inSet < stations; set++) {
      var made = Files.createDirectory(root.resolve("made" + set));
      var job = SetScene.job(made, "Set" + set, 60, Clock.systemUTC(), "producer");
      for (int i = set * inSet; i < Math.min(stations, (set + 1) * inSet); i++) {
        var there = Files.createDirectory(root.resolve("desk" + i));
        var copied =
            new ProcessBuilder("cp", "-a", job.folder().toString(), there.toString()).start();
        if (copied.waitFor() != 0) {
          throw new IOException("cp " + job.folder());
        }
      }
    }
  }

  /**
   * Lets all of them tick.
   *
   * @param rate ticks a second in all; 0 for as fast as the store confirms them
   */
  void run(double rate, int seconds) throws InterruptedException {
    order(rate, seconds);
    for (var some : processes) {
      some.await(1);
    }
  }

  /** The same without waiting for the end. */
  void order(double rate, int seconds) {
    for (var some : processes) {
      some.orders.println(rate * some.count / stations + " " + seconds);
    }
  }

  /** SIGKILL for one of the processes; what it said until then is heard. */
  void kill(int which) throws InterruptedException {
    var some = processes.get(which);
    some.process.destroyForcibly();
    some.process.waitFor();
    some.reading.join();
  }

  /** The same for all of them. */
  void kill() throws InterruptedException {
    for (int i = 0; i < processes.size(); i++) {
      kill(i);
    }
  }

  /** Begins all processes anew that were killed. */
  void revive() throws Exception {
    processes.replaceAll(old -> old.process.isAlive() ? old : new Some(old.first, old.count));
    for (var some : processes) {
      some.await(1);
    }
  }

  /** The number of a station's last tick of some. */
  static long last(Map<Tick, Long> ticks, int station) {
    return ticks.keySet().stream()
        .filter(tick -> tick.station() == station)
        .mapToLong(Tick::number)
        .max()
        .orElse(0);
  }

  /** Forgets all that was said so far. */
  void forget() {
    ticked.clear();
    kept.clear();
    seen.clear();
    others.clear();
  }

  /** Waits until all that was ticked is kept and was seen by all others, or a time is over. */
  void settle(Duration most) throws InterruptedException {
    long until = System.nanoTime() + most.toNanos();
    while (System.nanoTime() < until && (kept.size() < ticked.size() || seen.size() < expected())) {
      Thread.sleep(50);
    }
  }

  /** The ticks that are in a station's folder. */
  Map<Tick, Long> ticked() {
    return ticked;
  }

  /** The ticks that the store confirmed. */
  Map<Tick, Long> kept() {
    return kept;
  }

  /** How many times one of the ticks is to be seen, and how many times it was. */
  long expected() {
    return (long) ticked.size() * (inSet - 1);
  }

  long seen() {
    return seen.size();
  }

  /** From tick to the confirmation of the store, and from tick to another station, in words. */
  String said() {
    var keeping =
        kept.entrySet().stream()
            .filter(one -> ticked.containsKey(one.getKey()))
            .map(one -> one.getValue() - ticked.get(one.getKey()));
    return "%d ticks; confirmed %d: %s; seen %d of %d: %s"
        .formatted(
            ticked.size(), kept.size(), times(keeping), seen(), expected(), times(seen.stream()));
  }

  private static String times(Stream<Long> times) {
    var sorted = times.sorted().toList();
    return sorted.isEmpty()
        ? "never"
        : "p50 %.0f ms, p99 %.0f ms, most %.0f ms"
            .formatted(
                sorted.get(sorted.size() / 2) / 1e6,
                sorted.get(sorted.size() * 99 / 100) / 1e6,
                sorted.getLast() / 1e6);
  }

  /** What else stations said. */
  List<String> others() {
    return List.copyOf(others);
  }

  /** The processes of the stations. */
  List<ProcessHandle> handles() {
    return processes.stream().map(some -> some.process.toHandle()).toList();
  }

  @Override
  public void close() {
    for (var some : processes) {
      some.orders.close();
    }
    for (var some : processes) {
      try {
        if (!some.process.waitFor(5, TimeUnit.SECONDS)) {
          some.process.destroyForcibly();
        }
      } catch (InterruptedException e) {
        some.process.destroyForcibly();
      }
    }
  }
}
