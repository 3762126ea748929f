package org.framewright.naming;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;

/**
 * Searches of products of automata, breadth first, so that the first text found is a shortest one.
 */
final class Product {
  /** Two names, equal or not, with their values; for a search of one name, both are the same. */
  record Found(
      String first,
      SequencedMap<String, String> firstValues,
      String second,
      SequencedMap<String, String> secondValues) {}

  /** A pair of states, how it was reached, and whether the two ways there differ. */
  private record Pair(int p, int q, boolean differ, Ahead ahead, Pair before, char c, char d) {}

  /** What a pair is known by. */
  private record Key(int p, int q, boolean differ, Ahead ahead) {}

  /** The folded text by which one of the two names is ahead of the other. */
  private record Ahead(boolean first, String text) {
    static final Ahead NONE = new Ahead(true, "");
  }

  /** No character: this name did not move. */
  private static final char NONE = '\uFFFF';

  /** Pairs that one search may keep: some 60 MB. */
  private static final int MOST_PAIRS = 500_000;

  /** The pairs that a search has met, within its bounds. */
  private static final class Seen {
    private final HashSet<Key> keys = new HashSet<>();

    /** Whether a pair is met for the first time. */
    boolean add(Key key) throws Effort.TooLarge {
      if (!keys.add(key)) {
        return false;
      }
      if (keys.size() > MOST_PAIRS) {
        throw new Effort.TooLarge();
      }
      return true;
    }
  }

  private final Effort effort;

  Product(Effort effort) {
    this.effort = effort;
  }

  private static final class MoveCache {
    private final Chain chain;
    private final Map<Integer, Chain.Moves> known = new HashMap<>();

    MoveCache(Chain chain) {
      this.chain = chain;
    }

    Chain.Moves of(int state) {
      return known.computeIfAbsent(state, chain::moves);
    }
  }

  /** A shortest name with two readings: two paths for one text that part somewhere. */
  Optional<Found> ambiguity(Chain chain) throws Effort.TooLarge {
    return common(chain, chain, true);
  }

  /** A shortest name of both kinds. */
  Optional<Found> intersection(Chain one, Chain other) throws Effort.TooLarge {
    return common(one, other, false);
  }

  private Optional<Found> common(Chain one, Chain other, boolean mustDiffer)
      throws Effort.TooLarge {
    var firstMoves = new MoveCache(one);
    var secondMoves = mustDiffer ? firstMoves : new MoveCache(other);
    var seen = new Seen();
    var queue = new ArrayDeque<Pair>();
    queue.add(new Pair(0, 0, !mustDiffer, Ahead.NONE, null, NONE, NONE));
    while (!queue.isEmpty()) {
      var pair = queue.poll();
      var p = firstMoves.of(pair.p);
      var q = secondMoves.of(pair.q);
      effort.spend((long) p.size * q.size + 1);
      for (int i = 0; i < p.size; i++) {
        for (int j = 0; j < q.size; j++) {
          char low = (char) Math.max(p.low[i], q.low[j]);
          if (low > Math.min(p.high[i], q.high[j])) {
            continue;
          }
          int a = p.target[i];
          int b = q.target[j];
          // Before the ways part, both orders of the same pair are one case.
          if (mustDiffer && !pair.differ && a > b) {
            continue;
          }
          boolean differ = pair.differ || a != b;
          if (seen.add(new Key(a, b, differ, Ahead.NONE))) {
            var next = new Pair(a, b, differ, Ahead.NONE, pair, low, low);
            if (differ && one.accepts(a) && other.accepts(b)) {
              return Optional.of(found(one, other, next));
            }
            queue.add(next);
          }
        }
      }
    }
    return Optional.empty();
  }

  /** A shortest name that an automaton of unwanted texts takes. */
  Optional<Found> unwanted(Chain chain, Dfa unwanted) throws Effort.TooLarge {
    var seen = new Seen();
    var queue = new ArrayDeque<Pair>();
    queue.add(new Pair(0, 0, false, Ahead.NONE, null, NONE, NONE));
    while (!queue.isEmpty()) {
      var pair = queue.poll();
      var p = chain.moves(pair.p);
      effort.spend(p.size + 1L);
      for (int i = 0; i < p.size; i++) {
        for (int e = 0; e < unwanted.target[pair.q].length; e++) {
          char low = (char) Math.max(p.low[i], unwanted.from[pair.q][e]);
          if (low > Math.min(p.high[i], unwanted.upTo[pair.q][e])) {
            continue;
          }
          int a = p.target[i];
          int b = unwanted.target[pair.q][e];
          if (seen.add(new Key(a, b, false, Ahead.NONE))) {
            var next = new Pair(a, b, false, Ahead.NONE, pair, low, low);
            if (chain.accepts(a) && unwanted.accepts[b]) {
              return Optional.of(found(chain, next));
            }
            queue.add(next);
          }
        }
      }
    }
    return Optional.empty();
  }

  /** The one name of a search in which the other automaton is none of a kind's. */
  private static Found found(Chain chain, Pair end) {
    var text = new StringBuilder();
    var path = new ArrayDeque<Integer>();
    for (var pair = end; pair.before != null; pair = pair.before) {
      text.append(pair.c);
      path.addFirst(pair.p);
    }
    var name = text.reverse().toString();
    var values = chain.values(name, path(path));
    return new Found(name, values, name, values);
  }

  /**
   * Two shortest names of a kind that differ, yet are one under the collision key of common file
   * systems, NFC(lower(upper(NFD(name)))). No text of a convention has a mark that could compose
   * over a boundary, so the key of a name is its characters' keys in a row.
   */
  Optional<Found> caseClash(Chain chain) throws Effort.TooLarge {
    var moves = new MoveCache(chain);
    var seen = new Seen();
    var queue = new ArrayDeque<Pair>();
    var keys = new CharacterClashes(effort);
    queue.add(new Pair(0, 0, false, Ahead.NONE, null, NONE, NONE));
    while (!queue.isEmpty()) {
      var pair = queue.poll();
      if (pair.differ
          && pair.ahead.text.isEmpty()
          && chain.accepts(pair.p)
          && chain.accepts(pair.q)) {
        return Optional.of(found(chain, chain, pair));
      }
      var p = moves.of(pair.p);
      var q = moves.of(pair.q);
      if (pair.ahead.text.isEmpty()) {
        effort.spend((long) p.size * q.size + 1);
        for (int i = 0; i < p.size; i++) {
          for (int j = 0; j < q.size; j++) {
            for (var clash : keys.of(p.low[i], p.high[i], q.low[j], q.high[j])) {
              boolean differ = pair.differ || clash.first() != clash.second();
              add(
                  new Pair(
                      p.target[i],
                      q.target[j],
                      differ,
                      ahead(clash.firstKey(), clash.secondKey()),
                      pair,
                      clash.first(),
                      clash.second()),
                  seen,
                  queue);
            }
          }
        }
      } else {
        catchUp(pair, pair.ahead.first ? q : p, keys, seen, queue);
      }
    }
    return Optional.empty();
  }

  /** Moves only the name that is behind. */
  private void catchUp(
      Pair pair, Chain.Moves moves, CharacterClashes keys, Seen seen, ArrayDeque<Pair> queue)
      throws Effort.TooLarge {
    for (int i = 0; i < moves.size; i++) {
      effort.spend(moves.high[i] - moves.low[i] + 1L);
      for (int c = moves.low[i]; c <= moves.high[i]; c++) {
        var key = keys.keyOf((char) c);
        var text = pair.ahead.text;
        if (text.startsWith(key) || key.startsWith(text)) {
          var ahead = pair.ahead.first ? ahead(text, key) : ahead(key, text);
          add(
              pair.ahead.first
                  ? new Pair(pair.p, moves.target[i], true, ahead, pair, NONE, (char) c)
                  : new Pair(moves.target[i], pair.q, true, ahead, pair, (char) c, NONE),
              seen,
              queue);
        }
      }
    }
  }

  private static Ahead ahead(String first, String second) {
    return first.length() == second.length()
        ? Ahead.NONE
        : first.length() > second.length()
            ? new Ahead(true, first.substring(second.length()))
            : new Ahead(false, second.substring(first.length()));
  }

  private static void add(Pair pair, Seen seen, ArrayDeque<Pair> queue) throws Effort.TooLarge {
    if (seen.add(new Key(pair.p, pair.q, pair.differ, pair.ahead))) {
      queue.add(pair);
    }
  }

  private static Found found(Chain one, Chain other, Pair end) {
    var first = new StringBuilder();
    var second = new StringBuilder();
    var firstPath = new ArrayDeque<Integer>();
    var secondPath = new ArrayDeque<Integer>();
    for (var pair = end; pair.before != null; pair = pair.before) {
      if (pair.c != NONE) {
        first.append(pair.c);
        firstPath.addFirst(pair.p);
      }
      if (pair.d != NONE) {
        second.append(pair.d);
        secondPath.addFirst(pair.q);
      }
    }
    var a = first.reverse().toString();
    var b = second.reverse().toString();
    return new Found(a, one.values(a, path(firstPath)), b, other.values(b, path(secondPath)));
  }

  private static int[] path(ArrayDeque<Integer> states) {
    return Arrays.stream(states.toArray(Integer[]::new)).mapToInt(Integer::intValue).toArray();
  }
}
