package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.base.Progress;

/**
 * Brings an open batch to an end: wholly new if every file is at its new name, else wholly old,
 * else wholly new if an old name is taken, else it stands still. It decides before it moves
 * anything, from nothing but the journal and the listings; so it may be interrupted and begun
 * again.
 */
final class Recoverer {
  private static final List<Position> ANYWHERE = List.of(Position.values());

  private Recoverer() {}

  /**
   * Moves the files; the caller records the end.
   *
   * @param home what distinguishes the folder of journals from its copies today
   */
  static Recovery run(Disk disk, Journal journal, String home) throws IOException {
    for (var folder : journal.folders()) {
      var relative = journal.root().relativize(folder);
      var trouble = Folders.trouble(disk, journal.root(), relative);
      if (trouble.isPresent()) {
        return stuck(journal, folder, trouble.get());
      }
    }
    HeldFolders folders;
    try {
      folders = disk.hold(journal.root(), journal.folders());
    } catch (MoveFailure e) {
      return stuck(journal, journal.root(), e.problem());
    }
    try (folders) {
      return run(disk, journal, home, folders);
    }
  }

  private static Recovery run(Disk disk, Journal journal, String home, HeldFolders folders)
      throws IOException {
    // What is seen below must be what a power cut would leave.
    for (int i = 0; i < journal.folders().size(); i++) {
      folders.sync(i);
    }
    var recognition = Recognition.of(disk, journal, home, ANYWHERE);
    var found = FileLocator.find(disk, journal, recognition);
    if (!found.troubles().isEmpty()) {
      return new Recovery.Stuck(journal.batch(), found.troubles());
    }
    var epochs = new Epochs(folders, journal, found.positions(), Progress.NONE);
    int renames = journal.ops().size();
    var finished = new Recovery.Finished(journal.batch(), renames, recognition.evidence());
    try {
      if (found.all(Position.TARGET)) {
        return finished;
      }
      var obstacles = found.obstaclesBack();
      if (obstacles.isEmpty()) {
        epochs.back();
        return new Recovery.RolledBack(journal.batch(), renames, recognition.evidence());
      }
      if (found.obstaclesForward().isEmpty()) {
        epochs.forward();
        return finished;
      }
      return new Recovery.Stuck(journal.batch(), obstacles);
    } catch (Halt e) {
      return stuck(journal, e.path(), e.problem());
    }
  }

  private static Recovery stuck(Journal journal, Path at, Problem problem) {
    var file = new StuckFile(journal.root().relativize(at), problem);
    return new Recovery.Stuck(journal.batch(), List.of(file));
  }
}
