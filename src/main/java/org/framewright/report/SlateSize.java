package org.framewright.report;

import org.framewright.frames.slate.Slate;
import org.framewright.frames.slate.SlateSymbol;

/** How large the cards of slates are, in millimetres and points. */
public enum SlateSize {
  /** One on a sheet. */
  ONE(140, 45, 16, 11, 6),
  /** Four on a sheet, to be cut. */
  FOUR(60, 25, 10, 7.5, 5);

  private final double symbol;
  private final double digits;
  private final double titleSize;
  private final double smallSize;
  private final double margin;

  SlateSize(double symbol, double digits, double titleSize, double smallSize, double margin) {
    this.symbol = symbol;
    this.digits = digits;
    this.titleSize = titleSize;
    this.smallSize = smallSize;
    this.margin = margin;
  }

  /** How many there are on a sheet. */
  int perPage() {
    return this == ONE ? 1 : 4;
  }

  SlateSymbol symbol(Slate slate) {
    return this == ONE ? SlateSymbol.held(slate) : SlateSymbol.small(slate);
  }

  /** The side of a symbol with what is white around it. */
  double whole() {
    int modules = this == ONE ? 25 : 21;
    return symbol * (modules + 2 * SlateSymbol.QUIET) / modules;
  }

  /** How high digits are, where the code is short enough: legible at 3 m (judgement, no source). */
  double digits() {
    return digits;
  }

  /** Of the title, in points. */
  double titleSize() {
    return titleSize;
  }

  /** Of what else is said, in points. */
  double smallSize() {
    return smallSize;
  }

  /** What printers leave white at the edge. */
  double margin() {
    return margin;
  }

  double width(Paper paper) {
    return this == ONE ? paper.width() : paper.width() / 2;
  }

  double height(Paper paper) {
    return this == ONE ? paper.height() : paper.height() / 2;
  }
}
