package org.framewright.naming;

import java.util.Collection;
import org.framewright.base.Text;

/** Several of a kind in one message, at least one of them. */
final class Series {
  private Series() {}

  /** {@code client and title}. */
  static Text of(Collection<?> all) {
    return all.stream()
        .map(one -> Text.of("{0}", one))
        .reduce((before, next) -> Text.of("{0} and {1}", before, next))
        .orElseThrow();
  }

  /** {@code a hyphen or the end}. */
  static Text either(Collection<Text> all) {
    return all.stream().reduce((before, next) -> Text.of("{0} or {1}", before, next)).orElseThrow();
  }

  /** {@code Windows, macOS}. */
  static Text listed(Collection<Text> all) {
    return all.stream().reduce((before, next) -> Text.of("{0}, {1}", before, next)).orElseThrow();
  }
}
