package org.framewright.job;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.framewright.base.Text;

/**
 * Keeps the logs of a job's folder and those of a store alike. The folder is always written first;
 * each exchange sends what the store lacks of any log in the folder and brings what the folder
 * lacks of other computers. So being offline is nothing special: the next exchange that reaches the
 * store catches up, however long that was, and one that broke off is simply done again.
 *
 * <p>What a person must decide, since two wrote under one name or lines are missing, is told and
 * stops nothing else.
 */
public final class JobMirror {
  private static final int MOST_LINES = 500;
  private static final int MOST_BYTES = 4 << 20;

  private final Path folder;
  private final Clock clock;
  private final Station station;
  private final NumberedLogs store;
  private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

  /** Touched in an exchange only. */
  private FileEventLog files;

  /** Touched in an exchange only: what is to be sent, by writer. */
  private final Map<String, Outgoing> outgoing = new TreeMap<>();

  /** Touched in an exchange only. */
  private Map<String, Long> heads = Map.of();

  private volatile List<Text> told = List.of();

  /**
   * What an exchange did.
   *
   * @param sent how many events the store has now that it lacked before
   * @param brought how many events the folder has now that it lacked before
   */
  public record Exchanged(long sent, long brought) {}

  /** The lines of one writer that the store is not known to have. */
  private static final class Outgoing {
    final Path file;
    final Deque<SealedLine> lines = new ArrayDeque<>();
    long last;

    Outgoing(Path file) {
      this.file = file;
    }

    void add(SealedLine line, long head) {
      if (line.number() <= last) {
        // The file became another one, or has a number twice.
        lines.clear();
      }
      if (line.number() <= head) {
        // Of what the store has too, the last one shows whether it is the same log.
        lines.clear();
      }
      lines.addLast(line);
      last = line.number();
    }

    /** The next lines, with numbers that follow each other. */
    List<SealedLine> next() {
      var next = new ArrayList<SealedLine>();
      long bytes = 0;
      for (var line : lines) {
        bytes += line.length();
        if (!next.isEmpty()
            && (next.size() == MOST_LINES
                || bytes > MOST_BYTES
                || line.number() != next.getLast().number() + 1)) {
          break;
        }
        next.add(line);
      }
      return next;
    }

    void sent(int count) {
      for (int i = 0; i < count; i++) {
        lines.removeFirst();
      }
    }
  }

  private JobMirror(Path folder, Clock clock, Station station, NumberedLogs store) {
    this.folder = folder;
    this.clock = clock;
    this.station = station;
    this.store = store;
    begin();
  }

  /** A mirror of a job's folder. Nothing is read or sent yet. */
  public static JobMirror of(Path job, Clock clock, Station station, NumberedLogs store) {
    return new JobMirror(
        new JobLayout(job.toAbsolutePath().normalize()).log(), clock, station, store);
  }

  private void begin() {
    outgoing.clear();
    files = new FileEventLog(folder, station, clock, this::read);
  }

  private void read(Path file, Entry entry, byte[] text) {
    var writer = entry.stamp().station();
    // A copy under another name, as a synchronised drive makes one, is not the log.
    if (file.getFileName().toString().equals(writer + LogFolder.ENDING)) {
      outgoing
          .computeIfAbsent(writer, _ -> new Outgoing(file))
          .add(SealedLine.of(entry, text), heads.getOrDefault(writer, 0L));
    }
  }

  /** Calls a listener, on the thread that appends, after each event that the folder got. */
  public void onAppend(Runnable listener) {
    listeners.add(listener);
  }

  void appended() {
    listeners.forEach(Runnable::run);
  }

  /** Logs in the folder that tell this mirror of what is appended. */
  public JobLogs logs() {
    return JobLogs.mirrored(this);
  }

  /** What a person should know of the exchange that ended last. */
  public List<Text> told() {
    return told;
  }

  /**
   * Sends what the store lacks, and brings what the folder lacks. Takes as long as the store does.
   *
   * @throws IOException if the store was not reached, or the folder cannot be read or written; what
   *     was exchanged until then is not lost, and the rest follows the next time
   */
  public synchronized Exchanged exchange() throws IOException {
    var problems = new ArrayList<Text>();
    heads = Map.copyOf(store.heads());
    files.news();
    if (outgoing.entrySet().stream().anyMatch(one -> isBehind(one.getKey(), one.getValue()))) {
      // The store came back from an older copy: what it had is read from the folder anew.
      begin();
      files.news();
    }
    long sent = 0;
    for (var one : outgoing.entrySet()) {
      sent += send(one.getKey(), one.getValue(), problems);
    }
    long brought = 0;
    for (var head : new TreeMap<>(heads).entrySet()) {
      brought += bring(head.getKey(), head.getValue(), problems);
    }
    told = List.copyOf(problems);
    return new Exchanged(sent, brought);
  }

  /** Whether the store lacks what was taken as sent. */
  private boolean isBehind(String writer, Outgoing out) {
    long head = heads.getOrDefault(writer, 0L);
    return head < out.last && (out.lines.isEmpty() || out.lines.getFirst().number() > head + 1);
  }

  private long send(String writer, Outgoing out, List<Text> problems) throws IOException {
    long head = heads.getOrDefault(writer, 0L);
    while (!out.lines.isEmpty()) {
      var next = out.next();
      switch (store.append(writer, next)) {
        case Receipt.Kept _, Receipt.Had _ -> out.sent(next.size());
        case Receipt.Gap(long last) -> {
          problems.add(
              Text.of(
                  "The store has the events of {0} up to {1} only, and {2} goes on with {3}. Bring"
                      + " {2} back from a copy that is whole; what comes after the gap is not in"
                      + " the store yet.",
                  writer, last, out.file, next.getFirst().number()));
          return sent(head, last);
        }
        case Receipt.Clash(long last) -> {
          problems.add(clash(writer, out, next));
          return sent(head, last);
        }
        case Receipt.Refused(long last, var why) -> {
          problems.add(
              Text.of("The store does not take the events of {0}: {1}", writer, why.fault()));
          return sent(head, last);
        }
      }
    }
    return sent(head, out.last);
  }

  private static long sent(long before, long now) {
    return Math.max(0, now - before);
  }

  private Text clash(String writer, Outgoing out, List<SealedLine> lines) throws IOException {
    long number = firstOther(writer, lines);
    return writer.equals(files.station())
        ? Text.of(
            "Event {0} of {1} is another one in the store than in {2}: two computers write as {1},"
                + " or a copy of the job folder was worked in beside it. What this computer wrote"
                + " from there on stays in this folder and does not reach the store. Close the"
                + " program, move {3} away, open the job again, so that this computer goes by a name"
                + " of its own, and do again what the others lack.",
            number, writer, out.file, SettingsFolder.usual().resolve("station"))
        : Text.of(
            "Event {0} of {1} is another one in the store than in {2}: two computers wrote as {1},"
                + " or a copy of the job folder was worked in beside it. Ask at {1} which of both is"
                + " right; nothing was changed.",
            number, writer, out.file);
  }

  /** The first of these lines that the store has otherwise. */
  private long firstOther(String writer, List<SealedLine> lines) throws IOException {
    long number = lines.getFirst().number();
    var there = store.read(writer, number);
    for (int i = 0; i < lines.size() && i < there.size(); i++) {
      if (!SealedLine.read(there.get(i)).filter(lines.get(i)::equals).isPresent()) {
        return number + i;
      }
    }
    return number;
  }

  private long bring(String writer, long head, List<Text> problems) throws IOException {
    var out = outgoing.get(writer);
    long here = out == null ? 0 : out.last;
    if (here >= head) {
      return 0;
    }
    boolean written = files.isWrittenHere(writer);
    if (written && out != null && !out.lines.isEmpty()) {
      // The store has another log under this name, which was told.
      return 0;
    }
    long last = written ? here : files.lastFromStore(writer);
    long brought = 0;
    while (last < head) {
      var lines = new ArrayList<SealedLine>();
      for (var bytes : store.read(writer, last + 1)) {
        long number = last + 1 + lines.size();
        var line =
            SealedLine.read(bytes)
                .filter(one -> one.writer().equals(writer) && one.number() == number);
        if (line.isEmpty()) {
          break;
        }
        lines.add(line.get());
      }
      if (lines.isEmpty()) {
        problems.add(
            Text.of(
                "What the store has as event {0} of {1} is damaged, so that nothing after it comes"
                    + " here. Let whoever keeps the store bring it back from a copy; the computers"
                    + " send what that lacks.",
                last + 1, writer));
        break;
      }
      int kept = files.keep(writer, lines);
      brought += kept;
      last = lines.getLast().number();
    }
    return brought;
  }
}
