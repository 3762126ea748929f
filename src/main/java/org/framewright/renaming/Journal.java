package org.framewright.renaming;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * A batch as it lies on the disk.
 *
 * @param undoes the batch that it takes back; empty if none
 * @param folders absolute paths of the folders it works in
 * @param length bytes up to where the record of its end goes
 * @param end how it ended; OPEN while it did not
 */
record Journal(
    String batch,
    Instant at,
    String undoes,
    Guarantee guarantee,
    String volume,
    Path root,
    List<Path> folders,
    List<Op> ops,
    String commit,
    long length,
    BatchState end) {

  Path source(Op op) {
    return path(op, Place.SOURCE);
  }

  Path temp(Op op) {
    return path(op, Place.TEMP);
  }

  Path target(Op op) {
    return path(op, Place.TARGET);
  }

  /** A name in a folder of the batch, relative to the root. */
  Path relative(int folder, Path name) {
    var path = folders.get(folder);
    return path.equals(root) ? name : root.relativize(path).resolve(name);
  }

  /** The path under which the file lies when it is at this place. */
  Path path(Op op, Place place) {
    return folders.get(folder(op, place)).resolve(name(op, place));
  }

  /** The index of the folder that the file lies in when it is at this place. */
  int folder(Op op, Place place) {
    return place == Place.TARGET ? op.into() : op.in();
  }

  /** The name that the file has when it is at this place. */
  Path name(Op op, Place place) {
    return switch (place) {
      case SOURCE -> op.from();
      case TEMP -> root.getFileSystem().getPath(op.temp());
      case TARGET -> op.to();
    };
  }
}
