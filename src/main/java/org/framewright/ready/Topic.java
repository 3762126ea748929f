package org.framewright.ready;

import java.util.Locale;

/** What is looked at. */
public enum Topic {
  LIST,
  NAMES,
  CONVENTION,
  LEFT_HALF_WAY,
  SPACE,
  SPEED,
  PLACES,
  POWER,
  CLOCK,
  ZONE,
  BODIES,
  FONTS,
  DISPLAY,
  DEVICES,
  CHECKLIST,
  SETUPS,
  SIGN_OFFS,
  COPIES,
  CARDS,
  REPORT;

  /** Its word in documents. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
