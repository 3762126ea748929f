package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import javafx.geometry.Rectangle2D;
import org.junit.jupiter.api.Test;

class DisplaysTest {
  private static final Rectangle2D LAPTOP = new Rectangle2D(0, 0, 1440, 900);
  private static final Rectangle2D ON_THE_WALL = new Rectangle2D(1440, -180, 1920, 1080);
  private static final List<Rectangle2D> BOTH = List.of(LAPTOP, ON_THE_WALL);

  @Test
  void theClientsWindowGoesToTheDisplayThatTheAppIsNotOn() {
    assertThat(Displays.beside(BOTH, new Rectangle2D(100, 100, 1180, 820))).contains(ON_THE_WALL);
    assertThat(Displays.beside(BOTH, new Rectangle2D(1500, 0, 1180, 820))).contains(LAPTOP);
  }

  @Test
  void theClientsWindowStaysWhereThereIsNoOtherDisplay() {
    assertThat(Displays.beside(List.of(LAPTOP), new Rectangle2D(100, 100, 1180, 820))).isEmpty();
    assertThat(Displays.beside(BOTH, new Rectangle2D(1000, 0, 1180, 820)))
        .as("the app lies on both")
        .isEmpty();
  }

  @Test
  void aKeptPlaceOnADisplayStays() {
    var kept = new Rectangle2D(1500, -100, 1180, 820);
    assertThat(Displays.onto(BOTH, kept)).isEqualTo(kept);
  }

  @Test
  void aKeptPlaceOnADisplayThatIsGoneComesBack() {
    assertThat(Displays.onto(List.of(LAPTOP), new Rectangle2D(1500, -100, 1180, 820)))
        .isEqualTo(new Rectangle2D(260, 0, 1180, 820));
  }

  @Test
  void aPlaceHalfOffItsDisplayIsBroughtBackWhole() {
    assertThat(Displays.onto(BOTH, new Rectangle2D(-600, 700, 1000, 600)))
        .isEqualTo(new Rectangle2D(0, 300, 1000, 600));
  }

  @Test
  void aWindowThatBecameTooLargeIsMadeAsLargeAsItsDisplay() {
    assertThat(Displays.onto(List.of(LAPTOP), new Rectangle2D(1440, 0, 1920, 1080)))
        .isEqualTo(LAPTOP);
  }

  @Test
  void withoutAnyDisplayAPlaceIsLeftAsItIs() {
    var kept = new Rectangle2D(10, 10, 100, 100);
    assertThat(Displays.onto(List.of(), kept)).isEqualTo(kept);
  }
}
