package org.framewright.day;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Looks for the order of things in which least is changed between neighbours. Things of one block
 * change places with each other only, and blocks stay where they are.
 *
 * <p>Things that are alike stand together in some best order: to take one out from between two
 * others never costs, since nothing is changed twice that was changed once, and to put it beside
 * its like costs nothing. So each lot of them is one thing. Blocks of up to {@link #MOST_EXACT}
 * lots are solved exactly, by dynamic programming over subsets (Held and Karp, A dynamic
 * programming approach to sequencing problems, 1962; from memory). Larger ones are built in three
 * ways, and each is improved by moving short runs and turning stretches round until neither helps,
 * or the work is enough.
 */
final class OrderSearch {
  /** So many different lots of a block are solved exactly. */
  static final int MOST_EXACT = 10;

  private static final int NONE = -1;
  private static final int LONGEST_RUN = 3;
  private static final long MOST_LOOKS = 6_000_000;
  private static final long MOST_LOOKS_OF_MANY = 500_000;
  private static final int MOST_IN_TABLE = 1_000;

  private final int[][] keys;
  private final long[] weights;
  private final int[] start;
  private final List<List<Integer>> lots = new ArrayList<>();

  /** For each block where its lots begin, and at last their number. */
  private final List<Integer> begins = new ArrayList<>();

  private final int[][] lotKeys;
  private final long[][] table;
  private long looks;

  /**
   * An order that was found.
   *
   * @param order things by their places in the given order
   * @param exact whether there is no better one
   */
  record Found(List<Integer> order, boolean exact) {}

  /**
   * @param keys for each thing in the given order, what it is of each kind
   * @param weights what a change of each kind costs, from 0 up
   * @param blocks the block of each thing, never less than that of the one before
   * @param start what is there before the first; empty where nothing is
   */
  private OrderSearch(int[][] keys, long[] weights, int[] blocks, int[] start) {
    this.keys = keys;
    this.weights = weights;
    this.start = start;
    Map<List<Integer>, List<Integer>> byKey = new HashMap<>();
    for (int i = 0; i < keys.length; i++) {
      if (i == 0 || blocks[i] != blocks[i - 1]) {
        begins.add(lots.size());
        byKey.clear();
      }
      byKey
          .computeIfAbsent(
              Arrays.stream(keys[i]).boxed().toList(),
              _ -> {
                lots.add(new ArrayList<>());
                return lots.getLast();
              })
          .add(i);
    }
    begins.add(lots.size());
    lotKeys = lots.stream().map(lot -> keys[lot.getFirst()]).toArray(int[][]::new);
    table = lots.size() <= MOST_IN_TABLE ? table() : new long[0][];
  }

  static Found find(int[][] keys, long[] weights, int[] blocks, int[] start) {
    var search = new OrderSearch(keys, weights, blocks, start);
    var given = new ArrayList<Integer>();
    for (int i = 0; i < keys.length; i++) {
      given.add(i);
    }
    boolean exact = search.isSmall();
    var found = search.unfolded(exact ? search.exact() : search.improved());
    // What saves nothing is no reason to change anything.
    return new Found(
        cost(keys, weights, start, found) < cost(keys, weights, start, given) ? found : given,
        exact);
  }

  /** What all changes of an order cost. */
  static long cost(int[][] keys, long[] weights, int[] start, List<Integer> order) {
    long cost = 0;
    var before = start;
    for (int one : order) {
      cost += between(before, keys[one], weights);
      before = keys[one];
    }
    return cost;
  }

  private static long between(int[] one, int[] other, long[] weights) {
    long cost = 0;
    for (int kind = 0; kind < Math.min(one.length, other.length); kind++) {
      cost += one[kind] == other[kind] ? 0 : weights[kind];
    }
    return cost;
  }

  private long[][] table() {
    var costs = new long[lots.size()][lots.size()];
    for (int i = 0; i < costs.length; i++) {
      for (int j = 0; j < i; j++) {
        costs[i][j] = between(key(i), key(j), weights);
        costs[j][i] = costs[i][j];
      }
    }
    return costs;
  }

  private int[] key(int lot) {
    return lotKeys[lot];
  }

  /** From one lot to the next; before the first is {@link #NONE}, and so is behind the last. */
  private long step(int one, int next) {
    if (next == NONE) {
      return 0;
    }
    if (one == NONE) {
      return between(start, key(next), weights);
    }
    return table.length > 0 ? table[one][next] : between(key(one), key(next), weights);
  }

  private List<Integer> unfolded(int[] order) {
    var unfolded = new ArrayList<Integer>(keys.length);
    for (int lot : order) {
      unfolded.addAll(lots.get(lot));
    }
    return unfolded;
  }

  private int blocks() {
    return begins.size() - 1;
  }

  private int size(int block) {
    return begins.get(block + 1) - begins.get(block);
  }

  private boolean isSmall() {
    for (int block = 0; block < blocks(); block++) {
      if (size(block) > MOST_EXACT) {
        return false;
      }
    }
    return true;
  }

  // Exactly

  /** Of all best orders the one that keeps earlier things first. */
  private int[] exact() {
    // What all that comes behind a block costs, by the lot that the block ends with.
    var behind = new long[blocks()][];
    for (int block = blocks() - 1; block >= 0; block--) {
      behind[block] = new long[size(block)];
      if (block + 1 < blocks()) {
        var ahead = ahead(block + 1, behind[block + 1]);
        for (int last = 0; last < size(block); last++) {
          behind[block][last] = first(block + 1, begins.get(block) + last, ahead).cost();
        }
      }
    }
    var order = new int[lots.size()];
    int at = 0;
    int before = NONE;
    for (int block = 0; block < blocks(); block++) {
      var ahead = ahead(block, behind[block]);
      int begin = begins.get(block);
      int next = first(block, before, ahead).lot();
      int done = 0;
      while (next != NONE) {
        order[at++] = begin + next;
        before = begin + next;
        done |= 1 << next;
        next = next(block, ahead, done, next);
      }
    }
    return order;
  }

  /** For each set of lots of a block that are done, and the last of them: what the rest costs. */
  private long[][] ahead(int block, long[] behind) {
    int size = size(block);
    int begin = begins.get(block);
    var ahead = new long[1 << size][size];
    for (int done = (1 << size) - 1; done > 0; done--) {
      for (int last = 0; last < size; last++) {
        if ((done & 1 << last) == 0) {
          continue;
        }
        long least = done == (1 << size) - 1 ? behind[last] : Long.MAX_VALUE;
        for (int next = 0; next < size; next++) {
          if ((done & 1 << next) == 0) {
            least =
                Math.min(least, step(begin + last, begin + next) + ahead[done | 1 << next][next]);
          }
        }
        ahead[done][last] = least;
      }
    }
    return ahead;
  }

  private record First(int lot, long cost) {}

  private First first(int block, int before, long[][] ahead) {
    int begin = begins.get(block);
    var best = new First(NONE, Long.MAX_VALUE);
    for (int lot = 0; lot < size(block); lot++) {
      long cost = step(before, begin + lot) + ahead[1 << lot][lot];
      if (cost < best.cost()) {
        best = new First(lot, cost);
      }
    }
    return best;
  }

  private int next(int block, long[][] ahead, int done, int last) {
    int begin = begins.get(block);
    for (int next = 0; next < size(block); next++) {
      if ((done & 1 << next) == 0
          && step(begin + last, begin + next) + ahead[done | 1 << next][next]
              == ahead[done][last]) {
        return next;
      }
    }
    return NONE;
  }

  // By building and improving

  private int[] improved() {
    var best = new int[0];
    long least = Long.MAX_VALUE;
    for (var order : List.of(asGiven(), sorted(), nearest())) {
      looks = table.length > 0 ? MOST_LOOKS : MOST_LOOKS_OF_MANY;
      improve(order);
      long cost = cost(order);
      if (cost < least) {
        least = cost;
        best = order;
      }
    }
    return best;
  }

  private long cost(int[] order) {
    long cost = 0;
    for (int i = 0; i < order.length; i++) {
      cost += step(at(order, i - 1), order[i]);
    }
    return cost;
  }

  private static int at(int[] order, int place) {
    return place < 0 || place >= order.length ? NONE : order[place];
  }

  private int[] asGiven() {
    var order = new int[lots.size()];
    Arrays.setAll(order, i -> i);
    return order;
  }

  /** What costs most to change is changed least: by it first, by what costs less within it. */
  private int[] sorted() {
    var kinds = new ArrayList<Integer>();
    for (int kind = 0; kind < weights.length; kind++) {
      kinds.add(kind);
    }
    kinds.sort(Comparator.comparingLong(kind -> -weights[kind]));
    Comparator<Integer> order = (_, _) -> 0;
    for (int kind : kinds) {
      order = order.thenComparingInt(lot -> key(lot)[kind]);
    }
    var sorted = new ArrayList<Integer>();
    for (int block = 0; block < blocks(); block++) {
      var its = new ArrayList<Integer>();
      for (int lot = begins.get(block); lot < begins.get(block + 1); lot++) {
        its.add(lot);
      }
      its.sort(order);
      sorted.addAll(its);
    }
    return sorted.stream().mapToInt(lot -> lot).toArray();
  }

  /** Always the next one to which least is changed. */
  private int[] nearest() {
    var order = asGiven();
    for (int block = 0; block < blocks(); block++) {
      for (int at = begins.get(block); at < begins.get(block + 1); at++) {
        int nearest = at;
        for (int other = at + 1; other < begins.get(block + 1); other++) {
          if (step(at(order, at - 1), order[other]) < step(at(order, at - 1), order[nearest])) {
            nearest = other;
          }
        }
        int lot = order[nearest];
        System.arraycopy(order, at, order, at + 1, nearest - at);
        order[at] = lot;
      }
    }
    return order;
  }

  private void improve(int[] order) {
    boolean better = true;
    while (better && looks > 0) {
      better = false;
      for (int block = 0; block < blocks() && looks > 0; block++) {
        int from = begins.get(block);
        int until = begins.get(block + 1);
        better |= moveRuns(order, from, until);
        better |= turn(order, from, until);
      }
    }
  }

  /** Puts runs of a few where they cost less. */
  private boolean moveRuns(int[] order, int from, int until) {
    boolean moved = false;
    for (int begin = from; begin < until; begin++) {
      for (int length = 1; length <= LONGEST_RUN && begin + length <= until; length++) {
        int to = betterPlace(order, from, until, begin, begin + length);
        if (to != NONE) {
          move(order, begin, begin + length, to);
          moved = true;
        }
      }
    }
    return moved;
  }

  /** The place before which a run costs less than where it is. */
  private int betterPlace(int[] order, int from, int until, int begin, int end) {
    int first = order[begin];
    int last = order[end - 1];
    long saved =
        step(at(order, begin - 1), first)
            + step(last, at(order, end))
            - step(at(order, begin - 1), at(order, end));
    if (saved <= 0) {
      return NONE;
    }
    for (int to = from; to <= until && looks > 0; to++) {
      looks--;
      if (to >= begin && to <= end) {
        continue;
      }
      int before = at(order, to - 1);
      int behind = at(order, to);
      if (step(before, first) + step(last, behind) - step(before, behind) < saved) {
        return to;
      }
    }
    return NONE;
  }

  private static void move(int[] order, int begin, int end, int to) {
    var run = Arrays.copyOfRange(order, begin, end);
    if (to < begin) {
      System.arraycopy(order, to, order, to + run.length, begin - to);
      System.arraycopy(run, 0, order, to, run.length);
    } else {
      System.arraycopy(order, end, order, begin, to - end);
      System.arraycopy(run, 0, order, to - run.length, run.length);
    }
  }

  /** Turns stretches round where that costs less. */
  private boolean turn(int[] order, int from, int until) {
    boolean turned = false;
    for (int begin = from; begin < until; begin++) {
      for (int end = begin + 1; end < until && looks > 0; end++) {
        looks--;
        int before = at(order, begin - 1);
        int behind = at(order, end + 1);
        if (step(before, order[end]) + step(order[begin], behind)
            < step(before, order[begin]) + step(order[end], behind)) {
          for (int i = begin, j = end; i < j; i++, j--) {
            int one = order[i];
            order[i] = order[j];
            order[j] = one;
          }
          turned = true;
        }
      }
    }
    return turned;
  }
}
