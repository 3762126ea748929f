package org.framewright.handoff.names;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;

/**
 * Finds the names in which some tokens stand in one run. All ends of all names lie in one order, so
 * that the names with a run are found by halving, however many there are.
 */
final class NameIndex {
  /** No name has more tokens than this, and no longer run is looked for. */
  static final int LONGEST = 48;

  private static final int END = 0;

  /** How many frames are named where several fit. */
  private static final int MOST_NAMED = 6;

  private final List<KnownName> names;
  private final List<List<Token>> tokens = new ArrayList<>();
  private final Map<String, Integer> words = new HashMap<>();

  /** The tokens of all names, each followed by {@link #END}; and by place, whose they are. */
  private final int[] ids;

  private final int[] owner;
  private final int[] start;
  private final int[] stem;

  /** All places in the order of what follows there. */
  private final int[] order;

  private final Map<Integer, KnownName> now = new HashMap<>();
  private final Map<String, Hits> found = new HashMap<>();

  NameIndex(List<KnownName> names) {
    this.names = List.copyOf(names);
    int size = 0;
    for (var name : names) {
      if (name.kind() == KnownName.Kind.NOW) {
        now.putIfAbsent(name.frame(), name);
      }
      var of = Token.of(Token.plain(name.text()));
      tokens.add(of.size() > LONGEST ? of.subList(0, LONGEST) : of);
      size += tokens.getLast().size() + 1;
    }
    ids = new int[size];
    owner = new int[size];
    start = new int[names.size()];
    stem = new int[names.size()];
    int at = 0;
    for (int name = 0; name < names.size(); name++) {
      start[name] = at;
      int slash = Token.plain(names.get(name).text()).lastIndexOf('/');
      stem[name] = at;
      for (var token : tokens.get(name)) {
        if (token.to() <= slash) {
          stem[name] = at + 1;
        }
        ids[at] = words.computeIfAbsent(token.folded(), _ -> words.size() + 1);
        owner[at++] = name;
      }
      owner[at] = name;
      ids[at++] = END;
    }
    order = sorted();
  }

  private int[] sorted() {
    var places = new Integer[ids.length - names.size()];
    int count = 0;
    for (int i = 0; i < ids.length; i++) {
      if (ids[i] != END) {
        places[count++] = i;
      }
    }
    Arrays.sort(places, this::compare);
    return Arrays.stream(places).mapToInt(Integer::intValue).toArray();
  }

  private int compare(int a, int b) {
    while (ids[a] == ids[b] && ids[a] != END) {
      a++;
      b++;
    }
    return Integer.compare(ids[a], ids[b]);
  }

  List<KnownName> names() {
    return names;
  }

  /** The names that frames have; of many the first. */
  List<KnownName> now(List<Integer> frames) {
    return frames.stream()
        .limit(MOST_NAMED)
        .flatMap(frame -> Optional.ofNullable(now.get(frame)).stream())
        .toList();
  }

  List<Token> tokens(int name) {
    return tokens.get(name);
  }

  /** Whether a word stands in any name. */
  boolean knows(Token token) {
    return words.containsKey(token.folded());
  }

  /** How well names fit, the best first. */
  enum Grade {
    /** It is the whole name. */
    WHOLE,
    /** It is the whole name but for zeros before numbers. */
    WHOLE_BUT_ZEROS,
    /** It is a part of the name. */
    PART,
    /** It is a part of the name but for zeros before numbers. */
    PART_BUT_ZEROS;

    boolean whole() {
      return this == WHOLE || this == WHOLE_BUT_ZEROS;
    }
  }

  /**
   * The frames that fit best.
   *
   * @param names for each of the first frames, the name that fits
   * @param count how many frames
   */
  record Hits(Grade grade, SequencedMap<Integer, KnownName> names, int count) {
    static final Hits NONE = new Hits(Grade.PART_BUT_ZEROS, new LinkedHashMap<>(), 0);

    List<Integer> frames() {
      return List.copyOf(names.keySet());
    }

    /** The names that fit, one of a frame. */
    List<KnownName> fitting() {
      return List.copyOf(names.values());
    }
  }

  /** Gathers the frames that fit, by how well they do. */
  private static final class Gathering {
    private final Map<Grade, SequencedMap<Integer, KnownName>> named = new EnumMap<>(Grade.class);
    private final Map<Grade, Set<Integer>> frames = new EnumMap<>(Grade.class);

    void add(Grade grade, KnownName name) {
      var seen = named.computeIfAbsent(grade, _ -> new LinkedHashMap<>());
      frames.computeIfAbsent(grade, _ -> new HashSet<>()).add(name.frame());
      var before = seen.get(name.frame());
      boolean better = before != null && before.kind().compareTo(name.kind()) > 0;
      if (before == null ? seen.size() < MOST_NAMED : better) {
        seen.put(name.frame(), name);
      }
    }

    Hits best() {
      for (var grade : Grade.values()) {
        if (frames.containsKey(grade)) {
          return new Hits(grade, named.get(grade), frames.get(grade).size());
        }
      }
      return Hits.NONE;
    }
  }

  /** The places at which a run begins: from one index in the order up to another. */
  private record Range(int from, int to) {
    boolean isEmpty() {
      return from >= to;
    }
  }

  /** How many tokens from a place on stand in one run in some name. */
  int longest(List<Token> run, int from, int to) {
    var range = new Range(0, order.length);
    int length = 0;
    while (from + length < to && length < LONGEST) {
      range = narrowed(range, length, run.get(from + length));
      if (range.isEmpty()) {
        break;
      }
      length++;
    }
    return length;
  }

  private Range range(List<Token> run) {
    var range = new Range(0, order.length);
    for (int i = 0; i < run.size() && !range.isEmpty(); i++) {
      range = narrowed(range, i, run.get(i));
    }
    return range;
  }

  private Range narrowed(Range range, int depth, Token token) {
    var id = words.get(token.folded());
    return id == null || depth >= LONGEST
        ? new Range(0, 0)
        : new Range(bound(range, depth, id), bound(range, depth, id + 1));
  }

  /** The first in a range whose token at a depth is not less. */
  private int bound(Range range, int depth, int id) {
    int low = range.from();
    int high = range.to();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (ids[order[middle] + depth] < id) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The frames in whose names a run stands; looked for once for each way of writing it. */
  Hits find(List<Token> run) {
    var key = new StringBuilder();
    run.forEach(token -> key.append(token.exact()).append('_'));
    return found.computeIfAbsent(key.toString(), _ -> search(run));
  }

  private Hits search(List<Token> run) {
    var range = range(run);
    var gathering = new Gathering();
    for (int i = range.from(); i < range.to(); i++) {
      int place = order[i];
      int name = owner[place];
      boolean begins = place == start[name] || place == stem[name];
      boolean whole = begins && ids[place + run.size()] == END;
      gathering.add(grade(whole, isExact(run, name, place)), names.get(name));
    }
    return gathering.best();
  }

  private static Grade grade(boolean whole, boolean exact) {
    if (whole) {
      return exact ? Grade.WHOLE : Grade.WHOLE_BUT_ZEROS;
    }
    return exact ? Grade.PART : Grade.PART_BUT_ZEROS;
  }

  private boolean isExact(List<Token> run, int name, int place) {
    var own = tokens.get(name);
    int first = place - start[name];
    for (int i = 0; i < run.size(); i++) {
      if (!run.get(i).exact().equals(own.get(first + i).exact())) {
        return false;
      }
    }
    return true;
  }

  /**
   * The frames in whose names one run stands and another one somewhere behind it.
   *
   * @param budget what may still be looked at; nothing is found once it is used up
   */
  Hits following(List<Token> first, List<Token> then, SearchBudget budget) {
    var range = range(first);
    var gathering = new Gathering();
    if (range.isEmpty() || !budget.take((long) range.to() - range.from())) {
      return Hits.NONE;
    }
    for (int i = range.from(); i < range.to(); i++) {
      int place = order[i];
      int name = owner[place];
      for (int at = place + first.size(); ids[at] != END; at++) {
        if (stands(then, at)) {
          boolean exact = isExact(then, name, at);
          gathering.add(grade(false, exact), names.get(name));
        }
      }
    }
    return gathering.best();
  }

  private boolean stands(List<Token> run, int place) {
    for (int i = 0; i < run.size(); i++) {
      var id = words.get(run.get(i).folded());
      if (id == null || ids[place + i] != id) {
        return false;
      }
    }
    return true;
  }
}
