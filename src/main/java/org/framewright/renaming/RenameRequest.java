package org.framewright.renaming;

import java.nio.file.Path;
import java.util.Objects;

/**
 * A request: this file shall have that name.
 *
 * @param from the file, relative to the root of the {@link Renamer}
 * @param to its new path, relative to the same root; another folder is allowed if it exists, lies
 *     below the root and on the same volume
 * @param group files of one group are renamed all or not at all (a raw file, its JPEG, its
 *     sidecar); empty for a file that stands alone
 */
public record RenameRequest(Path from, Path to, String group) {
  public RenameRequest {
    Objects.requireNonNull(from);
    Objects.requireNonNull(to);
    Objects.requireNonNull(group);
  }

  /** A file that stands alone. */
  public RenameRequest(Path from, Path to) {
    this(from, to, "");
  }
}
