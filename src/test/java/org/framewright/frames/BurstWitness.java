package org.framewright.frames;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;

/**
 * Listens to a watcher while a burst is written: notes when each pair was first counted with both
 * of its files, and which frames were counted with a file that was not closed yet.
 */
final class BurstWitness implements Consumer<FrameScan> {
  private final BurstGenerator burst;
  private final CountDownLatch all = new CountDownLatch(1);
  private final Map<String, Long> latencies = new HashMap<>();
  private final List<String> early = new ArrayList<>();
  private int frames;
  private int scans;

  BurstWitness(BurstGenerator burst) {
    this.burst = burst;
  }

  CountDownLatch all() {
    return all;
  }

  @Override
  public synchronized void accept(FrameScan scan) {
    long now = System.nanoTime();
    scans++;
    frames = scan.frames().size();
    for (var frame : scan.frames()) {
      if (!frame.complete() || latencies.containsKey(frame.stem())) {
        continue;
      }
      long closed = 0;
      for (var file : frame.files()) {
        var at = burst.closed().get(file.path());
        if (at == null) {
          early.add(file.path().getFileName().toString());
        } else {
          closed = Math.max(closed, at);
        }
      }
      if (frame.files().size() == 2) {
        latencies.put(frame.stem(), now - closed);
      }
    }
    if (latencies.size() == burst.pairs()) {
      all.countDown();
    }
  }

  synchronized int frames() {
    return frames;
  }

  synchronized int scans() {
    return scans;
  }

  synchronized List<String> early() {
    return List.copyOf(early);
  }

  /** From the close of a pair's last file until it was counted, in milliseconds, ascending. */
  synchronized double[] latencies() {
    return latencies.values().stream().mapToDouble(nanos -> nanos / 1e6).sorted().toArray();
  }
}
