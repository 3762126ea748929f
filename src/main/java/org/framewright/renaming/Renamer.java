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
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.Text;

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
  private final BatchRunner runner;

  Renamer(Path root, Disk disk, Clock clock, Supplier<String> ids) {
    this.root = root;
    this.disk = disk;
    this.store = new Store(disk, root);
    this.clock = clock;
    this.ids = ids;
    this.runner = new BatchRunner(root, disk, store, clock);
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
    return new Renamer(
        real, new NioDisk(real, MoverFallback.movers(real)), clock, Renamer::randomId);
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
                + ") does not promise that a rename survives a power cut: do not unplug it"
                + " meanwhile.");
  }

  /**
   * Plans without changing anything: which requests can be met, and why the others cannot.
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
      return refused(
          Text.of("the plan was made for {0}", plan.root()), Text.of("Plan again for {0}.", root));
    }
    if (plan.ready() == 0) {
      return new Outcome.Nothing(plan.renames());
    }
    return locked(
        _ -> {
          var changed = changedSince(plan);
          if (changed.isPresent()) {
            return new Outcome.Refused(changed.get());
          }
          var conflicted = Conflicts.of(plan.renames());
          var work = new BatchRunner.Work(plan.renames(), conflicted, "", Evidence.SAME_FILES);
          return runner.run(plan.id(), work, progress);
        });
  }

  /**
   * Takes a batch back, as a batch of its own; taking back an undo is a redo. A file that was
   * changed since keeps its name, with its group, and is reported as skipped. In a copy of the
   * folder files are recognised by their content, see {@link Evidence}.
   *
   * @throws IOException if the folder cannot be looked at; nothing was changed
   */
  public Outcome undo(String batchId, Progress progress) throws IOException {
    return locked(batches -> takeBack(batchId, batches, progress));
  }

  /** Every batch of this folder, oldest first. Reads only the ends of each journal. */
  public List<Batch> batches() throws IOException {
    return store.batches();
  }

  /**
   * What a batch was to rename, from and to, whatever became of it.
   *
   * @throws IOException if its journal cannot be read or relied on
   */
  public List<RenameRequest> renames(String batchId) throws IOException {
    var journal = store.read(batchId);
    return journal.ops().stream()
        .map(
            op ->
                new RenameRequest(
                    journal.relative(op.in(), op.from()),
                    journal.relative(op.into(), op.to()),
                    op.group()))
        .toList();
  }

  /** The batch that an undo would take back next: the latest that is done and is no undo. */
  public Optional<Batch> nextUndo() throws IOException {
    return new History(store.batches()).undo();
  }

  /** The undo to take back to redo what was undone last, unless something new was done since. */
  public Optional<Batch> nextRedo() throws IOException {
    return new History(store.batches()).redo();
  }

  /**
   * The batch that was begun and not ended, unless somebody is working on it.
   *
   * @throws IOException if the journals cannot be read
   */
  public Optional<Interrupted> interrupted() throws IOException {
    if (!store.exists()) {
      return Optional.empty();
    }
    var open = open(store.batches());
    if (open.isEmpty()) {
      return Optional.empty();
    }
    return isAtWork()
        ? Optional.empty()
        : open.map(batch -> new Interrupted(batch.id(), batch.at(), batch.renames()));
  }

  /** Whether somebody holds the lock; nobody does where there can be none. */
  private boolean isAtWork() {
    try (var lock = store.lock().orElse(null)) {
      return lock == null;
    } catch (IOException e) {
      return false; // The recovery says what is wrong with the lock.
    }
  }

  /**
   * Brings the batch that was interrupted to an end: wholly old or wholly new. May itself be
   * interrupted and called again.
   *
   * @throws IOException if the disk fails; call again once it works
   */
  public Recovery recover() throws IOException {
    return recover(false);
  }

  /**
   * Closes a batch that {@link #recover} cannot end: its files stay under the names they have, and
   * the batch cannot be undone.
   *
   * @throws IOException if the disk fails; call again once it works
   */
  public Recovery close() throws IOException {
    return recover(true);
  }

  private Recovery recover(boolean closing) throws IOException {
    if (!store.exists()) {
      return new Recovery.Nothing();
    }
    return underLock(
        Recovery.Refused::new,
        () -> {
          var batches = store.batches();
          var open = open(batches);
          if (open.isPresent()) {
            return runner.recover(store.read(open.get().id()), closing);
          }
          return damaged(batches)
              .<Recovery>map(Recovery.Refused::new)
              .orElseGet(Recovery.Nothing::new);
        });
  }

  /**
   * Drops journals of batches begun before a time. A batch that could still be undone is kept,
   * unless the caller says otherwise; one that is not ended is always kept.
   *
   * @throws IOException if the disk fails amid it; some journals may be dropped
   */
  public Pruned prune(Instant before, boolean alsoUndoable) throws IOException {
    return store.exists()
        ? underLock(Pruned::refused, () -> pruned(before, alsoUndoable))
        : new Pruned(List.of(), List.of(), Optional.empty());
  }

  private Pruned pruned(Instant before, boolean alsoUndoable) throws IOException {
    var dropped = new ArrayList<Batch>();
    var kept = new ArrayList<Batch>();
    for (var batch : store.batches()) {
      boolean readable = batch.state() != BatchState.UNREADABLE;
      if (readable && !batch.at().isBefore(before)) {
        continue;
      }
      boolean ended = readable && batch.state() != BatchState.OPEN;
      if (ended && (alsoUndoable || !batch.undoable())) {
        dropped.add(batch);
      } else {
        kept.add(batch);
      }
    }
    for (var batch : dropped) {
      store.drop(batch.id());
    }
    return new Pruned(dropped, kept, Optional.empty());
  }

  // ---- how it is done

  private static final Problem BUSY =
      new Problem("another rename is running in this folder", "Wait until it is done.");

  private static Outcome refused(Text what, Text remedy) {
    return new Outcome.Refused(new Problem(what, remedy));
  }

  private interface Step<T> {
    T take() throws IOException;
  }

  private interface Work {
    Outcome run(List<Batch> batches) throws IOException;
  }

  /** Does the work under the lock, once nothing is left of an earlier batch. */
  private Outcome locked(Work work) throws IOException {
    return underLock(
        Outcome.Refused::new,
        () -> {
          var batches = store.batches();
          var open = open(batches);
          if (open.isPresent()) {
            return refused(
                Text.of("batch {0} was interrupted in this folder", open.get().id()),
                Text.of("Recover first: it brings every file to its old or its new name."));
          }
          var damaged = damaged(batches);
          return damaged.isPresent() ? new Outcome.Refused(damaged.get()) : work.run(batches);
        });
  }

  /**
   * Takes a step under the lock.
   *
   * @param refused what a problem is that keeps it from being taken
   */
  private <T> T underLock(Function<Problem, T> refused, Step<T> step) throws IOException {
    Optional<Closeable> free;
    try {
      free = store.lock();
    } catch (IOException e) {
      return refused.apply(unusable(e));
    }
    if (free.isEmpty()) {
      return refused.apply(BUSY);
    }
    try (var _ = free.get()) {
      try {
        store.prepare();
      } catch (IOException e) {
        return refused.apply(unusable(e));
      }
      return step.take();
    } catch (DamagedJournal e) {
      return refused.apply(e.problem());
    }
  }

  private static Problem unusable(IOException e) {
    return RenamingFailure.describe(
        Text.of("the journals in {0} cannot be written, so nothing was renamed", Folders.OURS), e);
  }

  private static Optional<Batch> open(List<Batch> batches) {
    return batches.reversed().stream()
        .filter(batch -> batch.state() == BatchState.OPEN)
        .findFirst();
  }

  private static Optional<Problem> damaged(List<Batch> batches) {
    return batches.stream()
        .filter(batch -> batch.state() == BatchState.UNREADABLE)
        .map(batch -> DamagedJournal.problem(batch.damage()))
        .findFirst();
  }

  /** What keeps a plan from being applied: a file or a folder that is not as the plan saw it. */
  private Optional<Problem> changedSince(Plan plan) throws IOException {
    var ready = plan.renames().stream().filter(rename -> rename.status() == Status.READY).toList();
    var folders = new HashSet<Path>();
    for (var rename : ready) {
      for (var path : List.of(rename.from(), rename.to())) {
        var folder = Folders.parent(path);
        if (folders.add(folder)) {
          var trouble = Folders.trouble(disk, root, folder);
          if (trouble.isPresent()) {
            return trouble;
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
            new Problem(
                Text.of(
                    looks[i].isFile()
                        ? "{0} was changed since the plan"
                        : "{0} vanished since the plan",
                    rename.from()),
                "Plan again."));
      }
    }
    return Optional.empty();
  }

  private Outcome takeBack(String batchId, List<Batch> batches, Progress progress)
      throws IOException {
    var batch = batches.stream().filter(known -> known.id().equals(batchId)).findFirst();
    if (batch.isEmpty()) {
      return refused(
          Text.of("there is no batch {0} in this folder", batchId),
          Text.of("List the batches to see their ids."));
    }
    if (!batch.get().undoable()) {
      var by = batch.get().undoneBy();
      return by.isPresent()
          ? refused(
              Text.of("batch {0} was taken back by batch {1}", batchId, by.get()),
              Text.of("To redo it, undo batch {0}.", by.get()))
          : refused(
              Text.of("batch {0} is not done, but {1}", batchId, batch.get().state().said()),
              Text.of("There is nothing to undo."));
    }
    var work = UndoPlanner.plan(disk, store.read(batchId), store.home());
    return work.renames().stream().anyMatch(rename -> rename.status() == Status.READY)
        ? runner.run(ids.get(), work, progress)
        : new Outcome.Nothing(work.renames());
  }
}
