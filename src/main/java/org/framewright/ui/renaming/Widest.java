package org.framewright.ui.renaming;

import java.util.Comparator;
import java.util.List;
import java.util.function.Function;

/** The longest text of each column of names: what the columns must have room for. */
record Widest(String from, String to, String endings) {
  static final Widest NONE = new Widest("", "", "");

  static Widest of(List<PlanLine> lines) {
    return new Widest(
        longest(lines, PlanLine::from),
        longest(lines, PlanLine::to),
        longest(lines, PlanLine::together));
  }

  private static String longest(List<PlanLine> lines, Function<PlanLine, String> text) {
    return lines.stream().map(text).max(Comparator.comparingInt(String::length)).orElse("");
  }
}
