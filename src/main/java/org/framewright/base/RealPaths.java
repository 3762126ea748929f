package org.framewright.base;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;

/**
 * Where a path really leads: through links, and on volumes to which {@code Frames} and {@code
 * frames} are one folder.
 */
public final class RealPaths {
  private RealPaths() {}

  /**
   * Whether a file of this path is or would be a folder, or would lie in it at any depth. The file
   * need not exist; the folder that it is to be in must. Links on the way are followed, a link that
   * the path itself names is not: whoever writes must not follow it either.
   *
   * @throws NoSuchFileException if the folder that the file is to be in does not exist
   */
  public static boolean isInside(Path file, Path folder) throws IOException {
    var absolute = file.toAbsolutePath();
    var parent = absolute.getParent();
    if (parent == null) {
      return false;
    }
    var last = absolute.getFileName().toString();
    boolean isName = !last.equals("..") && !last.equals(".");
    for (var at = isName ? parent.toRealPath() : absolute.toRealPath();
        at != null;
        at = at.getParent()) {
      if (isSame(at, folder)) {
        return true;
      }
    }
    return isName && isOrWouldBe(absolute, folder);
  }

  /**
   * Whether a folder of a job's own, and the one that it is in, are there. Through a link what is
   * kept in it would be written outside of the job.
   *
   * @throws NotDirectoryException if one of the two is a link or no folder
   */
  public static boolean isOwnFolder(Path folder) throws IOException {
    for (var one : List.of(folder.getParent(), folder)) {
      if (!Files.exists(one, LinkOption.NOFOLLOW_LINKS)) {
        return false;
      }
      if (!Files.isDirectory(one, LinkOption.NOFOLLOW_LINKS)) {
        throw new NotDirectoryException(one.toString());
      }
    }
    return true;
  }

  private static boolean isOrWouldBe(Path file, Path folder) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      return isSame(file, folder);
    }
    var parent = folder.toAbsolutePath().getParent();
    return parent != null
        && isSame(file.getParent(), parent)
        && NameKey.of(file.getFileName().toString())
            .equals(NameKey.of(folder.getFileName().toString()));
  }

  /** By what the system says, not by the text: links, case and mounts do not matter. */
  private static boolean isSame(Path one, Path other) throws IOException {
    try {
      return Files.isSameFile(one, other);
    } catch (NoSuchFileException e) {
      return false;
    }
  }
}
