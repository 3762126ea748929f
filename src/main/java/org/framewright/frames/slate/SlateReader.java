package org.framewright.frames.slate;

import com.google.zxing.Binarizer;
import com.google.zxing.LuminanceSource;
import com.google.zxing.NotFoundException;
import com.google.zxing.PlanarYUVLuminanceSource;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongSupplier;

/**
 * Looks for a slate's symbol in a picture: first as it is, then at half or at twice the size, each
 * time with a threshold for each place and with one for all. Of symbols that are none of a slate
 * the next one is looked for; a slate counts only if there is no other that says something else.
 *
 * <p>Time is looked at between two passes, so that a picture may take a pass longer than it is
 * given. Reuses its memory: one reader for each thread.
 */
public final class SlateReader {
  /** Measured: what is larger gains from a look at half its size, what is smaller from double. */
  private static final int HALVED_FROM = 700;

  private static final int DOUBLED_TO = 1000;

  /** Codes on garments, parcels and screens that are looked past in one picture. */
  private static final int MOST_SYMBOLS = 4;

  /**
   * How much of the way from finder to finder is covered on each side of them. Their middles lie
   * 3.5 modules inside, 14 modules apart in the smallest symbol (ISO/IEC 18004), so 0.25 at least.
   */
  private static final double BEYOND_FINDERS = 0.35;

  private static final List<Function<LuminanceSource, Binarizer>> THRESHOLDS =
      List.of(HybridBinarizer::new, GlobalHistogramBinarizer::new);

  private final SymbolFinder symbols = new SymbolFinder();
  private final long most;
  private final LongSupplier nanos;
  private byte[] scaled = {};

  /** One that looks at a picture for that long at most. */
  public SlateReader(Duration most) {
    this(most, System::nanoTime);
  }

  SlateReader(Duration most, LongSupplier nanos) {
    this.most = most.toNanos();
    this.nanos = nanos;
  }

  /** Looks for a slate. The picture's values may be other ones afterwards. */
  public SlateReading read(GreyPicture picture) {
    long since = nanos.getAsLong();
    var found = look(picture, since);
    if (found.isPresent()) {
      return found.get();
    }
    if (picture.edge() <= DOUBLED_TO) {
      found = look(picture.doubled(room(4L * picture.width() * picture.height())), since);
    }
    if (found.isEmpty() && picture.edge() > HALVED_FROM) {
      int size = picture.width() / 2 * (picture.height() / 2);
      found = size == 0 ? found : look(picture.halved(room(size)), since);
    }
    return found.orElseGet(SlateReading.None::new);
  }

  private byte[] room(long size) {
    if (scaled.length < size) {
      scaled = new byte[Math.toIntExact(size)];
    }
    return scaled;
  }

  private Optional<SlateReading> look(GreyPicture picture, long since) {
    for (var threshold : THRESHOLDS) {
      if (nanos.getAsLong() - since > most) {
        return Optional.empty();
      }
      var found = look(picture, threshold, since);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Optional<SlateReading> look(
      GreyPicture picture, Function<LuminanceSource, Binarizer> threshold, long since) {
    var first = Optional.<Slate>empty();
    for (int i = 0; i < MOST_SYMBOLS; i++) {
      var symbol = symbol(picture, threshold);
      if (symbol.isEmpty()) {
        break;
      }
      var slate = Slate.read(symbol.get().text());
      if (slate.isPresent() && first.isPresent() && !first.equals(slate)) {
        return Optional.of(new SlateReading.Two(first.get(), slate.get()));
      }
      first = first.or(() -> slate);
      if (nanos.getAsLong() - since > most) {
        break;
      }
      cover(picture, symbol.get().corners());
    }
    return first.map(SlateReading.Found::new);
  }

  private Optional<SymbolFinder.Symbol> symbol(
      GreyPicture picture, Function<LuminanceSource, Binarizer> threshold) {
    var source =
        new PlanarYUVLuminanceSource(
            picture.values(),
            picture.width(),
            picture.height(),
            0,
            0,
            picture.width(),
            picture.height(),
            false);
    try {
      return symbols.find(threshold.apply(source).getBlackMatrix());
    } catch (NotFoundException e) {
      return Optional.empty(); // It is of one grey.
    }
  }

  /** So that the same symbol is not found again. */
  private static void cover(GreyPicture picture, List<ResultPoint> corners) {
    double left = Double.MAX_VALUE;
    double right = 0;
    double top = Double.MAX_VALUE;
    double bottom = 0;
    // Three finders: the fourth corner is where they make a parallelogram.
    double[] xs = new double[4];
    double[] ys = new double[4];
    for (int i = 0; i < 3; i++) {
      xs[i] = corners.get(i).getX();
      ys[i] = corners.get(i).getY();
    }
    xs[3] = xs[0] + xs[2] - xs[1];
    ys[3] = ys[0] + ys[2] - ys[1];
    for (int i = 0; i < 4; i++) {
      left = Math.min(left, xs[i]);
      right = Math.max(right, xs[i]);
      top = Math.min(top, ys[i]);
      bottom = Math.max(bottom, ys[i]);
    }
    double beyond = Math.max(right - left, bottom - top) * BEYOND_FINDERS;
    picture.cover(
        (int) (left - beyond),
        (int) (top - beyond),
        (int) (right + beyond) + 1,
        (int) (bottom + beyond) + 1);
  }
}
