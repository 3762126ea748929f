package org.framewright.world;

import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/** What was done so far, of all worlds. */
final class Counts {
  private final AtomicLong days = new AtomicLong();
  private final AtomicLong steps = new AtomicLong();
  private final Map<String, Integer> kinds = new ConcurrentHashMap<>();
  private final Map<String, Integer> troubles = new ConcurrentHashMap<>();
  private final Map<String, Integer> pairs = new ConcurrentHashMap<>();
  private final AtomicLong clear = new AtomicLong();
  private final AtomicLong unclear = new AtomicLong();
  private final AtomicLong cleared = new AtomicLong();
  private final AtomicLong kept = new AtomicLong();
  private final ThreadLocal<String> before = ThreadLocal.withInitial(() -> "");

  private static String name(Step step) {
    return step instanceof Step.Disturbed(var inner, var trouble, _)
        ? inner.getClass().getSimpleName() + " " + trouble
        : step.getClass().getSimpleName();
  }

  void step(Step step) {
    steps.incrementAndGet();
    if (step instanceof Step.Pass) {
      return;
    }
    var kind = name(step);
    kinds.merge(kind, 1, Integer::sum);
    pairs.merge(before.get() + " > " + kind, 1, Integer::sum);
    before.set(kind);
    if (step instanceof Step.Night) {
      days.incrementAndGet();
    }
  }

  void end(Trouble trouble, String end) {
    if (trouble != null) {
      troubles.merge(trouble + " " + end, 1, Integer::sum);
    }
  }

  void placed(boolean isClear) {
    (isClear ? clear : unclear).incrementAndGet();
  }

  void asked(boolean may) {
    (may ? cleared : kept).incrementAndGet();
  }

  long days() {
    return days.get();
  }

  @Override
  public String toString() {
    return "%d days, %d steps of %d kinds, %d pairs of steps one after the other%n"
            .formatted(days.get(), steps.get(), kinds.size(), pairs.size())
        + "faults %s%n".formatted(new TreeMap<>(troubles))
        + "places of frames compared %d, of which the model knew no answer %d%n"
            .formatted(clear.get() + unclear.get(), unclear.get())
        + "cards cleared %d, not cleared %d%n".formatted(cleared.get(), kept.get())
        + "steps %s".formatted(new TreeMap<>(kinds));
  }
}
