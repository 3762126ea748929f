package org.framewright.frames;

/** How far a scan is, and whether somebody wants it to stop. Called on several threads at once. */
@FunctionalInterface
public interface ScanProgress {
  /** Nobody looks and nobody stops it. */
  ScanProgress NONE = (_, _) -> {};

  /**
   * Told some times in a scan, while files are read; never where none has to be.
   *
   * @param done files read, or found not to be readable
   * @param total files to be read
   */
  void step(int done, int total);

  /** Asked before each file; once true, no further file is read. */
  default boolean cancelled() {
    return false;
  }
}
