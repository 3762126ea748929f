package org.framewright.job;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ListMergeTest {
  private static ShotList list(String... codes) {
    return new ShotList(List.of(codes).stream().map(code -> new Setup(code, "")).toList());
  }

  private static List<String> merged(ShotList before, ShotList incoming, String... worked) {
    return ListMerge.of(before, incoming, Set.of(worked)::contains).merged().codes();
  }

  @Test
  void putsASetupThatStaysBehindTheOneThatItStoodBehind() {
    var before = list("1", "2", "3", "4");
    assertThat(merged(before, list("4", "1"), "2", "3")).containsExactly("4", "1", "2", "3");
    assertThat(merged(before, list("4", "2"), "3")).containsExactly("4", "2", "3");
    assertThat(merged(before, list("9"), "1", "3")).containsExactly("1", "3", "9");
    assertThat(merged(before, list("3", "01"), "2")).containsExactly("3", "01", "2");
    assertThat(merged(before, list())).isEmpty();
  }

  @Test
  void saysNothingWhereNothingChanges() {
    assertThat(ListMerge.of(list("1", "2"), list("1", "2"), key -> false).event()).isEmpty();
    assertThat(ListMerge.of(list("1", "2"), list("2", "1"), key -> false).event())
        .contains(new Event.ListChanged(List.of(), List.of(), List.of("2", "1")));
  }

  @Test
  void saysWhatIsNewWhatChangedAndWhatIsGone() {
    var before = list("1", "2", "3");
    var incoming = new ShotList(List.of(new Setup("1", "Coat"), new Setup("4", "Hat")));
    assertThat(ListMerge.of(before, incoming, Set.of("3")::contains).event())
        .contains(
            new Event.ListChanged(
                List.of(new Setup("4", "Hat"), new Setup("1", "Coat")),
                List.of("2"),
                List.of("1", "3", "4")));
  }

  @Test
  void takesOnlyTheLinesThatWereAccepted() {
    var before = list("1", "2", "3");
    var incoming =
        new ShotList(List.of(new Setup("4", "Hat"), new Setup("1", "Coat"), new Setup("5", "Bag")));
    var merge = ListMerge.of(before, incoming, key -> false, Set.of("04", "3"));
    assertThat(merge.merged().setups())
        .containsExactly(new Setup("4", "Hat"), new Setup("1", ""), new Setup("2", ""));
    assertThat(merge.change().removed()).containsExactly(new Setup("3", ""));
    var kept = ListMerge.of(before, incoming, Set.of("3")::contains, Set.of("3"));
    assertThat(kept.merged().codes()).containsExactly("1", "2", "3");
  }

  /** The rule as it is written down: each that stays behind the nearest before it that is there. */
  private static List<String> slowly(ShotList before, ShotList incoming, Set<String> worked) {
    var merged = new ArrayList<>(incoming.codes());
    for (int i = 0; i < before.setups().size(); i++) {
      var code = before.codes().get(i);
      if (worked.contains(code) && !incoming.codes().contains(code)) {
        int place = 0;
        for (int j = i - 1; j >= 0 && place == 0; j--) {
          place = merged.indexOf(before.codes().get(j)) + 1;
        }
        merged.add(place, code);
      }
    }
    return merged;
  }

  private static ShotList some(Random random) {
    var codes = new ArrayList<>(IntStream.rangeClosed(1, 9).mapToObj(n -> "" + n).toList());
    Collections.shuffle(codes, random);
    return list(codes.subList(0, random.nextInt(10)).toArray(String[]::new));
  }

  @Property(tries = 500)
  void mergesAsTheRuleSays(@ForAll long seed) {
    var random = new Random(seed);
    var before = some(random);
    var incoming = some(random);
    var worked = new HashSet<>(some(random).codes());
    assertThat(ListMerge.of(before, incoming, worked::contains).merged().codes())
        .isEqualTo(slowly(before, incoming, worked));
  }

  @Tag("slow")
  @Test
  void mergesVeryLongListsWithoutComparingEachToEach() {
    var many = IntStream.range(0, 200_000).mapToObj(n -> "A" + n).toArray(String[]::new);
    assertTimeoutPreemptively(
        Duration.ofMinutes(2),
        () ->
            assertThat(ListMerge.of(list(many), list("B"), key -> true).merged().setups())
                .hasSize(200_001));
  }
}
