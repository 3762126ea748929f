package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.framewright.base.Problem;
import org.framewright.base.Progress;

/**
 * Renames files below one folder, whose {@code .framewright/renames} holds the journals. One thread
 * at a time; other processes are kept out by a lock.
 */
public final class Renamer {
  private static final SecureRandom RANDOM = new SecureRandom();

  private final Path root;
  private final Disk disk;
  private final Store store;
  private final Clock clock;
  private final Supplier<String> ids;

  Renamer(Path root, Disk disk, Clock clock, Supplier<String> ids) {
    this.root = root;
    this.disk = disk;
    this.store = new Store(disk, root);
    this.clock = clock;
    this.ids = ids;
  }

  /**
   * Renames below this folder.
   *
   * @throws NotDirectoryException if it is no folder
   */
  public static Renamer in(Path root) throws IOException {
    return in(root, Clock.systemUTC());
  }

  /**
   * Renames below this folder, by this clock.
   *
   * @throws NotDirectoryException if it is no folder
   */
  public static Renamer in(Path root, Clock clock) throws IOException {
    // The folder itself may be given by a link; nothing below it may.
    var real = root.toRealPath();
    if (!Files.isDirectory(real)) {
      throw new NotDirectoryException(root.toString());
    }
    return new Renamer(real, new NioDisk(real, MoverFallback.movers()), clock, Renamer::randomId);
  }

  private static String randomId() {
    return String.format("%08x", RANDOM.nextInt());
  }

  /** The folder that all paths are relative to. */
  public Path root() {
    return root;
  }

  /** What a person should know of this volume before renaming on it; empty if it is a good one. */
  public Optional<String> volumeWarning() {
    return disk.traits().atomicRename()
        ? Optional.empty()
        : Optional.of(
            "This volume ("
                + disk.traits().type()
                + ") does not promise that a rename survives a power cut: do not unplug it meanwhile.");
  }

  /**
   * Plans without changing anything: which wishes can be done, and why the others cannot.
   *
   * @throws IOException if a folder or a file cannot be looked at
   */
  public Plan plan(List<RenameRequest> requests) throws IOException {
    var renames = new Planner(disk, root, false).plan(requests, (index, file, seen) -> null);
    return new Plan(ids.get(), root, clock.instant(), renames);
  }

  /**
   * Applies the ready renames of a plan, all or none; leaves the blocked ones as they are. Refuses
   * if a file is no longer as the plan saw it, or if no journal can be written.
   *
   * @throws IOException if the folder cannot be looked at; nothing was changed
   */
  public Outcome apply(Plan plan, Progress progress) throws IOException {
    if (!plan.root().equals(root)) {
      return new Outcome.Refused(
          "the plan was made for " + plan.root(), "Plan again for " + root + ".");
    }
    if (plan.ready() == 0) {
      return new Outcome.Nothing(plan.renames());
    }
    return locked(
        () -> {
          var changed = changedSince(plan);
          return changed.isPresent()
              ? changed.get()
              : carryOut(plan.id(), plan.renames(), Conflicts.of(plan.renames()), "", progress);
        });
  }

  /**
   * Takes a batch back, as a batch of its own; taking back an undo is a redo. A file that was
   * changed since keeps its name, with its group, and is told as skipped.
   *
   * @throws IOException if the folder of journals cannot be used; nothing was changed
   */
  public Outcome undo(String batchId, Progress progress) throws IOException {
    return locked(() -> takeBack(batchId, progress));
  }

  /** Every batch of this folder, oldest first. Reads only the ends of each journal. */
  public List<Batch> batches() throws IOException {
    return store.batches();
  }

  /** The batch that an undo would take back next: the latest that is done and is no undo. */
  public Optional<Batch> nextUndo() throws IOException {
    return new History(store.batches()).undo();
  }

  /** The undo to take back to redo what was undone last, unless something new was done since. */
  public Optional<Batch> nextRedo() throws IOException {
    return new History(store.batches()).redo();
  }

  /** The batch that was begun and not ended, unless somebody is working on it. */
  public Optional<Interrupted> interrupted() throws IOException {
    if (!store.exists()) {
      return Optional.empty();
    }
    var open = open(store.batches());
    if (open.isEmpty()) {
      return Optional.empty();
    }
    try (var lock = store.lock().orElse(null)) {
      return lock == null
          ? Optional.empty()
          : open.map(batch -> new Interrupted(batch.id(), batch.at(), batch.renames()));
    }
  }

  /**
   * Brings the batch that was interrupted to an end: wholly old or wholly new. May itself be
   * interrupted and called again.
   *
   * @throws IOException if the disk fails; call again once it works
   */
  public Recovery recover() throws IOException {
    return recovering(false);
  }

  /**
   * Closes a batch that {@link #recover} cannot end: its files stay under the names they have, and
   * the batch cannot be undone.
   *
   * @throws IOException if the disk fails; call again once it works
   */
  public Recovery close() throws IOException {
    return recovering(true);
  }

  private Recovery recovering(boolean closing) throws IOException {
    if (!store.exists()) {
      return new Recovery.Nothing();
    }
    try (var lock = store.lock().orElse(null)) {
      if (lock == null) {
        return new Recovery.Refused(BUSY.what(), BUSY.remedy());
      }
      store.prepare();
      var open = open(store.batches());
      if (open.isEmpty()) {
        return damaged()
            .<Recovery>map(problem -> new Recovery.Refused(problem.what(), problem.remedy()))
            .orElseGet(Recovery.Nothing::new);
      }
      var journal = store.read(open.get().id());
      var recovery = Recoverer.run(disk, journal);
      record(journal, recovery, closing);
      return recovery;
    } catch (DamagedJournal e) {
      return new Recovery.Refused(e.getMessage(), DamagedJournal.remedy());
    }
  }

  private void record(Journal journal, Recovery recovery, boolean closing) throws IOException {
    switch (recovery) {
      case Recovery.Finished finished -> store.end(journal, BatchState.DONE, clock.instant());
      case Recovery.RolledBack back -> store.end(journal, BatchState.ROLLED_BACK, clock.instant());
      case Recovery.Stuck stuck -> {
        if (closing) {
          store.end(journal, BatchState.STUCK, clock.instant());
        }
      }
      case Recovery.Nothing nothing -> {}
      case Recovery.Refused refused -> {}
    }
  }

  /**
   * Drops journals of batches begun before a time. A batch that could still be undone is kept,
   * unless the caller says otherwise; one that is not ended is always kept.
   *
   * @throws IOException if somebody is at work in this folder, or the disk fails
   */
  public Pruned prune(Instant before, boolean alsoUndoable) throws IOException {
    var dropped = new ArrayList<Batch>();
    var kept = new ArrayList<Batch>();
    if (!store.exists()) {
      return new Pruned(dropped, kept);
    }
    try (var _ = store.lock().orElseThrow(() -> new IOException(BUSY.what()))) {
      for (var batch : store.batches()) {
        if (batch.state() == BatchState.UNREADABLE) {
          kept.add(batch);
        } else if (batch.at().isBefore(before)) {
          boolean ended = batch.state() != BatchState.OPEN;
          if (ended && (alsoUndoable || !batch.undoable())) {
            dropped.add(batch);
          } else {
            kept.add(batch);
          }
        }
      }
      for (var batch : dropped) {
        store.drop(batch.id());
      }
    }
    return new Pruned(dropped, kept);
  }

  // ---- how it is done

  private static final Problem BUSY =
      new Problem("another rename is running in this folder", "Wait until it is done.");

  private interface Work {
    Outcome run() throws IOException;
  }

  /** Does the work under the lock, once nothing is left of an earlier batch. */
  private Outcome locked(Work work) throws IOException {
    Optional<Closeable> free;
    try {
      free = store.lock();
    } catch (IOException e) {
      return unusable(e);
    }
    if (free.isEmpty()) {
      return new Outcome.Refused(BUSY.what(), BUSY.remedy());
    }
    try (var _ = free.get()) {
      try {
        store.prepare();
      } catch (IOException e) {
        return unusable(e);
      }
      var open = open(store.batches());
      if (open.isPresent()) {
        return new Outcome.Refused(
            "batch " + open.get().id() + " was interrupted in this folder",
            "Recover first: it brings every file to its old or its new name.");
      }
      var damaged = damaged();
      if (damaged.isPresent()) {
        return new Outcome.Refused(damaged.get().what(), damaged.get().remedy());
      }
      return work.run();
    } catch (DamagedJournal e) {
      return new Outcome.Refused(e.getMessage(), DamagedJournal.remedy());
    }
  }

  private Outcome unusable(IOException e) {
    return new Outcome.Refused(
        "the journals in " + root.resolve(Folders.OURS) + " cannot be written: " + e.getMessage(),
        "Check the disk and the right to write there; no file was renamed.");
  }

  private static Optional<Batch> open(List<Batch> batches) {
    return batches.reversed().stream()
        .filter(batch -> batch.state() == BatchState.OPEN)
        .findFirst();
  }

  private Optional<Problem> damaged() throws IOException {
    return store.batches().stream()
        .filter(batch -> batch.state() == BatchState.UNREADABLE)
        .map(batch -> new Problem(batch.trouble(), DamagedJournal.remedy()))
        .findFirst();
  }

  /** Refuses if a file or a folder is not as the plan saw it. */
  private Optional<Outcome> changedSince(Plan plan) throws IOException {
    var ready = plan.renames().stream().filter(rename -> rename.status() == Status.READY).toList();
    var folders = new HashSet<Path>();
    for (var rename : ready) {
      for (var path : List.of(rename.from(), rename.to())) {
        var folder = parent(path);
        if (folders.add(folder)) {
          var trouble = Folders.trouble(disk, root, folder);
          if (trouble.isPresent()) {
            return Optional.of(new Outcome.Refused(trouble.get().what(), trouble.get().remedy()));
          }
        }
      }
    }
    var looks = new Look[ready.size()];
    Parallel.each(looks.length, i -> looks[i] = disk.look(root.resolve(ready.get(i).from())));
    for (int i = 0; i < looks.length; i++) {
      var rename = ready.get(i);
      if (!looks[i].isFile() || !disk.traits().same(rename.seen(), looks[i].seen())) {
        return Optional.of(
            new Outcome.Refused(
                rename.from()
                    + (looks[i].isFile() ? " was changed" : " vanished")
                    + " since the plan",
                "Plan again."));
      }
    }
    return Optional.empty();
  }

  private Path parent(Path file) {
    var parent = file.getParent();
    return parent == null ? root.getFileSystem().getPath("") : parent;
  }

  private Outcome carryOut(
      String planId,
      List<PlannedRename> renames,
      BitSet conflicted,
      String undoes,
      Progress progress)
      throws IOException {
    var planned = journal(store.nextId(planId), renames, conflicted, undoes);
    HeldFolders folders;
    try {
      folders = disk.hold(root, planned.folders());
    } catch (MoveFailure e) {
      return new Outcome.Refused(e.getMessage(), e.remedy());
    }
    try (folders) {
      return carryOut(planned, folders, renames, progress);
    }
  }

  private Outcome carryOut(
      Journal planned, HeldFolders folders, List<PlannedRename> renames, Progress progress) {
    Journal journal;
    try {
      journal = store.publish(planned);
    } catch (MoveFailure e) {
      return new Outcome.Refused("the journal cannot be written: " + e.getMessage(), e.remedy());
    } catch (IOException e) {
      return new Outcome.Refused(
          "the journal cannot be written: " + e.getMessage(),
          "Free some space or check the disk; no file was renamed.");
    }
    var places = new Place[journal.ops().size()];
    Arrays.fill(places, Place.SOURCE);
    try {
      new Epochs(folders, journal, places, progress).forward();
    } catch (Halt e) {
      return rolledBack(journal, e, renames);
    }
    try {
      store.end(journal, BatchState.DONE, clock.instant());
    } catch (IOException e) {
      return new Outcome.Halted(
          journal.batch(),
          "every file has its new name, but the journal could not be closed: " + e.getMessage(),
          "Free some space or check the disk, then recover.");
    }
    return applied(journal, renames);
  }

  private static Outcome applied(Journal journal, List<PlannedRename> renames) {
    var told =
        renames.stream()
            .map(rename -> rename.status() == Status.READY ? rename.with(Status.DONE) : rename)
            .toList();
    return new Outcome.Applied(journal.batch(), told, journal.guarantee());
  }

  private Outcome rolledBack(Journal journal, Halt halt, List<PlannedRename> renames) {
    try {
      var recovery = Recoverer.run(disk, journal);
      record(journal, recovery, false);
      return switch (recovery) {
        case Recovery.RolledBack back ->
            halt.isCancelled()
                ? new Outcome.Cancelled(journal.batch())
                : new Outcome.RolledBack(journal.batch(), halt.getMessage(), halt.remedy());
        case Recovery.Finished finished -> applied(journal, renames);
        case Recovery.Stuck stuck -> {
          var file = stuck.files().getFirst();
          yield new Outcome.Halted(
              journal.batch(),
              halt.getMessage() + "; taking it back stopped: " + file.why(),
              file.remedy());
        }
        case Recovery.Nothing nothing -> throw new IllegalStateException();
        case Recovery.Refused refused -> throw new IllegalStateException();
      };
    } catch (IOException e) {
      return new Outcome.Halted(
          journal.batch(),
          halt.getMessage() + "; taking it back stopped: " + e.getMessage(),
          "Check the disk, then recover.");
    }
  }

  /** The journal of the ready renames. */
  private Journal journal(
      String batch, List<PlannedRename> renames, BitSet conflicted, String undoes)
      throws IOException {
    var folders = new LinkedHashMap<Path, Integer>();
    var ops = new ArrayList<Op>(renames.size());
    for (int i = 0; i < renames.size(); i++) {
      var rename = renames.get(i);
      if (rename.status() != Status.READY) {
        continue;
      }
      int in = index(folders, parent(rename.from()));
      int into = index(folders, parent(rename.to()));
      var temp = conflicted.get(i) ? TempNames.of(batch, ops.size()) : "";
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
    var paths =
        folders.keySet().stream()
            .map(folder -> folder.toString().isEmpty() ? root : root.resolve(folder))
            .toList();
    return new Journal(
        batch,
        clock.instant(),
        undoes,
        disk.guarantee(),
        disk.traits().type(),
        root,
        paths,
        List.copyOf(ops),
        "",
        0,
        BatchState.OPEN);
  }

  private static int index(Map<Path, Integer> folders, Path folder) {
    var known = folders.putIfAbsent(folder, folders.size());
    return known == null ? folders.size() - 1 : known;
  }

  private Outcome takeBack(String batchId, Progress progress) throws IOException {
    var batch = store.batches().stream().filter(known -> known.id().equals(batchId)).findFirst();
    if (batch.isEmpty()) {
      return new Outcome.Refused(
          "there is no batch " + batchId + " in this folder", "List the batches to see their ids.");
    }
    if (!batch.get().undoable()) {
      var by = batch.get().undoneBy();
      return new Outcome.Refused(
          by.isPresent()
              ? "batch " + batchId + " was taken back by batch " + by.get()
              : "batch " + batchId + " is not done, but " + batch.get().state().label(),
          by.isPresent()
              ? "To redo it, undo batch " + by.get() + "."
              : "There is nothing to undo.");
    }
    var journal = store.read(batchId);
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
        new Planner(disk, root, true)
            .plan(requests, (index, file, seen) -> changed(ops.get(index), file, seen)).stream()
                .map(
                    rename ->
                        rename.status() == Status.BLOCKED
                            ? rename.with(Status.SKIPPED, rename.why(), rename.remedy())
                            : rename)
                .toList();
    if (renames.stream().noneMatch(rename -> rename.status() == Status.READY)) {
      return new Outcome.Nothing(renames);
    }
    return carryOut(ids.get(), renames, conflicted, batchId, progress);
  }

  private Problem changed(Op op, Path file, Seen seen) throws IOException {
    if (disk.traits().same(op.seen(), seen)
        && (op.hash().isEmpty() || op.hash().equals(disk.hash(file)))) {
      return null;
    }
    return new Problem(
        root.relativize(file) + " was changed or replaced since the batch",
        "Rename it by hand if it shall have its old name.");
  }
}
