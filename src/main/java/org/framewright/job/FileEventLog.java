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
import java.util.function.Supplier;
import org.framewright.base.DurableFiles;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
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
 * <p>What came from a store lies in {@code from-store/STATION}, a folder for each station that
 * brought something, and is read as well; an event that is in several places counts once.
 *
 * <p>The folder is made when the job is started, and never again: where it is not there, the job
 * was moved or its drive is gone. Nothing is read or written through a link.
 */
final class FileEventLog implements EventLog {
  private static final String FROM_STORE = "from-store";
  private static final String LOCK = ".lock";

  /** File locks hold for the whole process, so its threads must not meet at one. */
  private static final Object IN_THIS_PROCESS = new Object();

  private final Path folder;
  private final LogFolder logs;
  private final Map<Path, LogFolder> fromStore = new TreeMap<>();
  private final StationClock clock;
  private final Clock wall;
  private final Set<Stamp> seen = new HashSet<>();
  private final List<Entry> waiting = new ArrayList<>();
  private String station;
  private boolean hasLocks = true;

  FileEventLog(Path folder, Station station, Clock clock) {
    this(folder, station, clock, (_, _, _) -> {});
  }

  /**
   * @param lines hears of each line of the folder itself as it is read
   */
  FileEventLog(Path folder, Station station, Clock clock, LogFolder.Lines lines) {
    this.folder = folder;
    this.logs =
        new LogFolder(
            folder,
            (file, entry, text) -> {
              take(entry);
              lines.line(file, entry, text);
            });
    this.station = station.name();
    this.clock = new StationClock(clock);
    this.wall = clock;
  }

  @Override
  public synchronized List<Entry> news() throws IOException {
    requireFolder();
    logs.read();
    for (var brought : foldersFromStore(folder)) {
      fromStore(brought).read();
    }
    var news = List.copyOf(waiting);
    waiting.clear();
    return news;
  }

  /** The folders in a folder of logs in which stations keep what they brought from a store. */
  static List<Path> foldersFromStore(Path folder) throws IOException {
    var parent = folder.resolve(FROM_STORE);
    var found = new ArrayList<Path>();
    if (PlainFiles.look(parent).filter(BasicFileAttributes::isDirectory).isPresent()) {
      try (var folders = Files.newDirectoryStream(parent)) {
        for (var one : folders) {
          if (PlainFiles.look(one).filter(BasicFileAttributes::isDirectory).isPresent()) {
            found.add(one);
          }
        }
      } catch (DirectoryIteratorException e) {
        throw e.getCause();
      }
    }
    found.sort(null);
    return found;
  }

  private LogFolder fromStore(Path brought) {
    return fromStore.computeIfAbsent(
        brought, path -> new LogFolder(path, (_, entry, _) -> take(entry)));
  }

  private Path broughtHere() {
    return folder.resolve(FROM_STORE).resolve(station);
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

  @Override
  public synchronized Stamp append(Event event) throws IOException {
    return alone(
        () -> logs.log(station),
        file -> {
          var tail = readOwn(logs, file);
          var entry = new Entry(tail.lastNumber() + 1, clock.next(station), clock.own(), event);
          write(file, tail, EventCodec.encode(new EventCodec.Line(entry, tail.torn())));
          return entry.stamp();
        });
  }

  @Override
  public synchronized boolean append(Entry next) throws IOException {
    return alone(
        () -> logs.log(next.stamp().station()),
        file -> {
          var tail = readOwn(logs, file);
          if (next.number() != tail.lastNumber() + 1) {
            return false;
          }
          write(file, tail, EventCodec.encode(new EventCodec.Line(next, tail.torn())));
          return true;
        });
  }

  @Override
  public synchronized long last(String writer) {
    return logs.last(writer);
  }

  /** The number of a writer's last event that came from a store, as far as it was read. */
  synchronized long lastFromStore(String writer) {
    return fromStore(broughtHere()).last(writer);
  }

  /**
   * Whether this computer writes a log of this folder: its own, and those of the devices that it
   * keeps one for. A folder that came back from an older copy lacks the end of them.
   */
  synchronized boolean isWrittenHere(String writer) {
    return writer.equals(station) || (Device.isLegal(writer) && logs.last(writer) > 0);
  }

  /**
   * Keeps lines that a store has of a writer, byte for byte, as far as they follow what is here. In
   * a log that is written here, what was appended meanwhile stands in their way.
   *
   * @param lines with numbers that follow each other
   * @return how many were kept
   */
  synchronized int keep(String writer, List<SealedLine> lines) throws IOException {
    requireFolder();
    boolean ours = isWrittenHere(writer);
    var place = logs;
    if (!ours) {
      DurableFiles.createFolder(folder.resolve(FROM_STORE));
      PlainFiles.requireFolder(folder.resolve(FROM_STORE));
      DurableFiles.createFolder(broughtHere());
      PlainFiles.requireFolder(broughtHere());
      place = fromStore(broughtHere());
    }
    var into = place;
    return alone(
        () -> into.log(writer),
        file -> {
          var tail = readOwn(into, file);
          var next =
              lines.stream().filter(line -> ours || line.number() > tail.lastNumber()).toList();
          if (next.isEmpty() || next.getFirst().number() != tail.lastNumber() + 1) {
            return 0;
          }
          write(file, tail, next.stream().map(SealedLine::bytes).toArray(byte[][]::new));
          into.read(file);
          return next.size();
        });
  }

  /** Something that is done to a log while no other process writes to it. */
  @FunctionalInterface
  private interface Writing<T> {
    T write(Path log) throws IOException;
  }

  private <T> T alone(Supplier<Path> log, Writing<T> writing) throws IOException {
    requireFolder();
    synchronized (IN_THIS_PROCESS) {
      var file = log.get();
      var lock = file.resolveSibling(file.getFileName().toString().replace(LogFolder.ENDING, LOCK));
      PlainFiles.requireFileIfThere(lock);
      PlainFiles.requireFileIfThere(file);
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
        // Where there are no locks, the station goes by another name from now on.
        return writing.write(log.get());
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

  /** A log as it is now, to be written behind. */
  private static LogTail readOwn(LogFolder logs, Path file) throws IOException {
    var tail = logs.read(file);
    var leftOut = logs.leftOut(file);
    if (leftOut.isPresent()) {
      throw new FileProblemException(
          new Problem(
              leftOut.get(),
              file.toString(),
              "Move it away; the job goes on without it, and this computer begins another one."));
    }
    return tail;
  }

  private void write(Path file, LogTail tail, byte[] line) throws IOException {
    if (line.length > LogTail.LONGEST_LINE) {
      throw new FileProblemException(
          new Problem(
              Text.of(
                  "this is too much for one event: more than {0} MB", LogTail.LONGEST_LINE >> 20),
              "",
              "Do it in smaller parts; nothing was written."));
    }
    write(file, tail, new byte[][] {line});
    logs.read(file);
  }

  private static void write(Path file, LogTail tail, byte[][] lines) throws IOException {
    var before = PlainFiles.requireFileIfThere(file);
    var bytes = new ByteArrayOutputStream();
    if (tail.open()) {
      bytes.write('\n');
    }
    for (var line : lines) {
      bytes.writeBytes(line);
      bytes.write('\n');
    }
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
    if (before.map(BasicFileAttributes::size).orElse(0L) == 0) {
      DurableFiles.syncFolder(file.getParent());
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
    logs.describe(warnings);
    fromStore.values().forEach(brought -> brought.describe(warnings));
    clock.describe(station, warnings);
    return List.copyOf(warnings);
  }
}
