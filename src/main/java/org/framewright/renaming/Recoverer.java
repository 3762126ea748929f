package org.framewright.renaming;

import java.io.IOException;
import java.util.List;
import org.framewright.base.Progress;

/**
 * Brings an open batch to an end: wholly new if every file is at its new name, else wholly old,
 * else wholly new if an old name is taken, else it stands still. It decides before it moves
 * anything, from nothing but the journal and the listings; so it may be interrupted and begun
 * again.
 */
final class Recoverer {
  private Recoverer() {}

  /** Moves the files; the caller records the end. */
  static Recovery run(Disk disk, Journal journal) throws IOException {
    var away = folderTrouble(disk, journal);
    if (!away.isEmpty()) {
      return new Recovery.Stuck(journal.batch(), away);
    }
    HeldFolders folders;
    try {
      folders = disk.hold(journal.root(), journal.folders());
    } catch (MoveFailure e) {
      var none = journal.root().relativize(journal.root());
      return new Recovery.Stuck(
          journal.batch(), List.of(new StuckFile(none, e.getMessage(), e.remedy())));
    }
    try (folders) {
      return run(disk, journal, folders);
    }
  }

  private static Recovery run(Disk disk, Journal journal, HeldFolders folders) throws IOException {
    // What is seen below must be what a power cut would leave.
    for (int i = 0; i < journal.folders().size(); i++) {
      folders.sync(i);
    }
    var where = FileLocator.find(disk, journal);
    if (!where.troubles().isEmpty()) {
      return new Recovery.Stuck(journal.batch(), where.troubles());
    }
    var epochs = new Epochs(folders, journal, where.places(), Progress.NONE);
    try {
      if (where.all(Place.TARGET)) {
        return finished(journal);
      }
      var obstacles = where.obstaclesBack();
      if (obstacles.isEmpty()) {
        epochs.back();
        return new Recovery.RolledBack(journal.batch(), journal.ops().size());
      }
      if (where.obstaclesForward().isEmpty()) {
        epochs.forward();
        return finished(journal);
      }
      return new Recovery.Stuck(journal.batch(), obstacles);
    } catch (Halt e) {
      var path = journal.root().relativize(e.path());
      return new Recovery.Stuck(
          journal.batch(), List.of(new StuckFile(path, e.getMessage(), e.remedy())));
    }
  }

  private static Recovery finished(Journal journal) {
    return new Recovery.Finished(journal.batch(), journal.ops().size());
  }

  private static List<StuckFile> folderTrouble(Disk disk, Journal journal) throws IOException {
    for (var folder : journal.folders()) {
      var relative = journal.root().relativize(folder);
      var trouble = Folders.trouble(disk, journal.root(), relative);
      if (trouble.isPresent()) {
        return List.of(new StuckFile(relative, trouble.get().what(), trouble.get().remedy()));
      }
    }
    return List.of();
  }
}
