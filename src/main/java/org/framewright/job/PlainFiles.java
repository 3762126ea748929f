package org.framewright.job;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/**
 * Files that belong to a job, which are never links, devices or pipes: whoever could put such a
 * thing into a job folder could otherwise have another file read or written, or let the program
 * wait for ever.
 */
final class PlainFiles {
  private PlainFiles() {}

  /**
   * What is known of a file without opening it.
   *
   * @return nothing if nothing has that name
   */
  static Optional<BasicFileAttributes> look(Path path) throws IOException {
    try {
      return Optional.of(
          Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS));
    } catch (NoSuchFileException | NotDirectoryException e) {
      return Optional.empty();
    } catch (FileSystemException e) {
      // What lies above it may be a file, or so many links that they end nowhere.
      if (Files.notExists(path, LinkOption.NOFOLLOW_LINKS)) {
        return Optional.empty();
      }
      throw e;
    }
  }

  /**
   * Refuses a path that is there and is no regular file.
   *
   * @return what is known of it; nothing if nothing has that name
   */
  static Optional<BasicFileAttributes> requireFileIfThere(Path file) throws IOException {
    var found = look(file);
    if (found.isPresent()) {
      SmallFiles.requirePlain(file, found.get());
    }
    return found;
  }

  /** Refuses a path that is no folder of its own. */
  static void requireFolder(Path folder) throws IOException {
    var found = look(folder);
    if (found.isEmpty()) {
      throw new NoSuchFileException(folder.toString());
    }
    if (!found.get().isDirectory()) {
      throw new FileProblemException(
          new Problem(
              Text.of("this is {0}, and the job needs a folder here", SmallFiles.kind(found.get())),
              folder.toString(),
              "Move it away, and put the folder itself there if it was moved elsewhere."));
    }
  }

  /**
   * Reads a small file whole.
   *
   * @param most the most bytes that it may have
   * @throws NoSuchFileException if there is none
   */
  static byte[] read(Path file, int most) throws IOException {
    return SmallFiles.read(file, most, LinkOption.NOFOLLOW_LINKS);
  }
}
