package org.framewright.job;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.job.EventCodec.BadLine;

/**
 * A folder of logs, one JSON Lines file a station. A station appends to its own file only, under a
 * lock that other processes of the same computer respect; it reads all of them, each from where it
 * stopped the last time.
 *
 * <p>A line that was torn by a crash was never confirmed to anybody. The next append begins a new
 * line, so that nothing is glued to the torn one, and says so; readers then tell a torn line from
 * one that was changed.
 */
final class FileEventLog implements EventLog {
  /** A difference of clocks below this is told to nobody. */
  private static final Duration TOLD = Duration.ofSeconds(5);

  /** File locks hold for the whole process, so its threads must not meet at one. */
  private static final Object IN_THIS_PROCESS = new Object();

  private final Path folder;
  private final Clock clock;
  private String station;
  private final Map<Path, Tail> tails = new TreeMap<>();
  private final Set<Stamp> seen = new HashSet<>();
  private final List<Entry> waiting = new ArrayList<>();
  private final Map<String, Duration> ahead = new HashMap<>();
  private Stamp latest = new Stamp(0, 0, "");
  private volatile long aheadMillis;

  FileEventLog(Path folder, Station station, Clock clock) {
    this.folder = folder;
    this.station = station.name();
    this.clock = clock;
  }

  @Override
  public synchronized List<Entry> news() throws IOException {
    try (var files = Files.newDirectoryStream(folder, "*.jsonl")) {
      for (var file : files) {
        read(file);
      }
    } catch (NoSuchFileException e) {
      // Nothing was ever written.
    }
    var news = List.copyOf(waiting);
    waiting.clear();
    return news;
  }

  @Override
  public synchronized void append(Event event) throws IOException {
    Files.createDirectories(folder);
    synchronized (IN_THIS_PROCESS) {
      // The lock has a file of its own: closing any channel of a file drops all locks on it.
      try (var channel =
          FileChannel.open(
              folder.resolve(station + ".lock"),
              StandardOpenOption.CREATE,
              StandardOpenOption.WRITE)) {
        try {
          channel.lock();
        } catch (IOException e) {
          // No locks on this volume: this process takes a log of its own.
          station += "-" + Long.toString(ProcessHandle.current().pid(), 36);
          station += "-" + Long.toString(clock.millis(), 36);
        }
        appendAlone(event);
      }
    }
  }

  private void appendAlone(Event event) throws IOException {
    var file = folder.resolve(station + ".jsonl");
    boolean first = !Files.exists(file);
    var tail = read(file);
    var entry = new Entry(tail.lastNumber + 1, nextStamp(), clock.instant(), event);
    write(file, tail, EventCodec.encode(new EventCodec.Line(entry, tail.torn())));
    if (first) {
      sync(folder);
    }
    read(file);
  }

  private Stamp nextStamp() {
    long physical = now().toEpochMilli();
    return physical > latest.millis()
        ? new Stamp(physical, 0, station)
        : new Stamp(latest.millis(), latest.count() + 1, station);
  }

  private static void write(Path file, Tail tail, byte[] line) throws IOException {
    var bytes = new ByteArrayOutputStream(line.length + 2);
    if (tail.open()) {
      bytes.write('\n');
    }
    bytes.writeBytes(line);
    bytes.write('\n');
    try (var channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      long end = channel.size();
      try {
        channel.position(end);
        for (var buffer = ByteBuffer.wrap(bytes.toByteArray()); buffer.hasRemaining(); ) {
          channel.write(buffer);
        }
        channel.force(true);
      } catch (IOException e) {
        channel.truncate(end);
        throw e;
      }
    }
  }

  /** Makes a new name in a folder durable, where the system lets us. */
  static void sync(Path folder) throws IOException {
    try (var channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (java.nio.file.AccessDeniedException e) {
      // Windows opens no folders; it makes names durable by itself.
    }
  }

  private Tail read(Path file) throws IOException {
    var tail = tails.computeIfAbsent(file, Tail::new);
    try (var channel = Files.newByteChannel(file)) {
      if (channel.size() < tail.offset) {
        // Replaced by an older copy: what was read stays, what comes is read anew.
        tail = new Tail(file);
        tail.shrank = true;
        tails.put(file, tail);
      }
      tail.read(channel);
    } catch (NoSuchFileException e) {
      // Gone for now, as on a drive that is being synchronised.
    }
    return tail;
  }

  private void take(Entry entry) {
    if (!seen.add(entry.stamp())) {
      return;
    }
    waiting.add(entry);
    if (entry.stamp().compareTo(latest) > 0) {
      latest = entry.stamp();
    }
    long ours = clock.millis();
    aheadMillis = Math.max(aheadMillis, entry.stamp().millis() - ours);
    var theirs = Duration.between(Instant.ofEpochMilli(ours), entry.at());
    if (theirs.compareTo(TOLD) > 0) {
      ahead.merge(
          entry.stamp().station(), theirs, (one, other) -> one.compareTo(other) > 0 ? one : other);
    }
  }

  @Override
  public synchronized String station() {
    return station;
  }

  @Override
  public Instant now() {
    return Instant.ofEpochMilli(clock.millis() + aheadMillis);
  }

  @Override
  public synchronized List<String> warnings() {
    var warnings = new ArrayList<String>();
    tails.values().forEach(tail -> tail.warn(warnings));
    ahead.forEach(
        (name, by) ->
            warnings.add(
                "The clock of "
                    + (name.equals(station) ? "this computer was set back by " : name + " is ")
                    + words(by)
                    + (name.equals(station) ? "" : " ahead of this computer's")
                    + "; the job goes by the later one. Let all computers set their clocks from the"
                    + " network."));
    return List.copyOf(warnings);
  }

  private static String words(Duration time) {
    if (time.toMinutes() < 2) {
      return time.toSeconds() + " seconds";
    }
    return time.toHours() < 3 ? time.toMinutes() + " minutes" : time.toHours() + " hours";
  }

  /** How far one file was read. */
  private final class Tail {
    private final Path file;
    private long offset;
    private int line;
    private long lastNumber;
    private boolean shrank;

    /** What follows the last line feed and is no event. */
    private Optional<BadLine> unfinished = Optional.empty();

    /** Whether the last line was taken although its line feed is missing. */
    private boolean taken;

    private final TreeMap<Integer, String> damaged = new TreeMap<>();
    private final Set<Integer> tornLines = new HashSet<>();
    private final List<String> gaps = new ArrayList<>();

    Tail(Path file) {
      this.file = file;
    }

    /** Whether the file ends in a torn line. */
    boolean torn() {
      return unfinished.isPresent();
    }

    /** Whether a line feed must precede what is appended. */
    boolean open() {
      return torn() || taken;
    }

    void read(SeekableByteChannel channel) throws IOException {
      channel.position(offset);
      int length = Math.toIntExact(channel.size() - offset);
      if (length == 0) {
        return;
      }
      var buffer = ByteBuffer.allocate(length);
      while (buffer.hasRemaining() && channel.read(buffer) >= 0) {}
      var bytes = Arrays.copyOf(buffer.array(), buffer.position());
      int from = 0;
      for (int i = 0; i < bytes.length; i++) {
        if (bytes[i] == '\n') {
          whole(Arrays.copyOfRange(bytes, from, i));
          from = i + 1;
        }
      }
      offset += from;
      var rest = Arrays.copyOfRange(bytes, from, bytes.length);
      unfinished = Optional.empty();
      if (rest.length == 0) {
        return;
      }
      try {
        var last = EventCodec.decode(rest);
        line++;
        offset += rest.length;
        taken = true;
        accept(last);
      } catch (BadLine e) {
        unfinished = Optional.of(e);
      }
    }

    private void whole(byte[] text) {
      if (taken) {
        taken = false;
        if (text.length == 0) {
          return;
        }
      }
      line++;
      try {
        accept(EventCodec.decode(text));
      } catch (BadLine e) {
        damaged.put(line, e.getMessage());
      }
    }

    private void accept(EventCodec.Line read) {
      var number = read.entry().number();
      if (read.afterTorn() && damaged.containsKey(line - 1)) {
        tornLines.add(line - 1);
      } else if (number > lastNumber + 1 && !damaged.containsKey(line - 1)) {
        gaps.add(
            at(line)
                + ": events "
                + (lastNumber + 1)
                + " to "
                + (number - 1)
                + " are missing before it; somebody took lines out of this file.");
      }
      lastNumber = Math.max(lastNumber, number);
      take(read.entry());
    }

    void warn(List<String> warnings) {
      damaged.forEach(
          (number, why) ->
              warnings.add(
                  at(number)
                      + (tornLines.contains(number)
                          ? ": this line was torn when a computer stopped while writing it; what it"
                              + " would have said was never confirmed."
                          : ": this line is left out, "
                              + why
                              + "; it was changed or damaged after it was written.")));
      warnings.addAll(gaps);
      unfinished.ifPresent(
          bad ->
              warnings.add(
                  at(line + 1)
                      + ": the last line is torn, so it is left out; what it would have said was"
                      + " never confirmed."));
      if (shrank) {
        warnings.add(
            file
                + ": this log became shorter; an older copy of it may have come from another"
                + " drive.");
      }
    }

    private String at(int number) {
      return file + ", line " + number;
    }
  }
}
