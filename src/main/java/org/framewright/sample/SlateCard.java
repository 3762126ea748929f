package org.framewright.sample;

import java.awt.Color;
import java.awt.image.BufferedImage;
import org.framewright.frames.slate.Slate;
import org.framewright.frames.slate.SlateSymbol;

/** Draws a slate into a picture, as somebody holds it before the garment. */
final class SlateCard {
  /** Modules that would fit on the shorter edge: the symbol takes a third of it. */
  private static final int FITTING = 60;

  private SlateCard() {}

  static void draw(BufferedImage picture, Slate slate) {
    var symbol = SlateSymbol.small(slate);
    int module = Math.max(1, Math.min(picture.getWidth(), picture.getHeight()) / FITTING);
    int card = (symbol.side() + 2 * SlateSymbol.QUIET) * module;
    int left = (picture.getWidth() - card) / 2;
    int top = (picture.getHeight() - card) / 2;
    var g = picture.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(left, top, card, card);
    g.setColor(Color.BLACK);
    for (int y = 0; y < symbol.side(); y++) {
      for (int x = 0; x < symbol.side(); x++) {
        if (symbol.isDark(x, y)) {
          int at = left + (x + SlateSymbol.QUIET) * module;
          g.fillRect(at, top + (y + SlateSymbol.QUIET) * module, module, module);
        }
      }
    }
    g.dispose();
  }
}
