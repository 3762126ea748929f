package org.framewright.frames;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;

/**
 * Writes pairs of raw and JPEG in real time as cameras and their software do, and worse: in pieces,
 * several files at once, either file first, with stalls, under temporary names that are changed at
 * the end, and into room that was taken before. Notes when each file was closed.
 */
final class BurstGenerator {
  private static final LocalDateTime START = LocalDateTime.of(2026, 11, 25, 9, 0);
  private static final int PIECES = 5;

  private final Path folder;
  private final int pairsPerSecond;
  private final int pairs;
  private final Optional<byte[]> picture;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");

  /** When each file was whole and closed, by {@link System#nanoTime}. */
  private final Map<Path, Long> closed = new ConcurrentHashMap<>();

  BurstGenerator(Path folder, int pairsPerSecond, int seconds) {
    this(folder, pairsPerSecond, seconds, Optional.empty());
  }

  /**
   * @param picture what is to be seen in each JPEG, as one; else a small one
   */
  BurstGenerator(Path folder, int pairsPerSecond, int seconds, Optional<byte[]> picture) {
    this.picture = picture;
    this.folder = folder;
    this.pairsPerSecond = pairsPerSecond;
    this.pairs = pairsPerSecond * seconds;
  }

  int rate() {
    return pairsPerSecond;
  }

  int pairs() {
    return pairs;
  }

  Map<Path, Long> closed() {
    return closed;
  }

  /** Writes all pairs; returns when the last is closed. */
  void run() throws IOException, InterruptedException {
    var work = new ArrayList<Future<?>>();
    try (var writers = Executors.newScheduledThreadPool(16)) {
      for (int i = 0; i < pairs; i++) {
        int number = i;
        var random = new Random(number);
        long at = 1_000_000_000L * i / pairsPerSecond;
        long other = at + (random.nextInt(4) == 0 ? random.nextInt(300) * 1_000_000L : 0);
        boolean rawFirst = random.nextBoolean();
        work.add(
            writers.schedule(
                () -> write(number, true, random.nextLong()),
                rawFirst ? at : other,
                TimeUnit.NANOSECONDS));
        work.add(
            writers.schedule(
                () -> write(number, false, number * 31L),
                rawFirst ? other : at,
                TimeUnit.NANOSECONDS));
      }
      for (var one : work) {
        one.get();
      }
    } catch (ExecutionException e) {
      throw new IOException(e.getCause());
    }
  }

  private Void write(int number, boolean raw, long seed) throws IOException, InterruptedException {
    var random = new Random(seed);
    var time = START.plusNanos(number * 1_000_000_000L / pairsPerSecond);
    byte[] content = raw ? camera.raw(time, 20_000) : jpeg(time);
    var file = folder.resolve("B_%05d.%s".formatted(number, raw ? "CR2" : "JPG"));
    boolean temporary = random.nextInt(5) == 0;
    boolean roomTaken = random.nextInt(10) == 0;
    var writing = temporary ? file.resolveSibling(file.getFileName() + ".tmp") : file;
    try (var out = new RandomAccessFile(writing.toFile(), "rw")) {
      if (roomTaken) {
        out.setLength(content.length);
      }
      for (var piece : pieces(content.length, random)) {
        out.write(content, piece[0], piece[1]);
        if (piece[0] + piece[1] == content.length) {
          break;
        }
        boolean stalls = random.nextInt(25) == 0;
        Thread.sleep(stalls ? 150 + random.nextInt(250) : random.nextInt(15));
      }
    }
    if (temporary) {
      Files.move(writing, file, StandardCopyOption.ATOMIC_MOVE);
    }
    closed.put(file, System.nanoTime());
    return null;
  }

  private byte[] jpeg(LocalDateTime time) {
    return picture.map(shown -> camera.jpeg(time, 1, shown)).orElseGet(() -> camera.jpeg(time));
  }

  private static List<int[]> pieces(int length, Random random) {
    var cuts = new ArrayList<Integer>(List.of(0, length));
    for (int i = 1; i < PIECES; i++) {
      cuts.add(random.nextInt(length));
    }
    Collections.sort(cuts);
    var pieces = new ArrayList<int[]>();
    for (int i = 1; i < cuts.size(); i++) {
      pieces.add(new int[] {cuts.get(i - 1), cuts.get(i) - cuts.get(i - 1)});
    }
    return pieces;
  }
}
