package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.function.Consumer;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.copies.device.Device;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.MountIdentity;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;

/** Disks that a test makes of folders, and what reading them does. */
public final class TestVolumes implements Volumes {
  private final Map<Path, Device> devices = new LinkedHashMap<>();
  private final Map<Path, MountIdentity> mounts = new LinkedHashMap<>();
  private final Set<Path> unsure = new HashSet<>();
  private final Set<Path> failing = new HashSet<>();
  private final ConcurrentLinkedQueue<Path> read = new ConcurrentLinkedQueue<>();
  private Runnable onRead = () -> {};

  /** Everything below a folder is a disk of this name. */
  public TestVolumes disk(Path folder, String id) throws IOException {
    return device(folder, new Device("disk:" + id, Device.Kind.DISK, "disk " + id));
  }

  public TestVolumes device(Path folder, Device device) throws IOException {
    devices.put(folder.toRealPath(), device);
    mounts.put(folder.toRealPath(), new MountIdentity("v" + device.id(), "m1 d1", "b1"));
    return this;
  }

  /** Reads below a folder may come from memory. */
  public TestVolumes unsure(Path folder) throws IOException {
    unsure.add(folder.toRealPath());
    return this;
  }

  /** The disk is taken out and put in again. */
  public TestVolumes again(Path folder) throws IOException {
    mounts.computeIfPresent(
        folder.toRealPath(), (_, was) -> new MountIdentity(was.volume(), "m2 d2", was.boot()));
    return this;
  }

  public TestVolumes failing(Path file) throws IOException {
    failing.add(file.toRealPath());
    return this;
  }

  public TestVolumes onRead(Runnable action) {
    onRead = action;
    return this;
  }

  public List<Path> read() {
    return List.copyOf(read);
  }

  @Override
  public Device deviceOf(Path path) throws IOException {
    var real = path.toRealPath();
    return devices.entrySet().stream()
        .filter(one -> real.startsWith(one.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(new Device("unknown:" + real, Device.Kind.UNKNOWN, "some disk"));
  }

  @Override
  public Path topOf(Path folder) throws IOException {
    var real = folder.toRealPath();
    return devices.keySet().stream().filter(real::startsWith).findFirst().orElse(real.getRoot());
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    var real = path.toRealPath();
    return mounts.entrySet().stream()
        .filter(one -> real.startsWith(one.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse(MountIdentity.UNKNOWN);
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    if (progress.cancelled()) {
      throw new CancellationException();
    }
    read.add(file);
    onRead.run();
    if (failing.contains(file)) {
      throw new FileSystemException(file.toString(), null, "Input/output error");
    }
    var bytes = Files.readAllBytes(file);
    each.accept(ByteBuffer.wrap(bytes));
    return new Reading(
        Sha256.of(bytes),
        bytes.length,
        unsure.stream().anyMatch(file::startsWith) ? Medium.UNSURE : Medium.READ,
        Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS));
  }
}
