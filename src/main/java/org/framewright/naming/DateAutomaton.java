package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import dk.brics.automaton.Transition;
import java.time.Month;
import java.time.Year;
import java.util.LinkedHashMap;
import org.framewright.naming.DatePattern.Unit;

/**
 * The automaton of the dates that a pattern can show. Its states remember what of the parts read so
 * far decides which later ones are possible, so that 30 February is no text of it.
 */
final class DateAutomaton {
  private DateAutomaton() {}

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
    var states = new LinkedHashMap<Memory, State>();
    var start = new State();
    states.put(Memory.NOTHING, start);
    boolean yearShows = pattern.byUnit().containsKey(Unit.YEAR);
    boolean monthShows = pattern.byUnit().containsKey(Unit.MONTH);
    for (var part : pattern.parts()) {
      var after = new LinkedHashMap<Memory, State>();
      states.forEach(
          (memory, state) -> {
            if (part.unit() == null) {
              append(state, part.literal(), after.computeIfAbsent(memory, m -> new State()));
            } else if (part.unit() == Unit.FRACTION) {
              var end = after.computeIfAbsent(memory, m -> new State());
              var here = state;
              for (int i = 1; i < part.letters(); i++) {
                var next = new State();
                here.addTransition(new Transition('0', '9', next));
                here = next;
              }
              here.addTransition(new Transition('0', '9', end));
            } else {
              part.texts()
                  .forEach(
                      (value, text) -> {
                        var next = memory.with(part.unit(), value, yearShows, monthShows);
                        if (next != null) {
                          append(state, text, after.computeIfAbsent(next, m -> new State()));
                        }
                      });
            }
          });
      states = after;
    }
    states.values().forEach(state -> state.setAccept(true));
    var automaton = new Automaton();
    automaton.setInitialState(start);
    automaton.setDeterministic(false);
    return Dfa.of(automaton);
  }

  private static void append(State from, String text, State to) {
    var here = from;
    for (int i = 0; i < text.length() - 1; i++) {
      var next = new State();
      here.addTransition(new Transition(text.charAt(i), next));
      here = next;
    }
    here.addTransition(new Transition(text.charAt(text.length() - 1), to));
  }
}
