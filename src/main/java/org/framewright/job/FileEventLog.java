package org.framewright.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;

/**
 * A folder of logs, one JSON Lines file a station. A station appends to its own file only, under a
 * lock that other processes of the same computer respect; it reads all of them, each from where it
 * stopped the last time.
 *
 * <p>A line that was torn by a crash was never confirmed to anybody. The next append begins a new
 * line, so that nothing is glued to the torn one, and says so; readers then tell a torn line from
 * one that was changed.
 *
 * <p>The folder is made when the job is started, and never again: where it is not there, the job
 * was moved or its drive is gone. Nothing is read or written through a link.
 */
final class FileEventLog implements EventLog {
  /** The largest log that is read, in bytes: some millions of events. */
  static final long LARGEST = 1L << 30;

  private static final String ENDING = ".jsonl";

  /** File locks hold for the whole process, so its threads must not meet at one. */
  private static final Object IN_THIS_PROCESS = new Object();

  private final Path folder;
  private final StationClock clock;
  private final Clock wall;
  private final Map<Path, LogTail> tails = new TreeMap<>();
  private final Map<Path, Text> leftOut = new TreeMap<>();
  private final Set<Stamp> seen = new HashSet<>();
  private final List<Entry> waiting = new ArrayList<>();
  private String station;
  private boolean hasLocks = true;

  FileEventLog(Path folder, Station station, Clock clock) {
    this.folder = folder;
    this.station = station.name();
    this.clock = new StationClock(clock);
    this.wall = clock;
  }

  @Override
  public synchronized List<Entry> news() throws IOException {
    requireFolder();
    leftOut.clear();
    try (var files = Files.newDirectoryStream(folder, "*" + ENDING)) {
      for (var file : files) {
        read(file);
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
    var news = List.copyOf(waiting);
    waiting.clear();
    return news;
  }

  private void requireFolder() throws IOException {
    try {
      PlainFiles.requireFolder(folder.getParent());
      PlainFiles.requireFolder(folder);
    } catch (NoSuchFileException e) {
      throw new FileProblemException(
          new Problem(
              "the job's log is not there any more",
              e.getFile(),
              "Check that its drive is plugged in and that nobody moved the job folder, then open"
                  + " the job where it is now; nothing was written."));
    }
  }

  /** Something that is done while no other process writes to the same log. */
  @FunctionalInterface
  private interface Writing<T> {
    T write() throws IOException;
  }

  @Override
  public synchronized Stamp append(Event event) throws IOException {
    return alone(
        station,
        () -> {
          var tail = readOwn(station);
          var entry = new Entry(tail.lastNumber() + 1, clock.next(station), clock.own(), event);
          write(entry, tail);
          return entry.stamp();
        });
  }

  @Override
  public synchronized boolean append(Entry next) throws IOException {
    var writer = next.stamp().station();
    return alone(
        writer,
        () -> {
          var tail = readOwn(writer);
          if (next.number() != tail.lastNumber() + 1) {
            return false;
          }
          write(next, tail);
          return true;
        });
  }

  @Override
  public synchronized long last(String writer) {
    var tail = tails.get(log(writer));
    return tail == null ? 0 : tail.lastNumber();
  }

  private Path log(String writer) {
    return folder.resolve(writer + ENDING);
  }

  private <T> T alone(String writer, Writing<T> writing) throws IOException {
    requireFolder();
    synchronized (IN_THIS_PROCESS) {
      var lock = folder.resolve(writer + ".lock");
      PlainFiles.requireFileIfThere(lock);
      PlainFiles.requireFileIfThere(log(writer));
      // The lock has a file of its own: closing any channel of a file drops all locks on it.
      try (var channel =
          FileChannel.open(
              lock,
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE,
              LinkOption.NOFOLLOW_LINKS)) {
        if (hasLocks) {
          lock(channel);
        }
        return writing.write();
      }
    }
  }

  private void lock(FileChannel channel) {
    try {
      channel.lock();
    } catch (IOException e) {
      // No locks on this volume: this process takes a log of its own.
      hasLocks = false;
      station += "-" + Long.toString(ProcessHandle.current().pid(), 36);
      station += "-" + Long.toString(wall.millis(), 36);
    }
  }

  /** The log of a writer as it is now, to be written behind. */
  private LogTail readOwn(String writer) throws IOException {
    var file = log(writer);
    var tail = read(file);
    if (leftOut.containsKey(file)) {
      throw new FileProblemException(
          new Problem(
              leftOut.get(file),
              file.toString(),
              "Move it away; the job goes on without it, and this computer begins another one."));
    }
    return tail;
  }

  private void write(Entry entry, LogTail tail) throws IOException {
    var file = log(entry.stamp().station());
    var before = PlainFiles.requireFileIfThere(file);
    var line = EventCodec.encode(new EventCodec.Line(entry, tail.torn()));
    if (line.length > LogTail.LONGEST_LINE) {
      throw new FileProblemException(
          new Problem(
              Text.of(
                  "this is too much for one event: more than {0} MB", LogTail.LONGEST_LINE >> 20),
              "",
              "Do it in smaller parts; nothing was written."));
    }
    write(file, tail, line);
    if (before.map(BasicFileAttributes::size).orElse(0L) == 0) {
      DurableFiles.syncFolder(folder);
    }
    read(file);
  }

  private static void write(Path file, LogTail tail, byte[] line) throws IOException {
    var bytes = new ByteArrayOutputStream(line.length + 2);
    if (tail.open()) {
      bytes.write('\n');
    }
    bytes.writeBytes(line);
    bytes.write('\n');
    try (var channel =
        FileChannel.open(
            file, StandardOpenOption.CREATE, StandardOpenOption.WRITE, LinkOption.NOFOLLOW_LINKS)) {
      long end = channel.size();
      try {
        channel.position(end);
        DurableFiles.writeFully(channel, ByteBuffer.wrap(bytes.toByteArray()));
        channel.force(true);
      } catch (IOException e) {
        cut(channel, end, e);
        throw e;
      }
    }
  }

  /** Takes back what was written of an event; where even that fails, readers see a torn line. */
  private static void cut(FileChannel channel, long end, IOException cause) {
    try {
      channel.truncate(end);
    } catch (IOException e) {
      cause.addSuppressed(e);
    }
  }

  private LogTail read(Path file) throws IOException {
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
      tail.read(channel, now, this::take);
    } catch (NoSuchFileException e) {
      // It went away just now.
    }
    return tail;
  }

  private void take(Entry entry) {
    if (seen.add(entry.stamp())) {
      waiting.add(entry);
      clock.saw(entry);
    }
  }

  @Override
  public synchronized String station() {
    return station;
  }

  @Override
  public Instant now() {
    return clock.now();
  }

  @Override
  public synchronized List<Text> told() {
    var warnings = new ArrayList<Text>();
    tails.values().forEach(tail -> tail.describe(warnings));
    leftOut.forEach(
        (file, why) ->
            warnings.add(
                Text.of("{0}: {1}. Move it away, or bring it back from a copy.", file, why)));
    clock.describe(station, warnings);
    return List.copyOf(warnings);
  }
}
