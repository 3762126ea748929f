package org.framewright.copies.device;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/** A volume in a file, below which a bit can be turned. */
public final class LoopVolume implements AutoCloseable {
  private final Path scratch;
  private final String type;
  private final Path image;
  private final Path mount;
  private String device = "";
  private boolean locked;
  private boolean pulled;

  private LoopVolume(Path scratch, String type) throws IOException {
    this.scratch = scratch;
    this.type = type;
    this.image = scratch.resolve("image");
    this.mount = Files.createDirectories(scratch.resolve("mount"));
  }

  /**
   * Makes one and mounts it; skips the test where that cannot be done here.
   *
   * @param scratch a folder for its image and its mount
   * @param type such as {@code ext4}
   */
  public static LoopVolume of(Path scratch, String type) throws IOException {
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
          default -> List.of("mount", "-o", locked ? "ro" : "rw", device, mount.toString());
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

  /** Where it is mounted. */
  public Path folder() {
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

  /** Unmounts it and mounts it again. */
  public void takeOutAndPutIn() throws IOException {
    detach();
    attach();
  }

  /** The image that it lies in. */
  public Path image() {
    return image;
  }

  /** It can only be read from now on, as a card whose lock is closed. */
  public void lock() throws IOException {
    detach();
    locked = true;
    attach();
  }

  /** It is pulled out while it is used: what is open stays open, its paths lead nowhere. */
  public void pullOut() {
    Commands.run(List.of("umount", "-l", mount.toString()));
    pulled = true;
  }

  private void detach() throws IOException {
    if (type.equals("overlay")) {
      unmount(mount.resolve("merged"));
    }
    if (!pulled) {
      unmount(mount);
    }
    pulled = false;
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
