package org.framewright.ready;

import java.util.Locale;
import org.framewright.base.Text;

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

  /** What to call it before a person. */
  public Text label() {
    return switch (this) {
      case LIST -> Text.of("shot list");
      case NAMES -> Text.of("names");
      case CONVENTION -> Text.of("convention");
      case LEFT_HALF_WAY -> Text.of("left half-way");
      case SPACE -> Text.of("space");
      case SPEED -> Text.of("speed of the disk");
      case PLACES -> Text.of("places for copies");
      case POWER -> Text.of("power");
      case CLOCK -> Text.of("clocks of the computers");
      case ZONE -> Text.of("time zone");
      case BODIES -> Text.of("clocks of the bodies");
      case FONTS -> Text.of("fonts");
      case DISPLAY -> Text.of("client’s display");
      case DEVICES -> Text.of("phones and tablets");
      case CHECKLIST -> Text.of("checklist");
      case SETUPS -> Text.of("setups");
      case SIGN_OFFS -> Text.of("sign-offs");
      case COPIES -> Text.of("copies");
      case CARDS -> Text.of("cards");
      case REPORT -> Text.of("report");
    };
  }
}
