package org.framewright.copies;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.BasicFileAttributes;
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
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.base.SmallFiles;
import org.framewright.copies.device.Medium;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;
import org.framewright.copies.mhl.HashKind;
import org.framewright.copies.mhl.NewGeneration;
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
  private long nanos;

  // The file that is being copied.
  private Path part;
  private Path place;
  private FileChannel out;

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
            "no generation was added to the ASC MHL: " + said.what(),
            said.where().isEmpty() ? folder.toString() : said.where(),
            said.remedy()));
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

  boolean isWriting() {
    return out != null;
  }

  /**
   * Gets ready for a file.
   *
   * @return whether its name is taken, so that what lies there has to be compared
   */
  boolean begin(CopyFile file, int number) {
    place = folder.resolve(file.path().toString());
    part = null;
    out = null;
    long start = System.nanoTime();
    try {
      root.require();
      if (Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
        return true;
      }
      CopyTargets.makeFolders(folder, place, made);
      var name = CopyParts.part(folder, batch, number);
      out = FileChannel.open(name, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
      part = name;
    } catch (IOException e) {
      fail(e);
    } finally {
      nanos += System.nanoTime() - start;
    }
    return false;
  }

  /** Begins the same file anew. */
  void rewind() {
    if (out != null) {
      try {
        out.truncate(0);
        out.position(0);
      } catch (IOException e) {
        fail(e);
      }
    }
  }

  void write(ByteBuffer piece) {
    if (out == null) {
      return;
    }
    long start = System.nanoTime();
    try {
      DurableFiles.writeFully(out, piece);
    } catch (IOException e) {
      fail(e);
    }
    nanos += System.nanoTime() - start;
  }

  /** Flushes what was written, reads it back and gives it its name. */
  void finish(CopyFile file, CopySource from) {
    if (out == null) {
      return;
    }
    var source = from.reading();
    long start = System.nanoTime();
    try {
      Files.getFileAttributeView(part, BasicFileAttributeView.class, LinkOption.NOFOLLOW_LINKS)
          .setTimes(source.modified(), null, null);
      out.force(true);
      out.close();
      out = null;
      var back = volumes.read(part, _ -> {}, Progress.NONE);
      if (!back.sha256().equals(source.sha256()) || back.bytes() != source.bytes()) {
        throw new WrittenWrongly(place);
      }
      NoReplaceMove.move(part, place);
      part = null;
      root.require();
      touched.add(place.getParent());
      copied++;
      bytes += source.bytes();
      count(file, back, from);
    } catch (FileAlreadyExistsException e) {
      discard();
      block(file);
    } catch (IOException e) {
      fail(e);
    } finally {
      nanos += System.nanoTime() - start;
    }
  }

  /** Compares what lies under the name of a file with it. */
  void compare(CopyFile file, CopySource from) {
    var source = from.reading();
    long start = System.nanoTime();
    try {
      var attributes =
          Files.readAttributes(place, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
      if (!attributes.isRegularFile() || attributes.size() != source.bytes()) {
        block(file);
        return;
      }
      var there = volumes.read(place, _ -> {}, Progress.NONE);
      if (there.sha256().equals(source.sha256())) {
        alreadyThere++;
        count(file, there, from);
      } else {
        block(file);
      }
    } catch (IOException e) {
      fail(e);
    } finally {
      nanos += System.nanoTime() - start;
    }
  }

  private void count(CopyFile file, Reading here, CopySource from) {
    unsure += here.medium() == Medium.READ ? 0 : 1;
    failuresInARow = 0;
    sums.put(file.path().toString(), CopyLine.of(here.sha256(), file.path()));
    mhl.ifPresent(one -> one.add(CopyLine.name(file.path()), here, from.hashes()));
  }

  private void block(CopyFile file) {
    failuresInARow = 0;
    blocked.add(
        new Problem(
            "another file of this name lies there",
            folder.resolve(file.path().toString()).toString(),
            "Look at both, and move one away; nothing was replaced."));
  }

  private static final class WrittenWrongly extends FileSystemException {
    private static final long serialVersionUID = 1L;

    WrittenWrongly(Path file) {
      super(file.toString());
    }
  }

  private void fail(IOException failure) {
    discard();
    wrong |= failure instanceof WrittenWrongly;
    // A folder that is gone says so by all kinds of failures.
    var said =
        failure instanceof WrittenWrongly
            ? new Problem(
                "what was read back is not what was written",
                place.toString(),
                "Do not use this disk; copy to another one.")
            : FileProblems.of(root.isThere() ? failure : root.gone());
    // A temporary name says nothing to a person.
    failed.add(new Problem(said.what(), place.toString(), said.remedy()));
    failuresInARow++;
    givenUp |=
        failuresInARow >= MOST_FAILURES_IN_A_ROW
            || failure instanceof WrittenWrongly
            || !root.isThere();
    if (givenUp) {
      failed.add(
          new Problem(
              "nothing more was copied to this place",
              folder.toString(),
              "Mend what is said above and copy again: what is there is found, and only the rest"
                  + " is copied."));
    }
  }

  /** Removes what is half-made; nothing else is ever removed. */
  void discard() {
    try {
      if (out != null) {
        out.close();
      }
      if (part != null) {
        root.require();
        Files.deleteIfExists(part);
      }
    } catch (IOException e) {
      left = true; // The record of the run stays then, and the next run removes it.
    }
    part = null;
    out = null;
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
      discard();
      if (!givenUp) {
        var said = FileProblems.of(e);
        failed.add(new Problem(said.what(), folder.toString(), said.remedy()));
      }
      return;
    }
    if (mhl.isPresent()) {
      try {
        part = CopyParts.part(folder, batch, 0);
        mhlList = mhl.get().write(began, host, part, failed);
        part = null;
      } catch (IOException e) {
        discard();
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
        part = CopyParts.part(folder, batch, 0);
        DurableFiles.writeFlushed(part, content);
        NoReplaceMove.move(part, file);
        part = null;
        DurableFiles.syncFolder(folder);
        return file;
      } catch (FileAlreadyExistsException e) {
        discard();
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
        nanos / 1e9);
  }
}
