package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.framewright.base.OperatingSystem;
import org.framewright.base.Progress;

/** What lies below folders: disks, mounts, and what a disk really holds. For several threads. */
public interface Volumes {
  /**
   * The whole disk or server that a file or folder lies on; links are followed.
   *
   * @return a device of the kind {@link Device.Kind#UNKNOWN} where it cannot be established
   * @throws IOException if there is no such file or folder, or it cannot be reached
   */
  Device deviceOf(Path path) throws IOException;

  /**
   * Which volume a file or folder lies on, and since when it is there.
   *
   * @throws IOException if there is no such file or folder, or it cannot be reached
   */
  MountIdentity mountOf(Path path) throws IOException;

  /**
   * The top folder of the volume that a folder lies on, as far as the system tells.
   *
   * @throws IOException if there is no such folder, or it cannot be reached
   */
  default Path topOf(Path folder) throws IOException {
    var top = folder.toRealPath();
    var volume = Files.getFileStore(top);
    while (top.getParent() != null && isOf(volume, top.getParent())) {
      top = top.getParent();
    }
    return top;
  }

  private static boolean isOf(FileStore volume, Path folder) {
    try {
      return Files.getFileStore(folder).equals(volume);
    } catch (IOException e) {
      return false; // Of a folder that hides its volume nothing more is known.
    }
  }

  /**
   * Reads a regular file whole, past the memory of the system where the volume lets us; a link is
   * not followed.
   *
   * @param each sees every byte once and in order, piece by piece, on the calling thread; a piece
   *     is only valid during the call. It may throw an unchecked exception, which ends the read
   * @param progress told of each begun MiB, and asked before each whether to stop
   * @throws IOException if it cannot be read to its end, or its size or time changed meanwhile
   * @throws java.util.concurrent.CancellationException if {@code progress} was cancelled
   */
  Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException;

  /** Those of this computer. Where a system is not known well enough, nothing is claimed. */
  static Volumes ofThisSystem() {
    return switch (OperatingSystem.current()) {
      case LINUX -> new LinuxVolumes(Path.of("/"), false);
      case MACOS -> new MacVolumes(Answers.ofPrograms());
      case WINDOWS -> new WindowsVolumes(Answers.ofPrograms());
      case OTHER -> new UnknownVolumes();
    };
  }
}
