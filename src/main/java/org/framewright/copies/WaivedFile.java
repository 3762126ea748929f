package org.framewright.copies;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A file of a card that a person says need not be kept.
 *
 * @param file where it is
 * @param sha256 the content that the person spoke of: a card that came since may have another file
 *     of that name. Empty where the person named a file only; then it is what is read of it
 * @param by who says so
 */
public record WaivedFile(Path file, Optional<String> sha256, String by) {
  /** Whatever a file holds when it is read. */
  public static WaivedFile byName(Path file, String by) {
    return new WaivedFile(file, Optional.empty(), by);
  }
}
