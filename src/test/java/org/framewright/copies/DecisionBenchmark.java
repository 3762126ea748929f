package org.framewright.copies;

import java.util.EnumMap;

/** The decision against ten times the worlds that the tests try, and each rule taken out. */
final class DecisionBenchmark {
  private static final int STATES = 100_000;

  private DecisionBenchmark() {}

  public static void main(String[] args) {
    var wrong = new EnumMap<DecisionModel.Mutant, Integer>(DecisionModel.Mutant.class);
    int safe = 0;
    int cleared = 0;
    for (long seed = 0; seed < STATES; seed++) {
      var world = new DecisionModel(seed);
      boolean isSafe = world.isSafe();
      safe += isSafe ? 1 : 0;
      for (var mutant : DecisionModel.Mutant.values()) {
        boolean says = world.verdict(mutant) instanceof Verdict.MayClear;
        cleared += says && mutant == DecisionModel.Mutant.NONE ? 1 : 0;
        wrong.merge(mutant, says && !isSafe ? 1 : 0, Integer::sum);
      }
    }
    System.out.printf(
        "%d states, %d safe, %d may be cleared; wrong answers by rule taken out: %s%n",
        STATES, safe, cleared, wrong);
  }
}
