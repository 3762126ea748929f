package org.framewright.copies;

import java.util.Optional;
import org.framewright.base.Text;

/**
 * What one run established about one file.
 *
 * @param path below its folder, with {@code /} between the names
 * @param size in bytes
 * @param read what reading it gave; empty where it could not be read to its end, changed meanwhile,
 *     or was not read
 * @param held whether its size and time were the same at the end of the run
 * @param trouble why it was not read
 * @param fault what is wrong with what it holds: it is empty, no whole picture, or not what the ASC
 *     MHL there says
 */
record FileFacts(
    String path,
    long size,
    Optional<ReadFacts> read,
    boolean held,
    Optional<Text> trouble,
    Optional<Text> fault) {

  /**
   * What reading a whole file gave.
   *
   * @param fromMedium whether the bytes came from where the file is kept
   */
  record ReadFacts(String sha256, boolean fromMedium) {}

  /** Whether it was read to its end now, and is still what it was. */
  boolean isEvidence() {
    return read.isPresent() && held;
  }
}
