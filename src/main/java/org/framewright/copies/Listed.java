package org.framewright.copies;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.framewright.frames.FileRole;

/**
 * A file as a folder lists it.
 *
 * @param path where it lies
 * @param name its path below the folder, with {@code /} between the names
 * @param size in bytes
 * @param modified its time on the disk
 * @param role what it is to a frame; empty for video's companions, sound, a camera's own files
 */
public record Listed(Path path, String name, long size, Instant modified, Optional<FileRole> role) {
  /** Whether it is there as it was: the same size and time. */
  boolean isLike(Listed other) {
    return size == other.size && modified.equals(other.modified);
  }

  /** Whether it is a picture or a clip by its ending. */
  boolean isExposure() {
    return role.filter(one -> one != FileRole.SIDECAR && one != FileRole.COMPANION).isPresent();
  }
}
