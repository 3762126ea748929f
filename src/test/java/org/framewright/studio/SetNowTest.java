package org.framewright.studio;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.Text;
import org.framewright.copies.FramesOnce;
import org.framewright.day.DayHours;
import org.framewright.day.DaySummary;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is told of the copies of a set's frames. */
class SetNowTest {
  @TempDir private Path root;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private Job job;

  @BeforeEach
  void aFrameOfTheFirstOfTwoSetups() throws Exception {
    job = SetScene.job(root, "Winter", 2, clock, "desk");
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE);
    new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1)
        .take(Exposure.of(clock.instant(), "001", "F"))
        .writeTo(job.framesFolder());
    job.recordArrivals(job.scan());
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
  }

  private SetNow told(Optional<FramesOnce> once) throws Exception {
    var scan = job.scan();
    var standing = job.standing(scan);
    var day = DaySummary.of(job, scan, standing, DayHours.usual(ZoneOffset.UTC));
    return SetNow.of(job, standing.state(), day, List.of(), once);
  }

  private Optional<FramesOnce> compared(int once, int not) {
    return Optional.of(new FramesOnce(clock.instant(), 40, once, not));
  }

  private static SetRow.Need need(SetNow set) {
    var now = Instant.parse("2026-11-23T09:00:00Z");
    return new SetRow(
            new UUID(0, 1),
            "a",
            Optional.of(set),
            Optional.of("desk"),
            Optional.of(now),
            0,
            Optional.of(now),
            now)
        .need();
  }

  private static List<String> said(List<Text> texts) {
    return texts.stream().map(Text::english).toList();
  }

  @Test
  void framesOnOneDiskOnlyAreToBeLookedAt() throws Exception {
    var set = told(compared(3, 9));
    assertThat(said(set.troubles())).containsExactly("3 frames are on one disk only");
    assertThat(set.urgent()).isEmpty();
    assertThat(need(set)).isEqualTo(SetRow.Need.TROUBLE);
    assertThat(told(compared(0, 0)).troubles()).isEmpty();
  }

  @Test
  void whileFramesComeNobodyIsToldThatSomeWereNotCompared() throws Exception {
    assertThat(need(told(compared(0, 9)))).isEqualTo(SetRow.Need.NOTHING);
    assertThat(need(told(Optional.empty()))).isEqualTo(SetRow.Need.NOTHING);
  }

  @Test
  void whenASetIsDoneFramesThatWereNotComparedAreToBeLookedAt() throws Exception {
    job.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    assertThat(said(told(compared(3, 1)).troubles()))
        .containsExactly(
            "3 frames are on one disk only", "1 frame was not compared with its copies");
    assertThat(said(told(Optional.empty()).troubles()))
        .containsExactly("copies were not compared yet");
    assertThat(need(told(compared(0, 0)))).isEqualTo(SetRow.Need.NOTHING);
  }
}
