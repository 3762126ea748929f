package org.framewright.naming;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.SequencedMap;
import java.util.stream.Collectors;

/**
 * A kind's names as one automaton without empty moves (Glushkov's construction, with whole parts in
 * the place of single characters). State 0 is the start. Every other state is a state of one part,
 * and the parts are deterministic, so a path through the chain says which part each character
 * belongs to: two paths for one text are two readings, and the other way round. Every part is
 * finite and not empty, so the chain has no cycle.
 */
final class Chain {
  /** One part that shows text, and which parts may come next. */
  record Leaf(int index, Part part, Dfa texts, int base, List<Integer> next, boolean last) {}

  private final List<Leaf> leaves = new ArrayList<>();
  private final List<Integer> first;
  private final int[] leafOf;
  private final int[] localOf;

  /** What a sequence of parts begins with, may end with, and whether it may be empty. */
  private record Ends(LinkedHashSet<Integer> firsts, LinkedHashSet<Integer> lasts, boolean empty) {}

  private record Bare(Part part, Dfa texts, LinkedHashSet<Integer> next) {}

  Chain(List<Part> parts) {
    var bare = new ArrayList<Bare>();
    var ends = sequence(parts, bare);
    int base = 1;
    for (int i = 0; i < bare.size(); i++) {
      var b = bare.get(i);
      leaves.add(new Leaf(i, b.part, b.texts, base, List.copyOf(b.next), ends.lasts.contains(i)));
      base += b.texts.size();
    }
    first = List.copyOf(ends.firsts);
    leafOf = new int[base];
    localOf = new int[base];
    leafOf[0] = -1;
    for (var leaf : leaves) {
      for (int local = 0; local < leaf.texts.size(); local++) {
        leafOf[leaf.base + local] = leaf.index;
        localOf[leaf.base + local] = local;
      }
    }
  }

  /** How many states the chain of these parts would have, besides its start. */
  static int states(List<Part> parts) {
    int states = 0;
    for (var part : parts) {
      states +=
          switch (part) {
            case Part.Text(String text) -> text.length() + 1;
            case Part.Show(Declared field, Shape shape) -> shape.texts().size();
            case Part.Run(List<Part> inner) -> states(inner);
          };
    }
    return states;
  }

  private static Ends sequence(List<Part> parts, List<Bare> bare) {
    var firsts = new LinkedHashSet<Integer>();
    var lasts = new LinkedHashSet<Integer>();
    boolean empty = true;
    for (var part : parts) {
      var ends =
          switch (part) {
            case Part.Text text -> leaf(part, Dfa.of(text.text()), bare);
            case Part.Show show -> leaf(part, show.shape().texts(), bare);
            case Part.Run run -> {
              var inner = sequence(run.parts(), bare);
              yield new Ends(inner.firsts, inner.lasts, true);
            }
          };
      for (int last : lasts) {
        bare.get(last).next.addAll(ends.firsts);
      }
      if (empty) {
        firsts.addAll(ends.firsts);
      }
      if (!ends.empty) {
        lasts.clear();
      }
      lasts.addAll(ends.lasts);
      empty &= ends.empty;
    }
    return new Ends(firsts, lasts, empty);
  }

  private static Ends leaf(Part part, Dfa texts, List<Bare> bare) {
    var index = new LinkedHashSet<Integer>();
    index.add(bare.size());
    bare.add(new Bare(part, texts, new LinkedHashSet<>()));
    return new Ends(index, new LinkedHashSet<>(index), false);
  }

  /** The moves out of a state: characters from {@code low} to {@code high} lead to a target. */
  static final class Moves {
    char[] low = new char[4];
    char[] high = new char[4];
    int[] target = new int[4];
    int size;

    private void add(char from, char upTo, int to) {
      if (size == target.length) {
        low = Arrays.copyOf(low, 2 * size);
        high = Arrays.copyOf(high, 2 * size);
        target = Arrays.copyOf(target, 2 * size);
      }
      low[size] = from;
      high[size] = upTo;
      target[size++] = to;
    }
  }

  /** The leaves with which a name may begin. */
  List<Integer> firsts() {
    return first;
  }

  /** Where in its part a state lies. */
  int local(int state) {
    return localOf[state];
  }

  int states() {
    return leafOf.length;
  }

  List<Leaf> leaves() {
    return leaves;
  }

  /** The leaf that a state lies in; null for the start. */
  Leaf leaf(int state) {
    return leafOf[state] < 0 ? null : leaves.get(leafOf[state]);
  }

  boolean accepts(int state) {
    return endsPart(state) && leaf(state).last;
  }

  /** Whether the part that a state lies in may end there. */
  boolean endsPart(int state) {
    var leaf = leaf(state);
    return leaf != null && leaf.texts.accepts[localOf[state]];
  }

  Moves moves(int state) {
    var moves = new Moves();
    var leaf = leaf(state);
    if (leaf == null) {
      enter(first, moves);
      return moves;
    }
    inside(leaf, localOf[state], moves);
    if (endsPart(state)) {
      enter(leaf.next, moves);
    }
    return moves;
  }

  private void enter(List<Integer> indexes, Moves moves) {
    for (int index : indexes) {
      inside(leaves.get(index), 0, moves);
    }
  }

  private static void inside(Leaf leaf, int local, Moves moves) {
    var targets = leaf.texts.target[local];
    for (int e = 0; e < targets.length; e++) {
      moves.add(leaf.texts.from[local][e], leaf.texts.upTo[local][e], leaf.base + targets[e]);
    }
  }

  /** The parts that may come after a state's part, or first, if the part may end there. */
  List<Leaf> following(int state) {
    var leaf = leaf(state);
    if (leaf == null) {
      return first.stream().map(leaves::get).toList();
    }
    return endsPart(state) ? leaf.next.stream().map(leaves::get).toList() : List.of();
  }

  /** Whether the state's part can go on. */
  boolean goesOn(int state) {
    var leaf = leaf(state);
    return leaf != null && leaf.texts.target[localOf[state]].length > 0;
  }

  /** A longest name: every optional run shows, and every part is at its longest. */
  String longest(boolean bytes) {
    return leaves.stream().map(leaf -> leaf.texts.longest(bytes)).collect(Collectors.joining());
  }

  /** The values that a path of states, one a character, gives to a text. */
  SequencedMap<String, String> values(String text, int[] path) {
    var values = new LinkedHashMap<String, String>();
    int start = 0;
    for (int i = 1; i <= path.length; i++) {
      if (i == path.length || leafOf[path[i]] != leafOf[path[start]]) {
        if (leaf(path[start]).part instanceof Part.Show(Declared field, Shape shape)) {
          values.put(field.name(), shape.value(text.substring(start, i)));
        }
        start = i;
      }
    }
    return values;
  }
}
