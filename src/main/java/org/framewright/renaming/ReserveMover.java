package org.framewright.renaming;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * Creates a marked file of our own under the new name, which fails if the name is taken, and
 * renames over it. Between the check of the mark and the rename another program could replace our
 * file: that is the reduced guarantee.
 */
final class ReserveMover implements Mover {
  private static final byte[] MARK =
      "framewright: this name is reserved by a rename in progress\n"
          .getBytes(StandardCharsets.US_ASCII);

  @Override
  public Guarantee guarantee() {
    return Guarantee.RESERVED;
  }

  @Override
  public MoveResult move(Path from, Path to) throws IOException {
    if (!Files.exists(from, LinkOption.NOFOLLOW_LINKS)) {
      return MoveResult.GONE;
    }
    try {
      Files.write(to, MARK, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    } catch (FileAlreadyExistsException e) {
      return MoveResult.TAKEN;
    } catch (NoSuchFileException e) {
      return MoveResult.GONE;
    }
    if (!isMarked(to)) {
      return MoveResult.TAKEN;
    }
    try {
      Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
      return MoveResult.MOVED;
    } catch (IOException e) {
      if (isMarked(to)) {
        Files.delete(to);
      }
      throw e;
    }
  }

  /** What a file holds that reserves a name. */
  static byte[] mark() {
    return MARK.clone();
  }

  /** Whether the file is nothing but our own mark. */
  static boolean isMarked(Path file) throws IOException {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Files.size(file) == MARK.length
        && Arrays.equals(Files.readAllBytes(file), MARK);
  }
}
