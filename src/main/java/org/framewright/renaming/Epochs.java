package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import org.framewright.base.Progress;

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
  private final Place[] places;
  private final Progress progress;
  private final int total;
  private final int stride;
  private int done;

  /**
   * Starts from where the files are.
   *
   * @param held the folders of the journal
   * @param places of each file of the journal; kept up to date
   */
  Epochs(HeldFolders held, Journal journal, Place[] places, Progress progress) {
    this.held = held;
    this.journal = journal;
    this.places = places;
    this.progress = progress;
    this.total = journal.ops().size() + (int) journal.ops().stream().filter(Op::conflicted).count();
    this.stride = Math.max(1, total / 200);
  }

  void forward() throws Halt {
    boolean any = false;
    for (int i = 0; i < places.length; i++) {
      if (journal.ops().get(i).conflicted() && places[i] == Place.SOURCE) {
        move(i, Place.TEMP);
        any = true;
      }
    }
    if (any) {
      barrier();
    }
    for (int i = 0; i < places.length; i++) {
      if (places[i] != Place.TARGET) {
        move(i, Place.TARGET);
      }
    }
    barrier();
    progress.step(total, total);
  }

  void back() throws Halt {
    for (int i = 0; i < places.length; i++) {
      if (places[i] == Place.TARGET) {
        move(i, journal.ops().get(i).conflicted() ? Place.TEMP : Place.SOURCE);
      }
    }
    barrier();
    for (int i = 0; i < places.length; i++) {
      if (places[i] == Place.TEMP) {
        move(i, Place.SOURCE);
      }
    }
    barrier();
  }

  private void move(int index, Place place) throws Halt {
    var op = journal.ops().get(index);
    if (progress.cancelled()) {
      throw Halt.cancelled(journal.path(op, places[index]));
    }
    switch (moved(op, places[index], place)) {
      case MOVED -> places[index] = place;
      case TAKEN -> {
        var to = journal.path(op, place);
        throw Halt.at(
            to,
            "another file has taken the name " + shown(to),
            "Move that file to another name or folder.");
      }
      case GONE -> {
        var from = journal.path(op, places[index]);
        throw Halt.at(
            from,
            shown(from) + " has vanished",
            "Close the program that works on these files; look for the file.");
      }
      case UNSUPPORTED ->
          throw Halt.at(
              journal.path(op, places[index]),
              "the volume refuses safe renames in this folder",
              "Use another folder.");
    }
    done++;
    if (done % stride == 0) {
      progress.step(done, total);
    }
  }

  private MoveResult moved(Op op, Place from, Place to) throws Halt {
    try {
      return held.move(
          journal.folder(op, from),
          journal.name(op, from),
          journal.folder(op, to),
          journal.name(op, to));
    } catch (MoveFailure e) {
      throw Halt.at(journal.path(op, from), e.getMessage(), e.remedy());
    } catch (IOException e) {
      var file = journal.path(op, from);
      throw Halt.at(file, shown(file) + ": " + e.getMessage(), "Check the disk, then try again.");
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
            "the names in "
                + shown(folder)
                + " could not be flushed to the disk: "
                + e.getMessage(),
            "Check the cable and the disk.");
      }
    }
  }

  private String shown(Path path) {
    var relative = journal.root().relativize(path);
    return relative.toString().isEmpty() ? "the folder" : relative.toString();
  }
}
