package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.framewright.base.Text;
import org.framewright.frames.Capture;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.ShotSlate;
import org.framewright.frames.SlateDoubt;
import org.framewright.frames.SlateFrame;
import org.framewright.frames.SlateSays;
import org.framewright.frames.SlateTally;
import org.framewright.frames.Tally;
import org.framewright.job.JobState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Test;

class SlateAttentionTest {
  private static final JobState NOTHING =
      new JobState(
          new LinkedHashMap<>(),
          List.of(),
          List.of(),
          Map.of(),
          Set.of(),
          Map.of(),
          Optional.empty(),
          List.of());

  @Test
  void aSlateThatContradictsWhatIsOrWasOnSetIsToldWithBothSetups() {
    var says = new SlateSays.OfSetup("014");
    var doubts =
        List.of(
            new SlateDoubt(frame("IMG_0412"), says, "013", 3, false),
            new SlateDoubt(frame("IMG_0512"), says, "013", 0, true));
    assertThat(said(new SlateTally(List.of(), doubts, List.of())))
        .containsExactly(
            "slate IMG_0412 says 014, on set was 013", "slate IMG_0512 says 014, on set is 013");
  }

  @Test
  void aSlateOfAnotherJobAndOneThatTheListDoesNotHaveAreTold() {
    var slates =
        List.of(
            slate("IMG_0001", new SlateSays.OfSetup("001")),
            slate("IMG_0002", new SlateSays.OfAnotherJob("001")),
            slate("IMG_0003", new SlateSays.Unlisted("099")));
    assertThat(said(new SlateTally(slates, List.of(), List.of())))
        .containsExactly(
            "IMG_0002 is a slate of another job",
            "slate IMG_0003 says 099, which is not in the list");
  }

  private static List<String> said(SlateTally slates) {
    var tally =
        new Tally(
            new LinkedHashMap<>(),
            List.of(),
            List.of(),
            List.of(),
            Map.of(),
            Map.of(),
            0,
            0,
            0,
            List.of(),
            slates);
    var attention = Attention.of(ShotList.empty(), NOTHING, tally);
    return Attention.said(attention, UnaryOperator.identity(), UnaryOperator.identity()).stream()
        .map(Text::english)
        .toList();
  }

  private static SlateFrame slate(String stem, SlateSays says) {
    return new SlateFrame(frame(stem), ShotSlate.read(says), 0, Optional.empty());
  }

  private static Frame frame(String stem) {
    return new Frame(new FrameId(stem), Path.of("/frames"), stem, List.of(), Capture.UNKNOWN, true);
  }
}
