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

class WriteSpeedTest {
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

  private List<Path> left() throws Exception {
    try (var files = Files.list(folder)) {
      return files.toList();
    }
  }

  @Test
  void itIsWhatWasWrittenInTheTimeThatItTookAndNothingIsLeft() throws Exception {
    var speed = WriteSpeed.measure(scene.job, Progress.NONE, this::later).orElseThrow();
    // Two pieces of 4 MiB fit into three seconds of this clock, whose last look is the fourth.
    assertThat(speed.bytesPerSecond()).isEqualTo((2 << 22) / 4.0);
    assertThat(left()).isEmpty();
  }

  @Test
  void whatAKilledMeasurementLeftIsRemoved() throws Exception {
    Files.createDirectories(folder);
    Files.writeString(folder.resolve("write-speed.part"), "half");
    assertThat(WriteSpeed.measure(scene.job, Progress.NONE, this::later)).isPresent();
    assertThat(left()).isEmpty();
  }

  @Test
  void stoppedItSaysNothingAndLeavesNothing() throws Exception {
    assertThat(WriteSpeed.measure(scene.job, Progress.until(() -> true), this::later)).isEmpty();
    assertThat(left()).isEmpty();
  }

  @Test
  void aRealDiskHasASpeed() throws Exception {
    assertThat(WriteSpeed.measure(scene.job, Progress.NONE).orElseThrow().bytesPerSecond())
        .isPositive();
  }
}
