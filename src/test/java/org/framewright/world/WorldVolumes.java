package org.framewright.world;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.framewright.base.Progress;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;

/** The disks of the world: each folder at its top is one. */
final class WorldVolumes implements Volumes {
  private final Path base;
  private final boolean oneDisk;
  private final Set<String> fromMemory = new HashSet<>();
  private final Set<String> unreadable = new HashSet<>();

  WorldVolumes(Path base, boolean oneDisk) {
    this.base = base;
    this.oneDisk = oneDisk;
  }

  /** A disk is answered from memory from now on, or not any more. */
  void turnMemory(String disk) {
    if (!fromMemory.remove(disk)) {
      fromMemory.add(disk);
    }
  }

  boolean isFromMemory(String disk) {
    return fromMemory.contains(disk);
  }

  void cannotRead(Path file) {
    unreadable.add(base.relativize(file).toString());
  }

  boolean canRead(Path file) {
    return !unreadable.contains(base.relativize(file).toString());
  }

  private String disk(Path path) throws IOException {
    var real = path.toRealPath().toString();
    var root = base.toString();
    if (!real.startsWith(root + "/")) {
      return "system";
    }
    var name = real.substring(root.length() + 1).split("/", -1)[0];
    return oneDisk && name.startsWith("backup") ? "backups" : name;
  }

  @Override
  public Device deviceOf(Path path) throws IOException {
    var disk = disk(path);
    return new Device("disk:" + disk, Device.Kind.DISK, "disk " + disk);
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    return new MountIdentity("v" + disk(path), "m1 d1", "b1");
  }

  @Override
  public Path topOf(Path folder) throws IOException {
    var real = folder.toRealPath();
    int depth = base.getNameCount() + 1;
    return real.getNameCount() < depth
        ? real.getRoot()
        : real.getRoot().resolve(real.subpath(0, depth));
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    var real = file.toRealPath().toString();
    var name = real.substring(base.toString().length() + 1);
    if (unreadable.contains(name)) {
      throw new FileSystemException(real, null, "Input/output error");
    }
    var bytes = Files.readAllBytes(file);
    each.accept(ByteBuffer.wrap(bytes));
    return new Reading(
        Contents.sha256(bytes),
        bytes.length,
        fromMemory.contains(name.split("/", -1)[0]) ? Medium.UNSURE : Medium.READ,
        Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS));
  }
}
