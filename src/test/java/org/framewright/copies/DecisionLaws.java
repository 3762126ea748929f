package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.util.ArrayList;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A card that may be cleared is safe, whatever went wrong in the world. */
@Tag("slow")
@net.jqwik.api.Tag("slow")
class DecisionLaws {
  private static final int STATES = 10_000;

  @Property(tries = STATES, shrinking = ShrinkingMode.OFF)
  void whatMayBeClearedIsWholeOnTwoOtherDisks(@ForAll long seed) {
    var world = new DecisionModel(seed);
    if (world.verdict(DecisionModel.Mutant.NONE) instanceof Verdict.MayClear) {
      assertThat(world.isSafe()).as(world.toString()).isTrue();
    }
  }

  @Test
  void manySafeCardsMayBeCleared() {
    int safe = 0;
    int cleared = 0;
    for (long seed = 0; seed < STATES; seed++) {
      var world = new DecisionModel(seed);
      if (world.isSafe()) {
        safe++;
        cleared += world.verdict(DecisionModel.Mutant.NONE) instanceof Verdict.MayClear ? 1 : 0;
      }
    }
    assertThat(safe).isGreaterThan(STATES / 10).isLessThan(STATES);
    assertThat(cleared).isGreaterThan(safe / 2);
  }

  @Test
  void everyCardThatMayNotSaysWhyAndWhatMendsIt() {
    for (long seed = 0; seed < STATES; seed++) {
      var verdict = new DecisionModel(seed).verdict(DecisionModel.Mutant.NONE);
      if (!(verdict instanceof Verdict.MayClear)) {
        assertThat(verdict.why()).isNotEmpty();
        assertThat(verdict.why())
            .allSatisfy(
                reason -> {
                  assertThat(reason.message()).isNotBlank();
                  assertThat(reason.remedy()).isNotBlank();
                });
      }
    }
  }

  /** Each rule is needed: without it some card is cleared that must not be. */
  @Tag("slow")
  @ParameterizedTest
  @EnumSource(mode = EnumSource.Mode.EXCLUDE, names = "NONE")
  void withoutARuleSomeCardIsLost(DecisionModel.Mutant mutant) {
    var lost = new ArrayList<Long>();
    for (long seed = 0; seed < STATES; seed++) {
      var world = new DecisionModel(seed);
      if (world.verdict(mutant) instanceof Verdict.MayClear && !world.isSafe()) {
        lost.add(seed);
      }
    }
    assertThat(lost).isNotEmpty();
  }
}
