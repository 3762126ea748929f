package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Consumer;
import org.framewright.base.Progress;

/** The volumes of a Linux system. */
final class LinuxVolumes implements Volumes {
  private final Path proc;
  private final LinuxDevices devices;
  private final boolean trusting;
  private final boolean virtualMachine;

  /**
   * The volumes of a system.
   *
   * @param root holds its {@code proc}, {@code sys} and {@code run}
   * @param trusting whether images in files and disks of virtual machines prove something too: for
   *     tests, which have no other disks
   */
  LinuxVolumes(Path root, boolean trusting) {
    this.proc = root.resolve("proc");
    this.devices = new LinuxDevices(root);
    this.trusting = trusting;
    this.virtualMachine = devices.isVirtualMachine();
  }

  @Override
  public Device deviceOf(Path path) throws IOException {
    return find(path).device();
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    return devices.identity(find(path));
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    var found = find(file);
    return new WholeRead(file, each, progress).read(() -> ThreadIo.here(proc), proves(found));
  }

  /** Whether what a disk delivers here comes from its medium. */
  private boolean proves(LinuxDevices.Found found) {
    if (found.disks().isEmpty() || found.device().kind() == Device.Kind.NO_MEDIUM) {
      return false;
    }
    return trusting
        || (found.device().kind() == Device.Kind.DISK && !found.onImage() && !virtualMachine);
  }

  private LinuxDevices.Found find(Path path) throws IOException {
    var real = path.toRealPath();
    return devices.find(real.toString(), number(real));
  }

  private static Optional<String> number(Path real) throws IOException {
    if (!real.getFileSystem().equals(FileSystems.getDefault())) {
      return Optional.empty();
    }
    return Files.getAttribute(real, "unix:dev") instanceof Long device
        ? Optional.of(number(device))
        : Optional.empty();
  }

  /** Source: glibc, sys/sysmacros.h, gnu_dev_major and gnu_dev_minor. */
  static String number(long device) {
    long major = ((device >>> 8) & 0xfff) | ((device >>> 32) & ~0xfffL);
    long minor = (device & 0xff) | ((device >>> 12) & 0xffffff00L);
    return major + ":" + minor;
  }
}
