package org.framewright.naming;

import dk.brics.automaton.Automaton;
import dk.brics.automaton.State;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
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
    for (int n = 0; n < longest; n++) {
      dfa.accepts[n] = n >= shortest && n > 0;
      dfa.moves(n, low, high, n + 1);
      if (separator.isPresent() && n > 0 && n + 2 <= longest) {
        int after = longest + n;
        int last = low.size();
        dfa.from[n] = Arrays.copyOf(dfa.from[n], last + 1);
        dfa.upTo[n] = Arrays.copyOf(dfa.upTo[n], last + 1);
        dfa.target[n] = Arrays.copyOf(dfa.target[n], last + 1);
        dfa.from[n][last] = separator.get();
        dfa.upTo[n][last] = separator.get();
        dfa.target[n][last] = after;
        dfa.moves(after, low, high, n + 2);
      }
    }
    dfa.accepts[longest] = true;
    dfa.moves(longest, List.of(), List.of(), 0);
    return dfa;
  }

  private void moves(int state, List<Character> low, List<Character> high, int to) {
    from[state] = new char[low.size()];
    upTo[state] = new char[low.size()];
    target[state] = new int[low.size()];
    for (int e = 0; e < low.size(); e++) {
      from[state][e] = low.get(e);
      upTo[state][e] = high.get(e);
      target[state][e] = to;
    }
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

  /** The state after a character, or -1. */
  int step(int state, char c) {
    var lows = from[state];
    for (int e = 0; e < lows.length; e++) {
      if (c >= lows[e] && c <= upTo[state][e]) {
        return target[state][e];
      }
    }
    return -1;
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
    return longest(0, bytes, new String[size()]);
  }

  private String longest(int state, boolean bytes, String[] known) {
    if (known[state] == null) {
      // Every state leads to acceptance, so that a state without moves accepts.
      var best = "";
      for (int e = 0; e < target[state].length; e++) {
        var text = upTo[state][e] + longest(target[state][e], bytes, known);
        if (weight(text, bytes) > weight(best, bytes)) {
          best = text;
        }
      }
      known[state] = best;
    }
    return known[state];
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
