package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiskSpeedTest {
  @TempDir Path temp;
  private CopiesScene scene;
  private Path folder;
  private final AtomicLong seconds = new AtomicLong();

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CopiesScene(temp);
    folder = Evidence.folder(scene.job.folder());
    Assumptions.assumeTrue(
        Files.getFileStore(temp).getUsableSpace() > 2L << 30, "the disk is too full to measure");
  }

  /** A clock on which each look takes a second. */
  private long later() {
    return seconds.incrementAndGet() * 1_000_000_000;
  }

  @Test
  void readsOnceWhatItWroteAndLeavesNothing() throws Exception {
    var speed = DiskSpeed.measure(scene.job, Progress.NONE, this::later).orElseThrow();
    assertThat(speed.written()).isEqualTo((2 << 22) / 4.0);
    // Two pieces, read between two looks at the clock.
    speed.read().ifPresent(read -> assertThat(read).isEqualTo(2 << 22));
    try (var files = Files.list(folder)) {
      assertThat(files.toList()).isEmpty();
    }
  }

  @Test
  void aCopyThatNobodyEndsIsFoundAndOneThatLivesIsNot() throws Exception {
    assertThat(InterruptedCopies.of(scene.job)).isEmpty();
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("copy-00000000000000ab.txt"), scene.one + "\n");
    assertThat(InterruptedCopies.of(scene.job)).isEqualTo(List.of(scene.one.toString()));
    var living = CopyRuns.of(scene.job).begin(List.of(scene.two));
    try {
      assertThat(InterruptedCopies.of(scene.job)).isEqualTo(List.of(scene.one.toString()));
    } finally {
      living.forget();
    }
  }
}
