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
import org.framewright.base.Text;

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
    var names = disk.names(folder);
    boolean cleared = false;
    for (var name : names) {
      if (isId(name.toString(), UNPUBLISHED) && disk.look(folder.resolve(name)).isFile()) {
        cleared |= clearReserved(name.toString());
      }
    }
    if (cleared) {
      disk.sync(folder); // Else a cut could leave what reserved a name without what shows it.
    }
    for (var name : names) {
      boolean ours =
          isId(name.toString(), UNPUBLISHED) || name.toString().startsWith(MoverFallback.PROBE);
      if (ours && disk.look(folder.resolve(name)).isFile()) {
        disk.remove(folder.resolve(name));
      }
    }
    disk.settle(folder);
  }

  /**
   * While a journal has its first name, what lies under its second one only keeps the place, whole
   * or as a power cut left it. A copy of the folder may hold both; a journal is longer.
   */
  private boolean clearReserved(String unpublished) throws IOException {
    var published = file(unpublished.substring(0, unpublished.length() - UNPUBLISHED.length()));
    var look = disk.look(published);
    if (!look.isFile() || look.seen().size() > ReserveMover.mark().length) {
      return false;
    }
    disk.remove(published);
    return true;
  }

  /** What distinguishes this folder of journals from its copies, see {@link Disk#home}. */
  String home() throws IOException {
    return disk.home(folder);
  }

  /**
   * The id of the batch that a plan becomes: one more than any before, so that ids give the order.
   *
   * @throws DamagedJournal if there can be no more
   */
  String nextId(String planId) throws IOException {
    int last = 0;
    for (var id : ids()) {
      last = Math.max(last, number(id));
    }
    if (last >= MOST_BATCHES) {
      throw new DamagedJournal(
          last + "-...", 0, Text.of("its number is the last that there can be"));
    }
    return String.format("%04d-%s", last + 1, planId);
  }

  /** Makes a journal durable; the batch is begun once this returns. */
  Journal publish(JournalHeader header, List<Op> ops) throws IOException {
    var text = JournalWriter.plan(header, ops);
    var unpublished = folder.resolve(header.batch() + UNPUBLISHED);
    disk.write(unpublished, text.parts());
    if (disk.guarantee() == Guarantee.RESERVED) {
      disk.sync(folder); // Else a cut could leave its second name alone, with nothing of it in it.
    }
    if (disk.move(unpublished, file(header.batch())) != MoveResult.MOVED) {
      throw new IOException("the journal " + header.batch() + " could not be given its name");
    }
    disk.sync(folder);
    return new Journal(header, ops, text.commit(), text.length(), BatchState.OPEN);
  }

  /** Records how a batch ended. */
  void end(Journal journal, BatchState state, Instant at) throws IOException {
    disk.writeTail(
        file(journal.batch()), journal.length(), JournalWriter.end(state, at, journal.commit()));
  }

  /**
   * A journal, all of it checked.
   *
   * @throws DamagedJournal if it cannot be relied on
   */
  Journal read(String id) throws IOException {
    return JournalReader.read(disk, file(id), root);
  }

  /** Drops a journal. */
  void drop(String id) throws IOException {
    disk.remove(file(id));
  }

  /** Every batch, oldest first. Reads only the ends of each journal. */
  List<Batch> batches() throws IOException {
    if (!exists()) {
      return List.of();
    }
    var batches = new ArrayList<Batch>();
    for (var id : ids()) {
      batches.add(batch(id));
    }
    return withUndoneBy(batches);
  }

  private Batch batch(String id) throws IOException {
    try {
      var summary = JournalReader.summary(disk, file(id), root);
      var head = summary.header();
      var undoes = head.undoes().isEmpty() ? Optional.<String>empty() : Optional.of(head.undoes());
      return new Batch(
          id,
          head.at(),
          summary.end(),
          summary.renames(),
          summary.example(),
          undoes,
          Optional.empty(),
          Text.NONE);
    } catch (DamagedJournal e) {
      return new Batch(
          id,
          Instant.EPOCH,
          BatchState.UNREADABLE,
          0,
          "",
          Optional.empty(),
          Optional.empty(),
          e.problem().said());
    }
  }

  /** Adds to each batch which later one took it back, if that one was not taken back itself. */
  private static List<Batch> withUndoneBy(List<Batch> batches) {
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
                    batch.damage()))
        .toList();
  }

  private List<String> ids() throws IOException {
    return disk.names(folder).stream()
        .map(Path::toString)
        .filter(name -> isId(name, ENDING))
        .map(name -> name.substring(0, name.length() - ENDING.length()))
        .sorted(Comparator.comparingInt(Store::number).thenComparing(Comparator.naturalOrder()))
        .toList();
  }

  private static boolean isId(String name, String ending) {
    return name.endsWith(ending)
        && JournalFormat.BATCH
            .matcher(name.substring(0, name.length() - ending.length()))
            .matches();
  }

  private static int number(String id) {
    return Integer.parseInt(id, 0, id.indexOf('-'), 10);
  }

  private Path file(String id) {
    return folder.resolve(id + ENDING);
  }
}
