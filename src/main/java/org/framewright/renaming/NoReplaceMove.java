package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** One rename of a file or a folder that never replaces anything, for other rooms. */
public final class NoReplaceMove {
  private NoReplaceMove() {}

  /**
   * Renames on one volume. Where the volume has the system's own no-replace rename, nothing that
   * takes the new name meanwhile is replaced; elsewhere the name is looked at just before, and an
   * empty folder that appears in that moment may be replaced on POSIX systems (rename(2)).
   *
   * @throws FileAlreadyExistsException if something has the new name; both are as they were
   */
  public static void move(Path from, Path to) throws IOException {
    var mover =
        from.getFileSystem().equals(FileSystems.getDefault())
            ? NativeMover.find()
            : Optional.<Mover>empty();
    var result = mover.isPresent() ? mover.get().move(from, to) : MoveResult.UNSUPPORTED;
    switch (result) {
      case MOVED -> {}
      case TAKEN -> throw new FileAlreadyExistsException(to.toString());
      case GONE -> throw new NoSuchFileException(from.toString());
      case UNSUPPORTED -> Files.move(from, to);
    }
  }
}
