package org.framewright.naming;

import java.util.List;
import java.util.function.Consumer;

/** A part of a pattern. */
sealed interface Part {
  /** Text that is always the same. */
  record Text(String text) implements Part {}

  /** A field in one of its shapes. */
  record Show(Declared field, Shape shape) implements Part {}

  /** An optional run, shown when its own fields have values. */
  record Run(List<Part> parts) implements Part {
    /** The fields that decide whether the run shows: those not in a run inside it, nor fixed. */
    List<Show> own() {
      return parts.stream()
          .filter(Show.class::isInstance)
          .map(Show.class::cast)
          .filter(show -> show.field().type() != FieldType.FIXED)
          .toList();
    }
  }

  /** How many characters of literal text they show, inner runs included. */
  static int literals(List<Part> parts) {
    int literals = 0;
    for (var part : parts) {
      literals +=
          switch (part) {
            case Text(String text) -> text.length();
            case Show _ -> 0;
            case Run(List<Part> inner) -> literals(inner);
          };
    }
    return literals;
  }

  /** Visits every field shown, inner runs included, in order. */
  static void eachShow(List<Part> parts, Consumer<Show> visit) {
    for (var part : parts) {
      switch (part) {
        case Text text -> {}
        case Show show -> visit.accept(show);
        case Run run -> eachShow(run.parts, visit);
      }
    }
  }
}
