package org.framewright.copies.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;
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

  /** A volume in a file, below which a bit can be turned. */
  static final class LoopVolume implements AutoCloseable {
    private final Path scratch;
    private final String type;
    private final Path image;
    private final Path mount;
    private String device = "";

    private LoopVolume(Path scratch, String type) throws IOException {
      this.scratch = scratch;
      this.type = type;
      this.image = scratch.resolve("image");
      this.mount = Files.createDirectories(scratch.resolve("mount"));
    }

    static LoopVolume of(Path scratch, String type) throws IOException {
      var volume = new LoopVolume(scratch.toRealPath(), type);
      volume.make();
      volume.attach();
      return volume;
    }

    private void make() throws IOException {
      var mkfs =
          switch (type) {
            case "ext4", "overlay" -> List.of("mkfs.ext4", "-q", "-F");
            case "ext4-1k" -> List.of("mkfs.ext4", "-q", "-F", "-b", "1024");
            case "xfs" -> List.of("mkfs.xfs", "-q", "-f");
            case "btrfs" -> List.of("mkfs.btrfs", "-q", "-f");
            case "exfat" -> List.of("mkfs.exfat");
            case "ntfs" -> List.of("mkfs.ntfs", "-q", "-F", "-Q");
            default -> List.<String>of();
          };
      if (mkfs.isEmpty()) {
        return;
      }
      try (var file = new RandomAccessFile(image.toFile(), "rw")) {
        file.setLength(320L << 20);
      }
      var command = new ArrayList<>(mkfs);
      command.add(image.toString());
      Commands.runOrSkip(command);
    }

    private void attach() throws IOException {
      if (type.equals("tmpfs")) {
        Commands.runOrSkip(
            List.of("mount", "-t", "tmpfs", "-o", "size=16m", "none", mount.toString()));
        return;
      }
      device = Commands.runOrSkip(List.of("losetup", "--find", "--show", image.toString())).strip();
      var mounting =
          switch (type) {
            case "ntfs" -> List.of("ntfs-3g", device, mount.toString());
            case "exfat" -> List.of("mount.exfat-fuse", device, mount.toString());
            default -> List.of("mount", device, mount.toString());
          };
      Commands.runOrSkip(mounting);
      if (type.equals("overlay")) {
        var on = mount.toString();
        for (var name : List.of("lower", "upper", "work", "merged")) {
          Files.createDirectories(mount.resolve(name));
        }
        Commands.runOrSkip(
            List.of(
                "mount",
                "-t",
                "overlay",
                "overlay",
                "-o",
                "lowerdir=" + on + "/lower,upperdir=" + on + "/upper,workdir=" + on + "/work",
                on + "/merged"));
      }
    }

    Path folder() {
      return type.equals("overlay") ? mount.resolve("merged") : mount;
    }

    /** Turns one bit of these bytes, wherever they lie in the image. */
    void flip(byte[] there) throws IOException {
      Commands.run(List.of("sync"));
      try (var file = new RandomAccessFile(image.toFile(), "rw")) {
        long at = find(file, there);
        file.seek(at);
        int old = file.read();
        file.seek(at);
        file.write(old ^ 1);
        file.getFD().sync();
      }
    }

    private static long find(RandomAccessFile file, byte[] there) throws IOException {
      var window = new byte[1 << 20];
      for (long at = 0; at < file.length(); at += window.length - there.length) {
        file.seek(at);
        int count = file.read(window);
        for (int i = 0; i + there.length <= count; i++) {
          if (window[i] == there[0]
              && Arrays.equals(window, i, i + there.length, there, 0, there.length)) {
            return at + i;
          }
        }
      }
      throw new IOException("the bytes are not in the image");
    }

    /** Source: the kernel's documentation, ABI/testing/sysfs-block, {@code diskseq}. */
    long insertion() throws IOException {
      var name = device.substring(device.lastIndexOf('/') + 1);
      return Long.parseLong(Files.readString(Path.of("/sys/class/block", name, "diskseq")).strip());
    }

    void takeOutAndPutIn() throws IOException {
      detach();
      attach();
    }

    private void detach() throws IOException {
      if (type.equals("overlay")) {
        unmount(mount.resolve("merged"));
      }
      unmount(mount);
      if (!device.isEmpty()) {
        Commands.run(List.of("losetup", "-d", device));
        device = "";
      }
    }

    private static void unmount(Path folder) throws IOException {
      for (int i = 0; i < 50; i++) {
        if (Commands.run(List.of("umount", folder.toString()))) {
          return;
        }
        LockSupport.parkNanos(100_000_000L);
      }
      Commands.run(List.of("umount", "-l", folder.toString()));
    }

    @Override
    public void close() throws IOException {
      detach();
      Files.deleteIfExists(scratch.resolve("image"));
    }
  }
}
