package org.framewright.ui.session;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.junit.jupiter.api.Test;

class LookedAtTest {
  private final LookedAt client = new LookedAt(true);
  private final LookedAt laptop = new LookedAt(false);

  private static Frame frame(String name) {
    var id = new FrameId(name);
    var file = Path.of("/shoots/job/" + name + ".JPG");
    return new Frame(
        id,
        file.getParent(),
        name,
        List.of(new FrameFile(file, 1, Instant.EPOCH, FileRole.JPEG)),
        Capture.UNKNOWN,
        true);
  }

  private void frames(String setup, String... newestFirst) {
    var frames = Stream.of(newestFirst).map(LookedAtTest::frame).toList();
    client.show(setup, frames, _ -> Optional.empty());
    laptop.show(setup, frames, _ -> Optional.empty());
  }

  private static String seen(LookedAt looked) {
    return looked.look().get().frame().map(Frame::stem).orElse("nothing");
  }

  @Test
  void beforeTheFirstFrameNothingIsLookedAt() {
    frames("001");
    assertThat(seen(client)).isEqualTo("nothing");
    client.earlier();
    client.later();
    assertThat(client.look().get()).isEqualTo(LookedAt.Look.NOTHING);
    assertThat(client.look().get().isNewest()).isTrue();
  }

  @Test
  void theNewestIsLookedAtUntilSomebodyGoesBack() {
    frames("001", "b", "a");
    assertThat(seen(client)).isEqualTo("b");
    frames("001", "c", "b", "a");
    assertThat(seen(client)).isEqualTo("c");
    client.earlier();
    assertThat(seen(client)).isEqualTo("b");
    assertThat(client.look().get().isNewest()).isFalse();
    client.later();
    assertThat(client.look().get().isNewest()).isTrue();
  }

  @Test
  void goesNoFurtherThanTheFramesAtHand() {
    frames("001", "b", "a");
    client.earlier();
    client.earlier();
    assertThat(seen(client)).isEqualTo("a");
    client.newest();
    client.later();
    assertThat(seen(client)).isEqualTo("b");
    client.turnTo(9);
    assertThat(seen(client)).isEqualTo("a");
  }

  @Test
  void whenANewFrameComesTheClientStaysAndTheLaptopFollows() {
    frames("001", "b", "a");
    client.earlier();
    laptop.earlier();
    frames("001", "c", "b", "a");
    assertThat(seen(client)).isEqualTo("a");
    assertThat(client.look().get().at()).isEqualTo(2);
    assertThat(seen(laptop)).isEqualTo("c");
  }

  @Test
  void aFrameThatIsNoLongerAmongTheLastStaysLookedAtWhileItIsOfTheSetup() {
    frames("001", "b", "a");
    client.turnTo(new FrameId("a"));
    client.show("001", List.of(frame("c"), frame("b")), id -> Optional.of(frame(id.value())));
    assertThat(seen(client)).isEqualTo("a");
    assertThat(client.look().get().at()).isEqualTo(-1);
    assertThat(client.look().get().isNewest()).isFalse();
    client.earlier();
    assertThat(seen(client)).as("there is nothing earlier at hand").isEqualTo("a");
    client.later();
    assertThat(seen(client)).isEqualTo("b");
  }

  @Test
  void aFrameThatLeavesTheSetupGivesWayToTheNewest() {
    frames("001", "b", "a");
    client.earlier();
    frames("001", "c", "b");
    assertThat(seen(client)).isEqualTo("c");
  }

  @Test
  void whenAnotherSetupComesItIsTheNewestAgain() {
    frames("001", "b", "a");
    client.earlier();
    frames("002", "b", "a");
    assertThat(seen(client)).isEqualTo("b");
  }

  @Test
  void aFrameThatGotAnotherNameIsStillTheOneLookedAt() {
    frames("001", "b", "a");
    client.earlier();
    var renamed =
        new Frame(
            new FrameId("raw"),
            List.of(new FrameId("raw"), new FrameId("a")),
            Path.of("/shoots/job"),
            "renamed",
            frame("renamed").files(),
            Capture.UNKNOWN,
            true);
    client.show("001", List.of(frame("b"), renamed), _ -> Optional.empty());
    assertThat(seen(client)).isEqualTo("renamed");
  }
}
