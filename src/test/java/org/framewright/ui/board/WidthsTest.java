package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

class WidthsTest {
  @Property
  void thePictureHasAtLeastHalfOfEveryWindowThatIsWideEnough(
      @ForAll @DoubleRange(min = 62, max = 400) double ems) {
    assertThat(Widths.of(ems).sheetOf(ems)).isLessThanOrEqualTo(ems / 2);
  }

  @Property
  void aWiderWindowTakesNoRoomFromTheListAsLongAsItsKindStays(
      @ForAll @DoubleRange(min = 50, max = 400) double ems) {
    var wider = Widths.of(ems + 1);
    if (wider.equals(Widths.of(ems))) {
      assertThat(wider.sheetOf(ems + 1)).isGreaterThanOrEqualTo(wider.sheetOf(ems));
    }
  }

  @Test
  void aPictureFillsItsPlaceByItsShape() {
    assertThat(SetPictures.fitted(2.0 / 3, 400, 300)).as("200 wide, 300 high").isEqualTo(60_000);
    assertThat(SetPictures.fitted(1.5, 300, 400)).as("300 wide, 200 high").isEqualTo(60_000);
    assertThat(SetPictures.fitted(1.5, -10, 400)).isZero();
  }
}
