package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

/** The order in which least is changed; where few things are, against all orders there are. */
class OrderSearchTest {
  private static final int KINDS = 3;

  /** What things are, what changes cost, which may change places, and what is there before. */
  @SuppressWarnings("ArrayRecordComponent") // none is compared or changed
  record Problem(int[][] keys, long[] weights, int[] blocks, int[] start) {
    OrderSearch.Found solve() {
      return OrderSearch.find(keys, weights, blocks, start);
    }

    long cost(List<Integer> order) {
      return OrderSearch.cost(keys, weights, start, order);
    }

    List<Integer> given() {
      return IntStream.range(0, keys.length).boxed().toList();
    }

    /** The least cost of all orders that leave blocks where they are. */
    long least() {
      return least(new ArrayList<>(), new boolean[keys.length]);
    }

    private long least(List<Integer> order, boolean[] used) {
      if (order.size() == keys.length) {
        return cost(order);
      }
      long least = Long.MAX_VALUE;
      for (int i = 0; i < keys.length; i++) {
        if (!used[i] && blocks[i] == blocks[order.size()]) {
          used[i] = true;
          order.add(i);
          least = Math.min(least, least(order, used));
          order.removeLast();
          used[i] = false;
        }
      }
      return least;
    }
  }

  private static Arbitrary<Problem> problems(int most, int values) {
    var key = Arbitraries.integers().between(0, values - 1).array(int[].class).ofSize(KINDS);
    var weights = Arbitraries.longs().between(0, 20).array(long[].class).ofSize(KINDS);
    var breaks = Arbitraries.of(0, 0, 0, 1).array(int[].class).ofSize(most);
    var start = key.injectDuplicates(0.1).optional(0.7);
    return Combinators.combine(
            key.array(int[][].class).ofMinSize(1).ofMaxSize(most), weights, breaks, start)
        .as(
            (keys, costs, steps, before) -> {
              var blocks = new int[keys.length];
              for (int i = 1; i < blocks.length; i++) {
                blocks[i] = blocks[i - 1] + steps[i];
              }
              return new Problem(keys, costs, blocks, before.orElse(new int[0]));
            });
  }

  @Provide
  Arbitrary<Problem> small() {
    return problems(7, 3);
  }

  @Provide
  Arbitrary<Problem> ofNine() {
    return problems(9, 4).filter(problem -> problem.keys().length >= 8);
  }

  @Provide
  Arbitrary<Problem> large() {
    return problems(60, 6);
  }

  @Property(tries = 300)
  void noOrderOfAFewIsBetter(@ForAll("small") Problem problem) {
    var found = problem.solve();
    assertThat(found.exact()).isTrue();
    assertThat(problem.cost(found.order())).isEqualTo(problem.least());
  }

  @Property(tries = 4)
  void noOrderOfNineIsBetter(@ForAll("ofNine") Problem problem) {
    assertThat(problem.cost(problem.solve().order())).isEqualTo(problem.least());
  }

  @Property(tries = 300)
  void everyThingIsThereOnceAndInItsBlock(@ForAll("large") Problem problem) {
    var order = problem.solve().order();
    assertThat(order).containsExactlyInAnyOrderElementsOf(problem.given());
    for (int i = 0; i < order.size(); i++) {
      assertThat(problem.blocks()[order.get(i)]).isEqualTo(problem.blocks()[i]);
    }
  }

  @Property(tries = 300)
  void noOrderIsWorseThanTheGivenOne(@ForAll("large") Problem problem) {
    var order = problem.solve().order();
    assertThat(problem.cost(order)).isLessThanOrEqualTo(problem.cost(problem.given()));
    if (problem.cost(order) == problem.cost(problem.given())) {
      assertThat(order).isEqualTo(problem.given());
    }
  }

  private static Problem of(long[] weights, int[] start, int[]... keys) {
    return new Problem(keys, weights, new int[keys.length], start);
  }

  // Two models on two racks by turns. Worked by hand: the dearer thing is changed once.
  @Test
  void whatCostsMoreIsChangedLess() {
    var keys = new int[][] {{0, 0}, {1, 0}, {0, 1}, {1, 1}, {0, 0}, {1, 0}};
    var byModel = of(new long[] {10, 1}, new int[0], keys).solve();
    assertThat(byModel.order()).isEqualTo(List.of(0, 4, 2, 3, 1, 5));
    var byRack = of(new long[] {1, 10}, new int[0], keys).solve();
    assertThat(byRack.order()).isEqualTo(List.of(0, 4, 1, 5, 3, 2));
  }

  @Test
  void whatIsBeforeTheCameraGoesOnFirst() {
    var found = of(new long[] {1}, new int[] {1}, new int[] {0}, new int[] {1}).solve();
    assertThat(found.order()).containsExactly(1, 0);
  }

  @Test
  void whatSavesNothingStays() {
    var found = of(new long[] {1}, new int[0], new int[] {0}, new int[] {1}, new int[] {2}).solve();
    assertThat(found.order()).containsExactly(0, 1, 2);
    assertThat(of(new long[] {0}, new int[0], new int[] {0}, new int[] {1}, new int[] {0}).solve())
        .isEqualTo(new OrderSearch.Found(List.of(0, 1, 2), true));
  }

  /**
   * Eighty things, each another one of 8 models and 10 racks, shuffled: whatever the order, each of
   * the others is a change, and a walk round the grid has one at each step.
   */
  @Test
  void aShuffledGridIsPutNearlyInOrder() {
    var keys = new ArrayList<int[]>();
    for (int i = 0; i < 80; i++) {
      keys.add(new int[] {i % 8, i / 8});
    }
    java.util.Collections.shuffle(keys, new Random(7));
    var problem = of(new long[] {1, 1}, new int[0], keys.toArray(int[][]::new));
    var found = problem.solve();
    assertThat(found.exact()).isFalse();
    assertThat(problem.cost(problem.given())).isGreaterThan(120);
    assertThat(problem.cost(found.order())).isBetween(79L, 85L);
  }
}
