package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.BasicAutomata;
import dk.brics.automaton.State;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Collection;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;

/**
 * A deterministic automaton over UTF-16 units for a finite, non-empty set of non-empty texts.
 * States are numbered from 0, the start, in breadth-first order, so that equal sets give equal
 * numbers.
 */
final class Dfa {
  final boolean[] accepts;
  final char[][] from;
  final char[][] upTo;
  final int[][] target;

  private Dfa(int states) {
    accepts = new boolean[states];
    from = new char[states][];
    upTo = new char[states][];
    target = new int[states][];
  }

  static Dfa of(Automaton automaton) {
    automaton.determinize();
    automaton.minimize();
    return numbered(automaton);
  }

  /** Some texts. Their automaton is built minimal; minimising it again takes far more memory. */
  static Dfa of(Collection<String> texts) {
    return numbered(BasicAutomata.makeStringUnion(texts.toArray(CharSequence[]::new)));
  }

  private static Dfa numbered(Automaton automaton) {
    var numbers = new IdentityHashMap<State, Integer>();
    List<State> order = new ArrayList<>();
    number(automaton.getInitialState(), numbers, order);
    for (int i = 0; i < order.size(); i++) {
      for (var t : order.get(i).getSortedTransitions(false)) {
        number(t.getDest(), numbers, order);
      }
    }
    var dfa = new Dfa(order.size());
    for (int s = 0; s < order.size(); s++) {
      var transitions = order.get(s).getSortedTransitions(false);
      dfa.accepts[s] = order.get(s).isAccept();
      dfa.from[s] = new char[transitions.size()];
      dfa.upTo[s] = new char[transitions.size()];
      dfa.target[s] = new int[transitions.size()];
      for (int e = 0; e < transitions.size(); e++) {
        dfa.from[s][e] = transitions.get(e).getMin();
        dfa.upTo[s][e] = transitions.get(e).getMax();
        dfa.target[s][e] = numbers.get(transitions.get(e).getDest());
      }
    }
    return dfa;
  }

  private static void number(
      State state, IdentityHashMap<State, Integer> numbers, List<State> order) {
    if (numbers.putIfAbsent(state, order.size()) == null) {
      order.add(state);
    }
  }

  /**
   * Words of some characters with single separators between them, from {@code shortest} to {@code
   * longest} characters in all; one word where there is no separator. State n has read n characters
   * and ends within a word; state longest + n has read n characters and a separator.
   */
  static Dfa words(BitSet characters, Optional<Character> separator, int shortest, int longest) {
    var dfa = new Dfa(longest + 1 + (separator.isPresent() ? Math.max(0, longest - 2) : 0));
    var low = new ArrayList<Character>();
    var high = new ArrayList<Character>();
    for (int c = characters.nextSetBit(0); c >= 0; ) {
      int end = characters.nextClearBit(c);
      low.add((char) c);
      high.add((char) (end - 1));
      c = characters.nextSetBit(end);
    }
    // All states share the characters of their moves; only where the moves lead differs.
    var inWord = new Ranges(low, high);
    var atEnd = separator.map(inWord::with).orElse(inWord);
    for (int n = 0; n < longest; n++) {
      dfa.accepts[n] = n >= shortest && n > 0;
      if (separator.isPresent() && n > 0 && n + 2 <= longest) {
        int after = longest + n;
        dfa.moves(n, atEnd, n + 1);
        dfa.target[n][atEnd.of(separator.get())] = after;
        dfa.moves(after, inWord, n + 2);
      } else {
        dfa.moves(n, inWord, n + 1);
      }
    }
    dfa.accepts[longest] = true;
    dfa.moves(longest, new Ranges(List.of(), List.of()), 0);
    return dfa;
  }

  /** Ranges of characters in ascending order. */
  private static final class Ranges {
    private final char[] low;
    private final char[] high;

    private Ranges(char[] low, char[] high) {
      this.low = low;
      this.high = high;
    }

    Ranges(List<Character> low, List<Character> high) {
      this(characters(low), characters(high));
    }

    private static char[] characters(List<Character> list) {
      var characters = new char[list.size()];
      for (int i = 0; i < characters.length; i++) {
        characters[i] = list.get(i);
      }
      return characters;
    }

    /** These and one more character, which is in none of them. */
    Ranges with(char c) {
      int at = -Arrays.binarySearch(low, c) - 1;
      return new Ranges(inserted(low, at, c), inserted(high, at, c));
    }

    int of(char c) {
      return Arrays.binarySearch(low, c);
    }

    private static char[] inserted(char[] all, int at, char c) {
      var more = Arrays.copyOf(all, all.length + 1);
      System.arraycopy(all, at, more, at + 1, all.length - at);
      more[at] = c;
      return more;
    }
  }

  private void moves(int state, Ranges ranges, int to) {
    from[state] = ranges.low;
    upTo[state] = ranges.high;
    target[state] = new int[ranges.low.length];
    Arrays.fill(target[state], to);
  }

  /** The texts of one literal. */
  static Dfa of(String text) {
    var dfa = new Dfa(text.length() + 1);
    for (int i = 0; i < text.length(); i++) {
      dfa.from[i] = new char[] {text.charAt(i)};
      dfa.upTo[i] = new char[] {text.charAt(i)};
      dfa.target[i] = new int[] {i + 1};
    }
    dfa.accepts[text.length()] = true;
    dfa.from[text.length()] = new char[0];
    dfa.upTo[text.length()] = new char[0];
    dfa.target[text.length()] = new int[0];
    return dfa;
  }

  int size() {
    return accepts.length;
  }

  /** How many moves all states have. */
  long moves() {
    return Arrays.stream(target).mapToLong(targets -> targets.length).sum();
  }

  /** The state after a character, or -1. A state's moves are in the order of their characters. */
  int step(int state, char c) {
    int found = Arrays.binarySearch(from[state], c);
    int e = found >= 0 ? found : -found - 2;
    return e >= 0 && c <= upTo[state][e] ? target[state][e] : -1;
  }

  /** Two texts, the first a shortest; the second is another one, or null where there is none. */
  String[] two() {
    var first = shortest();
    for (int cut = first.length(); cut >= 0; cut--) {
      int state = 0;
      for (int i = 0; i < cut; i++) {
        state = step(state, first.charAt(i));
      }
      for (int e = 0; e < target[state].length; e++) {
        char c = upTo[state][e];
        if (cut == first.length() || c != first.charAt(cut)) {
          var other = first.substring(0, cut) + c + shortestFrom(target[state][e]);
          return new String[] {first, other};
        }
      }
    }
    return new String[] {first, null};
  }

  /** A longest text, by bytes of UTF-8 or by UTF-16 units. */
  String longest(boolean bytes) {
    // Every state leads to acceptance, so that the last state of a longest way accepts.
    var order = targetsFirst();
    var weights = new int[size()];
    var best = new int[size()];
    Arrays.fill(best, -1);
    for (int state : order) {
      for (int e = 0; e < target[state].length; e++) {
        int weight = weight(upTo[state][e], bytes) + weights[target[state][e]];
        if (weight > weights[state]) {
          weights[state] = weight;
          best[state] = e;
        }
      }
    }
    var text = new StringBuilder();
    for (int state = 0; best[state] >= 0; state = target[state][best[state]]) {
      text.append(upTo[state][best[state]]);
    }
    return text.toString();
  }

  /** The states, each after all that it leads to; there are no cycles. */
  private int[] targetsFirst() {
    var order = new int[size()];
    int placed = 0;
    var nextMove = new int[size()];
    var seen = new BitSet(size());
    var way = new int[size()];
    int depth = 1;
    seen.set(0);
    while (depth > 0) {
      int state = way[depth - 1];
      if (nextMove[state] == target[state].length) {
        order[placed++] = state;
        depth--;
      } else {
        int next = target[state][nextMove[state]++];
        if (!seen.get(next)) {
          seen.set(next);
          way[depth++] = next;
        }
      }
    }
    return Arrays.copyOf(order, placed);
  }

  /** The weight of a UTF-16 unit; each half of a pair is half of its four bytes. */
  private static int weight(char c, boolean bytes) {
    if (!bytes || c < 0x80) {
      return 1;
    }
    return c < 0x800 || Character.isSurrogate(c) ? 2 : 3;
  }

  static int weight(String text, boolean bytes) {
    return bytes ? text.getBytes(StandardCharsets.UTF_8).length : text.length();
  }

  boolean contains(String text) {
    int state = 0;
    for (int i = 0; i < text.length() && state >= 0; i++) {
      state = step(state, text.charAt(i));
    }
    return state >= 0 && accepts[state];
  }

  /** A shortest text. */
  String shortest() {
    return shortestFrom(0);
  }

  /** A shortest text that leads from a state to acceptance. */
  String shortestFrom(int start) {
    record Step(int state, Step before, char c) {}
    var seen = new boolean[size()];
    var queue = new ArrayList<Step>();
    queue.add(new Step(start, null, ' '));
    seen[start] = true;
    for (int i = 0; i < queue.size(); i++) {
      var step = queue.get(i);
      if (accepts[step.state]) {
        var text = new StringBuilder();
        for (var s = step; s.before != null; s = s.before) {
          text.append(s.c);
        }
        return text.reverse().toString();
      }
      for (int e = 0; e < target[step.state].length; e++) {
        int next = target[step.state][e];
        if (!seen[next]) {
          seen[next] = true;
          queue.add(new Step(next, step, from[step.state][e]));
        }
      }
    }
    throw new IllegalStateException("no text");
  }
}
