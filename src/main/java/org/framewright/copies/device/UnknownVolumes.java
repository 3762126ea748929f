package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.framewright.base.Progress;

/** A system of which nothing is known but that its files can be read. */
final class UnknownVolumes implements Volumes {
  @Override
  public Device deviceOf(Path path) throws IOException {
    return unknown(path.toRealPath());
  }

  /** One that is like no other but that of the same path. */
  static Device unknown(Path real) {
    var id = "unknown:" + real.toString().replace(Device.BETWEEN, "_");
    return new Device(id, Device.Kind.UNKNOWN, "a disk that could not be determined");
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    return unknownMount(path);
  }

  /** That of a path that has to be there, and of which nothing more is known. */
  static MountIdentity unknownMount(Path path) throws IOException {
    if (Files.notExists(path)) {
      throw new NoSuchFileException(path.toString());
    }
    return MountIdentity.UNKNOWN;
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    return new WholeRead(file, each, progress).plain();
  }
}
