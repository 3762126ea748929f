package org.framewright.naming;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Reads names of one kind in time linear in their length. The chain is made deterministic as names
 * ask for it; each deterministic move remembers which chain state came from which, so that the way
 * back from the end finds every reading without trying any that fails.
 */
final class Reader {
  static final int MOST_READINGS = 100;

  /** Beyond this, what is remembered is dropped and made anew, so that memory stays bounded. */
  private static final int MOST_SETS = 4_000;

  /** A set of chain states that the same text reaches. */
  private static final class States {
    final int[] states;
    final Arrival[] moves;

    States(int[] states, int classes) {
      this.states = states;
      this.moves = new Arrival[classes];
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
  private final Map<List<Integer>, States> known = new HashMap<>();
  private States start;

  Reader(Chain chain) {
    this.chain = chain;
    var cuts = new TreeSet<Character>();
    cuts.add(Character.MIN_VALUE);
    for (var leaf : chain.leaves()) {
      for (int s = 0; s < leaf.texts().size(); s++) {
        for (int e = 0; e < leaf.texts().from[s].length; e++) {
          cuts.add(leaf.texts().from[s][e]);
          if (leaf.texts().upTo[s][e] < Character.MAX_VALUE) {
            cuts.add((char) (leaf.texts().upTo[s][e] + 1));
          }
        }
      }
    }
    bounds = new char[cuts.size()];
    int i = 0;
    for (char cut : cuts) {
      bounds[i++] = cut;
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
    start = states(new int[] {0});
  }

  private States states(int[] states) {
    return known.computeIfAbsent(
        Arrays.stream(states).boxed().toList(), k -> new States(states, bounds.length));
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
    var targets = new TreeSet<Integer>();
    for (int state : here.states) {
      var moves = chain.moves(state);
      for (int m = 0; m < moves.size; m++) {
        if (c >= moves.low[m] && c <= moves.high[m]) {
          targets.add(moves.target[m]);
        }
      }
    }
    if (targets.isEmpty()) {
      return NOWHERE;
    }
    var sorted = targets.stream().mapToInt(Integer::intValue).toArray();
    List<List<Integer>> from = new ArrayList<>();
    for (int i = 0; i < sorted.length; i++) {
      from.add(new ArrayList<>());
    }
    for (int i = 0; i < here.states.length; i++) {
      var moves = chain.moves(here.states[i]);
      for (int m = 0; m < moves.size; m++) {
        if (c >= moves.low[m] && c <= moves.high[m]) {
          var sources = from.get(Arrays.binarySearch(sorted, moves.target[m]));
          if (sources.isEmpty() || sources.getLast() != i) {
            sources.add(i);
          }
        }
      }
    }
    return new Arrival(
        states(sorted),
        from.stream()
            .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
            .toArray(int[][]::new));
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
    if (known.size() > MOST_SETS) {
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
    List<SequencedMap<String, String>> readings = new ArrayList<>();
    for (int index = 0; index < here.states.length; index++) {
      if (chain.accepts(here.states[index])) {
        back(name, way, name.length() - 1, index, new int[name.length()], readings);
      }
    }
    return new Result(readings, name.length(), here.states);
  }

  private void back(
      String name,
      Arrival[] way,
      int end,
      int endIndex,
      int[] path,
      List<SequencedMap<String, String>> readings) {
    int index = endIndex;
    for (int i = end; i >= 0; i--) {
      path[i] = way[i].target.states[index];
      var sources = way[i].from[index];
      for (int other = 1; other < sources.length && readings.size() < MOST_READINGS; other++) {
        back(name, way, i - 1, sources[other], path.clone(), readings);
      }
      index = sources[0];
    }
    if (readings.size() < MOST_READINGS) {
      readings.add(chain.values(name, path));
    }
  }
}
