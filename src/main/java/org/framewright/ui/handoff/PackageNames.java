package org.framewright.ui.handoff;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** What somebody calls a package. */
final class PackageNames {
  private PackageNames() {}

  /** The folder of that name in a place; none where the name would lead anywhere else. */
  static Optional<Path> inside(Path place, String called) {
    try {
      var path = Path.of(called);
      boolean plain =
          !path.isAbsolute()
              && path.getNameCount() == 1
              && !called.equals(".")
              && !called.equals("..");
      return plain ? Optional.of(place.resolve(path)) : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }
}
