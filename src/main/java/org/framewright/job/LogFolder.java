package org.framewright.job;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/**
 * A folder of logs, one file a writer, each read from where it was read the last time. Nothing is
 * read through a link.
 */
final class LogFolder {
  /** The largest log that is read, in bytes: some millions of events. */
  static final long LARGEST = 1L << 30;

  static final String ENDING = ".jsonl";

  /** Hears of each line that is an event, in the order of its file. */
  @FunctionalInterface
  interface Lines {
    /**
     * A line that is an event was read.
     *
     * @param file where it stands
     * @param text the line without its line feed
     */
    void line(Path file, Entry entry, byte[] text);
  }

  private final Path folder;
  private final Lines lines;
  private final Map<Path, LogTail> tails = new TreeMap<>();
  private final Map<Path, Text> leftOut = new TreeMap<>();

  LogFolder(Path folder, Lines lines) {
    this.folder = folder;
    this.lines = lines;
  }

  Path path() {
    return folder;
  }

  /** The log of a writer. */
  Path log(String writer) {
    return folder.resolve(writer + ENDING);
  }

  /** Reads what came into any log since the last time. */
  void read() throws IOException {
    leftOut.clear();
    try (var files = Files.newDirectoryStream(folder, "*" + ENDING)) {
      for (var file : files) {
        read(file);
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  /** Reads what came into one log since the last time. */
  LogTail read(Path file) throws IOException {
    var tail = tails.computeIfAbsent(file, path -> new LogTail(path, false));
    var attributes = PlainFiles.look(file);
    if (attributes.isEmpty()) {
      // Gone for now, as on a drive that is being synchronised.
      leftOut.remove(file);
      return tail;
    }
    var now = attributes.get();
    if (!now.isRegularFile()) {
      leftOut.put(file, Text.of("this is {0} and no log, so it is left out", SmallFiles.kind(now)));
      return tail;
    }
    if (now.size() > LARGEST) {
      leftOut.put(
          file, Text.of("this log is larger than {0} GB, so it is left out", LARGEST >> 30));
      return tail;
    }
    leftOut.remove(file);
    if (tail.isRead(now)) {
      return tail;
    }
    if (!tail.continues(now)) {
      // Replaced by another copy: what was read stays, what comes is read anew.
      tail = new LogTail(file, tail.isLongerThan(now));
      tails.put(file, tail);
    }
    try (var channel =
        Files.newByteChannel(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS))) {
      tail.read(channel, now, (entry, text) -> lines.line(file, entry, text));
    } catch (NoSuchFileException e) {
      // It went away just now.
    }
    return tail;
  }

  /** The number of the last event in the log of a writer, as far as it was read; 0 for none. */
  long last(String writer) {
    var tail = tails.get(log(writer));
    return tail == null ? 0 : tail.lastNumber();
  }

  /** Why a log is not read; nothing where it is. */
  Optional<Text> leftOut(Path file) {
    return Optional.ofNullable(leftOut.get(file));
  }

  /** What a person should know of these logs. */
  void describe(List<Text> warnings) {
    tails.values().forEach(tail -> tail.describe(warnings));
    leftOut.forEach(
        (file, why) ->
            warnings.add(
                Text.of("{0}: {1}. Move it away, or bring it back from a copy.", file, why)));
  }
}
