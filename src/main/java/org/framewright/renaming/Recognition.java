package org.framewright.renaming;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Whether a file is the one that a journal saw. Where the journal was written, a file keeps its
 * number, size and time, whatever its name. In a copy of the folder every number is another one,
 * and the times may be; there a file is the one that was seen if nothing contradicts it: its name
 * and its size, its hash if the journal has one, and its time if the copy kept times at all.
 */
final class Recognition {
  /** FAT and exFAT keep times in steps of two seconds, and so does what was copied over them. */
  private static final long COPIED_TIME_NANOS = 2_000_000_000L;

  private final Disk disk;
  private final boolean copied;
  private final boolean timesKept;
  private final boolean timesNeeded;
  private final boolean hashed;

  private Recognition(
      Disk disk, boolean copied, boolean timesKept, boolean timesNeeded, boolean hashed) {
    this.disk = disk;
    this.copied = copied;
    this.timesKept = timesKept;
    this.timesNeeded = timesNeeded;
    this.hashed = hashed;
  }

  /**
   * Finds out whether the folder is a copy of the one that the journal was written in.
   *
   * @param home what distinguishes the folder of journals from its copies today
   * @param positions where the files may be
   * @throws IOException if a file cannot be looked at
   */
  static Recognition of(Disk disk, Journal journal, String home, List<Position> positions)
      throws IOException {
    var then = journal.header().home();
    boolean anyHome = then.isPresent() && !(then.get().isEmpty() && home.isEmpty());
    if (anyHome && then.get().equals(home)) {
      return new Recognition(disk, false, true, false, false);
    }
    var sameFile = new AtomicBoolean();
    var sameTime = new AtomicBoolean();
    var ops = journal.ops();
    Parallel.each(
        ops.size(),
        i -> {
          var op = ops.get(i);
          for (var position : positions) {
            if (sameFile.get() && sameTime.get() || position == Position.TEMP && !op.conflicted()) {
              continue;
            }
            var look = disk.look(journal.path(op, position));
            if (look.isFile()) {
              if (disk.traits().same(op.seen(), look.seen())) {
                sameFile.setPlain(true);
              }
              if (sameSizeAndTime(op.seen(), look.seen())) {
                sameTime.setPlain(true);
              }
            }
          }
        });
    boolean hashed = ops.stream().noneMatch(op -> op.hash().isEmpty());
    // Without a home then or now, a folder is taken for a copy if no file at all is the same.
    boolean copied = anyHome || !sameFile.get();
    return new Recognition(disk, copied, sameTime.get(), then.isEmpty() && !hashed, hashed);
  }

  private static boolean sameSizeAndTime(Seen a, Seen b) {
    return a.size() == b.size()
        && Math.abs(a.modifiedNanos() - b.modifiedNanos()) <= COPIED_TIME_NANOS;
  }

  /** Whether the file under a name can be the one that was seen. */
  boolean is(Op op, Path file) throws IOException {
    var look = disk.look(file);
    return look.isFile() && is(op, file, look.seen());
  }

  /** The same of a file that was looked at. */
  boolean is(Op op, Path file, Seen seen) throws IOException {
    return (disk.traits().same(op.seen(), seen) || isCopy(op, seen))
        && (op.hash().isEmpty() || op.hash().equals(disk.hash(file)));
  }

  private boolean isCopy(Op op, Seen seen) {
    return copied
        && (timesKept || timesNeeded
            ? sameSizeAndTime(op.seen(), seen)
            : op.seen().size() == seen.size());
  }

  /** Whether another file of the batch may be taken for this one. */
  boolean mayMistake(Op op) {
    return copied || !op.hash().isEmpty();
  }

  /** Whether two files that are taken for each other may differ. */
  boolean mayDiffer(Op op) {
    return copied && op.hash().isEmpty();
  }

  /** What the files of this batch are recognised by. */
  Evidence evidence() {
    if (!copied) {
      return Evidence.SAME_FILES;
    }
    if (hashed) {
      return Evidence.COPIES_BY_HASH;
    }
    return timesKept ? Evidence.COPIES_BY_TIME : Evidence.COPIES_BY_SIZE;
  }
}
