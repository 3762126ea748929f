package org.framewright.ui.frames;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class FrameSelectionTest {
  private FrameSelection<String> choice = new FrameSelection<>();

  @BeforeEach
  void fiveThings() {
    choice = new FrameSelection<>();
    choice.over(List.of("a", "b", "c", "d", "e"));
  }

  @Test
  void startsOnTheFirst() {
    assertThat(choice.cursor().get()).isZero();
    assertThat(choice.chosen().get()).containsExactly("a");
  }

  @Test
  void goingChoosesOneAlone() {
    choice.go(3);
    assertThat(choice.chosen().get()).containsExactly("d");
  }

  @Test
  void goesNoFurtherThanTheEnds() {
    choice.go(99);
    assertThat(choice.cursor().get()).isEqualTo(4);
    choice.go(-7);
    assertThat(choice.cursor().get()).isZero();
  }

  @Test
  void stretchesFromTheAnchorBothWays() {
    choice.go(2);
    choice.stretch(4);
    assertThat(choice.inOrder()).containsExactly("c", "d", "e");
    choice.stretch(0);
    assertThat(choice.inOrder()).containsExactly("a", "b", "c");
  }

  @Test
  void togglesWithoutLosingTheOthers() {
    choice.go(0);
    choice.toggle(2);
    choice.toggle(4);
    choice.toggle(2);
    assertThat(choice.inOrder()).containsExactly("a", "e");
  }

  @Test
  void keepsTheCursorOnItsThingWhenOthersArriveBeforeIt() {
    choice.go(1);
    choice.over(List.of("x", "y", "a", "b", "c"));
    assertThat(choice.cursor().get()).isEqualTo(3);
    assertThat(choice.chosen().get()).containsExactly("b");
  }

  @Test
  void staysNearItsPlaceWhenItsThingLeaves() {
    choice.go(4);
    choice.over(List.of("a", "b"));
    assertThat(choice.cursor().get()).isEqualTo(1);
    assertThat(choice.chosen().get()).containsExactly("b");
  }

  @Test
  void isEmptyOverNothing() {
    choice.over(List.of());
    choice.go(2);
    choice.stretch(2);
    choice.toggle(2);
    assertThat(choice.cursor().get()).isEqualTo(-1);
    assertThat(choice.chosen().get()).isEmpty();
  }

  @Property
  void aStretchIsAlwaysARunWithoutGaps(
      @ForAll @Size(min = 1, max = 20) List<@IntRange(min = -3, max = 12) Integer> moves) {
    choice.over(List.of("a", "b", "c", "d", "e", "f", "g", "h", "i", "j"));
    choice.go(moves.getFirst());
    for (var move : moves) {
      choice.stretch(move);
      var run = choice.inOrder();
      var start = choice.order().indexOf(run.getFirst());
      assertThat(choice.order().subList(start, start + run.size())).isEqualTo(run);
      assertThat(run).contains(choice.order().get(choice.cursor().get()));
    }
  }
}
