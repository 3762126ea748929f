package org.framewright.share;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/** A text as a square of dark and light modules (ISO/IEC 18004), level M. */
public final class QrCode {
  /** What stays light around it, in modules (ISO/IEC 18004, section 6.3.8). */
  public static final int QUIET = 4;

  /** By whether the upper and the lower half are dark. */
  private static final char[] HALVES = {' ', '\u2584', '\u2580', '\u2588'};

  private final ByteMatrix modules;

  private QrCode(ByteMatrix modules) {
    this.modules = modules;
  }

  /**
   * The symbol of a text.
   *
   * @throws IllegalArgumentException if it is too long for one, some 2,300 letters
   */
  public static QrCode of(String text) {
    try {
      return new QrCode(Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix());
    } catch (WriterException e) {
      throw new IllegalArgumentException("a text of " + text.length() + " letters", e);
    }
  }

  /** How many modules it is wide and high, without what is light around it. */
  public int size() {
    return modules.getWidth();
  }

  /** Whether a module is dark; what lies outside is not. */
  public boolean module(int x, int y) {
    return x >= 0 && y >= 0 && x < size() && y < size() && modules.get(x, y) == 1;
  }

  /**
   * As lines of text with two rows of modules in a line, and {@link #QUIET} modules around. What is
   * drawn is dark, so it is to be shown dark on light, whatever the terminal's colours are.
   */
  public String halfBlocks() {
    var text = new StringBuilder();
    for (int y = -QUIET; y < size() + QUIET; y += 2) {
      for (int x = -QUIET; x < size() + QUIET; x++) {
        text.append(HALVES[(module(x, y) ? 2 : 0) + (module(x, y + 1) ? 1 : 0)]);
      }
      text.append('\n');
    }
    return text.toString();
  }
}
