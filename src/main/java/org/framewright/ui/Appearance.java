package org.framewright.ui;

import javafx.scene.Scene;
import org.framewright.ui.look.Theme;
import org.framewright.ui.settings.Preferences;

/** The theme and the size of everything, as they are kept between runs. */
record Appearance(Preferences preferences) {
  private static final double SMALLEST = 0.8;
  private static final double LARGEST = 2.0;
  private static final double STEP = 0.1;
  private static final String THEME = "look";
  private static final String SCALE = "scale";

  Theme theme() {
    return Theme.of(preferences.get(THEME).orElse(""));
  }

  /** Gives a window's scene its colours and its size. */
  void dress(Scene scene) {
    theme().dress(scene, preferences.number(SCALE, 1));
  }

  void turnTheme() {
    preferences.put(THEME, theme().other().word());
  }

  void enlarge() {
    scale(STEP);
  }

  void shrink() {
    scale(-STEP);
  }

  private void scale(double by) {
    var next = Math.clamp(preferences.number(SCALE, 1) + by, SMALLEST, LARGEST);
    preferences.put(SCALE, Math.round(next * 10) / 10.0);
  }
}
