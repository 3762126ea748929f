package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;
import org.framewright.mhl.HashKind;
import org.framewright.mhl.NewGeneration;
import org.framewright.renaming.NoReplaceMove;

/** One target of a run: what is written to it, what lies there already, what went wrong. */
final class CopyTarget {
  /** Twice in a row, it is not the file. */
  private static final int MOST_FAILURES_IN_A_ROW = 2;

  private static final int LARGEST_LIST = 1 << 28;
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("'copied-'uuuu-MM-dd'T'HHmmss'Z'").withZone(ZoneOffset.UTC);

  private final Path folder;
  private final SameFolder root;
  private final Volumes volumes;
  private final String batch;
  private final String device;
  private final SortedMap<String, String> sums = new TreeMap<>();
  private final List<Problem> blocked = new ArrayList<>();
  private final List<Problem> failed = new ArrayList<>();
  private final List<Path> made = new ArrayList<>();
  private final Set<Path> touched = new LinkedHashSet<>();
  private final BusyTime busy = new BusyTime(System::nanoTime);
  private Optional<Path> list = Optional.empty();
  private Optional<TargetMhl> mhl = Optional.empty();
  private Optional<Path> mhlList = Optional.empty();
  private Instant began = Instant.EPOCH;
  private int copied;
  private long bytes;
  private int alreadyThere;
  private int unsure;
  private int failuresInARow;
  private boolean givenUp;
  private boolean wrong;
  private boolean left;

  /** The file that is being written; null between two. */
  private TargetFile current;

  /** The one before it, which is read back meanwhile. */
  private Optional<Settling> settling = Optional.empty();

  private record Settling(
      TargetFile file, CopySource from, CompletableFuture<TargetFile.Outcome> outcome) {}

  CopyTarget(Path folder, Volumes volumes, String batch, String device) throws IOException {
    this.folder = folder;
    this.root = SameFolder.of(folder);
    this.volumes = volumes;
    this.batch = batch;
    this.device = device;
  }

  /**
   * Adds a generation to the ASC MHL there at the end.
   *
   * @param at when the run began
   * @param copied whether what is copied has an ASC MHL of its own at its top
   */
  void addMhl(Instant at, boolean copied) {
    began = at;
    if (copied) {
      failed.add(
          new Problem(
              "no generation is added to the ASC MHL that is copied here: a copy is never changed",
              folder.toString(),
              "Copy into another folder if an ASC MHL of this copy is needed."));
      return;
    }
    try {
      mhl = Optional.of(new TargetMhl(folder, NewGeneration.Work.TRANSFER));
    } catch (IOException e) {
      noMhl(e);
    }
  }

  private void noMhl(IOException failure) {
    var said = FileProblems.of(failure);
    failed.add(
        new Problem(
            Text.of("no generation was added to the ASC MHL: {0}", said.fault()),
            said.where().isEmpty() ? folder.toString() : said.where(),
            said.fix()));
  }

  /** The hashes that a file is to be given besides its checksum. */
  Set<HashKind> kinds(CopyFile file) {
    return mhl.map(one -> one.kinds(CopyLine.name(file.path()))).orElse(Set.of());
  }

  Path folder() {
    return folder;
  }

  /** Whether no further file is tried here. */
  boolean isGivenUp() {
    return givenUp;
  }

  /** Gets ready for a file. */
  void begin(CopyFile file, int number) {
    current =
        new TargetFile(
            file,
            folder.resolve(file.path().toString()),
            CopyParts.part(folder, batch, number),
            root,
            volumes,
            busy);
    current.open(place -> CopyTargets.makeFolders(folder, place, made));
  }

  /** Begins the same file anew. */
  void rewind() {
    current.rewind();
  }

  void write(ByteBuffer piece) {
    current.write(piece);
  }

  /** Goes on without the file that was begun: it could not be read. */
  void discard() {
    if (current != null) {
      current.discard();
      left |= current.isLeft();
      current.failure().ifPresent(why -> fail(current.place(), why));
      current = null;
    }
  }

  /**
   * Flushes, reads back and names the file that was begun, or compares what has its name; on a
   * thread of its own, while the next file is read.
   */
  void settle(CopySource from, Executor threads) {
    settled();
    if (givenUp) {
      discard();
      return;
    }
    var file = current;
    current = null;
    settling =
        Optional.of(
            new Settling(
                file,
                from,
                CompletableFuture.supplyAsync(() -> file.settle(from.reading()), threads)));
  }

  /** Returns once it is known what became of the file before. */
  void settled() {
    if (settling.isEmpty()) {
      return;
    }
    var one = settling.get();
    settling = Optional.empty();
    TargetFile.Outcome outcome;
    try {
      outcome = one.outcome().join();
    } catch (CompletionException e) {
      switch (e.getCause()) {
        case RuntimeException cause -> throw cause;
        case Error cause -> throw cause;
        default -> throw e;
      }
    }
    left |= one.file().isLeft();
    var place = one.file().place();
    switch (outcome) {
      case TargetFile.Outcome.Copied(var back) -> {
        touched.add(place.getParent());
        copied++;
        bytes += back.bytes();
        count(one, back);
      }
      case TargetFile.Outcome.AlreadyThere(var there) -> {
        alreadyThere++;
        count(one, there);
      }
      case TargetFile.Outcome.Blocked() -> block(place);
      case TargetFile.Outcome.Failed(var why) -> fail(place, why);
    }
  }

  private void count(Settling one, Reading here) {
    unsure += here.medium() == Medium.READ ? 0 : 1;
    failuresInARow = 0;
    var path = one.file().file().path();
    sums.put(path.toString(), CopyLine.of(here.sha256(), path));
    mhl.ifPresent(its -> its.add(CopyLine.name(path), here, one.from().hashes()));
  }

  private void block(Path place) {
    failuresInARow = 0;
    blocked.add(
        new Problem(
            "another file of this name lies there",
            place.toString(),
            "Look at both, and move one away; nothing was replaced."));
  }

  private void fail(Path place, IOException failure) {
    if (givenUp) {
      return;
    }
    boolean writtenWrongly = failure instanceof TargetFile.WrittenWrongly;
    wrong |= writtenWrongly;
    // A folder that is gone says so by all kinds of failures.
    var said =
        writtenWrongly
            ? new Problem(
                "what was read back is not what was written",
                place.toString(),
                "Do not use this disk; copy to another one.")
            : FileProblems.of(root.isThere() ? failure : root.gone());
    // A temporary name says nothing to a person.
    failed.add(said.at(place.toString()));
    failuresInARow++;
    givenUp |= failuresInARow >= MOST_FAILURES_IN_A_ROW || writtenWrongly || !root.isThere();
    if (givenUp) {
      failed.add(
          new Problem(
              "nothing more was copied to this place",
              folder.toString(),
              "Fix what is said above and copy again: what is there is found, and only the rest"
                  + " is copied."));
    }
  }

  /** Ends the work on files: what was begun last is dropped. */
  void end() {
    settled();
    discard();
  }

  /** Whether something half-made could not be removed. */
  boolean isLeft() {
    return left || !root.isThere();
  }

  /**
   * Makes all names durable, and writes the list of checksums.
   *
   * @param host what to call this computer
   */
  void close(Instant at, String host) {
    for (var folderMade : made.reversed()) {
      removeIfEmpty(folderMade);
    }
    if (wrong || sums.isEmpty()) {
      return;
    }
    try {
      root.require();
      for (var folderMade : made) {
        touched.add(folderMade.getParent());
      }
      for (var one : touched) {
        if (Files.isDirectory(one)) {
          DurableFiles.syncFolder(one);
        }
      }
      list = Optional.of(writeList(at));
    } catch (IOException e) {
      remove(listPart());
      left = true; // By the record of the run the next one knows that this is no card.
      if (!givenUp) {
        var said = FileProblems.of(e);
        failed.add(said.at(folder.toString()));
      }
      return;
    }
    if (mhl.isPresent()) {
      try {
        mhlList = mhl.get().write(began, host, listPart(), failed);
      } catch (IOException e) {
        remove(listPart());
        noMhl(e);
      }
    }
  }

  static void removeIfEmpty(Path folder) {
    try (var names = Files.newDirectoryStream(folder)) {
      if (!names.iterator().hasNext()) {
        Files.deleteIfExists(folder);
      }
    } catch (IOException e) {
      // It stays; an empty folder does no harm.
    }
  }

  /** The name that a list has until it is whole. */
  private Path listPart() {
    return CopyParts.part(folder, batch, 0);
  }

  private void remove(Path part) {
    left |= !CopyParts.remove(part, root);
  }

  /** The list of all files that are there; a list that says the same is not written twice. */
  private Path writeList(Instant at) throws IOException {
    var content = String.join("", sums.values()).getBytes(StandardCharsets.UTF_8);
    for (int number = 1; ; number++) {
      var name = NAME.format(at) + (number == 1 ? "" : "-" + number) + ".sha256";
      var file = folder.resolve(name);
      try {
        var same = sameList(content);
        if (same.isPresent()) {
          return same.get();
        }
        // Under a name of the run, so that what a kill leaves is known to be ours.
        DurableFiles.writeFlushed(listPart(), content);
        NoReplaceMove.move(listPart(), file);
        DurableFiles.syncFolder(folder);
        return file;
      } catch (FileAlreadyExistsException e) {
        remove(listPart());
        if (number > 1000) {
          throw e;
        }
      }
    }
  }

  private Optional<Path> sameList(byte[] content) throws IOException {
    try (var names = Files.newDirectoryStream(folder, "copied-*.sha256")) {
      for (var file : names) {
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
            && Files.size(file) == content.length
            && content.length <= LARGEST_LIST
            && Arrays.equals(SmallFiles.read(file, LARGEST_LIST), content)) {
          return Optional.of(file);
        }
      }
    }
    return Optional.empty();
  }

  /** Whether a run ended in a folder, and left its list. */
  static boolean hasList(Path folder) throws IOException {
    try (var names = Files.newDirectoryStream(folder, "copied-*.sha256")) {
      for (var file : names) {
        if (Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
          return true;
        }
      }
    }
    return false;
  }

  CopyReport.Target report() {
    return new CopyReport.Target(
        folder,
        device,
        copied,
        bytes,
        alreadyThere,
        unsure,
        blocked,
        failed,
        list,
        mhlList,
        busy.seconds());
  }
}
