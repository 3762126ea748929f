package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import dk.brics.automaton.Transition;
import java.time.Month;
import java.time.Year;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.framewright.naming.DatePattern.Unit;

/**
 * The automaton of the dates that a pattern can show. Its states remember what of the parts read so
 * far decides which later ones are possible, so that 30 February is no text of it.
 */
final class DateAutomaton {
  private final List<DatePattern.Part> parts;
  private final int dateEnds;
  private final boolean yearShows;
  private final boolean monthShows;
  private final Map<Integer, State> made = new HashMap<>();

  /** States by where they lead; those that accept the same are made once. */
  private final Map<Set<Transition>, State> ends = new HashMap<>();

  private final Map<Set<Transition>, State> inner = new HashMap<>();

  private DateAutomaton(DatePattern pattern) {
    this.parts = pattern.parts();
    this.dateEnds = dateEnds(parts);
    this.yearShows = pattern.byUnit().containsKey(Unit.YEAR);
    this.monthShows = pattern.byUnit().containsKey(Unit.MONTH);
  }

  /** How many parts there are up to the last one of the date; those of the time mind nothing. */
  private static int dateEnds(List<DatePattern.Part> parts) {
    int end = parts.size();
    while (end > 0
        && (parts.get(end - 1).unit() == null
            || parts.get(end - 1).unit().compareTo(Unit.HOUR) >= 0)) {
      end--;
    }
    return end;
  }

  /** Before a part, with what was read so far. */
  private record Step(int part, Memory memory) {
    Step then(Memory next) {
      return new Step(part + 1, next);
    }

    /** One number for each step: the equality of records is slow in a short life. */
    int key() {
      return ((part * 367 + memory.days) * 32 + memory.monthLength) * 3 + memory.leap + 1;
    }
  }

  /** A text of a part, and where it leads. */
  private record Reading(String text, Step next) {}

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
    var automaton = new Automaton();
    automaton.setInitialState(new DateAutomaton(pattern).after(new Step(0, Memory.NOTHING)));
    automaton.setDeterministic(false);
    return Dfa.of(automaton);
  }

  private State after(Step reached) {
    var step = reached.part() < dateEnds ? reached : new Step(reached.part(), Memory.NOTHING);
    var known = made.get(step.key());
    if (known == null) {
      known = step.part() == parts.size() ? end() : next(step);
      made.put(step.key(), known);
    }
    return known;
  }

  private static State end() {
    var end = new State();
    end.setAccept(true);
    return end;
  }

  private State next(Step step) {
    var part = parts.get(step.part());
    if (part.unit() == null) {
      return tree(List.of(new Reading(part.literal(), step.then(step.memory()))), 0);
    }
    if (part.unit() == Unit.FRACTION) {
      var state = after(step.then(step.memory()));
      for (int digit = 0; digit < part.letters(); digit++) {
        var before = new State();
        before.addTransition(new Transition('0', '9', state));
        state = before;
      }
      return state;
    }
    var readings = new ArrayList<Reading>();
    part.texts()
        .forEach(
            (value, text) -> {
              var next = step.memory().with(part.unit(), value, yearShows, monthShows);
              if (next != null) {
                readings.add(new Reading(text, step.then(next)));
              }
            });
    readings.sort(Comparator.comparing(Reading::text));
    return tree(readings, 0);
  }

  /** The state that reads what sorted texts, which begin alike, have after so many characters. */
  private State tree(List<Reading> sorted, int read) {
    if (sorted.size() == 1 && sorted.getFirst().text().length() == read) {
      return after(sorted.getFirst().next());
    }
    var state = new State();
    int next = 0;
    while (next < sorted.size() && sorted.get(next).text().length() == read) {
      var ended = after(sorted.get(next++).next());
      state.setAccept(state.isAccept() || ended.isAccept());
      state.getTransitions().addAll(ended.getTransitions());
    }
    while (next < sorted.size()) {
      char c = sorted.get(next).text().charAt(read);
      int end = next + 1;
      while (end < sorted.size() && sorted.get(end).text().charAt(read) == c) {
        end++;
      }
      state.addTransition(new Transition(c, tree(sorted.subList(next, end), read + 1)));
      next = end;
    }
    var same = (state.isAccept() ? ends : inner).putIfAbsent(state.getTransitions(), state);
    return same == null ? state : same;
  }
}
