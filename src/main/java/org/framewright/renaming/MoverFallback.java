package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;

/**
 * Finds the best way to change a name on a volume by trying it on files of our own: with a free
 * target it must move, with a taken one it must refuse.
 */
final class MoverFallback {
  /** What the names of the files that are tried on begin with. */
  static final String PROBE = "probe-";

  private MoverFallback() {}

  /** The movers for a folder, best first. The system's own call knows its own paths only. */
  static List<Mover> movers(Path folder) {
    return folder.getFileSystem().equals(FileSystems.getDefault())
        ? movers()
        : List.of(new LinkMover(), new ReserveMover());
  }

  /** The movers of this system, best first. */
  static List<Mover> movers() {
    return Stream.concat(
            NativeMover.find().stream(), Stream.of(new LinkMover(), new ReserveMover()))
        .toList();
  }

  /**
   * The first mover that works in this folder.
   *
   * @throws IOException if none does, or the folder cannot be written
   */
  static Mover pick(List<Mover> movers, Path scratch) throws IOException {
    var first = scratch.resolve(PROBE + "a");
    var second = scratch.resolve(PROBE + "b");
    for (var mover : movers) {
      Files.deleteIfExists(first);
      Files.deleteIfExists(second);
      Files.writeString(first, "a", StandardOpenOption.CREATE_NEW);
      try {
        if (works(mover, first, second)) {
          return mover;
        }
      } finally {
        Files.deleteIfExists(first);
        Files.deleteIfExists(second);
      }
    }
    throw new IOException("this volume has no rename that is safe to use");
  }

  private static boolean works(Mover mover, Path first, Path second) throws IOException {
    try {
      if (mover.move(first, second) != MoveResult.MOVED) {
        return false;
      }
      Files.writeString(first, "b", StandardOpenOption.CREATE_NEW);
      return mover.move(first, second) == MoveResult.TAKEN
          && Files.readString(first).equals("b")
          && Files.readString(second).equals("a");
    } catch (IOException e) {
      if (mover.guarantee() == Guarantee.RESERVED) {
        throw e;
      }
      return false;
    }
  }
}
