package org.framewright.frames;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/**
 * Thirty pairs of raw and JPEG a second for sixty seconds in real time, watched as on a set: is the
 * count exact, was any frame counted before it was complete, how long from the close of a pair's
 * last file until it counts, and how much of a processor goes while nothing happens. Arguments:
 * seconds, pairs a second.
 */
final class FrameBurstBenchmark {
  private static final int IDLE_SECONDS = 20;
  private static final int WARM_SECONDS = 8;

  private FrameBurstBenchmark() {}

  public static void main(String[] args) throws Exception {
    int seconds = args.length > 0 ? Integer.parseInt(args[0]) : 60;
    int rate = args.length > 1 ? Integer.parseInt(args[1]) : 30;
    var folder = Files.createTempDirectory("framewright-burst-");
    try {
      System.out.printf(Locale.ROOT, "The first %d s of a program just started:%n", WARM_SECONDS);
      burst(Files.createDirectory(folder.resolve("first")), WARM_SECONDS, rate, false);
      System.out.println("Then, as in one that runs since the morning:");
      burst(Files.createDirectory(folder.resolve("then")), seconds, rate, true);
    } finally {
      delete(folder);
    }
  }

  private static void burst(Path folder, int seconds, int rate, boolean idleAfter)
      throws Exception {
    var burst = new BurstGenerator(folder, rate, seconds);
    var witness = new BurstWitness(burst);
    try (var watcher = new FrameWatcher(folder, Clock.systemUTC(), witness)) {
      watcher.start();
      double before = cpuSeconds();
      long began = System.nanoTime();
      burst.run();
      boolean all = witness.all().await(60, TimeUnit.SECONDS);
      double took = (System.nanoTime() - began) / 1e9;
      double cpu = cpuSeconds() - before;
      double[] latencies = witness.latencies();
      System.out.printf(
          Locale.ROOT,
          "%d pairs written in %.1f s (%d a second wanted)%n",
          burst.pairs(),
          took,
          rate);
      System.out.printf(
          Locale.ROOT, "counted %d of %d, all: %s%n", witness.frames(), burst.pairs(), all);
      System.out.printf(
          Locale.ROOT, "counted before complete: %d %s%n", witness.early().size(), witness.early());
      System.out.printf(
          Locale.ROOT,
          "close to counted: p50 %.0f ms, p99 %.0f ms, most %.0f ms%n",
          percentile(latencies, 50),
          percentile(latencies, 99),
          percentile(latencies, 100));
      System.out.printf(
          Locale.ROOT,
          "%d scans handed on; processor, generator included: %.0f %% of one core%n",
          witness.scans(),
          100 * cpu / took);
      if (idleAfter) {
        idle();
      }
    }
  }

  private static void idle() throws InterruptedException {
    Thread.sleep(3000);
    double before = cpuSeconds();
    Thread.sleep(IDLE_SECONDS * 1000L);
    double share = (cpuSeconds() - before) / IDLE_SECONDS;
    System.out.printf(
        Locale.ROOT, "idle, watching: %.2f %% of one core over %d s%n", 100 * share, IDLE_SECONDS);
  }

  private static double cpuSeconds() {
    var system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return system.getProcessCpuTime() / 1e9;
  }

  private static double percentile(double[] sorted, int percent) {
    int at = (int) Math.ceil(sorted.length * percent / 100.0) - 1;
    return sorted.length == 0 ? Double.NaN : sorted[Math.max(0, at)];
  }

  static void delete(Path folder) throws Exception {
    try (var files = Files.walk(folder)) {
      for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
