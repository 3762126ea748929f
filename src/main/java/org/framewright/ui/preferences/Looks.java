package org.framewright.ui.preferences;

import org.framewright.ui.look.Theme;

/** How all windows look, as it can be changed from here and elsewhere. */
public interface Looks {
  /** How much larger or smaller one step is. */
  double STEP = 0.1;

  /** The look that is on. */
  Theme theme();

  /** Takes a look. */
  void take(Theme theme);

  /** The size of everything, 1 for normal. */
  double scale();

  /** Takes a size; the next one that can be had. */
  void take(double scale);
}
