package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.framewright.base.Text;
import org.framewright.day.ChangeTimes.Learned;
import org.junit.jupiter.api.Test;

/** How long changes take. All expected values are worked by hand. */
class ChangeTimesTest {
  private final List<ChangeTimes.Gap> gaps = new ArrayList<>();

  private void seen(Set<Change> changed, int... minutes) {
    for (int one : minutes) {
      gaps.add(new ChangeTimes.Gap(Duration.ofMinutes(one), changed));
    }
  }

  private ChangeTimes times() {
    return ChangeTimes.of(gaps);
  }

  private static Duration minutes(int minutes) {
    return Duration.ofMinutes(minutes);
  }

  // Without a change 3, 4, 5, 5, 60: the median is 5. With another model 14, 15, 90: it is 15.
  @Test
  void aChangeTakesWhatItsMedianHasMore() {
    seen(Set.of(), 4, 60, 5, 3, 5);
    seen(Set.of(Change.MODEL), 90, 14, 15);
    assertThat(times().usual()).contains(minutes(5));
    assertThat(times().without()).isEqualTo(5);
    assertThat(times().learned()).containsOnlyKeys(Change.MODEL);
    assertThat(times().learned()).containsEntry(Change.MODEL, new Learned(minutes(10), 3, false));
    assertThat(times().whyNone()).isEmpty();
  }

  // Rack never alone: 17, 18, 19 with the model; 18 - 5 - 10 = 3.
  @Test
  void whatCameOnlyWithAKnownChangeIsToldFromIt() {
    seen(Set.of(), 5, 5, 5);
    seen(Set.of(Change.MODEL), 14, 15, 16);
    seen(Set.of(Change.MODEL, Change.RACK), 18, 17, 19);
    assertThat(times().learned()).containsEntry(Change.RACK, new Learned(minutes(3), 3, false));
  }

  // 17 in the median, 5 without: 12 for both, 6 each.
  @Test
  void whatAlwaysCameTogetherSharesTheTimeEvenly() {
    seen(Set.of(), 5, 5, 5);
    seen(Set.of(Change.MODEL, Change.RACK), 18, 17, 16);
    assertThat(times().learned()).containsEntry(Change.MODEL, new Learned(minutes(6), 3, true));
    assertThat(times().learned()).containsEntry(Change.RACK, new Learned(minutes(6), 3, true));
  }

  @Test
  void aChangeNeverTakesLessThanNothing() {
    seen(Set.of(), 5, 6, 7);
    seen(Set.of(Change.VIEWS), 2, 2, 2);
    assertThat(times().learned()).containsEntry(Change.VIEWS, new Learned(Duration.ZERO, 3, false));
  }

  @Test
  void tooFewTimesTeachNothingAndThatIsSaid() {
    seen(Set.of(), 5, 5);
    seen(Set.of(Change.MODEL), 14, 15, 16);
    assertThat(times().learned()).isEmpty();
    assertThat(times().whyNone().map(Text::english).orElseThrow())
        .contains("fewer than 3 times that the next setup began without any change");
    seen(Set.of(), 5);
    gaps.removeIf(gap -> gap.time().equals(minutes(16)));
    assertThat(times().learned()).isEmpty();
    assertThat(times().whyNone().map(Text::english).orElseThrow())
        .contains("fewer than 3 changes of each kind");
  }

  @Test
  void theMedianOfAnEvenNumberLiesInTheMiddle() {
    assertThat(ChangeTimes.median(List.of(minutes(9), minutes(1), minutes(4), minutes(2))))
        .isEqualTo(minutes(3));
    assertThat(ChangeTimes.NONE.usual()).isEqualTo(Optional.empty());
  }
}
