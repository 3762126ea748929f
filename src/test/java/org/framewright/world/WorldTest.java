package org.framewright.world;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Some days with new seeds each time, and those that failed once. */
@DisabledOnOs(OS.WINDOWS)
class WorldTest {
  private static void holds(int days, TestReporter reporter) throws InterruptedException {
    long seed = System.nanoTime() / 1000 % 1_000_000;
    var counts = new Counts();
    var failures = Simulator.play(days, seed, 1, 1, counts);
    reporter.publishEntry("seed", "" + seed);
    reporter.publishEntry("played", counts.toString());
    assertThat(failures.isEmpty() ? counts.days() : days).isGreaterThanOrEqualTo(days);
    assertThat(failures.stream().map(Shrinking::shortest).map(Shrinking::story).toList()).isEmpty();
  }

  @Test
  void aFewDaysEndAsTheyShould(TestReporter reporter) throws InterruptedException {
    holds(1, reporter);
  }

  @Test
  @Tag("slow")
  void aMonthOfDaysEndsAsItShould(TestReporter reporter) throws InterruptedException {
    holds(30, reporter);
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(longs = {104, 117, 125, 1025, 1099})
  void aDayThatFailedOnceEndsAsItShould(long seed) {
    var failure = Simulator.play(seed, Script.of(seed), new Counts());
    assertThat(failure.map(Shrinking::story)).isEmpty();
  }

  @Test
  void aScriptThatFailsBecomesShort() {
    var steps =
        List.<Step>of(
            new Step.Start(0, 0, false, true, false),
            new Step.Pass(5),
            new Step.ImportList(Seat.LAPTOP, 3),
            new Step.Pass(6),
            new Step.Night());
    var failed = new Simulator.Failure(1, steps, 2, new Wrong("a thing"));
    var shortest =
        Shrinking.shortest(
            failed,
            tried -> {
              int at = tried.indexOf(steps.get(2));
              return at < 0
                  ? Optional.empty()
                  : Optional.of(new Simulator.Failure(1, tried, at, failed.why()));
            });
    assertThat(shortest.steps()).containsExactly(steps.get(0), steps.get(2));
    assertThat(Shrinking.story(shortest)).contains("The laptop imports edition 3");
  }
}
