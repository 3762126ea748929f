package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * What the safety costs: plan, apply with journal, and undo against a bare loop of the same native
 * rename over the same files, in the same run. Arguments: the folder to work in; the count of files
 * (100000 and 10000 if none is told).
 */
public final class RenamerBenchmark {
  private static final int ROUNDS = 3;

  private RenamerBenchmark() {}

  public static void main(String[] args) throws IOException {
    var base =
        Files.createTempDirectory(args.length > 0 ? Path.of(args[0]) : Path.of("."), "bench");
    try {
      run(base, 2_000, false);
      for (int files : args.length > 1 ? new int[] {Integer.parseInt(args[1])} : COUNTS) {
        run(base, files, true);
      }
    } finally {
      delete(base);
    }
  }

  private static final int[] COUNTS = {10_000, 100_000};

  private static void run(Path base, int count, boolean told) throws IOException {
    var root = Files.createDirectory(base.resolve("files" + count));
    var from = new ArrayList<Path>();
    var to = new ArrayList<Path>();
    for (int i = 0; i < count; i++) {
      from.add(Path.of(String.format("IMG_%06d.jpg", i)));
      to.add(Path.of(String.format("2026-11-25_ACME_%03d_%06d.jpg", i / 100, i)));
      Files.createFile(root.resolve(from.get(i)));
    }
    var best =
        new long[] {Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE, Long.MAX_VALUE};
    for (int round = 0; round < ROUNDS; round++) {
      bare(root, from, to, best, 0);
      bare(root, to, from, best, 1);
      var batch = apply(root, from, to, best);
      long start = System.nanoTime();
      var undone = Renamer.in(root).undo(batch, Progress.NONE);
      best[4] = Math.min(best[4], System.nanoTime() - start);
      if (!(undone instanceof Outcome.Applied all) || all.done() != count) {
        throw new IllegalStateException("not all was undone");
      }
    }
    if (told) {
      double bareBoth = best[0] + best[1];
      tell(count, "bare loop, there", best[0], "");
      tell(count, "bare loop, back", best[1], "");
      tell(count, "plan", best[2], "");
      tell(count, "apply", best[3], ratio(best[3] / (double) best[0]));
      tell(count, "undo", best[4], ratio(best[4] / (double) best[1]));
      tell(count, "apply + undo", best[3] + best[4], ratio((best[3] + best[4]) / bareBoth));
      var memory = Runtime.getRuntime();
      System.out.printf(Locale.ROOT, "%7d  heap: at most %d MB%n", count, memory.maxMemory() >> 20);
    }
    delete(root);
  }

  /** Plans and applies; a method of its own, so that the undo does not carry the plan along. */
  private static String apply(Path root, List<Path> from, List<Path> to, long[] best)
      throws IOException {
    var requests = new ArrayList<RenameRequest>();
    for (int i = 0; i < from.size(); i++) {
      requests.add(new RenameRequest(from.get(i), to.get(i)));
    }
    var renamer = Renamer.in(root);
    long start = System.nanoTime();
    var plan = renamer.plan(requests);
    long planned = System.nanoTime();
    var outcome = renamer.apply(plan, Progress.NONE);
    long done = System.nanoTime();
    if (!(outcome instanceof Outcome.Applied applied) || applied.done() != from.size()) {
      throw new IllegalStateException("not all was applied");
    }
    best[2] = Math.min(best[2], planned - start);
    best[3] = Math.min(best[3], done - planned);
    return applied.batch();
  }

  private static String ratio(double ratio) {
    return String.format(Locale.ROOT, "  %.2f x the bare loop", ratio);
  }

  private static void tell(int count, String what, long nanos, String ratio) {
    System.out.printf(
        Locale.ROOT,
        "%7d  %-17s %8.1f ms  %6.2f us a file%s%n",
        count,
        what,
        nanos / 1e6,
        nanos / 1e3 / count,
        ratio);
  }

  private static void bare(Path root, List<Path> from, List<Path> to, long[] best, int slot)
      throws IOException {
    var mover = NativeMover.find().orElseThrow();
    long start = System.nanoTime();
    for (int i = 0; i < from.size(); i++) {
      if (mover.move(root.resolve(from.get(i)), root.resolve(to.get(i))) != MoveResult.MOVED) {
        throw new IllegalStateException("the bare loop met a taken name");
      }
    }
    best[slot] = Math.min(best[slot], System.nanoTime() - start);
  }

  private static void delete(Path folder) throws IOException {
    try (var all = Files.walk(folder)) {
      for (var path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
