package org.framewright.frames;

import static org.framewright.AssertThat.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.Test;

class MissingTest {
  private static final Map<String, String> NAMES = Map.of("F", "front", "B", "back", "D", "detail");

  @Test
  void frontAndBackShotAndDetailWantedLacksOneView() {
    var setup = setup(OptionalInt.empty(), new View("F"), new View("B"), new View("D"));
    assertThat(words(setup, Map.of("F", 4, "B", 2))).containsExactly("detail: none of 1");
  }

  @Test
  void saysHowManyOfHowManyInTheListsOrder() {
    var setup =
        setup(
            OptionalInt.empty(),
            new View("F", OptionalInt.of(5)),
            new View("B", OptionalInt.of(2)),
            new View("D", OptionalInt.of(1)));
    assertThat(words(setup, Map.of("f", 3, "D", 1)))
        .containsExactly("front: 3 of 5", "back: none of 2");
  }

  @Test
  void countsFramesOfNoViewForTheSetupAsAWholeOnly() {
    var setup = setup(OptionalInt.of(10), new View("F"));
    assertThat(words(setup, Map.of("", 3))).containsExactly("front: none of 1", "in all: 3 of 10");
  }

  @Test
  void aSetupWithoutFramesLacksEverything() {
    var setup = setup(OptionalInt.of(2), new View("F"));
    assertThat(Missing.of(setup, Optional.empty())).hasSize(2);
  }

  @Test
  void aSetupOfWhichNothingIsWantedLacksNothing() {
    assertThat(Missing.of(setup(OptionalInt.empty()), Optional.empty())).isEmpty();
  }

  private static Setup setup(OptionalInt frames, View... views) {
    return new Setup("001", "Coat", List.of(views), frames, new LinkedHashMap<>());
  }

  private static List<String> words(Setup setup, Map<String, Integer> byView) {
    int all = byView.values().stream().mapToInt(count -> count).sum();
    var tally = new SetupTally(all, new TreeMap<>(byView));
    return Missing.of(setup, Optional.of(tally)).stream()
        .map(missing -> missing.words(code -> NAMES.getOrDefault(code, code)))
        .toList();
  }
}
