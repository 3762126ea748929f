package org.framewright.ui.handoff;

import java.util.Locale;
import javafx.scene.input.KeyCode;

/** The parts of the page, of which one is seen. */
enum Part {
  GOES(KeyCode.DIGIT1),
  WENT(KeyCode.DIGIT2),
  CHECK(KeyCode.DIGIT3),
  BACK(KeyCode.DIGIT4);

  private final KeyCode key;

  Part(KeyCode key) {
    this.key = key;
  }

  KeyCode key() {
    return key;
  }

  /** The word of its texts. */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
