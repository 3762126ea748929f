package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.base.Progress;
import org.framewright.base.Text;

/**
 * Carries the files of a batch to their new names, or back to their old ones, in two epochs with a
 * barrier behind each.
 *
 * <p>Forward: first the conflicted files go to their names between; then every file goes to its
 * target. Back: first every file leaves its target, a conflicted one for its name between; then the
 * names between go to the sources. Within an epoch no name that is left is one that is taken, so
 * its renames may reach the disk in any order.
 */
final class Epochs {
  private final HeldFolders held;
  private final Journal journal;
  private final Position[] positions;
  private final Progress progress;
  private final int total;
  private final int stride;
  private int done;

  /**
   * Starts from where the files are.
   *
   * @param held the folders of the journal
   * @param positions of each file of the journal; kept up to date
   */
  Epochs(HeldFolders held, Journal journal, Position[] positions, Progress progress) {
    this.held = held;
    this.journal = journal;
    this.positions = positions;
    this.progress = progress;
    this.total = journal.ops().size() + (int) journal.ops().stream().filter(Op::conflicted).count();
    this.stride = Math.max(1, total / 200);
  }

  void forward() throws Halt {
    boolean any = false;
    for (int i = 0; i < positions.length; i++) {
      if (journal.ops().get(i).conflicted() && positions[i] == Position.SOURCE) {
        move(i, Position.TEMP);
        any = true;
      }
    }
    if (any) {
      barrier();
    }
    for (int i = 0; i < positions.length; i++) {
      if (positions[i] != Position.TARGET) {
        move(i, Position.TARGET);
      }
    }
    barrier();
    progress.step(total, total);
  }

  void back() throws Halt {
    for (int i = 0; i < positions.length; i++) {
      if (positions[i] == Position.TARGET) {
        move(i, journal.ops().get(i).conflicted() ? Position.TEMP : Position.SOURCE);
      }
    }
    barrier();
    for (int i = 0; i < positions.length; i++) {
      if (positions[i] == Position.TEMP) {
        move(i, Position.SOURCE);
      }
    }
    barrier();
  }

  private void move(int index, Position position) throws Halt {
    var op = journal.ops().get(index);
    if (progress.cancelled()) {
      throw Halt.cancelled(journal.path(op, positions[index]));
    }
    switch (moved(op, positions[index], position)) {
      case MOVED -> positions[index] = position;
      case TAKEN -> {
        var to = journal.path(op, position);
        throw Halt.at(
            to,
            Text.of("another file has taken the name {0}", shown(to)),
            Text.of("Move that file to another name or folder."));
      }
      case GONE -> {
        var from = journal.path(op, positions[index]);
        throw Halt.at(
            from,
            Text.of("{0} has vanished", shown(from)),
            Text.of("Close the program that works on these files; look for the file."));
      }
      case UNSUPPORTED ->
          throw Halt.at(
              journal.path(op, positions[index]),
              Text.of("the volume refuses safe renames in this folder"),
              Text.of("Use another folder."));
    }
    done++;
    if (done % stride == 0) {
      progress.step(done, total);
    }
  }

  private MoveResult moved(Op op, Position from, Position to) throws Halt {
    try {
      return held.move(
          journal.folder(op, from),
          journal.name(op, from),
          journal.folder(op, to),
          journal.name(op, to));
    } catch (IOException e) {
      throw Halt.at(journal.path(op, from), RenamingFailure.describe(e));
    }
  }

  /** Returns once all names are on the disk. */
  private void barrier() throws Halt {
    for (int i = 0; i < journal.folders().size(); i++) {
      try {
        held.sync(i);
      } catch (IOException e) {
        var folder = journal.folders().get(i);
        throw Halt.at(
            folder,
            RenamingFailure.describe(
                Text.of("the names in {0} could not be flushed to the disk", shown(folder)), e));
      }
    }
  }

  private String shown(Path path) {
    var relative = journal.root().relativize(path);
    return relative.toString().isEmpty() ? "the folder" : relative.toString();
  }
}
