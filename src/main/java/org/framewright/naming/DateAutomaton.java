package org.framewright.naming;

import dk.brics.automaton.Automaton;
import java.time.Month;
import java.time.Year;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.framewright.naming.DatePattern.Unit;

/**
 * The automaton of the dates that a pattern can show. Its states remember what of the parts read so
 * far decides which later ones are possible, so that 30 February is no text of it.
 */
final class DateAutomaton {
  private final List<DatePattern.Part> parts;
  private final boolean yearShows;
  private final boolean monthShows;
  private final Map<Step, Automaton> made = new HashMap<>();

  private DateAutomaton(DatePattern pattern) {
    this.parts = pattern.parts();
    this.yearShows = pattern.byUnit().containsKey(Unit.YEAR);
    this.monthShows = pattern.byUnit().containsKey(Unit.MONTH);
  }

  /** Before a part, with what was read so far. */
  private record Step(int part, Memory memory) {
    Step then(Memory next) {
      return new Step(part + 1, next);
    }
  }

  /** What of the parts read so far decides whether a later part is possible. */
  private record Memory(int days, int monthLength, int leap) {
    static final Memory NOTHING = new Memory(0, 0, -1);

    /** The memory after a value; null if there is no such date. */
    Memory with(Unit unit, int value, boolean yearShows, boolean monthShows) {
      var next =
          switch (unit) {
            case YEAR -> new Memory(days, monthLength, Year.isLeap(value) ? 1 : 0);
            case MONTH -> new Memory(days, value == 2 ? 28 : Month.of(value).minLength(), leap);
            case DAY -> new Memory(Math.max(28, value), monthLength, leap);
            case DAY_OF_YEAR -> new Memory(value == 366 ? 366 : 365, monthLength, leap);
            case HOUR, MINUTE, SECOND, FRACTION -> this;
          };
      return next.isPossible(yearShows, monthShows) ? next : null;
    }

    private boolean isPossible(boolean yearShows, boolean monthShows) {
      if (days > 31) {
        return days == 365 || leap != 0;
      }
      if (days == 0 || !monthShows || monthLength == 0) {
        return true;
      }
      if (monthLength > 28) {
        return days <= monthLength;
      }
      return days <= 28 || (days == 29 && (!yearShows || leap != 0));
    }
  }

  /** The texts of a pattern: those that are in the calendar. */
  static Dfa of(DatePattern pattern) {
    return Dfa.of(new DateAutomaton(pattern).after(new Step(0, Memory.NOTHING)));
  }

  /** The texts that can follow. Small where each step is minimal: ten thousand years are. */
  private Automaton after(Step step) {
    var known = made.get(step);
    if (known == null) {
      known = step.part() == parts.size() ? Automaton.makeEmptyString() : next(step);
      known.minimize();
      made.put(step, known);
    }
    return known;
  }

  private Automaton next(Step step) {
    var part = parts.get(step.part());
    if (part.unit() == null) {
      return Automaton.makeString(part.literal()).concatenate(after(step.then(step.memory())));
    }
    if (part.unit() == Unit.FRACTION) {
      return Automaton.makeCharRange('0', '9')
          .repeat(part.letters(), part.letters())
          .concatenate(after(step.then(step.memory())));
    }
    var byMemory = new LinkedHashMap<Memory, List<String>>();
    part.texts()
        .forEach(
            (value, text) -> {
              var next = step.memory().with(part.unit(), value, yearShows, monthShows);
              if (next != null) {
                byMemory.computeIfAbsent(next, _ -> new ArrayList<>()).add(text);
              }
            });
    return Automaton.union(
        byMemory.entrySet().stream()
            .map(
                one ->
                    Automaton.makeStringUnion(one.getValue().toArray(CharSequence[]::new))
                        .concatenate(after(step.then(one.getKey()))))
            .toList());
  }
}
