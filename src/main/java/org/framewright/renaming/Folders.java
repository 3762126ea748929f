package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.base.NameKey;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** Which folders renaming may work in: real ones, below the root, not its own. */
final class Folders {
  /** The folder of this program's own files, below the root. */
  static final String OURS = ".framewright";

  private Folders() {}

  /** Whether a relative path lies in the folder of this program's own files. */
  static boolean isOurs(Path relative) {
    return NameKey.of(relative.getName(0).toString()).equals(OURS);
  }

  /** The folder of a relative path; the empty path for a file of the root. */
  static Path parent(Path file) {
    var parent = file.getParent();
    return parent == null ? file.getFileSystem().getPath("") : parent;
  }

  /** Whether a path is one plain component. */
  static boolean isPlainName(Path name) {
    var text = name.toString();
    return name.getNameCount() == 1
        && !name.isAbsolute()
        && name.getRoot() == null
        && !text.isEmpty()
        && !text.equals(".")
        && !text.equals("..");
  }

  /** Why a folder cannot be worked in: a link on the way, another volume, no folder. */
  static Optional<Problem> trouble(Disk disk, Path root, Path relative) throws IOException {
    var folder = root;
    for (var name : relative) {
      if (name.toString().isEmpty()) {
        continue;
      }
      if (!isPlainName(name)) {
        return Optional.of(
            new Problem(
                Text.of("the path {0} leads out of the folder", relative),
                "Use paths below the folder."));
      }
      folder = folder.resolve(name);
      var kind = disk.look(folder).kind();
      switch (kind) {
        case FOLDER -> {}
        case NONE -> {
          return Optional.of(
              new Problem(
                  Text.of("there is no folder {0}", root.relativize(folder)),
                  "Create the folder first."));
        }
        case LINK -> {
          return Optional.of(
              new Problem(
                  Text.of(
                      "{0} is a link, which may lead out of the folder", root.relativize(folder)),
                  "Rename in the folder that the link leads to."));
        }
        case FILE, OTHER -> {
          return Optional.of(
              new Problem(
                  Text.of("{0} is not a folder", root.relativize(folder)), "Check the path."));
        }
      }
    }
    if (!folder.equals(root) && !disk.volume(folder).equals(disk.volume(root))) {
      return Optional.of(
          new Problem(
              Text.of("the folder {0} lies on another volume", relative),
              "Rename within one volume; copy between volumes."));
    }
    return Optional.empty();
  }
}
