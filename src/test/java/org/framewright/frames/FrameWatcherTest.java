package org.framewright.frames;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
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
