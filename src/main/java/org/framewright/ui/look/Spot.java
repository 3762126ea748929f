package org.framewright.ui.look;

/** Where the middle of what is seen at full size is, each from 0 to 1 of the whole picture. */
public record Spot(double x, double y) {
  /** The middle of the picture. */
  public static final Spot MIDDLE = new Spot(0.5, 0.5);

  /** How far a key moves what is seen at full size, as a part of the picture. */
  private static final double STEP = 0.1;

  public Spot {
    x = Math.clamp(x, 0, 1);
    y = Math.clamp(y, 0, 1);
  }

  /** The spot that many steps further. */
  public Spot moved(int right, int down) {
    return new Spot(x + right * STEP, y + down * STEP);
  }
}
