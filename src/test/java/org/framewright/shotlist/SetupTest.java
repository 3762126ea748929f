package org.framewright.shotlist;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.base.Text;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SetupTest {

  private static Setup setup(OptionalInt frames, View... views) {
    return new Setup("1", "Coat", List.of(views), frames, new LinkedHashMap<>());
  }

  private static Setup with(String... headingsAndTexts) {
    var columns = new LinkedHashMap<String, String>();
    for (int i = 0; i < headingsAndTexts.length; i += 2) {
      columns.put(headingsAndTexts[i], headingsAndTexts[i + 1]);
    }
    return new Setup("1", "Coat", List.of(), OptionalInt.empty(), columns);
  }

  private static View view(String code, int frames) {
    return new View(code, OptionalInt.of(frames));
  }

  @ParameterizedTest
  @CsvSource({
    "1, 1",
    "001, 1",
    "a-12, A-12",
    "A-012, A-12",
    "100, 100",
    "10, 10",
    "0, 0",
    "000, 0",
    "A0, A0",
    "A00, A0",
    "' b ', B",
    "0A, 0A",
    "9:05, 9:5",
    "A0B, A0B",
    "010, 10",
    "9001, 9001",
  })
  void takesCodesForOneThatDifferInCaseAndLeadingZeros(String code, String key) {
    assertThat(Setup.canonicalKey(code)).isEqualTo(key);
  }

  @Test
  void addsTheFramesOfItsViewsUnlessItHasANumberOfItsOwn() {
    assertThat(setup(OptionalInt.empty(), view("F", 8), view("B", 4)).wanted()).hasValue(12);
    assertThat(setup(OptionalInt.of(20), view("F", 8)).wanted()).hasValue(20);
    assertThat(setup(OptionalInt.empty(), view("F", 8), new View("B")).wanted()).isEmpty();
    assertThat(setup(OptionalInt.empty()).wanted()).isEmpty();
  }

  @Test
  void findsAViewInAnyCase() {
    var setup = setup(OptionalInt.empty(), view("F", 8), new View("back"));
    assertThat(setup.view(" BACK ")).contains(new View("back"));
    assertThat(setup.view("D")).isEmpty();
  }

  @Test
  void findsWhatAColumnMeansByItsHeading() {
    var setup = with("Colour", "red", "Regal", "", "Rail", "A1", "Talent", "Mira", "Datum", "Mon");
    assertThat(setup.rack()).contains("A1");
    assertThat(setup.model()).contains("Mira");
    assertThat(setup.day()).contains("Mon");
    assertThat(setup.note()).isEmpty();
    assertThat(with("Remarks", "late").note()).contains("late");
  }

  @Test
  void saysTheSameWhereOnlyBlankColumnsDiffer() {
    assertThat(with("Size", "", "Rack", "A").saysTheSameAs(with("Rack", "A", "Note", ""))).isTrue();
    assertThat(with("Rack", "A").saysTheSameAs(with("Rack", "A"))).isTrue();
    assertThat(with("Rack", "A").saysTheSameAs(with("Rack", "B"))).isFalse();
    assertThat(with("Rack", "A").saysTheSameAs(with())).isFalse();
    assertThat(with().saysTheSameAs(new Setup("01", "Coat"))).isFalse();
    assertThat(with().saysTheSameAs(new Setup("1", "Hat"))).isFalse();
    assertThat(with().saysTheSameAs(setup(OptionalInt.of(3)))).isFalse();
    assertThat(with().saysTheSameAs(setup(OptionalInt.empty(), new View("F")))).isFalse();
  }

  @Test
  void needsACodeAndAViewNeedsOneToo() {
    assertThatThrownBy(() -> new Setup(" ", "Coat")).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new View(" ")).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aListHoldsEachCodeOnceAndFindsIt() {
    var list = new ShotList(List.of(new Setup("001", "Coat"), new Setup("A-2", "Hat")));
    assertThat(list.setup("1").orElseThrow().title()).isEqualTo("Coat");
    assertThat(list.setup("a-02").orElseThrow().title()).isEqualTo("Hat");
    assertThat(list.setup("3")).isEmpty();
    assertThat(list.codes()).containsExactly("001", "A-2");
    assertThat(list).isEqualTo(new ShotList(list.setups())).isNotEqualTo(ShotList.empty());
    assertThat(list)
        .hasSameHashCodeAs(new ShotList(list.setups()))
        .hasToString("ShotList" + list.setups());
    assertThat(list.hashCode()).isNotEqualTo(new ShotList(List.of(new Setup("1", ""))).hashCode());
    assertThat(ShotList.empty().setups()).isEmpty();
    assertThatThrownBy(() -> new ShotList(List.of(new Setup("1", ""), new Setup("01", ""))))
        .hasMessageContaining("setups 1 and 01");
  }

  @Test
  void aStateIsFoundByWordAndByLabel() {
    assertThat(SetupState.of(" To Shoot ")).contains(SetupState.TO_SHOOT);
    assertThat(SetupState.of("signed_off")).contains(SetupState.SIGNED_OFF);
    assertThat(SetupState.of("done")).isEmpty();
    assertThat(SetupState.SIGNED_OFF.word()).isEqualTo("signed-off");
    assertThat(SetupState.SIGNED_OFF.label()).isEqualTo("signed off");
    assertThat(SetupState.values())
        .filteredOn(SetupState::done)
        .containsExactly(SetupState.SHOT, SetupState.SIGNED_OFF, SetupState.DROPPED);
  }

  @Test
  void aChangeSaysWhatDiffers() {
    var before = new ShotList(List.of(with("Rack", "A", "Size", "3"), new Setup("2", "Hat")));
    var after = new ShotList(List.of(with("Rack", "B", "Note", "late"), new Setup("3", "Belt")));
    var change = ListChange.between(before, after, setup -> setup.code().equals("2"));
    assertThat(change.changed().getFirst().descriptions())
        .extracting(Text::english)
        .containsExactly("Rack \"A\" -> \"B\"", "Size \"3\" -> \"\"", "Note \"\" -> \"late\"");
    assertThat(change.added()).extracting(Setup::code).containsExactly("3");
    assertThat(change.kept()).extracting(Setup::code).containsExactly("2");
    assertThat(change.removed()).isEmpty();
    assertThat(change.reordered()).isFalse();
    var counted =
        new ListChange.Changed(
            setup(OptionalInt.empty(), new View("F")), setup(OptionalInt.of(3), view("F", 2)));
    assertThat(counted.descriptions())
        .extracting(Text::english)
        .containsExactly("views \"F\" -> \"F:2\"", "frames wanted \"\" -> \"3\"");
    assertThat(
            new ListChange.Changed(new Setup("a-1", "Coat"), new Setup("A-01", "Hat"))
                .descriptions())
        .extracting(Text::english)
        .containsExactly("code \"a-1\" -> \"A-01\"", "title \"Coat\" -> \"Hat\"");
  }

  @Test
  void aChangeSaysWhetherTheOrderDiffers() {
    var one = new Setup("1", "");
    var two = new Setup("2", "");
    var change =
        ListChange.between(new ShotList(List.of(one, two)), new ShotList(List.of(two, one)));
    assertThat(change.reordered()).isTrue();
    assertThat(change.isEmpty()).isFalse();
  }
}
