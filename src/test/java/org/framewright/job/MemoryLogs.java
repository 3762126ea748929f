package org.framewright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.TreeMap;

/** A store in memory, by the rule that every store keeps. */
public final class MemoryLogs implements NumberedLogs {
  private final Map<String, List<SealedLine>> logs = new TreeMap<>();

  @Override
  public synchronized SequencedMap<String, Long> heads() {
    var heads = new LinkedHashMap<String, Long>();
    logs.forEach((writer, lines) -> heads.put(writer, (long) lines.size()));
    return heads;
  }

  @Override
  public synchronized Receipt append(String writer, List<SealedLine> lines) {
    var log = logs.computeIfAbsent(writer, _ -> new ArrayList<>());
    long first = lines.getFirst().number();
    if (first > log.size() + 1) {
      return new Receipt.Gap(log.size());
    }
    var fresh = new ArrayList<SealedLine>();
    for (var line : lines) {
      if (line.number() > log.size()) {
        fresh.add(line);
      } else if (!log.get((int) line.number() - 1).equals(line)) {
        return new Receipt.Clash(log.size());
      }
    }
    log.addAll(fresh);
    return fresh.isEmpty() ? new Receipt.Had(log.size()) : new Receipt.Kept(log.size());
  }

  @Override
  public synchronized List<byte[]> read(String writer, long from) {
    return logs.getOrDefault(writer, List.of()).stream()
        .skip(from - 1)
        .limit(3)
        .map(SealedLine::bytes)
        .toList();
  }

  /** As a backup keeps it. */
  synchronized MemoryLogs copy() {
    var copy = new MemoryLogs();
    logs.forEach((writer, lines) -> copy.logs.put(writer, new ArrayList<>(lines)));
    return copy;
  }

  /** Goes back to what a backup kept. */
  synchronized void restore(MemoryLogs backup) {
    logs.clear();
    logs.putAll(backup.copy().logs);
  }

  synchronized List<SealedLine> log(String writer) {
    return List.copyOf(logs.getOrDefault(writer, List.of()));
  }

  synchronized int size() {
    return logs.values().stream().mapToInt(List::size).sum();
  }

  /** Puts bytes where nobody should. */
  synchronized void damage(String writer, int number, SealedLine other) {
    logs.get(writer).set(number - 1, other);
  }
}
