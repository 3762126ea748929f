package org.framewright.copies.device;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.CleanupMode;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A file is written to a real volume and flushed, then one of its bits is turned round in the image
 * below the volume, as a failing disk does it. Whoever reads it again either sees that, or must not
 * say that the bytes came from the medium.
 */
@Tag("slow")
class BitFlipTest {
  private static final int SIZE = 3_000_001;

  @TempDir(cleanup = CleanupMode.ON_SUCCESS)
  Path scratch;

  private final Volumes volumes = new LinuxVolumes(Path.of("/"), true);

  @ParameterizedTest
  @ValueSource(strings = {"ext4", "ext4-1k", "xfs", "btrfs", "exfat", "ntfs", "overlay"})
  void aTurnedBitIsSeenOrNothingIsClaimed(String type, TestReporter reporter) throws Exception {
    try (var volume = LoopVolume.of(scratch, type)) {
      var bytes = new byte[SIZE];
      new Random(type.hashCode()).nextBytes(bytes);
      var file = volume.folder().resolve("frame.raw");
      write(file, bytes);
      var good = sha256(bytes);
      var before = volumes.read(file, _ -> {}, Progress.NONE);
      assertThat(before.sha256()).isEqualTo(good);

      volume.flip(Arrays.copyOfRange(bytes, SIZE / 2, SIZE / 2 + 64));
      String outcome;
      try {
        var after = volumes.read(file, _ -> {}, Progress.NONE);
        outcome = (after.sha256().equals(good) ? "the old bytes, " : "the flip, ") + after.medium();
        if (after.sha256().equals(good)) {
          assertThat(after.medium()).isEqualTo(Medium.UNSURE);
        }
      } catch (IOException e) {
        outcome = "refused: " + e.getMessage();
      }
      reporter.publishEntry(type, before.medium() + " before; after the flip: " + outcome);
      if (List.of("ext4", "ext4-1k", "xfs", "overlay").contains(type)) {
        assertThat(outcome).isEqualTo("the flip, READ");
        assertThat(before.medium()).isEqualTo(Medium.READ);
      }
      if (type.equals("btrfs")) {
        assertThat(outcome).startsWith("refused");
      }

      // Taken out and put in again, each of them shows what it holds.
      var first = volume.insertion();
      volume.takeOutAndPutIn();
      assertThat(volume.insertion())
          .as("the kernel's number of the insertion")
          .isGreaterThan(first);
      try {
        assertThat(volumes.read(file, _ -> {}, Progress.NONE).sha256()).isNotEqualTo(good);
      } catch (IOException e) {
        assertThat(type).isEqualTo("btrfs");
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"tmpfs"})
  void memoryIsNeverTakenForAMedium(String type) throws Exception {
    try (var volume = LoopVolume.of(scratch, type)) {
      var file = volume.folder().resolve("frame.raw");
      write(file, new byte[SIZE]);
      var reading = volumes.read(file, _ -> {}, Progress.NONE);
      assertThat(reading.medium()).isEqualTo(Medium.UNSURE);
      assertThat(reading.sha256()).isEqualTo(sha256(new byte[SIZE]));
      assertThat(volumes.deviceOf(file).kind()).isEqualTo(Device.Kind.NO_MEDIUM);
    }
  }

  /** On the computer of a person, whose disks are not images, an image claims nothing. */
  @ParameterizedTest
  @ValueSource(strings = {"ext4", "ntfs", "exfat", "btrfs"})
  void anImageInAFileLiesOnTheDiskOfTheFileAndProvesNothing(String type) throws Exception {
    var strict = new LinuxVolumes(Path.of("/"), false);
    try (var volume = LoopVolume.of(scratch, type)) {
      var file = volume.folder().resolve("frame.raw");
      write(file, new byte[SIZE]);
      assertThat(strict.read(file, _ -> {}, Progress.NONE).medium()).isEqualTo(Medium.UNSURE);
      assertThat(Device.compare(strict.deviceOf(file), strict.deviceOf(scratch)))
          .isEqualTo(Device.Sameness.SAME);
    }
  }

  private static void write(Path file, byte[] bytes) throws IOException {
    Files.write(file, bytes);
    try (var channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }

  private static String sha256(byte[] bytes) throws Exception {
    var digest = MessageDigest.getInstance("SHA-256");
    return HexFormat.of().formatHex(digest.digest(bytes));
  }
}
