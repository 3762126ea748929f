package org.framewright.handoff;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblems;
import org.framewright.base.LockFile;
import org.framewright.base.Problem;
import org.framewright.base.RealPaths;
import org.framewright.base.Text;
import org.framewright.job.Job;

/** The records of a job's hand-offs: one JSON file each in {@code .framewright/handoffs}. */
final class HandOffRecords {
  /** A record of 100,000 files has about 12 MB. */
  static final int LARGEST = 16 << 20;

  private static final long MOST_IN_ALL = 4L * LARGEST;
  private static final Pattern NUMBERED = Pattern.compile("(\\d{4,9})\\.json(\\.tmp)?");
  private static final String LOCK = "lock";

  private final Path folder;

  private HandOffRecords(Path folder) {
    this.folder = folder;
  }

  static HandOffRecords of(Job job) {
    return new HandOffRecords(job.folder().resolve(".framewright").resolve("handoffs"));
  }

  /**
   * What the folder holds.
   *
   * @param usable by number
   * @param damaged records that cannot be used, by number; their numbers are taken
   */
  record Listing(SortedMap<Integer, HandOffRecord> usable, SortedMap<Integer, Problem> damaged) {
    int nextNumber() {
      int last = 0;
      for (var numbers : List.of(usable, damaged)) {
        last = numbers.isEmpty() ? last : Math.max(last, numbers.lastKey());
      }
      return last + 1;
    }

    /** The names that selects were handed off under, to a retoucher. */
    List<String> names() {
      return usable.values().stream()
          .filter(one -> one.to() == HandOffRecord.To.RETOUCHER)
          .flatMap(one -> one.selects().stream())
          .filter(entry -> !entry.slate())
          .map(HandOffRecord.Entry::select)
          .toList();
    }
  }

  /**
   * Reads all records; nothing is written. One that cannot be used does not hide the others.
   *
   * @throws IOException where the folder cannot be read, or is a link or a file
   */
  Listing read() throws IOException {
    var usable = new TreeMap<Integer, HandOffRecord>();
    var damaged = new TreeMap<Integer, Problem>();
    long left = MOST_IN_ALL;
    for (var numbered : files().entrySet()) {
      int number = numbered.getKey();
      try {
        var bytes = bytes(numbered.getValue(), (int) Math.min(LARGEST, left));
        left -= bytes.length;
        usable.put(number, RecordText.read(bytes, number, numbered.getValue().toString()));
      } catch (RecordText.Damaged e) {
        damaged.put(number, e.problem());
      } catch (IOException e) {
        damaged.put(number, FileProblems.of(e));
      }
    }
    return new Listing(usable, damaged);
  }

  private static byte[] bytes(Path file, int most) throws IOException, RecordText.Damaged {
    return BoundedFile.read(file, most, LinkOption.NOFOLLOW_LINKS)
        .orElseThrow(
            () -> RecordText.damaged(Text.of("it is larger than any record"), file.toString()));
  }

  /** The record's file by number; what an older version left half-way only where there is none. */
  private SortedMap<Integer, Path> files() throws IOException {
    var files = new TreeMap<Integer, Path>();
    if (!RealPaths.isOwnFolder(folder)) {
      return files;
    }
    try (var names = Files.newDirectoryStream(folder)) {
      for (var file : names) {
        var match = NUMBERED.matcher(file.getFileName().toString());
        if (match.matches()) {
          files.merge(
              Integer.parseInt(match.group(1)),
              file,
              (one, other) -> one.toString().length() < other.toString().length() ? one : other);
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    return files;
  }

  /**
   * Lets one hand-off of the job be written at a time; holds until it is closed.
   *
   * @return nothing where another one is being written
   */
  Optional<LockFile> hold() throws IOException {
    if (!RealPaths.isOwnFolder(folder)) {
      DurableFiles.createFolder(folder);
    }
    return LockFile.hold(folder.resolve(LOCK));
  }

  /**
   * Writes the record of a hand-off that begins.
   *
   * @throws FileAlreadyExistsException where its number is taken
   */
  void begin(HandOffRecord begun) throws IOException {
    DurableFiles.create(file(begun.number()), RecordText.write(begun));
  }

  /** Writes a record in place of the one before. */
  void update(HandOffRecord one) throws IOException {
    DurableFiles.replace(file(one.number()), RecordText.write(one));
    Files.deleteIfExists(file(one.number()).resolveSibling(name(one.number()) + ".tmp"));
  }

  /** Removes the record of a hand-off of which nothing is left. */
  void remove(int number) throws IOException {
    Files.delete(file(number));
    DurableFiles.syncFolder(folder);
  }

  /** The records that an older version did not bring under their names. */
  List<Integer> halfWritten() throws IOException {
    var numbers = new ArrayList<Integer>();
    for (var numbered : files().entrySet()) {
      if (numbered.getValue().toString().endsWith(".tmp")) {
        numbers.add(numbered.getKey());
      }
    }
    return numbers;
  }

  Path file(int number) {
    return folder.resolve(name(number));
  }

  private static String name(int number) {
    return String.format(Locale.ROOT, "%04d.json", number);
  }
}
