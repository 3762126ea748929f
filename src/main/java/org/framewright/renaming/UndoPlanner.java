package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/** Plans how a batch is taken back: the names exchanged, and only of files that are the same. */
final class UndoPlanner {
  private final Disk disk;
  private final Journal journal;
  private final Recognition recognition;

  private UndoPlanner(Disk disk, Journal journal, Recognition recognition) {
    this.disk = disk;
    this.journal = journal;
    this.recognition = recognition;
  }

  /**
   * The renames that take a batch back; what cannot be taken back is skipped.
   *
   * @param home what distinguishes the folder of journals from its copies today
   * @throws IOException if a folder or a file cannot be looked at
   */
  static BatchRunner.Work plan(Disk disk, Journal journal, String home) throws IOException {
    var recognition = Recognition.of(disk, journal, home, List.of(Position.TARGET));
    return new UndoPlanner(disk, journal, recognition).plan();
  }

  private BatchRunner.Work plan() throws IOException {
    var ops = journal.ops();
    var requests = new ArrayList<RenameRequest>(ops.size());
    var conflicted = new BitSet();
    for (var op : ops) {
      // What met another rename on the way there meets it on the way back.
      conflicted.set(requests.size(), op.conflicted());
      requests.add(
          new RenameRequest(
              journal.relative(op.into(), op.to()),
              journal.relative(op.in(), op.from()),
              op.group()));
    }
    var renames =
        new Planner(disk, journal.root(), true)
            .plan(requests, (index, file, seen) -> changed(ops.get(index), file, seen)).stream()
                .map(
                    rename ->
                        rename.status() == Status.BLOCKED
                            ? rename.with(Status.SKIPPED, rename.said(), rename.fix())
                            : rename)
                .toList();
    return new BatchRunner.Work(renames, conflicted, journal.batch(), recognition.evidence());
  }

  private Problem changed(Op op, Path file, Seen seen) throws IOException {
    return recognition.is(op, file, seen)
        ? null
        : new Problem(
            Text.of("{0} was changed or replaced since the batch", journal.root().relativize(file)),
            "Rename it by hand if it shall have its old name.");
  }
}
