package org.framewright.frames.slate;

import com.google.zxing.ChecksumException;
import com.google.zxing.FormatException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.PerspectiveTransform;
import com.google.zxing.qrcode.decoder.Decoder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Reads the symbol that three marks belong to. The marks do not say how a tilted card narrows
 * towards the symbol's fourth corner, so places around it are tried, and of all places of the four
 * those are sought at which the modules that are known are best told. A module's grey is taken at
 * its middle, between pixels.
 */
final class SymbolReader {
  /** How far the fourth corner is looked for, and in which steps, in modules. */
  private static final double FARTHEST = 2.8;

  private static final double STEP = 0.7;

  /** By how much the corners are moved to see whether that is better, in modules. */
  private static final double[] MOVES = {0.35, 0.15};

  /** Places of the fourth corner that are read as they are, if the best cannot be. */
  private static final int MOST_PLACES = 6;

  /** In so many modules beside each other there are dark and light ones, even in a mark. */
  private static final int WINDOW = 5;

  /** A window with less of the whole contrast has only dark ones or only light ones. */
  private static final float LEAST_CONTRAST = 0.2f;

  private final Decoder decoder = new Decoder();
  private final Correlation correlation = new Correlation();
  private float[] places = {};
  private float[] greys = {};
  private float[] even = {};
  private float[] sharp = {};
  private final Sharpener sharpener = new Sharpener();
  private GreyPicture picture;
  private int level;
  private FixedModules fixed;
  private int stride;

  /** At the first place that was tried, so that places can be compared. */
  private double usualSpread;

  /** A place of the fourth corner, in modules from where a parallelogram has it. */
  private record Place(double across, double down, double clearness) {}

  Optional<String> read(Pyramid pyramid, Trio trio) {
    fixed = trio.fixed();
    level = pyramid.levelFor(trio.module());
    picture = pyramid.level(level);
    stride = fixed.side() + 2;
    usualSpread = 0;
    if (greys.length != stride * stride) {
      places = new float[2 * stride * stride];
      greys = new float[stride * stride];
      even = new float[stride * stride];
      sharp = new float[fixed.side() * fixed.side()];
    }
    sample(corners(trio, 0, 0));
    return text().or(() -> slanted(trio));
  }

  private Optional<String> slanted(Trio trio) {
    var tried = new ArrayList<Place>();
    int steps = (int) Math.round(FARTHEST / STEP);
    for (int x = -steps; x <= steps; x++) {
      for (int y = -steps; y <= steps; y++) {
        double clearness = clearness(corners(trio, x * STEP, y * STEP));
        tried.add(new Place(x * STEP, y * STEP, clearness));
      }
    }
    tried.sort(Comparator.comparingDouble(Place::clearness).reversed());
    sample(refined(trio, tried.getFirst()));
    return text().or(() -> others(trio, tried));
  }

  /** As places in the whole picture, x and y: clockwise from above left. */
  private double[] corners(Trio trio, double moreAcross, double moreDown) {
    double between = fixed.betweenMarks();
    double across = 1 + moreAcross / between;
    double down = 1 + moreDown / between;
    var a = trio.corner();
    var b = trio.right();
    var c = trio.below();
    return new double[] {
      a.x(),
      a.y(),
      b.x(),
      b.y(),
      a.x() + across * (b.x() - a.x()) + down * (c.x() - a.x()),
      a.y() + across * (b.y() - a.y()) + down * (c.y() - a.y()),
      c.x(),
      c.y()
    };
  }

  private double[] refined(Trio trio, Place from) {
    var best = corners(trio, from.across, from.down);
    double clearness = from.clearness;
    double module = trio.module();
    for (double move : MOVES) {
      for (int i = 0; i < 2 * best.length; i++) {
        var moved = best.clone();
        moved[i / 2] += (i % 2 == 0 ? move : -move) * module;
        double now = clearness(moved);
        if (now > clearness) {
          best = moved;
          clearness = now;
        }
      }
    }
    return best;
  }

  /** Takes the greys of all modules and says how well they are told from each other. */
  private double clearness(double[] corners) {
    sample(corners);
    int side = fixed.side();
    correlation.clear();
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < side * side; i++) {
      float grey = grey(i % side, i / side);
      sum += grey;
      squares += grey * grey;
      int known = fixed.at(i % side, i / side);
      if (known != 0) {
        correlation.add(known, grey);
      }
    }
    double count = side * side;
    double spread = Math.sqrt(Math.max(0, squares / count - sum / count * (sum / count)));
    if (usualSpread <= 0) {
      usualSpread = Math.max(1, spread);
    }
    return correlation.value() + spread / usualSpread;
  }

  private void sample(double[] corners) {
    int side = fixed.side();
    float near = FixedModules.TO_MARK;
    float far = side - FixedModules.TO_MARK;
    var at = new float[corners.length];
    for (int i = 0; i < at.length; i++) {
      at[i] = Pyramid.in(level, (float) corners[i]);
    }
    var transform =
        PerspectiveTransform.quadrilateralToQuadrilateral(
            near, near, far, near, far, far, near, far, at[0], at[1], at[2], at[3], at[4], at[5],
            at[6], at[7]);
    for (int i = 0; i < greys.length; i++) {
      int row = i / stride;
      places[2 * i] = i % stride - 0.5f;
      places[2 * i + 1] = row - 0.5f;
    }
    transform.transformPoints(places);
    for (int i = 0; i < greys.length; i++) {
      greys[i] = picture.at(places[2 * i], places[2 * i + 1]);
    }
  }

  /** Of a module; the greys have one more on each side. */
  private float grey(int x, int y) {
    return greys[(y + 1) * stride + x + 1];
  }

  private Optional<String> others(Trio trio, List<Place> tried) {
    for (var place : tried.subList(0, Math.min(MOST_PLACES, tried.size()))) {
      sample(corners(trio, place.across, place.down));
      var text = sharpened(greys);
      if (text.isPresent()) {
        return text;
      }
    }
    return Optional.empty();
  }

  /** What the greys say that were taken last. */
  private Optional<String> text() {
    var text = sharpened(greys);
    if (text.isPresent()) {
      return text;
    }
    // Glare or a shadow across the symbol: what is dark here is lighter than what is light there.
    evenOut();
    text =
        decoded(
            dark -> {
              for (int y = 0; y < fixed.side(); y++) {
                for (int x = 0; x < fixed.side(); x++) {
                  if (even[(y + 1) * stride + x + 1] < 0) {
                    dark.set(x, y);
                  }
                }
              }
            });
    if (text.isPresent()) {
      return text;
    }
    return sharpened(even);
  }

  /**
   * What modules say once they are sharpened.
   *
   * @param from with one more on each side
   */
  private Optional<String> sharpened(float[] from) {
    sharpener.sharpen(fixed, from, sharp);
    int side = fixed.side();
    return decoded(
        dark -> {
          for (int i = 0; i < side * side; i++) {
            if (sharp[i] < 0) {
              dark.set(i % side, i / side);
            }
          }
        });
  }

  /**
   * Takes each module by the darkest and the lightest in a window that holds it: of the windows
   * around it, before and behind, that in which they differ least, but differ.
   */
  private void evenOut() {
    float least = Float.MAX_VALUE;
    float most = -Float.MAX_VALUE;
    for (float grey : greys) {
      least = Math.min(least, grey);
      most = Math.max(most, grey);
    }
    float enough = LEAST_CONTRAST * (most - least);
    for (int y = 0; y < stride; y++) {
      for (int x = 0; x < stride; x++) {
        float middle = (least + most) / 2;
        float contrast = Math.max(1, most - least);
        for (int window = 0; window < 9; window++) {
          int left = Math.clamp(x - window % 3 * (WINDOW / 2), 0, stride - WINDOW);
          int top = Math.clamp(y - window / 3 * (WINDOW / 2), 0, stride - WINDOW);
          float darkest = Float.MAX_VALUE;
          float lightest = -Float.MAX_VALUE;
          for (int i = 0; i < WINDOW * WINDOW; i++) {
            float grey = greys[(top + i / WINDOW) * stride + left + i % WINDOW];
            darkest = Math.min(darkest, grey);
            lightest = Math.max(lightest, grey);
          }
          if (lightest - darkest < contrast && lightest - darkest > enough) {
            contrast = lightest - darkest;
            middle = (darkest + lightest) / 2;
          }
        }
        even[y * stride + x] = Math.clamp((greys[y * stride + x] - middle) / contrast, -1, 1) * 64;
      }
    }
  }

  private Optional<String> decoded(Consumer<BitMatrix> darken) {
    var dark = new BitMatrix(fixed.side());
    darken.accept(dark);
    try {
      return Optional.of(decoder.decode(dark).getText());
    } catch (ChecksumException | FormatException | RuntimeException e) {
      // The library throws others, too, on what looks like a symbol and is none.
      return Optional.empty();
    }
  }
}
