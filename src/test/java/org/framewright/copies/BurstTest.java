package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.assertj.core.data.Percentage;
import org.framewright.frames.Camera;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.junit.jupiter.api.Test;

/** Rates are worked out by hand: bytes divided by seconds. */
class BurstTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 23, 12, 0);
  private static final long MB = 1_000_000;

  private static Frame frame(String body, Duration after, long raw, long jpeg, long sidecar) {
    var folder = Path.of("/frames");
    var name = body + after.toMillis();
    var files = new ArrayList<FrameFile>();
    files.add(new FrameFile(folder.resolve(name + ".CR3"), raw, Instant.EPOCH, FileRole.RAW));
    if (jpeg > 0) {
      files.add(new FrameFile(folder.resolve(name + ".JPG"), jpeg, Instant.EPOCH, FileRole.JPEG));
    }
    if (sidecar > 0) {
      files.add(
          new FrameFile(folder.resolve(name + ".xmp"), sidecar, Instant.EPOCH, FileRole.SIDECAR));
    }
    return new Frame(
        new FrameId(name),
        folder,
        name,
        files,
        new Capture(
            Optional.of(NOON.plus(after)),
            Optional.empty(),
            Optional.of(new Camera("Studio", "Body", body)),
            OptionalInt.empty()),
        true);
  }

  private static List<Frame> row(String body, int frames, long everyMillis, long startMillis) {
    var row = new ArrayList<Frame>();
    for (int i = 0; i < frames; i++) {
      row.add(frame(body, Duration.ofMillis(startMillis + i * everyMillis), 40 * MB, 10 * MB, 0));
    }
    return row;
  }

  @Test
  void tenFramesASecondOfFiftyMegabytesAreFiveHundredMegabytesASecond() {
    var burst = Burst.fastest(row("a", 21, 100, 1)).orElseThrow();
    assertThat(burst.bytesPerSecond()).isCloseTo(500 * MB, Percentage.withPercentage(0.01));
  }

  @Test
  void theOrderInWhichFramesAreGivenDoesNotMatter() {
    var frames = row("a", 21, 100, 1);
    var burst = Burst.fastest(frames);
    Collections.shuffle(frames, new Random(7));
    assertThat(Burst.fastest(frames)).isEqualTo(burst);
  }

  @Test
  void timesToTheSecondNeverMakeACameraFasterThanItIs() {
    // Three frames a second over four seconds, written as 0 0 0 1 1 1 2 2 2 3 3 3.
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 12; i++) {
      frames.add(frame("a" + "", Duration.ofSeconds(i / 3), 40 * MB + i, 0, 0));
    }
    assertThat(Burst.fastest(frames).orElseThrow().bytesPerSecond())
        .isLessThanOrEqualTo(3 * 40 * MB + 100.0);
  }

  @Test
  void framesThatComeOneByOneAreNoBurst() {
    assertThat(Burst.fastest(row("a", 30, 5000, 0))).isEmpty();
    assertThat(Burst.fastest(row("a", 4, 100, 0))).as("too few").isEmpty();
    assertThat(Burst.fastest(row("a", 5, 100, 0))).as("over too soon").isEmpty();
    assertThat(Burst.fastest(List.of())).isEmpty();
  }

  @Test
  void twoBodiesAtOnceAreTwoRows() {
    var both = row("a", 12, 200, 1);
    both.addAll(row("b", 12, 200, 101));
    assertThat(Burst.fastest(both).orElseThrow().bytesPerSecond())
        .isCloseTo(250 * MB, Percentage.withPercentage(0.01));
  }

  @Test
  void theFastestRowCountsWhateverCameBefore() {
    var frames = row("a", 10, 1000, 1);
    frames.addAll(row("a", 11, 100, 60_001));
    assertThat(Burst.fastest(frames).orElseThrow().bytesPerSecond())
        .isCloseTo(500 * MB, Percentage.withPercentage(0.01));
  }

  @Test
  void whatTheCameraDidNotWriteDoesNotCount() {
    var frames = new ArrayList<Frame>();
    for (int i = 0; i < 11; i++) {
      frames.add(frame("a", Duration.ofMillis(1 + i * 100L), 40 * MB, 0, 90 * MB));
    }
    assertThat(Burst.fastest(frames).orElseThrow().bytesPerSecond())
        .isCloseTo(400 * MB, Percentage.withPercentage(0.01));
  }

  @Test
  void aDiskIsSlowerThanTheCameraOnlyIfItIs() {
    var burst = Burst.fastest(row("a", 21, 100, 1)).orElseThrow();
    assertThat(new WriteSpeed(400e6).isSlowerThan(burst)).isTrue();
    assertThat(new WriteSpeed(510e6).isSlowerThan(burst)).isFalse();
  }
}
