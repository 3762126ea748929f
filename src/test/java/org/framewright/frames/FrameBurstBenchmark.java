package org.framewright.frames;

import com.sun.management.OperatingSystemMXBean;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import javax.imageio.ImageIO;
import org.framewright.frames.slate.SlateReading;

/**
 * Thirty pairs of raw and JPEG a second for sixty seconds in real time, watched as on a set: is the
 * count exact, was any frame counted before it was complete, how long from the close of a pair's
 * last file until it counts, and how much of a processor goes while nothing happens. Then the same
 * with each frame searched for slates in its JPEG of 1,620 pixels: what the reader's thread takes
 * meanwhile, and how long it takes for the frames that it put off. Arguments: seconds, pairs a
 * second.
 */
final class FrameBurstBenchmark {
  private static final int EDGE = 1620;
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
      var picture = Optional.of(picture());
      System.out.printf(
          Locale.ROOT,
          "With pictures of %d pixels, %d kB, no slates sought:%n",
          EDGE,
          picture.get().length / 1000);
      var large = Files.createDirectory(folder.resolve("large"));
      var plain = new BurstGenerator(large, rate, seconds, picture);
      var plainWitness = new BurstWitness(plain);
      watched(large, plain, plainWitness, plainWitness);
      System.out.println("The same, slates sought:");
      sought(Files.createDirectory(folder.resolve("sought")), seconds, rate, picture);
    } finally {
      delete(folder);
    }
  }

  private static void burst(Path folder, int seconds, int rate, boolean idleAfter)
      throws Exception {
    var burst = new BurstGenerator(folder, rate, seconds);
    var witness = new BurstWitness(burst);
    watched(folder, burst, witness, witness, idleAfter ? FrameBurstBenchmark::idle : () -> {});
  }

  /** Reads on until all frames that were put off are looked at. */
  private static void sought(Path folder, int seconds, int rate, Optional<byte[]> picture)
      throws Exception {
    var burst = new BurstGenerator(folder, rate, seconds, picture);
    var witness = new BurstWitness(burst);
    var looked = new AtomicInteger();
    var pictures = new AtomicInteger();
    var cpu = new AtomicLong();
    var threads = ManagementFactory.getThreadMXBean();
    try (var queue =
        SlateQueue.inBackground(
            (_, reading) -> {
              looked.incrementAndGet();
              pictures.addAndGet(reading instanceof SlateReading.NoPicture ? 0 : 1);
              cpu.set(threads.getCurrentThreadCpuTime());
            })) {
      long begin = System.nanoTime();
      watched(
          folder,
          burst,
          witness,
          scan -> {
            witness.accept(scan);
            queue.add(scan.distinct());
          },
          () -> {
            double took = (System.nanoTime() - begin) / 1e9;
            System.out.printf(
                Locale.ROOT,
                "meanwhile %d frames were searched, by %.2f s of processor, %.1f %% of one core;"
                    + " %d wait%n",
                looked.get(),
                cpu.get() / 1e9,
                100 * cpu.get() / 1e9 / took,
                queue.waiting());
            long end = System.nanoTime();
            while (queue.waiting() > 0) {
              Thread.sleep(50);
            }
            System.out.printf(
                Locale.ROOT,
                "these were searched in %.1f s; in all %d frames, %d with a picture, %.0f ms of"
                    + " processor each%n",
                (System.nanoTime() - end) / 1e9,
                looked.get(),
                pictures.get(),
                cpu.get() / 1e6 / looked.get());
          });
    }
  }

  /** What is done once all frames of a burst are counted. */
  private interface Afterwards {
    void run() throws InterruptedException;
  }

  private static void watched(
      Path folder, BurstGenerator burst, BurstWitness witness, Consumer<FrameScan> listener)
      throws Exception {
    watched(folder, burst, witness, listener, () -> {});
  }

  private static void watched(
      Path folder,
      BurstGenerator burst,
      BurstWitness witness,
      Consumer<FrameScan> listener,
      Afterwards afterwards)
      throws Exception {
    try (var watcher = new FrameWatcher(folder, Clock.systemUTC(), listener)) {
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
          burst.rate());
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
      afterwards.run();
    }
  }

  /** Something woven, as garments are: nothing in it is a slate. */
  private static byte[] picture() throws IOException {
    var image = new BufferedImage(EDGE, EDGE * 2 / 3, BufferedImage.TYPE_INT_RGB);
    var random = new Random(1);
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < EDGE; x++) {
        int thread = (x / 6 + y / 4) % 2 == 0 ? 150 : 110;
        int grey = thread + (x * 60 / EDGE) + random.nextInt(9);
        image.setRGB(x, y, grey << 16 | grey << 8 | (grey + 10));
      }
    }
    var out = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", out);
    return out.toByteArray();
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
