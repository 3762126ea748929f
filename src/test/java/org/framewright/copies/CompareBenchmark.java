package org.framewright.copies;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.framewright.base.Progress;
import org.framewright.copies.device.Device;

/**
 * A comparison of a card and a backup, each of four files of 96 MiB, as a ratio to the slower of
 * two things that it cannot be faster than: the JDK's SHA-256 of as many bytes in memory on as many
 * threads, and reading them from the disk, past memory, without any use; the best of some rounds,
 * all in one run. On two cores, hashing takes them both, and a disk that delivers more than they
 * can hash is not met. How it does on a card's speed (UHS-II delivers 0.31 GB/s at most) is seen on
 * Linux by a limit to what the disk delivers, {@code blkio.throttle.read_bps_device}.
 */
final class CompareBenchmark {
  private static final int FILES = 4;
  private static final int SIZE = 96 << 20;
  private static final int ROUNDS = 5;

  private CompareBenchmark() {}

  /** Each folder is a disk of its own, so that each is read by a thread of its own. */
  private static final class Apart extends CopyScene.Disturbed {
    private final List<Path> disks;

    Apart(Path... disks) {
      this.disks = List.of(disks);
    }

    @Override
    public Device deviceOf(Path path) throws IOException {
      var disk = disks.stream().filter(path.toRealPath()::startsWith).findFirst().orElseThrow();
      return new Device("disk:" + disk, Device.Kind.DISK, "" + disk);
    }
  }

  /** Of a module that the compiler warns of. */
  static OpenOption direct() throws ClassNotFoundException {
    for (var option : Class.forName("com.sun.nio.file.ExtendedOpenOption").getEnumConstants()) {
      if (option.toString().equals("DIRECT")) {
        return (OpenOption) option;
      }
    }
    throw new IllegalStateException("this Java does not read past memory");
  }

  public static void main(String[] args) throws Exception {
    var scene = new CopyScene(Files.createTempDirectory("compare-benchmark"));
    var random = new Random(1);
    var bytes = new byte[SIZE];
    for (int i = 0; i < FILES; i++) {
      random.nextBytes(bytes);
      scene.file("f" + i, bytes);
    }
    CopyScene.done(scene.copy(scene.first));
    var request =
        new CopiesRequest(List.of(scene.first), List.of(scene.card), 1, List.of(), "Ines");
    double hash = Double.MAX_VALUE;
    double disk = Double.MAX_VALUE;
    double both = Double.MAX_VALUE;
    double compare = Double.MAX_VALUE;
    double oneDisk = Double.MAX_VALUE;
    double busy = Double.MAX_VALUE;
    double busyReading = Double.MAX_VALUE;
    for (int round = 0; round < ROUNDS; round++) {
      hash = Math.min(hash, seconds(() -> inParallel(() -> hash(bytes), () -> hash(bytes))));
      both =
          Math.min(
              both,
              seconds(
                  () ->
                      inParallel(
                          () -> hash(bytes),
                          () -> hash(bytes),
                          () -> read(scene.card),
                          () -> read(scene.first))));
      disk = Math.min(disk, seconds(() -> read(scene.card)) + seconds(() -> read(scene.first)));
      double before = busy();
      inParallel(() -> read(scene.card), () -> read(scene.first));
      busyReading = Math.min(busyReading, busy() - before);
      disk =
          Math.min(
              disk, seconds(() -> inParallel(() -> read(scene.card), () -> read(scene.first))));
      var comparison = new Comparison(scene.job(), new Apart(scene.card, scene.first, scene.root));
      var ofOneDisk = new Comparison(scene.job(), new Apart(scene.root));
      oneDisk = Math.min(oneDisk, seconds(() -> ofOneDisk.run(request, Progress.NONE)));
      before = busy();
      compare = Math.min(compare, seconds(() -> comparison.run(request, Progress.NONE)));
      busy = Math.min(busy, busy() - before);
    }
    double bound = Math.max(hash, disk);
    System.out.printf(
        "compare %.2f s (%.2f GB/s); SHA-256 in memory %.2f s, the disk %.2f s; speed against the"
            + " slower of the two: %.2f%n",
        compare, 2e-9 * FILES * SIZE / compare, hash, disk, bound / compare);
    System.out.printf(
        "as two folders of one disk %.2f s (%.2f GB/s): %.2f%n",
        oneDisk, 2e-9 * FILES * SIZE / oneDisk, bound / oneDisk);
    System.out.printf(
        "hashing as much in memory while as much is read, neither used: %.2f s; speed against it:"
            + " %.2f%n",
        both, both / compare);
    int cores = Runtime.getRuntime().availableProcessors();
    System.out.printf(
        "processor time: compare %.2f s, reading %.2f s; %d cores, busy for %.2f of the time%n",
        busy, busyReading, cores, busy / compare / cores);
  }

  /** Seconds of processor time that this program had so far. */
  private static double busy() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime()
        / 1e9;
  }

  private static double seconds(Callable<?> work) throws Exception {
    long start = System.nanoTime();
    work.call();
    return (System.nanoTime() - start) / 1e9;
  }

  private static Object inParallel(Callable<?>... work) throws Exception {
    try (var threads = Executors.newFixedThreadPool(work.length)) {
      var running = new ArrayList<Future<?>>();
      for (var one : work) {
        running.add(threads.submit(one));
      }
      for (var each : running) {
        each.get();
      }
    }
    return null;
  }

  /** The content of one folder. */
  private static Object hash(byte[] bytes) throws Exception {
    var digest = MessageDigest.getInstance("SHA-256");
    for (int i = 0; i < FILES; i++) {
      digest.update(bytes);
    }
    return digest.digest();
  }

  private static Object read(Path folder) throws Exception {
    for (int i = 0; i < FILES; i++) {
      var file = folder.resolve("f" + i);
      int block = (int) Files.getFileStore(file).getBlockSize();
      try (var channel = FileChannel.open(file, StandardOpenOption.READ, direct())) {
        var piece = ByteBuffer.allocateDirect((1 << 20) + block).alignedSlice(block);
        for (long at = 0; at < SIZE; at += 1 << 20) {
          channel.read(piece.clear().limit(1 << 20), at);
        }
      }
    }
    return null;
  }
}
