package org.framewright.ui.client;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import javafx.beans.property.SimpleObjectProperty;
import org.framewright.frames.Capture;
import org.framewright.frames.FileRole;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameFile;
import org.framewright.frames.FrameId;
import org.framewright.live.JobView;
import org.framewright.live.ViewCount;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.board.JobViews;
import org.junit.jupiter.api.Test;

class ClientModelTest {
  private final JobViews job = JobViews.of(5);
  private final SimpleObjectProperty<JobView> view = new SimpleObjectProperty<>(job.build());
  private final ClientModel client = new ClientModel(view);

  @Test
  void beforeTheFirstTickThereIsNothingToAgreeTo() {
    assertThat(client.shown().get().code()).isEmpty();
    assertThat(client.shown().get().canAgree()).isFalse();
  }

  @Test
  void followsWhatIsOnSet() {
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEqualTo("002");
    assertThat(client.shown().get().title()).isEqualTo("Garment 2");
    assertThat(client.shown().get().canAgree()).isTrue();
  }

  @Test
  void staysWithTheSetupThatWasJustSignedOffAndSaysWhoAgreed() {
    job.state("002", SetupState.SIGNED_OFF);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEqualTo("002");
    assertThat(client.shown().get().agreedBy()).contains("I. Vance");
    assertThat(client.shown().get().canAgree()).isFalse();
  }

  @Test
  void progressLeavesDroppedSetupsOut() {
    job.state("001", SetupState.SIGNED_OFF).state("004", SetupState.DROPPED);
    view.set(job.build());
    assertThat(client.shown().get().agreed()).isEqualTo(1);
    assertThat(client.shown().get().setups()).isEqualTo(4);
  }

  @Test
  void aDisposedScreenFollowsNoMore() {
    client.dispose();
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEmpty();
  }

  private static Frame frame(int number) {
    var file = Path.of("/shoots/job/IMG_%04d.JPG".formatted(number));
    return new Frame(
        new FrameId("frame " + number),
        file.getParent(),
        "IMG_%04d".formatted(number),
        List.of(new FrameFile(file, 1, Instant.EPOCH, FileRole.JPEG)),
        Capture.UNKNOWN,
        true);
  }

  /** Frames 1 to a number, all fronts. */
  private void arrived(String code, int frames) {
    job.arrived(
        code,
        "F",
        IntStream.iterate(frames, i -> i > 0, i -> i - 1)
            .mapToObj(ClientModelTest::frame)
            .toList());
    view.set(job.build());
  }

  private String looked() {
    return client.looked().look().get().frame().map(Frame::stem).orElse("");
  }

  @Test
  void showsTheNewestFrameUntilSomebodyGoesBack() {
    job.state("002", SetupState.ON_SET);
    arrived("002", 2);
    assertThat(looked()).isEqualTo("IMG_0002");
    arrived("002", 3);
    assertThat(looked()).isEqualTo("IMG_0003");
    client.looked().earlier();
    arrived("002", 4);
    assertThat(looked()).isEqualTo("IMG_0002");
    client.looked().newest();
    assertThat(looked()).isEqualTo("IMG_0004");
  }

  @Test
  void aFrameGoneBackToStaysAlsoWhenItIsNoLongerAmongTheLast() {
    job.state("002", SetupState.ON_SET);
    arrived("002", 3);
    client.looked().turnTo(2);
    arrived("002", 60);
    assertThat(looked()).isEqualTo("IMG_0001");
    assertThat(client.looked().look().get().frames()).hasSize(JobView.LATEST);
    client.looked().newest();
    assertThat(looked()).isEqualTo("IMG_0060");
  }

  @Test
  void framesAreCountedWithinTheirSetupAndSayTheirView() {
    job.state("002", SetupState.ON_SET);
    arrived("002", 60);
    var frames = client.looked().look().get().frames();
    assertThat(client.caption(frames.getFirst()))
        .isEqualTo(new ClientModel.Caption(Optional.of("F"), 60));
    assertThat(client.caption(frames.getLast()).number()).isEqualTo(53);
  }

  @Test
  void saysHowManyFramesEachViewHas() {
    job.state("002", SetupState.ON_SET).view("B");
    arrived("002", 3);
    assertThat(client.shown().get().views())
        .containsExactly(
            new ViewCount("F", 3, OptionalInt.of(2), false),
            new ViewCount("B", 0, OptionalInt.of(2), true));
  }

  @Test
  void theSetupThatTheClientIsAskedAboutStaysUntilTheyAnswered() {
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    client.turnPictureOnly();
    client.ask();
    assertThat(client.pictureOnly().get()).as("the question can be seen").isFalse();
    job.state("002", SetupState.SHOT).state("003", SetupState.ON_SET);
    view.set(job.build());
    assertThat(client.shown().get().code()).isEqualTo("002");
    client.answered();
    assertThat(client.shown().get().code()).isEqualTo("003");
  }
}
