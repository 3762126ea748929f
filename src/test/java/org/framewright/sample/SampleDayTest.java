package org.framewright.sample;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.framewright.frames.CameraClock;
import org.framewright.frames.FrameScan;
import org.framewright.frames.Tally;
import org.framewright.job.Job;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** The story is played once; then the folder that it left is opened as anybody would. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SampleDayTest {
  private static final Instant AFTERWARDS = Instant.parse("2026-11-06T08:00:00Z");

  private Path folder;
  private final List<String> story = new ArrayList<>();
  private Job job;
  private FrameScan scan;
  private Tally tally;

  @BeforeAll
  void playTheFourDays(@TempDir Path given) throws Exception {
    folder = given;
    var path =
        SampleDay.play(
            SampleFiles.below(Path.of("")),
            folder,
            SampleCamera.Size.TINY,
            new Narration() {
              @Override
              public void heading(String text) {
                story.add(text);
              }

              @Override
              public void line(String text) {
                story.add(text);
              }
            });
    job = Job.open(path, Clock.fixed(AFTERWARDS, ZoneOffset.ofHours(1)));
    scan = job.scan();
    tally = job.tally(scan);
  }

  @Test
  void everyFrameHasASetupAndEverySetupTheFramesThatTheListWants() {
    assertThat(tally.unassigned()).isEmpty();
    assertThat(tally.incomplete()).isEmpty();
    for (var setup : job.shotList().setups()) {
      var frames = tally.bySetup().get(setup.code());
      switch (setup.code()) {
        // Not shot; shot twice; shot before more was wanted; one more after the sign-off.
        case "039", "040", "042" -> assertThat(frames).as(setup.code()).isNull();
        case "022" -> assertThat(frames.frames()).isEqualTo(2 * setup.wanted().orElseThrow());
        case "036" -> assertThat(frames.frames()).isEqualTo(setup.wanted().orElseThrow() + 1);
        default ->
            assertThat(frames.frames()).as(setup.code()).isEqualTo(setup.wanted().orElseThrow());
      }
    }
  }

  @Test
  void rawAndJpegCountAsOneFrameAndTheBodiesThatShareNumbersAsTwo() {
    assertThat(tally.frames()).isEqualTo(scan.frames().size());
    assertThat(tally.files()).isGreaterThan(2 * tally.frames());
    assertThat(story).anyMatch(line -> line.contains("there are two IMG_0001"));
  }

  @Test
  void theBodyThatIsAnHourFastIsFoundOut() {
    assertThat(tally.cameras()).hasSize(2);
    for (CameraClock clock : tally.cameras()) {
      boolean fast = clock.camera().serial().equals(SampleBody.studioB().serial());
      assertThat(clock.offsetSeconds().orElseThrow())
          .as(clock.camera().model())
          .isCloseTo(fast ? -3600 : 0, within(3.0));
    }
  }

  @Test
  void theStatesAreThoseOfTheStory() {
    assertThat(job.state().of("022").state()).isEqualTo(SetupState.SIGNED_OFF);
    assertThat(job.state().of("022").signedOffBy()).contains("Odette");
    assertThat(job.state().of("028").state()).isEqualTo(SetupState.SIGNED_OFF);
    assertThat(job.state().of("040").state()).isEqualTo(SetupState.DROPPED);
    assertThat(job.state().of("040").reason()).contains("sold out");
    assertThat(job.state().of("042").state()).isEqualTo(SetupState.TO_SHOOT);
    assertThat(job.standing(scan).state().of("036").changedSinceSignOff()).isTrue();
    assertThat(job.standing(scan).state().of("004").changedSinceSignOff()).isFalse();
    assertThat(job.shotList().setup("019")).isEmpty();
    assertThat(job.shotList().setup("041")).isPresent();
  }

  @Test
  void everyFrameIsCalledByTheDayOnWhichItWasTaken() {
    assertThat(scan.frames())
        .allSatisfy(
            frame ->
                assertThat(frame.stem())
                    .matches("2026110[2-5]_KVO_\\d{3}_[FBD]_\\d{4}")
                    .startsWith(
                        frame
                            .capture()
                            .time()
                            .orElseThrow()
                            .toLocalDate()
                            .toString()
                            .replace("-", "")));
    assertThat(job.frameNames(scan).requests())
        .allSatisfy(request -> assertThat(request.from()).isEqualTo(request.to()));
  }

  @Test
  void theStoryHasABlockedRenameAndWhatIsGivenBack() {
    assertThat(story)
        .anyMatch(line -> line.startsWith("blocked    "))
        .anyMatch(line -> line.contains("is taken"))
        .anyMatch(line -> line.equals("$ framewright undo JOB"))
        .anyMatch(line -> line.matches("Renamed \\d+ files as batch 0003-.*"));
  }

  // RFC 8493, by the reference library.
  @Test
  void theHandOffIsAValidBag() throws Exception {
    var bag = folder.resolve(job.name() + "_hand-off-1");
    try (var verifier = new BagVerifier()) {
      verifier.isValid(new BagReader().read(bag), false);
    }
  }

  @Test
  void theLastWordIsTheJobFolder() {
    assertThat(story.getLast()).isEqualTo("The job folder: " + job.folder());
  }
}
