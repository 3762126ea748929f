package org.framewright.ui.scan;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/**
 * Tells what a scanner types from what a person types, stroke by stroke. Times are nanoseconds of
 * any clock that only goes forward.
 */
final class ScanWatch<E> {
  /** So long may the next key take after one, after two, and after more. */
  private static final long[] LIMITS = {millis(45), millis(80), millis(200)};

  /** The gap in the middle of all, of a scan at most. */
  private static final long EVEN = millis(35);

  /** With such a gap in the middle of a few, nobody need wait for the end of what is typed. */
  private static final long SLOW = millis(50);

  private static final int A_FEW = 4;
  private static final int SHORTEST = 4;

  /** Who is heard so much later than asked for was held up. */
  private static final long LATE = millis(5);

  private static final long ONCE_MORE = millis(45);

  /** Some scanners send two keys at the end. */
  private static final long END = millis(100);

  private static final char SEPARATOR = '\u001D';

  private final Predicate<String> known;
  private final List<Stroke<E>> held = new ArrayList<>();
  private final List<Long> gaps = new ArrayList<>();
  private final StringBuilder text = new StringBuilder();
  private int keys;
  private long lastKey;
  private long due;
  private boolean extended;

  /** Keys that are down. */
  private final Set<String> down = new HashSet<>();

  /** Keys of a scan that are still down: what they do next goes no further either. */
  private final Set<String> ended = new HashSet<>();

  private boolean endedLast;
  private long lastScan;
  private boolean scanned;

  /**
   * @param known whether a text without an end is a scan: its check is right, and the list has it
   */
  ScanWatch(Predicate<String> known) {
    this.known = known;
  }

  private static long millis(int count) {
    return TimeUnit.MILLISECONDS.toNanos(count);
  }

  /** When {@link #silence} is to be called, if no stroke comes before. */
  OptionalLong due() {
    return held.isEmpty() ? OptionalLong.empty() : OptionalLong.of(due);
  }

  /** A key was pressed or let go, or wrote something. */
  Verdict<E> stroke(Stroke<E> stroke, long now) {
    return switch (stroke.kind()) {
      case PRESSED -> pressed(stroke, now);
      case TYPED -> typed(stroke);
      case RELEASED -> released(stroke);
    };
  }

  /** Nothing came until the time that was asked for. */
  Verdict<E> silence(long now) {
    if (held.isEmpty() || now < due) {
      return new Verdict.Held<>();
    }
    if (now - due > LATE && !extended) {
      // The keys that came meanwhile may be heard next.
      extended = true;
      due = now + ONCE_MORE;
      return new Verdict.Held<>();
    }
    return isEven() && known.test(text.toString()) ? scan(now) : typing();
  }

  /** The window has the keys no longer: what was held goes on its way. */
  Verdict<E> leave() {
    down.clear();
    ended.clear();
    endedLast = false;
    return held.isEmpty() ? new Verdict.Held<>() : typing();
  }

  private Verdict<E> pressed(Stroke<E> stroke, long now) {
    endedLast = false;
    boolean again = !down.add(stroke.key());
    return switch (stroke.role()) {
      // A scanner holds no key down.
      case WRITES -> again ? typing(stroke) : key(stroke, stroke.text(), now);
      case ENDS -> end(stroke, now);
      case SEPARATES -> separator(stroke, now);
      case SHIFTS -> {
        if (held.isEmpty()) {
          yield new Verdict.Pass<>();
        }
        if (!again) {
          due = Math.max(due, now + limit());
        }
        yield hold(stroke);
      }
      case OTHER -> typing(stroke);
    };
  }

  private Verdict<E> key(Stroke<E> stroke, String written, long now) {
    if (!held.isEmpty()) {
      // Nobody was told that the time is over: the thread was held up, and so was this key.
      boolean heardInTime = !extended && now - due <= LATE;
      if (heardInTime) {
        gaps.add(now - lastKey);
      }
      if (gaps.size() >= A_FEW && median() > SLOW) {
        var before = typed();
        begin(stroke, written, now);
        return new Verdict.Typing<>(before);
      }
    }
    begin(stroke, written, now);
    return new Verdict.Held<>();
  }

  private void begin(Stroke<E> stroke, String written, long now) {
    held.add(stroke);
    text.append(written);
    keys++;
    lastKey = now;
    extended = false;
    due = now + limit();
  }

  private long limit() {
    return LIMITS[Math.min(keys, LIMITS.length) - 1];
  }

  private Verdict<E> separator(Stroke<E> stroke, long now) {
    if (isEnding(now)) {
      return swallow(stroke);
    }
    return keys < LIMITS.length ? typing(stroke) : key(stroke, String.valueOf(SEPARATOR), now);
  }

  private Verdict<E> end(Stroke<E> stroke, long now) {
    if (isEnding(now)) {
      return swallow(stroke);
    }
    if (!isEven()) {
      return typing(stroke);
    }
    swallow(stroke);
    return scan(now);
  }

  private boolean isEnding(long now) {
    return scanned && held.isEmpty() && now - lastScan <= END;
  }

  private Verdict<E> swallow(Stroke<E> stroke) {
    ended.add(stroke.key());
    endedLast = true;
    return new Verdict.Held<>();
  }

  private Verdict<E> typed(Stroke<E> stroke) {
    if (endedLast) {
      return new Verdict.Held<>();
    }
    if (held.isEmpty()) {
      return new Verdict.Pass<>();
    }
    stroke.text().chars().filter(c -> c >= ' ').forEach(c -> text.append((char) c));
    return hold(stroke);
  }

  private Verdict<E> released(Stroke<E> stroke) {
    down.remove(stroke.key());
    if (ended.remove(stroke.key())) {
      endedLast = false;
      return new Verdict.Held<>();
    }
    return held.isEmpty() ? new Verdict.Pass<>() : hold(stroke);
  }

  private Verdict<E> hold(Stroke<E> stroke) {
    held.add(stroke);
    return new Verdict.Held<>();
  }

  private boolean isEven() {
    return text.length() >= SHORTEST && !gaps.isEmpty() && median() <= EVEN;
  }

  private long median() {
    return gaps.stream().sorted().skip(gaps.size() / 2).findFirst().orElse(Long.MAX_VALUE);
  }

  private Verdict<E> scan(long now) {
    var pressed = new HashSet<String>();
    var others = new ArrayList<E>();
    for (var stroke : held) {
      switch (stroke.kind()) {
        case PRESSED -> pressed.add(stroke.key());
        case RELEASED -> {
          if (!pressed.remove(stroke.key())) {
            others.add(stroke.event());
          }
        }
        case TYPED -> {}
      }
    }
    ended.addAll(pressed);
    var scan = new Verdict.Scan<E>(text.toString(), others);
    clear();
    scanned = true;
    lastScan = now;
    return scan;
  }

  private Verdict<E> typing() {
    return new Verdict.Typing<>(typed());
  }

  private Verdict<E> typing(Stroke<E> last) {
    if (held.isEmpty()) {
      return new Verdict.Pass<>();
    }
    held.add(last);
    return typing();
  }

  private List<E> typed() {
    var events = held.stream().map(Stroke::event).toList();
    clear();
    return events;
  }

  private void clear() {
    held.clear();
    gaps.clear();
    text.setLength(0);
    keys = 0;
    extended = false;
  }
}
