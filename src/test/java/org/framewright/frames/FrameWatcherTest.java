package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Predicate;
import org.framewright.base.OperatingSystem;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FrameWatcherTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);
  private static final int PATIENCE_SECONDS = 60;

  @TempDir Path parent;
  private final TestCamera camera = new TestCamera("Studio Body A", "A-1001");
  private final LinkedBlockingQueue<FrameScan> scans = new LinkedBlockingQueue<>();

  @Test
  void handsTheFirstScanOnEvenWhereNothingLies() throws Exception {
    try (var watcher = watcher(parent)) {
      watcher.start();
      assertThat(await(scan -> true).frames()).isEmpty();
    }
  }

  @Test
  void followsFramesThatComeGoAndAreRenamed() throws Exception {
    try (var watcher = watcher(parent)) {
      watcher.start();
      write(parent.resolve("a.jpg"), 1);
      await(scan -> complete(scan) == 1);
      write(parent.resolve("day/two/b.jpg"), 2);
      await(scan -> complete(scan) == 2);
      Files.move(parent.resolve("a.jpg"), parent.resolve("c.jpg"));
      await(scan -> complete(scan) == 2 && scan.frames().getFirst().stem().equals("c"));
      Files.delete(parent.resolve("day/two/b.jpg"));
      Files.delete(parent.resolve("day/two"));
      await(scan -> scan.frames().size() == 1);
    }
  }

  @Tag("slow")
  @Test
  void keepsTheCountWhileTheFolderIsGoneAndLooksAnewWhenItIsBack() throws Exception {
    var root = Files.createDirectory(parent.resolve("drive"));
    write(root.resolve("a.jpg"), 1);
    try (var watcher = watcher(root)) {
      watcher.start();
      await(scan -> complete(scan) == 1);
      var away = parent.resolve("unplugged");
      Files.move(root, away);
      var gone = await(scan -> !scan.problems().isEmpty());
      assertThat(complete(gone)).isEqualTo(1);
      assertThat(gone.problems().getFirst().what()).contains("gone");
      write(away.resolve("b.jpg"), 2);
      Files.move(away, root);
      await(scan -> complete(scan) == 2 && scan.problems().isEmpty());
      write(root.resolve("c.jpg"), 3);
      await(scan -> complete(scan) == 3);
    }
  }

  @Test
  void startsBeforeTheFolderIsThere() throws Exception {
    var root = parent.resolve("later");
    try (var watcher = watcher(root)) {
      watcher.start();
      await(scan -> !scan.problems().isEmpty());
      write(root.resolve("a.jpg"), 1);
      await(scan -> complete(scan) == 1 && scan.problems().isEmpty());
    }
  }

  @Test
  void aListenerThatFailsDoesNotEndTheWatch() throws Exception {
    var watcher =
        new FrameWatcher(
            parent,
            Clock.systemUTC(),
            scan -> {
              scans.add(scan);
              if (scan.frames().isEmpty()) {
                throw new IllegalStateException("on purpose");
              }
            });
    try (watcher) {
      watcher.start();
      await(scan -> scan.frames().isEmpty());
      write(parent.resolve("a.jpg"), 1);
      await(scan -> complete(scan) == 1);
    }
  }

  /** Three seconds of the burst that the benchmark writes for sixty. */
  @Tag("slow")
  @Test
  void countsABurstExactlyAndNoFrameBeforeItIsComplete() throws Exception {
    var burst = new BurstGenerator(parent, 30, 3);
    var witness = new BurstWitness(burst);
    try (var watcher = new FrameWatcher(parent, Clock.systemUTC(), witness)) {
      watcher.start();
      burst.run();
      assertThat(witness.all().await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
    }
    assertThat(witness.early()).isEmpty();
    assertThat(witness.frames()).isEqualTo(burst.pairs());
    var again = new FrameScanner(parent).scan();
    assertThat(again.frames()).hasSize(burst.pairs()).allMatch(Frame::complete);
    assertThat(again.files()).isEqualTo(2 * burst.pairs());
  }

  @Tag("slow")
  @Test
  void anErrorWhileLookingIsReportedAndTheWatchGoesOn() throws Exception {
    write(parent.resolve("a.jpg"), 1);
    for (var failure : List.of(new OutOfMemoryError("on purpose"), new ArithmeticException())) {
      scans.clear();
      var failures = new AtomicInteger(2);
      var scanner =
          new FrameScanner(
              parent,
              Clock.systemUTC(),
              (path, role, room) -> {
                if (failures.getAndDecrement() > 0) {
                  throw thrown(failure);
                }
                return FileReading.of(path, role, room);
              });
      try (var watcher = new FrameWatcher(scanner, scans::add)) {
        watcher.start();
        var failed = await(scan -> !scan.problems().isEmpty());
        assertThat(failed.problems().getFirst().what()).contains("could not be looked at");
        assertThat(failed.problems().getFirst().remedy()).isNotEmpty();
        assertThat(failed.problems().getFirst().where()).isEqualTo(parent.toString());
        await(scan -> complete(scan) == 1 && scan.problems().isEmpty());
      }
    }
  }

  private static RuntimeException thrown(Throwable failure) {
    if (failure instanceof Error error) {
      throw error;
    }
    return (RuntimeException) failure;
  }

  @Test
  void anErrorOfTheListenerDoesNotEndTheWatchEither() throws Exception {
    var watcher =
        new FrameWatcher(
            parent,
            Clock.systemUTC(),
            scan -> {
              scans.add(scan);
              if (scan.frames().isEmpty()) {
                throw new StackOverflowError("on purpose");
              }
            });
    try (watcher) {
      watcher.start();
      await(scan -> scan.frames().isEmpty());
      write(parent.resolve("a.jpg"), 1);
      await(scan -> complete(scan) == 1);
    }
  }

  @Test
  void closingStopsALookThatIsUnderWay() throws Exception {
    for (int i = 0; i < 200; i++) {
      write(parent.resolve("a" + i + ".jpg"), i);
    }
    var reads = new AtomicInteger();
    var reading = new CountDownLatch(1);
    var closing = new CountDownLatch(1);
    var scanner =
        new FrameScanner(
            parent,
            () -> Instant.now().plusSeconds(60),
            (path, role, room) -> {
              reads.incrementAndGet();
              reading.countDown();
              waitFor(closing);
              return FileReading.of(path, role, room);
            });
    var watcher = new FrameWatcher(scanner, scans::add);
    watcher.start();
    assertThat(reading.await(PATIENCE_SECONDS, TimeUnit.SECONDS)).isTrue();
    var close = Thread.ofPlatform().daemon().start(watcher::close);
    // The watch is to end before anything further is read.
    while (close.getState() != Thread.State.WAITING && close.isAlive()) {
      Thread.onSpinWait();
    }
    closing.countDown();
    close.join(TimeUnit.SECONDS.toMillis(PATIENCE_SECONDS));
    assertThat(close.isAlive()).isFalse();
    assertThat(reads).hasValueLessThan(100);
    assertThat(scans).isEmpty();
  }

  private static void waitFor(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Tag("slow")
  @Test
  void leavesNoThreadsHoweverOftenItsFolderGoesAndComesBack() throws Exception {
    var root = Files.createDirectory(parent.resolve("drive-" + System.nanoTime()));
    write(root.resolve("a.jpg"), 1);
    var away = parent.resolve("unplugged");
    try (var watcher = watcher(root)) {
      watcher.start();
      await(scan -> complete(scan) == 1);
      for (int i = 0; i < 3; i++) {
        Files.move(root, away);
        await(scan -> !scan.problems().isEmpty());
        Files.move(away, root);
        await(scan -> scan.problems().isEmpty());
      }
      assertThat(threadsOf(root)).isBetween(1L, 4L);
    }
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    while (threadsOf(root) > 0 && System.nanoTime() < end) {
      Thread.sleep(20);
    }
    assertThat(threadsOf(root)).isZero();
  }

  /** Events come on a thread of their own, which holds the folder open on Windows. */
  @Test
  void onWindowsNobodyListensWhileNothingChangesAndFramesAreSeenAllTheSame() throws Exception {
    var root = Files.createDirectory(parent.resolve("drive-" + System.nanoTime()));
    var resting = new Listening(OperatingSystem.WINDOWS, Duration.ZERO);
    try (var watcher = new FrameWatcher(new FrameScanner(root), scans::add, resting)) {
      watcher.start();
      await(scan -> true);
      assertThat(threadsOf(root)).isEqualTo(1);
      write(root.resolve("a.jpg"), 1);
      await(scan -> complete(scan) == 1);
      assertThat(threadsOf(root)).isEqualTo(1);
    }
  }

  @Test
  void eventsAreExpectedOfOwnDisksOnlyAndNeverOnWindowsWhichHidesShares() {
    var linux = new Listening(OperatingSystem.LINUX, Duration.ZERO);
    var macos = new Listening(OperatingSystem.MACOS, Duration.ZERO);
    var windows = new Listening(OperatingSystem.WINDOWS, Duration.ZERO);
    for (var own : List.of("ext4", "btrfs", "exfat", "tmpfs")) {
      assertThat(linux.comeFrom(own)).as(own).isTrue();
    }
    assertThat(macos.comeFrom("apfs")).isTrue();
    for (var other : List.of("nfs4", "cifs", "smb3", "smbfs", "fuseblk", "fuse.sshfs", "9p", "")) {
      assertThat(linux.comeFrom(other)).as(other).isFalse();
    }
    assertThat(windows.comeFrom("exFAT")).isFalse();
  }

  @Test
  void whileFramesComeTheyAreListenedForOnEverySystem() {
    var rest = Duration.ofMinutes(5);
    var justNow = rest.minusNanos(1);
    for (var system : OperatingSystem.values()) {
      assertThat(new Listening(system, rest).listens(justNow)).isTrue();
      assertThat(new Listening(system, rest).listens(rest))
          .isEqualTo(system != OperatingSystem.WINDOWS);
    }
  }

  private static long threadsOf(Path root) {
    return Thread.getAllStackTraces().keySet().stream()
        .filter(thread -> thread.getName().contains(root.getFileName().toString()))
        .count();
  }

  @Test
  void closingTwiceOrBeforeTheStartDoesNoHarm() {
    var watcher = watcher(parent);
    watcher.close();
    watcher.close();
    assertThat(scans).isEmpty();
  }

  private FrameWatcher watcher(Path root) {
    return new FrameWatcher(root, Clock.systemUTC(), scans::add);
  }

  private static int complete(FrameScan scan) {
    return (int) scan.frames().stream().filter(Frame::complete).count();
  }

  private FrameScan await(Predicate<FrameScan> wanted) throws InterruptedException {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    FrameScan scan = null;
    while (System.nanoTime() < end) {
      var next = scans.poll(1, TimeUnit.SECONDS);
      if (next != null) {
        scan = next;
        if (wanted.test(scan)) {
          return scan;
        }
      }
    }
    throw new AssertionError("the scan waited for never came; the last was " + scan);
  }

  private void write(Path file, int second) throws IOException {
    Files.createDirectories(file.getParent());
    Files.write(file, camera.jpeg(NOON.plusSeconds(second)));
  }
}
