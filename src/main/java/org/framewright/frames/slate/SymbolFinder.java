package org.framewright.frames.slate;

import com.google.zxing.ChecksumException;
import com.google.zxing.DecodeHintType;
import com.google.zxing.FormatException;
import com.google.zxing.NotFoundException;
import com.google.zxing.ReaderException;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.DetectorResult;
import com.google.zxing.common.GridSampler;
import com.google.zxing.common.PerspectiveTransform;
import com.google.zxing.qrcode.decoder.Decoder;
import com.google.zxing.qrcode.detector.Detector;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Finds one QR symbol in black and white and reads it. The smallest symbol has marks in three of
 * its corners only, which do not say how a tilted card narrows towards its far end, and the library
 * takes it for a parallelogram. Where nothing can be read so, places around that fourth corner are
 * tried.
 */
final class SymbolFinder {
  private static final Map<DecodeHintType, Object> HINTS = Map.of(DecodeHintType.TRY_HARDER, true);

  /** The side of the smallest symbol, in modules (ISO/IEC 18004). */
  private static final int SMALLEST = 21;

  /** From the symbol's edge to the middle of the mark in a corner, in modules. */
  private static final float TO_MARK = 3.5f;

  /** How far the fourth corner is looked for, and in which steps, in modules. */
  private static final double FARTHEST = 2.8;

  private static final double STEP = 0.7;

  private static final List<double[]> AROUND = around();

  private final Decoder decoder = new Decoder();

  /**
   * A symbol that was read.
   *
   * @param corners the middles of the marks: below left, above left, above right
   */
  record Symbol(String text, List<ResultPoint> corners) {}

  private static List<double[]> around() {
    var places = new ArrayList<double[]>();
    int steps = (int) Math.round(FARTHEST / STEP);
    for (int x = -steps; x <= steps; x++) {
      for (int y = -steps; y <= steps; y++) {
        if (x != 0 || y != 0) {
          places.add(new double[] {x * STEP, y * STEP});
        }
      }
    }
    places.sort(Comparator.comparingDouble(place -> Math.hypot(place[0], place[1])));
    return List.copyOf(places);
  }

  Optional<Symbol> find(BitMatrix black) {
    try {
      var found = new Detector(black).detect(HINTS);
      var corners = List.of(found.getPoints());
      return text(found.getBits())
          .or(
              () ->
                  found.getBits().getWidth() == SMALLEST ? tilted(black, found) : Optional.empty())
          .map(text -> new Symbol(text, corners));
    } catch (ReaderException | RuntimeException e) {
      // The library throws others, too, on what looks like a symbol and is none.
      return Optional.empty();
    }
  }

  private Optional<String> text(BitMatrix modules) {
    try {
      return Optional.of(decoder.decode(modules, HINTS).getText());
    } catch (ChecksumException | FormatException e) {
      return Optional.empty();
    }
  }

  private Optional<String> tilted(BitMatrix black, DetectorResult found) {
    var marks = found.getPoints();
    double wide = SMALLEST - 2 * TO_MARK;
    double acrossX = (marks[2].getX() - marks[1].getX()) / wide;
    double acrossY = (marks[2].getY() - marks[1].getY()) / wide;
    double downX = (marks[0].getX() - marks[1].getX()) / wide;
    double downY = (marks[0].getY() - marks[1].getY()) / wide;
    for (var place : AROUND) {
      double across = wide + place[0];
      double down = wide + place[1];
      var text =
          sampled(
              black,
              marks,
              (float) (marks[1].getX() + across * acrossX + down * downX),
              (float) (marks[1].getY() + across * acrossY + down * downY));
      if (text.isPresent()) {
        return text;
      }
    }
    return Optional.empty();
  }

  /** Reads the symbol as if its fourth corner's mark were there. */
  private Optional<String> sampled(BitMatrix black, ResultPoint[] marks, float x, float y) {
    float far = SMALLEST - TO_MARK;
    var transform =
        PerspectiveTransform.quadrilateralToQuadrilateral(
            TO_MARK,
            TO_MARK,
            far,
            TO_MARK,
            far,
            far,
            TO_MARK,
            far,
            marks[1].getX(),
            marks[1].getY(),
            marks[2].getX(),
            marks[2].getY(),
            x,
            y,
            marks[0].getX(),
            marks[0].getY());
    try {
      return text(GridSampler.getInstance().sampleGrid(black, SMALLEST, SMALLEST, transform));
    } catch (NotFoundException e) {
      return Optional.empty(); // It would reach out of the picture.
    }
  }
}
