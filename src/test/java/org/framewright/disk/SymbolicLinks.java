package org.framewright.disk;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Symbolic links of tests. On Windows they need a right that not everybody has. */
public final class SymbolicLinks {
  private SymbolicLinks() {}

  /** Makes a link; skips the test where the system does not let us. */
  public static Path make(Path link, Path target) throws IOException {
    try {
      return Files.createSymbolicLink(link, target);
    } catch (FileSystemException e) {
      assumeTrue(
          File.separatorChar == '/', "links may not be made here; turn on the developer mode");
      throw e;
    }
  }
}
