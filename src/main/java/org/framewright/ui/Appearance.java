package org.framewright.ui;

import javafx.application.Platform;
import javafx.scene.Scene;
import org.framewright.ui.look.Theme;
import org.framewright.ui.preferences.Looks;
import org.framewright.ui.settings.Preferences;

/** The theme and the size of everything, as they are kept between runs. */
record Appearance(Preferences preferences) {
  private static final double SMALLEST = 0.8;
  private static final double LARGEST = 2.0;
  private static final String THEME = "look";
  private static final String SCALE = "scale";

  Theme theme() {
    return preferences
        .get(THEME)
        .map(Theme::of)
        .orElseGet(() -> Theme.asked(Platform.getPreferences()));
  }

  /** Gives a window's scene its colours and its size. */
  void dress(Scene scene) {
    theme().dress(scene, scale());
  }

  double scale() {
    return Math.clamp(preferences.number(SCALE, 1), SMALLEST, LARGEST);
  }

  void take(Theme theme) {
    preferences.put(THEME, theme.word());
  }

  void turnTheme() {
    take(theme().other());
  }

  void enlarge() {
    take(scale() + Looks.STEP);
  }

  void shrink() {
    take(scale() - Looks.STEP);
  }

  /** The nearest size that can be had. */
  void take(double scale) {
    preferences.put(SCALE, Math.round(Math.clamp(scale, SMALLEST, LARGEST) * 10) / 10.0);
  }
}
