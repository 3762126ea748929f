package org.framewright.renaming;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.framewright.base.Progress;

/**
 * What the safety costs: plan, apply with journal, and undo against a bare loop of the same native
 * rename over the same files, in the same run; the best of some rounds. Time on the clock, and
 * processor time of the whole program above that of the bare loop, in microseconds a file, which
 * can be compared between machines; a plan renames nothing, so nothing is subtracted from it.
 * Arguments: the folder to work in; the count of files (10000 and 100000 if none is given).
 */
public final class RenamerBenchmark {
  private static final int ROUNDS = 5;
  private static final int[] COUNTS = {10_000, 100_000};

  private static final com.sun.management.OperatingSystemMXBean SYSTEM =
      ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class);

  private final Path root;
  private final int count;

  /** The best time of one kind of work. */
  private static final class Best {
    private long wall = Long.MAX_VALUE;
    private long processor = Long.MAX_VALUE;

    private interface Work<T> {
      T run() throws IOException;
    }

    <T> T of(Work<T> work) throws IOException {
      System.gc(); // Each command is a process of its own: none pays for another's garbage.
      long processorStart = SYSTEM.getProcessCpuTime();
      long start = System.nanoTime();
      var result = work.run();
      wall = Math.min(wall, System.nanoTime() - start);
      processor = Math.min(processor, SYSTEM.getProcessCpuTime() - processorStart);
      return result;
    }
  }

  private RenamerBenchmark(Path root, int count) throws IOException {
    this.root = root;
    this.count = count;
    for (var name : olds()) {
      Files.createFile(root.resolve(name));
    }
  }

  private List<Path> olds() {
    return names(i -> String.format(Locale.ROOT, "IMG_%06d.jpg", i));
  }

  private List<Path> news() {
    return names(i -> String.format(Locale.ROOT, "2026-11-25_NOVA_%03d_%06d.jpg", i / 100, i));
  }

  private List<Path> names(IntFunction<String> name) {
    return IntStream.range(0, count).mapToObj(name).map(Path::of).toList();
  }

  public static void main(String[] args) throws IOException {
    var place = args.length > 0 ? Path.of(args[0]) : Path.of(System.getProperty("java.io.tmpdir"));
    var base = Files.createTempDirectory(place, "bench");
    try {
      new RenamerBenchmark(Files.createDirectory(base.resolve("warm")), 2_000).run(false);
      for (int count : args.length > 1 ? new int[] {Integer.parseInt(args[1])} : COUNTS) {
        new RenamerBenchmark(Files.createDirectory(base.resolve("files" + count)), count).run(true);
      }
    } finally {
      delete(base);
    }
  }

  private void run(boolean shown) throws IOException {
    var there = new Best();
    var back = new Best();
    var plan = new Best();
    var apply = new Best();
    var undo = new Best();
    for (int round = 0; round < ROUNDS; round++) {
      bare(there, back);
      var batch = planned(plan, apply);
      check(undo.of(() -> Renamer.in(root).undo(batch, Progress.NONE)));
    }
    if (shown) {
      System.out.printf(Locale.ROOT, "%d files, heap of at most %d MB%n", count, heapMegabytes());
      print("bare loop", there, there);
      print("plan", plan, there);
      print("apply with journal", apply, there);
      print("bare loop back", back, back);
      print("undo", undo, back);
    }
  }

  private void bare(Best there, Best back) throws IOException {
    var olds = olds();
    var news = news();
    there.of(() -> bare(olds, news));
    back.of(() -> bare(news, olds));
  }

  /** A method of its own, so that the undo does not carry the plan along. */
  private String planned(Best plan, Best apply) throws IOException {
    var requests = new ArrayList<RenameRequest>();
    var olds = olds();
    var news = news();
    for (int i = 0; i < count; i++) {
      requests.add(new RenameRequest(olds.get(i), news.get(i)));
    }
    var renamer = Renamer.in(root);
    var made = plan.of(() -> renamer.plan(requests));
    return check(apply.of(() -> renamer.apply(made, Progress.NONE)));
  }

  private String check(Outcome outcome) {
    if (outcome instanceof Outcome.Applied applied && applied.done() == count) {
      return applied.batch();
    }
    throw new IllegalStateException("not all was renamed");
  }

  private boolean bare(List<Path> olds, List<Path> news) throws IOException {
    var mover = NativeMover.find().orElseThrow();
    for (int i = 0; i < olds.size(); i++) {
      if (mover.move(root.resolve(olds.get(i)), root.resolve(news.get(i))) != MoveResult.MOVED) {
        throw new IllegalStateException("the bare loop met a taken name");
      }
    }
    return true;
  }

  /** One line; a plan renames nothing, so nothing is subtracted from it. */
  private void print(String what, Best best, Best bare) {
    long subtracted = what.equals("plan") ? 0 : bare.processor;
    System.out.printf(
        Locale.ROOT,
        "  %-19s %8.1f ms  %6.2f us a file  %5.2f x    processor %8.1f ms  %6.2f us above bare%n",
        what,
        best.wall / 1e6,
        best.wall / 1e3 / count,
        best.wall / (double) bare.wall,
        best.processor / 1e6,
        (best.processor - subtracted) / 1e3 / count);
  }

  private static long heapMegabytes() {
    return Runtime.getRuntime().maxMemory() >> 20;
  }

  private static void delete(Path folder) throws IOException {
    try (var all = Files.walk(folder)) {
      for (var path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
