package org.framewright.renaming;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The journals of a folder, below {@code .framewright/renames}. */
final class Store {
  /** What the file of a journal ends in. */
  static final String ENDING = ".jsonl";

  /** What a journal ends in while it is written; one that was left so was never begun. */
  private static final String UNPUBLISHED = ".tmp";

  private static final int MOST_BATCHES = 999_999_999;

  private final Disk disk;
  private final Path root;
  private final Path folder;

  Store(Disk disk, Path root) {
    this.disk = disk;
    this.root = root;
    this.folder = root.resolve(Folders.OURS).resolve("renames");
  }

  /** Whether there is a folder of journals; one that is a link, or in a linked folder, is none. */
  boolean exists() throws IOException {
    return disk.look(folder.getParent()).isFolder() && disk.look(folder).isFolder();
  }

  /** Makes the folder, if need be, and locks it; empty if somebody is at work here. */
  Optional<Closeable> lock() throws IOException {
    disk.makeFolder(folder.getParent());
    disk.makeFolder(folder);
    return disk.lock(folder.resolve("lock"));
  }

  /** Under the lock: clears what was never begun, and finds the way to rename here. */
  void prepare() throws IOException {
    for (var name : disk.names(folder)) {
      var text = name.toString();
      if (text.endsWith(UNPUBLISHED)) {
        clearReserved(file(text.substring(0, text.length() - UNPUBLISHED.length())));
        disk.remove(folder.resolve(name));
      } else if (text.startsWith(MoverFallback.PROBE)) {
        disk.remove(folder.resolve(name));
      }
    }
    disk.settle(folder);
  }

  /** While a journal has its first name, what lies under its second one only keeps the place. */
  private void clearReserved(Path published) throws IOException {
    var look = disk.look(published);
    if (look.isFile() && look.seen().size() == 0) {
      disk.remove(published);
    } else if (look.isFile()) {
      disk.removePlaceholder(published);
    }
  }

  /**
   * The id of the batch that a plan becomes: one more than any before, so that ids tell the order.
   */
  String nextId(String planId) throws IOException {
    int last = 0;
    for (var id : ids()) {
      last = Math.max(last, Integer.parseInt(id, 0, id.indexOf('-'), 10));
    }
    if (last >= MOST_BATCHES) {
      throw new IOException("there are too many batches in this folder");
    }
    return String.format("%04d-%s", last + 1, planId);
  }

  /** Makes a journal durable; the batch is begun once this returns. */
  Journal publish(Journal plan) throws IOException {
    var folders =
        plan.folders().stream()
            .map(
                path -> {
                  var names = new ArrayList<Path>();
                  root.relativize(path).forEach(names::add);
                  names.removeIf(name -> name.toString().isEmpty());
                  return List.copyOf(names);
                })
            .toList();
    var text =
        JournalText.write(
            plan.batch(),
            plan.at(),
            plan.undoes(),
            plan.guarantee(),
            plan.volume(),
            folders,
            plan.ops());
    var unpublished = folder.resolve(plan.batch() + UNPUBLISHED);
    disk.write(unpublished, text.parts());
    if (disk.move(unpublished, file(plan.batch())) != MoveResult.MOVED) {
      throw new IOException("the journal " + plan.batch() + " could not be given its name");
    }
    disk.sync(folder);
    return new Journal(
        plan.batch(),
        plan.at(),
        plan.undoes(),
        plan.guarantee(),
        plan.volume(),
        root,
        plan.folders(),
        plan.ops(),
        text.commit(),
        text.length(),
        BatchState.OPEN);
  }

  /** Records how a batch ended. */
  void end(Journal journal, BatchState state, Instant at) throws IOException {
    disk.writeTail(
        file(journal.batch()), journal.length(), JournalText.end(state, at, journal.commit()));
  }

  /**
   * A journal, all of it checked.
   *
   * @throws DamagedJournal if it cannot be relied on
   */
  Journal read(String id) throws IOException {
    return JournalText.read(disk, file(id), root);
  }

  /** Drops a journal. */
  void drop(String id) throws IOException {
    disk.remove(file(id));
  }

  /** Every batch, oldest first. */
  List<Batch> batches() throws IOException {
    if (!exists()) {
      return List.of();
    }
    var batches = new ArrayList<Batch>();
    for (var id : ids()) {
      batches.add(batch(id));
    }
    return undoneTold(batches);
  }

  private Batch batch(String id) throws IOException {
    try {
      var summary = JournalText.summary(disk, file(id), root);
      var head = summary.head();
      var undoes = head.undoes().isEmpty() ? Optional.<String>empty() : Optional.of(head.undoes());
      return new Batch(
          id,
          head.at(),
          head.end(),
          summary.renames(),
          summary.example(),
          undoes,
          Optional.empty(),
          "");
    } catch (DamagedJournal e) {
      return new Batch(
          id,
          Instant.EPOCH,
          BatchState.UNREADABLE,
          0,
          "",
          Optional.empty(),
          Optional.empty(),
          e.getMessage());
    }
  }

  /** Tells of each batch which later one took it back, if that one was not taken back itself. */
  private static List<Batch> undoneTold(List<Batch> batches) {
    Map<String, String> undoneBy = new HashMap<>();
    for (int i = batches.size() - 1; i >= 0; i--) {
      var batch = batches.get(i);
      if (batch.state() == BatchState.DONE && !undoneBy.containsKey(batch.id())) {
        batch.undoes().ifPresent(undone -> undoneBy.putIfAbsent(undone, batch.id()));
      }
    }
    return batches.stream()
        .map(
            batch ->
                new Batch(
                    batch.id(),
                    batch.at(),
                    batch.state(),
                    batch.renames(),
                    batch.example(),
                    batch.undoes(),
                    Optional.ofNullable(undoneBy.get(batch.id())),
                    batch.trouble()))
        .toList();
  }

  private List<String> ids() throws IOException {
    return disk.names(folder).stream()
        .map(Path::toString)
        .filter(name -> name.endsWith(ENDING))
        .map(name -> name.substring(0, name.length() - ENDING.length()))
        .filter(id -> JournalText.BATCH.matcher(id).matches())
        .sorted(
            Comparator.comparingInt((String id) -> Integer.parseInt(id, 0, id.indexOf('-'), 10))
                .thenComparing(Comparator.naturalOrder()))
        .toList();
  }

  private Path file(String id) {
    return folder.resolve(id + ENDING);
  }
}
