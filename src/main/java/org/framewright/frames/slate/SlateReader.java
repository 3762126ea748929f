package org.framewright.frames.slate;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * Looks for a slate's symbol in a picture: marks at all sizes, then three that belong together, the
 * likeliest first. Symbols that are none of a slate are passed over; a slate counts only if there
 * is no other that says something else.
 *
 * <p>Time is looked at between two steps, so that a picture may take a step longer than it is
 * given. Reuses its memory: one reader for each thread.
 */
public final class SlateReader {
  /** In the whole picture every so manyth row is looked at: the middle of a mark is wider. */
  private static final int STEP = 2;

  private final Pyramid pyramid = new Pyramid();
  private final Thresholds thresholds = new Thresholds();
  private final Marks marks = new Marks();
  private final MarkFinder finder = new MarkFinder();
  private final TrioFinder trios = new TrioFinder();
  private final SymbolReader symbols = new SymbolReader();
  private final long most;
  private final LongSupplier nanos;

  /** One that looks at a picture for that long at most. */
  public SlateReader(Duration most) {
    this(most, System::nanoTime);
  }

  SlateReader(Duration most, LongSupplier nanos) {
    this.most = most.toNanos();
    this.nanos = nanos;
  }

  /** Looks for a slate. */
  public SlateReading read(GreyPicture picture) {
    long since = nanos.getAsLong();
    pyramid.build(picture);
    marks.clear(picture.width(), picture.height());
    for (int level = pyramid.levels() - 2; level >= 0 && !isOver(since); level--) {
      thresholds.build(pyramid.level(level + 1));
      finder.find(pyramid, level, thresholds, level == 0 ? STEP : 1, marks);
    }
    return read(since);
  }

  private SlateReading read(long since) {
    var first = Optional.<Slate>empty();
    var done = new ArrayList<Trio>();
    for (var trio : trios.find(pyramid, marks.all())) {
      if (isOver(since)) {
        break;
      }
      if (done.stream().noneMatch(other -> other.touches(trio))) {
        var text = symbols.read(pyramid, trio);
        text.ifPresent(_ -> done.add(trio));
        var slate = text.flatMap(Slate::read);
        if (slate.isPresent() && first.isPresent() && !first.equals(slate)) {
          return new SlateReading.Two(first.get(), slate.get());
        }
        first = first.or(() -> slate);
      }
    }
    return first.<SlateReading>map(SlateReading.Found::new).orElseGet(SlateReading.None::new);
  }

  private boolean isOver(long since) {
    return nanos.getAsLong() - since > most;
  }
}
