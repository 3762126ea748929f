package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;

/** Carries a batch out under the lock: journal, renames, record of the end; or all of it back. */
final class BatchRunner {
  private final Path root;
  private final Disk disk;
  private final Store store;
  private final Clock clock;

  BatchRunner(Path root, Disk disk, Store store, Clock clock) {
    this.root = root;
    this.disk = disk;
    this.store = store;
    this.clock = clock;
  }

  /**
   * The renames of a batch that is to be.
   *
   * @param conflicted the indices of the ready renames that meet another one in a name
   * @param undoes the batch that this one takes back; empty if none
   * @param evidence by what the files were recognised
   */
  record Work(List<PlannedRename> renames, BitSet conflicted, String undoes, Evidence evidence) {}

  /**
   * Carries the ready renames out, all or none.
   *
   * @throws IOException if the disk cannot be looked at; nothing was changed
   */
  Outcome run(String planId, Work work, Progress progress) throws IOException {
    var folders = new LinkedHashMap<Path, Integer>();
    var batch = store.nextId(planId);
    var ops = ops(batch, work, folders);
    var paths =
        folders.keySet().stream()
            .map(folder -> folder.toString().isEmpty() ? root : root.resolve(folder))
            .toList();
    var header =
        new JournalHeader(
            batch,
            clock.instant(),
            work.undoes(),
            disk.guarantee(),
            disk.traits().type(),
            Optional.of(store.home()),
            root,
            paths);
    HeldFolders held;
    try {
      held = disk.hold(root, paths);
    } catch (MoveFailure e) {
      return new Outcome.Refused(e.problem());
    }
    try (held) {
      return run(header, ops, held, work, progress);
    }
  }

  private Outcome run(
      JournalHeader header, List<Op> ops, HeldFolders held, Work work, Progress progress) {
    Journal journal;
    try {
      journal = store.publish(header, ops);
    } catch (IOException e) {
      return new Outcome.Refused(
          RenamingFailure.describe(Text.of("the journal cannot be written"), e));
    }
    var positions = new Position[ops.size()];
    Arrays.fill(positions, Position.SOURCE);
    try {
      new Epochs(held, journal, positions, progress).forward();
    } catch (Halt e) {
      return takenBack(journal, e, work);
    }
    try {
      store.end(journal, BatchState.DONE, clock.instant());
    } catch (IOException e) {
      return new Outcome.Halted(
          journal.batch(),
          RenamingFailure.describe(
              Text.of("every file has its new name, but the journal could not be closed"), e));
    }
    return applied(journal, work);
  }

  private static Outcome applied(Journal journal, Work work) {
    var renames =
        work.renames().stream()
            .map(rename -> rename.status() == Status.READY ? rename.with(Status.DONE) : rename)
            .toList();
    return new Outcome.Applied(
        journal.batch(), renames, journal.header().guarantee(), work.evidence());
  }

  private Outcome takenBack(Journal journal, Halt halt, Work work) {
    try {
      return switch (recover(journal, false)) {
        case Recovery.RolledBack _ ->
            halt.isCancelled()
                ? new Outcome.Cancelled(journal.batch())
                : new Outcome.RolledBack(journal.batch(), halt.problem());
        case Recovery.Finished _ -> applied(journal, work);
        case Recovery.Stuck stuck -> halted(journal, halt, stuck.files().getFirst().problem());
        case Recovery.Nothing _, Recovery.Refused _ -> throw new IllegalStateException();
      };
    } catch (IOException e) {
      return halted(journal, halt, RenamingFailure.describe(e));
    }
  }

  private static Outcome halted(Journal journal, Halt halt, Problem problem) {
    var what = Text.of("{0}; taking it back stopped: {1}", halt.problem().said(), problem.said());
    return new Outcome.Halted(journal.batch(), new Problem(what, problem.fix()));
  }

  /**
   * Brings a batch that was begun to an end.
   *
   * @param closing whether to close a batch that cannot be ended
   */
  Recovery recover(Journal journal, boolean closing) throws IOException {
    var recovery = Recoverer.run(disk, journal, store.home());
    var end =
        switch (recovery) {
          case Recovery.Finished _ -> BatchState.DONE;
          case Recovery.RolledBack _ -> BatchState.ROLLED_BACK;
          case Recovery.Stuck _ when closing -> BatchState.STUCK;
          case Recovery.Stuck _, Recovery.Nothing _, Recovery.Refused _ -> BatchState.OPEN;
        };
    if (end != BatchState.OPEN) {
      store.end(journal, end, clock.instant());
    }
    return recovery;
  }

  /** The ready renames as a journal keeps them. */
  private List<Op> ops(String batch, Work work, Map<Path, Integer> folders) throws IOException {
    var ops = new ArrayList<Op>(work.renames().size());
    for (int i = 0; i < work.renames().size(); i++) {
      var rename = work.renames().get(i);
      if (rename.status() != Status.READY) {
        continue;
      }
      int in = index(folders, Folders.parent(rename.from()));
      int into = index(folders, Folders.parent(rename.to()));
      var temp = work.conflicted().get(i) ? TempNames.of(batch, ops.size()) : "";
      var hash = rename.seen().key().isEmpty() ? disk.hash(root.resolve(rename.from())) : "";
      ops.add(
          new Op(
              in,
              rename.from().getFileName(),
              into,
              rename.to().getFileName(),
              temp,
              rename.group(),
              rename.seen(),
              hash));
    }
    return List.copyOf(ops);
  }

  private static int index(Map<Path, Integer> folders, Path folder) {
    var known = folders.putIfAbsent(folder, folders.size());
    return known == null ? folders.size() - 1 : known;
  }
}
