package org.framewright;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Temporary folders of the quick tests: in memory where the system has a folder there with enough
 * room, since much of their time goes into flushes. The whole run has them on a disk.
 */
public final class MemoryTempFolders implements TempDirFactory {
  private static final Path MEMORY = Path.of("/dev/shm");

  /** In bytes; a container has 64 MB there unless somebody gives it more. */
  private static final long ENOUGH = 2L << 30;

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test)
      throws IOException {
    return Files.isWritable(MEMORY) && Files.getFileStore(MEMORY).getUsableSpace() > ENOUGH
        ? Files.createTempDirectory(MEMORY, "framewright")
        : Files.createTempDirectory("framewright");
  }
}
