package org.framewright.frames;

import java.io.IOException;
import java.nio.file.Path;

/** Finds the frames below a folder; keeps what it read between scans. */
public final class FrameScanner {
  /** A scanner of one folder and all below it. */
  public FrameScanner(Path root) {}

  /**
   * Scans the folder.
   *
   * @throws IOException where the folder itself cannot be read
   */
  public FrameScan scan() throws IOException {
    return new FrameScan(java.util.List.of(), 0, java.util.List.of());
  }
}
