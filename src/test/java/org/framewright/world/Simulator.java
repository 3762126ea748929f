package org.framewright.world;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Plays days, one job after the other: {@code mvn -q -Psimulate -Ddays=1000 -Dseed=N}. What fails
 * is made short and told.
 */
final class Simulator {
  private static final Path MEMORY = Path.of("/dev/shm");

  /** A script that failed, with the step at which it did. */
  record Failure(long seed, List<Step> steps, int at, Throwable why) {}

  private Simulator() {}

  public static void main(String[] args) throws Exception {
    int days = args.length > 0 ? Integer.parseInt(args[0]) : 100;
    long seed =
        args.length > 1 && !args[1].isBlank()
            ? Long.parseLong(args[1])
            : System.nanoTime() / 1000 % 1_000_000;
    int most = args.length > 2 ? Integer.parseInt(args[2]) : 1;
    int threads = args.length > 3 ? Integer.parseInt(args[3]) : 2;
    System.out.println("seed " + seed);
    var counts = new Counts();
    long began = System.nanoTime();
    var failures = play(days, seed, most, threads, counts);
    double seconds = (System.nanoTime() - began) / 1e9;
    boolean told = args.length < 5;
    if (!failures.isEmpty()) {
      System.out.println("failed after " + counts.days() + " days");
    }
    for (var failure : failures) {
      System.out.println(
          told ? Shrinking.story(Shrinking.shortest(failure)) : "  then: " + failure.why());
    }
    System.out.println(counts);
    System.out.printf(
        "%d failures, %.0f s, %.0f days a minute%n",
        failures.size(), seconds, counts.days() * 60 / seconds);
    System.exit(failures.isEmpty() ? 0 : 1);
  }

  /**
   * Plays jobs of the seeds from one on.
   *
   * @param most after how many failures no other job is begun
   */
  static List<Failure> play(int days, long seed, int most, int threads, Counts counts)
      throws InterruptedException {
    var next = new AtomicLong(seed);
    var begun = new AtomicLong();
    var failures = new ConcurrentLinkedQueue<Failure>();
    Runnable plays =
        () -> {
          while (failures.size() < most) {
            long one = next.getAndIncrement();
            if (begun.getAndAdd(Script.days(one)) >= days) {
              return;
            }
            play(one, Script.of(one), counts).ifPresent(failures::add);
          }
        };
    var all = new Thread[threads];
    for (int i = 0; i < threads; i++) {
      all[i] = Thread.ofPlatform().start(plays);
    }
    for (var thread : all) {
      thread.join();
    }
    return List.copyOf(failures);
  }

  /** Plays one script to its end, or to where it fails. */
  static Optional<Failure> play(long seed, List<Step> steps, Counts counts) {
    int at = 0;
    try (var world = new World(folder(), counts)) {
      for (; at < steps.size(); at++) {
        world.play(steps.get(at));
      }
      return Optional.empty();
    } catch (Exception | Error e) {
      return Optional.of(new Failure(seed, steps, at, e));
    }
  }

  private static Path folder() throws IOException {
    return Files.isWritable(MEMORY)
        ? Files.createTempDirectory(MEMORY, "framewright-world")
        : Files.createTempDirectory("framewright-world");
  }
}
