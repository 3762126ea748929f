package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Collection;
import org.framewright.base.OwnFolder;

/**
 * A studio of stations as they are in the app, in a few processes, on one server, and beside it
 * bare ones that only insert and notify: {@code -Dbench.arguments="STATIONS STATIONS_A_SET
 * EVENTS_A_SECOND SECONDS PROCESSES KINDS"}. It says how long a tick takes from the folder of its
 * station to the boards of the others, and what that costs.
 */
public final class StudioLoadBenchmark {
  private static final int WARM = 12;
  private static final String[] KINDS = {"bare", "framewright"};

  private StudioLoadBenchmark() {}

  public static void main(String[] args) throws Exception {
    int stations = number(args, 0, 200);
    int inSet = number(args, 1, 4);
    int rate = number(args, 2, 50);
    int seconds = number(args, 3, 60);
    int processes = number(args, 4, 2);
    var root = Files.createTempDirectory("studio-load");
    try (var server = PlayedServer.own()) {
      server.stop();
      server.start("max_connections=500", "shared_buffers=256MB");
      System.out.printf(
          "%d stations, %d a set, in %d processes; load %s%n", stations, inSet, processes, load());
      for (var kind : args.length > 5 ? args[5].split(",", -1) : KINDS) {
        var database = server.database();
        server.execute(database, LoadedStations.BARE_TABLE);
        var address = server.address(database, PlayedServer.STATION);
        long begun = System.nanoTime();
        try (var studio = LoadedStudio.begin(kind, address, root, stations, inSet, processes)) {
          System.out.printf("%s: all there after %.1f s%n", kind, seconds(begun));
          // What runs for the first time is compiled meanwhile.
          studio.run(rate, WARM);
          studio.settle(Duration.ofSeconds(WARM));
          run(server, studio, kind, rate, kind.startsWith("bare") ? seconds / 3 : seconds);
          run(server, studio, kind, 0, seconds / 5);
        }
      }
    } finally {
      OwnFolder.remove(root);
    }
  }

  private static int number(String[] args, int place, int usual) {
    return args.length > place ? Integer.parseInt(args[place]) : usual;
  }

  private static double seconds(long since) {
    return (System.nanoTime() - since) / 1e9;
  }

  private static void run(
      PlayedServer server, LoadedStudio studio, String kind, int rate, int seconds)
      throws Exception {
    studio.forget();
    var before = cpu(server.processes());
    var stations = cpu(studio.handles());
    long begun = System.nanoTime();
    studio.run(rate, seconds);
    double took = seconds(begun);
    double served = (cpu(server.processes()) - before) / took;
    double worked = (cpu(studio.handles()) - stations) / took;
    long kept = studio.kept().size();
    studio.settle(Duration.ofSeconds(20));
    System.out.printf(
        "%s at %s for %d s, load %s: %.0f confirmed a second; %s%n",
        kind,
        rate == 0 ? "full speed" : rate + " a second",
        seconds,
        load(),
        kept / took,
        studio.said());
    System.out.printf(
        "  processors used: server %.2f, stations %.2f; connections %d; memory: server %d MB,"
            + " stations %d MB%n",
        served,
        worked,
        server.connections(),
        megabytes(server.processes()),
        megabytes(studio.handles()));
    studio.others().stream().distinct().limit(5).forEach(line -> System.out.println("  " + line));
  }

  /** Seconds of processors that are used so far. */
  private static double cpu(Collection<ProcessHandle> processes) {
    return processes.stream()
        .flatMap(process -> process.info().totalCpuDuration().stream())
        .mapToDouble(time -> time.toMillis() / 1e3)
        .sum();
  }

  /** What is held in memory, with a share of what several processes hold together. */
  private static long megabytes(Collection<ProcessHandle> processes) throws IOException {
    long kilobytes = 0;
    for (var process : processes) {
      try (var lines = Files.lines(Path.of("/proc", "" + process.pid(), "smaps_rollup"))) {
        kilobytes +=
            lines
                .filter(line -> line.startsWith("Pss:"))
                .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
                .sum();
      } catch (NoSuchFileException e) {
        // It has just ended.
      }
    }
    return kilobytes >> 10;
  }

  private static String load() throws IOException {
    return Files.readString(Path.of("/proc/loadavg")).split(" ", -1)[0];
  }
}
