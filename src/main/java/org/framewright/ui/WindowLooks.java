package org.framewright.ui;

import org.framewright.ui.look.Theme;
import org.framewright.ui.preferences.Looks;

/** The looks of all windows, which are dressed anew whenever these change. */
record WindowLooks(Appearance appearance, Runnable dress) implements Looks {
  @Override
  public Theme theme() {
    return appearance.theme();
  }

  @Override
  public void take(Theme theme) {
    appearance.take(theme);
    dress.run();
  }

  @Override
  public double scale() {
    return appearance.scale();
  }

  @Override
  public void take(double scale) {
    appearance.take(scale);
    dress.run();
  }
}
