package org.framewright.copies.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.function.Consumer;
import org.framewright.base.Progress;

/** A system of which nothing is known but that its files can be read. */
final class UnknownVolumes implements Volumes {
  @Override
  public Device deviceOf(Path path) throws IOException {
    var real = path.toRealPath();
    return new Device("unknown:" + real.getRoot(), Device.Kind.UNKNOWN, "unknown disk");
  }

  @Override
  public MountIdentity mountOf(Path path) throws IOException {
    path.toRealPath();
    return new MountIdentity("", "", "");
  }

  @Override
  public Reading read(Path file, Consumer<ByteBuffer> each, Progress progress) throws IOException {
    return PlainRead.of(file, each, progress);
  }
}
