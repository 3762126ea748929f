package org.framewright.job;

import java.io.IOException;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * A log that lies in a store alone, for whoever has no folder to write in. Where the store is not
 * reached, nothing can be done.
 */
final class StoredEventLog implements EventLog {
  /**
   * Other processes of one computer may take a number first; this many times in a row none does.
   */
  private static final int MOST_TRIES = 100;

  private final NumberedLogs store;
  private final String station;
  private final StationClock clock;
  private final Map<String, Long> read = new TreeMap<>();
  private final Map<String, Text> damaged = new TreeMap<>();
  private final Set<Stamp> seen = new HashSet<>();
  private final List<Entry> waiting = new ArrayList<>();

  StoredEventLog(NumberedLogs store, Station station, Clock clock) {
    this.store = store;
    this.station = station.name();
    this.clock = new StationClock(clock);
  }

  @Override
  public synchronized List<Entry> news() throws IOException {
    for (var head : store.heads().entrySet()) {
      read(head.getKey(), head.getValue());
    }
    var news = List.copyOf(waiting);
    waiting.clear();
    return news;
  }

  private void read(String writer, long head) throws IOException {
    long last = last(writer);
    while (last < head) {
      var lines = store.read(writer, last + 1);
      if (lines.isEmpty()) {
        break;
      }
      for (var bytes : lines) {
        long number = ++last;
        SealedLine.read(bytes)
            .filter(line -> line.writer().equals(writer) && line.number() == number)
            .ifPresentOrElse(
                this::take,
                () ->
                    damaged.putIfAbsent(
                        writer,
                        Text.of(
                            "What the store has as event {0} of {1} is damaged and left out. Let"
                                + " whoever keeps the store bring it back from a copy.",
                            number, writer)));
      }
      read.put(writer, last);
    }
  }

  private void take(SealedLine line) {
    var entry = line.entry();
    if (seen.add(entry.stamp())) {
      waiting.add(entry);
      clock.saw(entry);
    }
  }

  @Override
  public synchronized Stamp append(Event event) throws IOException {
    for (int i = 0; i < MOST_TRIES; i++) {
      read(station, store.heads().getOrDefault(station, 0L));
      var entry = new Entry(last(station) + 1, clock.next(station), clock.own(), event);
      switch (send(entry)) {
        // It was there where an answer got lost on its way: nobody else writes the same bytes.
        case Receipt.Kept _, Receipt.Had _ -> {
          read(station, entry.number());
          return entry.stamp();
        }
        default -> {}
      }
    }
    throw new FileProblemException(
        new Problem(
            Text.of("the store does not take the events of {0}", station),
            "",
            "Close the program wherever else it goes by this name, and try again; nothing was"
                + " written."));
  }

  @Override
  public synchronized boolean append(Entry next) throws IOException {
    boolean kept = send(next) instanceof Receipt.Kept;
    if (kept) {
      read(next.stamp().station(), next.number());
    }
    return kept;
  }

  private Receipt send(Entry entry) throws IOException {
    var line = SealedLine.of(entry);
    if (line.length() > SealedLine.LONGEST) {
      throw new FileProblemException(
          new Problem(
              Text.of("this is too much for one event: more than {0} MB", SealedLine.LONGEST >> 20),
              "",
              "Do it in smaller parts; nothing was written."));
    }
    return store.append(line.writer(), List.of(line));
  }

  @Override
  public synchronized long last(String writer) {
    return read.getOrDefault(writer, 0L);
  }

  @Override
  public synchronized List<Text> told() {
    var told = new ArrayList<>(damaged.values());
    clock.describe(station, told);
    return List.copyOf(told);
  }

  @Override
  public String station() {
    return station;
  }

  @Override
  public Instant now() {
    return clock.now();
  }
}
