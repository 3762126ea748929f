package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.util.List;
import javafx.geometry.Rectangle2D;
import org.framewright.ui.ClientPlace.Move;
import org.junit.jupiter.api.Test;

class ClientPlaceTest {
  private static final Rectangle2D LAPTOP = new Rectangle2D(0, 0, 1440, 900);
  private static final Rectangle2D ON_THE_WALL = new Rectangle2D(1440, -180, 1920, 1080);
  private static final Rectangle2D ANOTHER = new Rectangle2D(1440, 0, 2560, 1440);
  private static final Rectangle2D APP = new Rectangle2D(100, 40, 1180, 820);
  private static final List<Rectangle2D> BOTH = List.of(LAPTOP, ON_THE_WALL);
  private static final List<Rectangle2D> ONE = List.of(LAPTOP);

  private final ClientPlace place = new ClientPlace();

  @Test
  void fillsTheDisplayThatTheAppIsNotOn() {
    assertThat(place.begin(BOTH, APP)).contains(ON_THE_WALL);
    assertThat(place.now(BOTH, APP, true)).isEqualTo(new Move.Stay());
  }

  @Test
  void waitsOutOfSightWhileItsDisplayIsUnpluggedAndComesBackWithIt() {
    place.begin(BOTH, APP);
    assertThat(place.now(ONE, APP, true)).isEqualTo(new Move.Wait());
    assertThat(place.now(ONE, APP, false)).as("told twice").isEqualTo(new Move.Stay());
    assertThat(place.now(BOTH, APP, false)).isEqualTo(new Move.Fill(ON_THE_WALL));
    assertThat(place.now(BOTH, APP, true)).isEqualTo(new Move.Stay());
    assertThat(place.now(ONE, APP, true)).as("a second time").isEqualTo(new Move.Wait());
  }

  @Test
  void comesBackOnAnotherDisplayWhereThatIsPluggedIn() {
    place.begin(BOTH, APP);
    place.now(ONE, APP, true);
    assertThat(place.now(List.of(LAPTOP, ANOTHER), APP, false)).isEqualTo(new Move.Fill(ANOTHER));
  }

  @Test
  void goesToAThirdDisplayAtOnce() {
    place.begin(List.of(LAPTOP, ON_THE_WALL, ANOTHER), APP);
    assertThat(place.now(List.of(LAPTOP, ANOTHER), APP, true)).isEqualTo(new Move.Fill(ANOTHER));
  }

  @Test
  void openedWithoutASecondDisplayItGoesThereWhenOneComes() {
    assertThat(place.begin(ONE, APP)).isEmpty();
    assertThat(place.now(ONE, APP, false)).isEqualTo(new Move.Stay());
    assertThat(place.now(BOTH, APP, false)).isEqualTo(new Move.Fill(ON_THE_WALL));
  }

  @Test
  void aWindowThatSomebodyPutElsewhereStaysThere() {
    place.begin(BOTH, APP);
    assertThat(place.now(ONE, APP, false)).isEqualTo(new Move.Stay());
  }

  @Test
  void doesNotWaitWhereTheAppFillsAllThereIs() {
    var over = new Rectangle2D(1000, 0, 1180, 820);
    assertThat(place.begin(BOTH, over)).isEmpty();
    assertThat(place.now(ONE, over, false)).isEqualTo(new Move.Stay());
  }
}
