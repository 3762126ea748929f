package org.framewright.renaming;

import java.nio.file.Path;
import java.util.List;

/**
 * A batch as it lies on the disk.
 *
 * @param commit the checksum of its lines
 * @param length bytes up to where the record of its end goes
 * @param end how it ended; OPEN while it did not
 */
record Journal(JournalHeader header, List<Op> ops, String commit, long length, BatchState end) {

  String batch() {
    return header.batch();
  }

  Path root() {
    return header.root();
  }

  List<Path> folders() {
    return header.folders();
  }

  Path source(Op op) {
    return path(op, Position.SOURCE);
  }

  Path temp(Op op) {
    return path(op, Position.TEMP);
  }

  Path target(Op op) {
    return path(op, Position.TARGET);
  }

  /** A name in a folder of the batch, relative to the root. */
  Path relative(int folder, Path name) {
    var path = folders().get(folder);
    return path.equals(root()) ? name : root().relativize(path).resolve(name);
  }

  /** The path under which the file lies when it is at this position. */
  Path path(Op op, Position position) {
    return folders().get(folder(op, position)).resolve(name(op, position));
  }

  /** The index of the folder that the file lies in when it is at this position. */
  int folder(Op op, Position position) {
    return position == Position.TARGET ? op.into() : op.in();
  }

  /** The name that the file has when it is at this position. */
  Path name(Op op, Position position) {
    return switch (position) {
      case SOURCE -> op.from();
      case TEMP -> root().getFileSystem().getPath(op.temp());
      case TARGET -> op.to();
    };
  }
}
