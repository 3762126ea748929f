package org.framewright.day;

import java.util.List;
import java.util.Locale;
import org.framewright.base.Text;

/** What may have to be changed between two setups, as far as the list tells. */
public enum Change {
  /** Another model, who comes from make-up. */
  MODEL,
  /** Another set, background or place. */
  SET,
  /** Another rack, rail or shelf. */
  RACK,
  /** Other views are wanted: another height, angle or lens. */
  VIEWS;

  /** The word for it in documents. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** So many of them. */
  public Text counted(int count) {
    return switch (this) {
      case MODEL -> Text.counted("{0} change of model", "{0} changes of model", count);
      case SET -> Text.counted("{0} change of set", "{0} changes of set", count);
      case RACK -> Text.counted("{0} change of rack", "{0} changes of rack", count);
      case VIEWS -> Text.counted("{0} change of views", "{0} changes of views", count);
    };
  }

  /** What is changed. */
  public Text said() {
    return switch (this) {
      case MODEL -> Text.of("model");
      case SET -> Text.of("set");
      case RACK -> Text.of("rack");
      case VIEWS -> Text.of("views");
    };
  }

  /** Several of them as one value. */
  static Text all(List<Text> texts) {
    return texts.stream().reduce((one, more) -> Text.of("{0}, {1}", one, more)).orElse(Text.NONE);
  }
}
