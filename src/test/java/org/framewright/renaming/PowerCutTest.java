package org.framewright.renaming;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The {@link PowerCutLaws} on a few hundred cases, always the same ones, in seconds. */
@Tag("slow")
class PowerCutTest {
  private static final int CASES = 250;

  private final PowerCutLaws laws =
      new PowerCutLaws() {
        @Override
        void note(String label, Object value) {
          // Nobody reads statistics of these few.
        }
      };

  @Test
  void afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole() throws IOException {
    for (int seed = 0; seed < CASES; seed++) {
      var random = new Random(seed);
      laws.afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(
          targets(random),
          random.nextBoolean(),
          random.nextBoolean(),
          random.nextBoolean(),
          random.nextBoolean(),
          random.nextInt(31),
          seed);
    }
  }

  @Test
  void afterAPowerCutACopyIsBroughtToAnEndOrStandsStillAsItIs() throws IOException {
    for (int seed = 0; seed < CASES; seed++) {
      var random = new Random(seed);
      laws.afterAPowerCutACopyIsBroughtToAnEndOrStandsStillAsItIs(
          targets(random),
          random.nextBoolean(),
          random.nextBoolean(),
          random.nextBoolean(),
          random.nextBoolean(),
          seed);
    }
  }

  @Test
  void aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack() throws IOException {
    for (int seed = 0; seed < CASES; seed++) {
      var random = new Random(seed);
      laws.aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack(
          targets(random), random.nextBoolean(), random.nextBoolean(), seed);
    }
  }

  private static List<Integer> targets(Random random) {
    return IntStream.range(0, 1 + random.nextInt(10)).mapToObj(_ -> random.nextInt(12)).toList();
  }
}
