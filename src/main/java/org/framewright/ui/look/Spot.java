package org.framewright.ui.look;

import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;

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

  /** Where a pointer is in a picture's place: its left edge stands for the picture's. */
  public static Spot under(MouseEvent pointer, Region place) {
    var at = place.sceneToLocal(pointer.getSceneX(), pointer.getSceneY());
    return new Spot(at.getX() / place.getWidth(), at.getY() / place.getHeight());
  }

  /** The spot that many steps further. */
  public Spot moved(int right, int down) {
    return new Spot(x + right * STEP, y + down * STEP);
  }
}
