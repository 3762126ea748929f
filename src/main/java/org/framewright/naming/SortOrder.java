package org.framewright.naming;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.framewright.naming.TimeSteps.Placed;
import org.framewright.naming.TimeSteps.Slot;

/**
 * Looks for two names of a kind, alike in every field but the time's, of which the earlier sorts
 * after the later.
 *
 * <p>The time's fields are the date fields and the counter. Earlier means: an earlier date; on the
 * same date, a smaller number. A counter that does not restart on a date field also never falls
 * while the date rises. The two names are built part by part at the same time: a literal or any
 * other field adds the same text to both; a part of a date, or the counter, adds any two of its
 * values. A state of the search is the next part, how the times compare so far, and how the texts
 * compare so far ({@link Compare}); there are few, so the search is exhaustive.
 *
 * <p>The units of a date are taken as independent, with days up to the 28th: each way in which two
 * units' texts compare already shows among those. Where as much is known of the one name as of the
 * other and a unit has a fixed width, a few values stand for all: texts of one width compare as
 * their numbers do, and the zeros in front are all that a number hides.
 */
final class SortOrder {
  /**
   * @param rank the most significant unit that differs so far; 9 if none does
   * @param date its sign
   * @param counted whether the names show the counter
   * @param count the sign of the two numbers
   */
  private record Times(int rank, int date, boolean counted, int count) {
    static final Times ALIKE = new Times(9, 0, false, 0);

    Times withUnit(int unitRank, int sign) {
      return sign == 0 || unitRank > rank ? this : new Times(unitRank, sign, counted, count);
    }

    Times withCount(int sign) {
      return new Times(rank, date, true, sign);
    }
  }

  private record State(int slot, Times times, Compare compare) {}

  /** A state and the texts that led to it from the one before. */
  private record Node(State state, Node before, String first, String second) {}

  private record Outcome(Times times, Compare compare) {}

  private record Texts(String first, String second) {}

  private static final char[] FEW = {'0', '1', '9'};

  private static final DatePattern.Unit DAY_OF_YEAR = DatePattern.Unit.DAY_OF_YEAR;

  private final TimeSteps steps;
  private final Effort effort;
  private boolean incomplete;

  SortOrder(DeclaredKind kind, Effort effort) {
    this.steps = new TimeSteps(kind);
    this.effort = effort;
  }

  /** Whether names show a date or a counter at all. */
  boolean showsTime() {
    return steps.hasTime();
  }

  /**
   * Two names, the earlier first, whose order by the comparison is the other way round.
   *
   * @throws Effort.TooLarge if none was found and not every case could be tried
   */
  Optional<Product.Found> inversion(Compare start) throws Effort.TooLarge {
    incomplete = false;
    var seen = new HashSet<State>();
    var queue = new ArrayDeque<Node>();
    for (int first : steps.firsts()) {
      var state = new State(first, Times.ALIKE, start);
      if (seen.add(state)) {
        queue.add(new Node(state, null, "", ""));
      }
    }
    while (!queue.isEmpty()) {
      var node = queue.poll();
      var placed = steps.at(node.state.slot);
      for (var way : outcomes(node.state, placed).entrySet()) {
        var outcome = way.getKey();
        var texts = way.getValue();
        if (outcome.compare.isDecided() && outcome.compare.end() < 0) {
          continue;
        }
        if (placed.last() && isEarlier(outcome.times) && outcome.compare.end() > 0) {
          return Optional.of(found(new Node(null, node, texts.first, texts.second)));
        }
        for (int next : placed.next()) {
          var state = new State(next, outcome.times, outcome.compare);
          effort.spend(1);
          if (seen.add(state)) {
            queue.add(new Node(state, node, texts.first, texts.second));
          }
        }
      }
    }
    if (incomplete) {
      throw new Effort.TooLarge();
    }
    return Optional.empty();
  }

  private boolean isEarlier(Times times) {
    if (times.date == 0 || !times.counted) {
      return times.date < 0 || (times.date == 0 && times.count < 0);
    }
    return times.date < 0 && (steps.counterRestartsWithTime() || times.count < 0);
  }

  private Product.Found found(Node end) {
    var first = new StringBuilder();
    var second = new StringBuilder();
    var firstValues = new LinkedHashMap<Chain.Leaf, String>();
    var secondValues = new LinkedHashMap<Chain.Leaf, String>();
    var nodes = new ArrayDeque<Node>();
    for (var node = end; node.before != null; node = node.before) {
      nodes.addFirst(node);
    }
    for (var node : nodes) {
      var leaf = steps.at(node.before.state.slot).leaf();
      first.append(node.first);
      second.append(node.second);
      firstValues.merge(leaf, node.first, String::concat);
      secondValues.merge(leaf, node.second, String::concat);
    }
    return new Product.Found(
        first.toString(), values(firstValues), second.toString(), values(secondValues));
  }

  private static SequencedMap<String, String> values(Map<Chain.Leaf, String> texts) {
    var values = new LinkedHashMap<String, String>();
    texts.forEach(
        (leaf, text) -> {
          if (leaf.part() instanceof Part.Show(Declared field, Shape shape)) {
            values.put(field.name(), shape.value(text));
          }
        });
    return values;
  }

  /** Every way on from a state, each with the first texts found that go it. */
  private Map<Outcome, Texts> outcomes(State state, Placed placed) throws Effort.TooLarge {
    var outcomes = new LinkedHashMap<Outcome, Texts>();
    switch (placed.slot()) {
      case Slot.Same(String text) ->
          outcomes.put(
              new Outcome(state.times, state.compare.feed(text, text)), new Texts(text, text));
      case Slot.Shared(Dfa texts) -> shared(state, texts, outcomes);
      case Slot.Unit(DatePattern.Part part) -> {
        var values = values(part, state.compare);
        for (var a : values.entrySet()) {
          for (var b : values.entrySet()) {
            effort.spend(1);
            outcomes.putIfAbsent(
                new Outcome(
                    state.times.withUnit(part.unit().rank, Integer.compare(a.getKey(), b.getKey())),
                    state.compare.feed(a.getValue(), b.getValue())),
                new Texts(a.getValue(), b.getValue()));
          }
        }
      }
      case Slot.Count(NumberShape shape) -> count(state, placed, shape, outcomes);
    }
    return outcomes;
  }

  private void shared(State state, Dfa texts, Map<Outcome, Texts> outcomes) throws Effort.TooLarge {
    if (state.compare.isDecided()) {
      var text = texts.shortest();
      outcomes.put(new Outcome(state.times, state.compare), new Texts(text, text));
      return;
    }
    record At(int dfa, Compare compare) {}
    record Way(At at, Way before, String last) {
      String text() {
        var text = new StringBuilder();
        for (var way = this; way.before != null; way = way.before) {
          text.append(way.last);
        }
        return text.reverse().toString();
      }
    }
    var seen = new HashSet<At>();
    var queue = new ArrayDeque<Way>();
    queue.add(new Way(new At(0, state.compare), null, ""));
    while (!queue.isEmpty()) {
      var way = queue.poll();
      int here = way.at.dfa;
      if (texts.accepts[here]) {
        var outcome = new Outcome(state.times, way.at.compare);
        if (!outcomes.containsKey(outcome)) {
          var text = way.text();
          outcomes.put(outcome, new Texts(text, text));
        }
      }
      for (int e = 0; e < texts.target[here].length; e++) {
        boolean few = way.at.compare.keepsPace();
        for (int c : characters(texts.from[here][e], texts.upTo[here][e], few)) {
          effort.spend(1);
          var one = String.valueOf((char) c);
          var at = new At(texts.target[here][e], way.at.compare.feed(one, one));
          if (seen.add(at)) {
            queue.add(new Way(at, way, one));
          }
        }
      }
    }
  }

  /** Equal characters of one sort do the same to names that keep pace: few stand for all. */
  private static int[] characters(char low, char high, boolean few) {
    if (!few) {
      return IntStream.rangeClosed(low, high).toArray();
    }
    int[] chosen = new int[FEW.length + 2];
    int count = 0;
    chosen[count++] = low;
    for (char c : FEW) {
      if (c > low && c < high) {
        chosen[count++] = c;
      }
    }
    if (high > low) {
      chosen[count++] = high;
    }
    return Arrays.copyOf(chosen, count);
  }

  private Map<Integer, String> values(DatePattern.Part part, Compare compare) {
    var all = new TreeMap<>(part.texts());
    all.keySet()
        .removeIf(
            value ->
                (part.unit() == DatePattern.Unit.DAY && value > 28)
                    || (part.unit() == DAY_OF_YEAR && value > 365));
    if (part.unit() == DatePattern.Unit.FRACTION) {
      int most = (int) NumberShape.room(part.letters());
      boolean each = part.letters() <= 2;
      incomplete |= !each && !compare.keepsPace() && !compare.isDecided();
      var values =
          each ? LongStream.rangeClosed(0, most).boxed().toList() : List.copyOf(few(0, most));
      for (long value : values) {
        all.put((int) value, NumberShape.padded(value, part.letters()));
      }
    }
    boolean numeric = part.unit() != DatePattern.Unit.MONTH || part.letters() < 3;
    if (compare.isDecided() || (part.isFixedWidth() && numeric && compare.keepsPace())) {
      var few = few(all.firstKey(), all.lastKey());
      all.keySet().removeIf(value -> !few.contains((long) value));
    }
    return all;
  }

  /** Numbers of one width that stand for all: some of each number of digits, and both ends. */
  private static Set<Long> few(long first, long last) {
    var few = new TreeSet<Long>();
    for (long low = 10; low <= last; low *= 10) {
      few.add(low);
      if (10 * low <= last) {
        few.add(low + 1);
      }
    }
    few.addAll(List.of(first, first + 1, first + 2, 1L, 2L, last));
    few.removeIf(number -> number < first || number > last);
    return few;
  }

  private void count(State state, Placed placed, NumberShape shape, Map<Outcome, Texts> outcomes)
      throws Effort.TooLarge {
    var numbers = new TreeSet<Long>();
    boolean plain =
        state.compare.isDecided() || (shape.isFixedWidth() && state.compare.keepsPace());
    if (plain) {
      numbers.addAll(few(shape.smallest(), shape.largest()));
    } else if (shape.largest() - shape.smallest() <= 400) {
      for (long n = shape.smallest(); n <= shape.largest(); n++) {
        numbers.add(n);
      }
    } else {
      incomplete |= !state.compare.keepsPace();
      for (int digits = shape.width(); digits <= shape.most(); digits++) {
        long low = digits == 1 ? 1 : NumberShape.room(digits - 1) + 1;
        numbers.addAll(List.of(low, low + 1, 2 * low, NumberShape.room(digits)));
      }
      numbers.addAll(List.of(shape.smallest(), shape.smallest() + 1));
      beginnings(placed, shape, numbers);
    }
    numbers.removeIf(n -> n < shape.smallest() || n > shape.largest());
    for (long a : numbers) {
      for (long b : numbers) {
        effort.spend(1);
        var first = NumberShape.padded(a, shape.width());
        var second = NumberShape.padded(b, shape.width());
        outcomes.putIfAbsent(
            new Outcome(
                state.times.withCount(Long.compare(a, b)), state.compare.feed(first, second)),
            new Texts(first, second));
      }
    }
  }

  /**
   * Numbers that begin with a shorter one: what follows the shorter is then compared with the rest
   * of the longer, which matters digit by digit only if a digit may follow.
   */
  private void beginnings(Placed placed, NumberShape shape, Set<Long> numbers) {
    boolean digitFollows = steps.digitMayFollow(placed);
    for (int digits = shape.width(); digits < shape.most(); digits++) {
      long beginning = NumberShape.room(digits);
      for (int more = 1; digits + more <= shape.most(); more++) {
        long scale = NumberShape.room(more) + 1;
        if (!digitFollows || more <= 2) {
          for (long rest = 0; rest < Math.min(scale, 100); rest++) {
            numbers.add(beginning * scale + rest);
          }
          numbers.add(beginning * scale + scale - 1);
        } else {
          incomplete = true;
        }
      }
    }
  }
}
