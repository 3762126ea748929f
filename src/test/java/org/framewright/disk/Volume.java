package org.framewright.disk;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assumptions;

/** A volume of its own, in a file or in memory; skips the test where it cannot be had. */
public final class Volume implements AutoCloseable {
  private final Path image;
  private final Path mount;
  private final List<String> mounting;

  private Volume(Path image, Path mount, List<String> mounting) {
    this.image = image;
    this.mount = mount;
    this.mounting = mounting;
  }

  /** A volume in a file that is mounted through the kernel. */
  public static Volume loop(Path scratch, String type, int megabytes, String... mkfs)
      throws IOException {
    return made(scratch, type, megabytes, List.of(mkfs), List.of("mount", "-o", "loop"));
  }

  /** A volume in memory. */
  public static Volume tmpfs(Path scratch, int kilobytes) throws IOException {
    var mount = Files.createDirectory(scratch.resolve("tmpfs"));
    var size = "size=" + kilobytes + "k";
    var volume = new Volume(Path.of("none"), mount, List.of("mount", "-t", "tmpfs", "-o", size));
    volume.mountOrSkip();
    return volume;
  }

  /**
   * A volume in a file.
   *
   * @param mkfs makes it; the file is added
   * @param mounting mounts it; the file and the folder are added
   */
  public static Volume made(
      Path scratch, String type, int megabytes, List<String> mkfs, List<String> mounting)
      throws IOException {
    var image = scratch.resolve(type + ".img");
    try (var file = new RandomAccessFile(image.toFile(), "rw")) {
      file.setLength((long) megabytes << 20);
    }
    var making = new ArrayList<>(mkfs);
    making.add(image.toString());
    Assumptions.assumeTrue(
        run(making), mkfs.getFirst() + " is not here; " + type + " is not tried");
    var volume = new Volume(image, Files.createDirectory(scratch.resolve(type)), mounting);
    volume.mountOrSkip();
    return volume;
  }

  public Path root() {
    return mount;
  }

  private void mountOrSkip() throws IOException {
    Assumptions.assumeTrue(mount(), "volumes cannot be mounted here (" + mounting + ")");
  }

  private boolean mount() throws IOException {
    var command = new ArrayList<>(mounting);
    command.add(image.toString());
    command.add(mount.toString());
    return run(command);
  }

  /** Forgets all that was not flushed, as a power cut does, and comes back. */
  public void cutPower() throws IOException {
    Assumptions.assumeTrue(
        run(List.of("xfs_io", "-x", "-c", "shutdown", mount.toString())),
        "xfs_io is not here; the power cut is not tried");
    if (!run(List.of("umount", mount.toString())) || !mount()) {
      throw new IOException("the volume did not come back");
    }
  }

  public void remountReadOnly() throws IOException {
    Assumptions.assumeTrue(
        run(List.of("mount", "-o", "remount,ro", mount.toString())), "cannot remount");
  }

  @Override
  public void close() throws IOException {
    if (!run(List.of("umount", mount.toString()))) {
      run(List.of("umount", "-l", mount.toString()));
    }
  }

  /** Whether it ran and succeeded. */
  public static boolean run(List<String> command) throws IOException {
    try {
      var process = new ProcessBuilder(command).redirectErrorStream(true).start();
      process.getOutputStream().close();
      var output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      int status = process.onExit().join().exitValue();
      if (status != 0) {
        System.Logger log = System.getLogger(Volume.class.getName());
        log.log(System.Logger.Level.DEBUG, command + ": " + output);
      }
      return status == 0;
    } catch (IOException e) {
      return false; // no such program
    }
  }
}
