package org.framewright.frames.slate;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Map;

/** The symbol of a slate: a square of dark and light modules (ISO/IEC 18004). */
public final class SlateSymbol {
  /** What stays white around a symbol, in modules (ISO/IEC 18004, section 6.3.8). */
  public static final int QUIET = 4;

  // ISO/IEC 18004, table 7: version 1-Q holds 16 of a slate's characters, 1-M and 2-H hold 20.
  private static final int MOST_IN_1Q = 16;
  private static final int HELD = 2;
  private static final int SMALL = 1;

  private final ByteMatrix modules;

  private SlateSymbol(String text, int version, ErrorCorrectionLevel level) {
    try {
      modules = Encoder.encode(text, level, Map.of(EncodeHintType.QR_VERSION, version)).getMatrix();
    } catch (WriterException e) {
      throw new IllegalArgumentException(text, e); // A slate's text has 20 characters at most.
    }
  }

  /** For a large card, which a hand may cover a tenth of. */
  public static SlateSymbol held(Slate slate) {
    return new SlateSymbol(slate.print(), HELD, ErrorCorrectionLevel.H);
  }

  /** For a small card: fewer and so larger modules, which are read from further away. */
  public static SlateSymbol small(Slate slate) {
    var text = slate.print();
    return new SlateSymbol(
        text, SMALL, text.length() > MOST_IN_1Q ? ErrorCorrectionLevel.M : ErrorCorrectionLevel.Q);
  }

  /** How many modules it is wide and high, without what is white around it. */
  public int side() {
    return modules.getWidth();
  }

  /** Whether a module is dark; what lies outside is not. */
  public boolean isDark(int x, int y) {
    return x >= 0 && y >= 0 && x < side() && y < side() && modules.get(x, y) == 1;
  }
}
