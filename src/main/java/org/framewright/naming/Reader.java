package org.framewright.naming;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Reads names of one kind in time linear in their length. The chain is made deterministic as names
 * ask for it; each deterministic move remembers which chain state came from which, so that the way
 * back from the end finds every reading without trying any that fails.
 */
final class Reader {
  static final int MOST_READINGS = 100;

  /** Beyond this, what is remembered is dropped and made anew, so that memory stays bounded. */
  private static final int MOST_REMEMBERED = 500_000;

  /** A set of chain states that the same text reaches. */
  private static final class States {
    final int[] states;
    final Arrival[] moves;

    States(int[] states, int classes) {
      this.states = states;
      this.moves = new Arrival[classes];
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof States set && Arrays.equals(states, set.states);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(states);
    }
  }

  /** A move's target, or none; for each target state, the indexes of those it can come from. */
  private static final class Arrival {
    final States target;
    final int[][] from;

    Arrival(States target, int[][] from) {
      this.target = target;
      this.from = from;
    }
  }

  private static final Arrival NOWHERE = new Arrival(null, new int[0][]);

  private final Chain chain;
  private final char[] bounds;
  private final int[] lowClasses = new int[128];
  private final Map<States, States> known = new HashMap<>();
  private States start;

  /** How much the moves found so far take, in numbers. */
  private long remembered;

  Reader(Chain chain) {
    this.chain = chain;
    var cuts = new BitSet(Character.MAX_VALUE + 2);
    cuts.set(0);
    for (var leaf : chain.leaves()) {
      for (int s = 0; s < leaf.texts().size(); s++) {
        for (int e = 0; e < leaf.texts().from[s].length; e++) {
          cuts.set(leaf.texts().from[s][e]);
          cuts.set(leaf.texts().upTo[s][e] + 1);
        }
      }
    }
    cuts.clear(Character.MAX_VALUE + 1);
    bounds = new char[cuts.cardinality()];
    int i = 0;
    for (int cut = cuts.nextSetBit(0); cut >= 0; cut = cuts.nextSetBit(cut + 1)) {
      bounds[i++] = (char) cut;
    }
    for (char c = 0; c < lowClasses.length; c++) {
      lowClasses[c] = search(c);
    }
    forget();
  }

  private int search(char c) {
    int found = Arrays.binarySearch(bounds, c);
    return found >= 0 ? found : -found - 2;
  }

  private void forget() {
    known.clear();
    remembered = 0;
    start = states(new int[] {0});
  }

  private States states(int[] states) {
    var set = new States(states, bounds.length);
    var had = known.putIfAbsent(set, set);
    if (had != null) {
      return had;
    }
    remembered += states.length + bounds.length;
    return set;
  }

  private Arrival move(States here, int charClass) {
    var arrival = here.moves[charClass];
    if (arrival == null) {
      arrival = explore(here, bounds[charClass]);
      here.moves[charClass] = arrival;
    }
    return arrival;
  }

  private Arrival explore(States here, char c) {
    var sources = new TreeMap<Integer, List<Integer>>();
    var ended = new TreeMap<Integer, List<Integer>>();
    for (int i = 0; i < here.states.length; i++) {
      int state = here.states[i];
      var leaf = chain.leaf(state);
      if (leaf == null) {
        enter(chain.firsts(), c, List.of(i), sources);
        continue;
      }
      int inside = leaf.texts().step(chain.local(state), c);
      if (inside >= 0) {
        add(sources, leaf.base() + inside, List.of(i));
      }
      if (chain.endsPart(state)) {
        add(ended, leaf.index(), List.of(i));
      }
    }
    ended.forEach((leaf, from) -> enter(chain.leaves().get(leaf).next(), c, from, sources));
    if (sources.isEmpty()) {
      return NOWHERE;
    }
    var from =
        sources.values().stream()
            .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new);
    remembered += from.length + Arrays.stream(from).mapToInt(list -> list.length).sum();
    return new Arrival(
        states(sources.keySet().stream().mapToInt(Integer::intValue).toArray()), from);
  }

  /** Moves into the parts that may come next. */
  private void enter(
      List<Integer> leaves, char c, List<Integer> from, Map<Integer, List<Integer>> sources) {
    for (int index : leaves) {
      var leaf = chain.leaves().get(index);
      int first = leaf.texts().step(0, c);
      if (first >= 0) {
        add(sources, leaf.base() + first, from);
      }
    }
  }

  /** Each source makes one reading at least, so that more than are listed are of no use. */
  private static void add(Map<Integer, List<Integer>> sources, int target, List<Integer> from) {
    var list = sources.computeIfAbsent(target, t -> new ArrayList<>());
    list.addAll(from.subList(0, Math.min(from.size(), MOST_READINGS - list.size())));
  }

  /** What came of reading: the readings' values, or how far the text was legal. */
  static final class Result {
    private final List<SequencedMap<String, String>> readings;
    private final int reached;
    private final int[] states;

    Result(List<SequencedMap<String, String>> readings, int reached, int[] states) {
      this.readings = readings;
      this.reached = reached;
      this.states = states;
    }

    List<SequencedMap<String, String>> readings() {
      return readings;
    }

    /** The longest beginning of the text that a name can have, in UTF-16 units. */
    int reached() {
      return reached;
    }

    /** The chain's states after it. */
    IntStream states() {
      return Arrays.stream(states);
    }
  }

  synchronized Result read(String name) {
    if (remembered > MOST_REMEMBERED) {
      forget();
    }
    var way = new Arrival[name.length()];
    var here = start;
    for (int i = 0; i < name.length(); i++) {
      char c = name.charAt(i);
      var arrival = move(here, c < 128 ? lowClasses[c] : search(c));
      if (arrival.target == null) {
        return new Result(List.of(), i, here.states);
      }
      way[i] = arrival;
      here = arrival.target;
    }
    return new Result(readings(name, way, here), name.length(), here.states);
  }

  /** A way back that is still to be followed, from before {@code end}. */
  private static final class Branch {
    private final int end;
    private final int index;
    private final int[] path;

    Branch(int end, int index, int[] path) {
      this.end = end;
      this.index = index;
      this.path = path;
    }
  }

  private List<SequencedMap<String, String>> readings(String name, Arrival[] way, States end) {
    var readings = new ArrayList<SequencedMap<String, String>>();
    var open = new ArrayDeque<Branch>();
    for (int i = 0; i < end.states.length && open.size() < MOST_READINGS; i++) {
      if (chain.accepts(end.states[i])) {
        open.add(new Branch(name.length(), i, new int[name.length()]));
      }
    }
    while (!open.isEmpty() && readings.size() < MOST_READINGS) {
      var branch = open.pop();
      int index = branch.index;
      for (int i = branch.end - 1; i >= 0; i--) {
        branch.path[i] = way[i].target.states[index];
        var sources = way[i].from[index];
        int room = MOST_READINGS - readings.size() - open.size();
        for (int other = 1; other < Math.min(sources.length, room); other++) {
          open.push(new Branch(i, sources[other], branch.path.clone()));
        }
        index = sources[0];
      }
      readings.add(chain.values(name, branch.path));
    }
    return readings;
  }
}
