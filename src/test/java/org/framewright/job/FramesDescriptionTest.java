package org.framewright.job;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.Templates;
import org.framewright.base.PlainText;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.framewright.shotlist.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FramesDescriptionTest {
  @TempDir private Path folder;
  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private final SampleCamera right = camera(SampleBody.studioA(), 1);
  private final SampleCamera fast = camera(SampleBody.studioB(), 500);
  private Job job;

  private static SampleCamera camera(SampleBody body, int first) {
    return new SampleCamera(body, SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, first);
  }

  @BeforeEach
  void aJobWithTwoSetups() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    job.importList(
        new ShotList(
            List.of(
                new Setup(
                    "001",
                    "Coat",
                    List.of(new View("F"), new View("B", OptionalInt.of(2))),
                    OptionalInt.empty(),
                    new java.util.LinkedHashMap<>()),
                new Setup("002", "Hat"))));
  }

  private void shoot(SampleCamera camera, String setup) throws Exception {
    clock.pass(Duration.ofSeconds(10));
    camera.take(Exposure.of(clock.instant(), setup, "F")).writeTo(job.framesFolder());
    clock.pass(Duration.ofMillis(500));
    job.recordArrivals(job.scan());
  }

  private List<String> lines() throws Exception {
    return FramesDescription.lines(job, job.standing());
  }

  private String line() throws Exception {
    return FramesDescription.line(job, job.standing());
  }

  @Test
  void aJobWithoutFramesSaysSo() throws Exception {
    assertThat(lines()).containsExactly("0 frames, 0 files");
    assertThat(line()).isEqualTo("0 frames");
  }

  @Test
  void setupsStandWithTheirViewsWhatTheyLackAndWhatChanged() throws Exception {
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    shoot(right, "001");
    assertThat(line()).isEqualTo("1 frame; on set 001: 1; back: none of 2");
    shoot(right, "001");
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    shoot(right, "001");
    job.mark("002", SetupState.PICKUP, MarkDetails.NONE);
    assertThat(lines())
        .containsExactly(
            "3 frames, 3 files",
            "  001: 3 (F 3)",
            "    missing back: none of 2",
            "    changed since sign-off",
            "Pickups: 002");
    assertThat(line()).startsWith("3 frames");
  }

  @Test
  void whatWaitsForAPersonIsListedUpToTwenty() throws Exception {
    for (int i = 0; i < 21; i++) {
      Files.write(
          job.framesFolder().resolve("cut%02d.jpg".formatted(i)),
          new byte[] {(byte) 0xFF, (byte) 0xD8});
    }
    right
        .take(Exposure.of(Instant.parse("2020-01-01T00:00:00Z"), "001", "F"))
        .writeTo(job.framesFolder());
    assertThat(lines())
        .contains("Incomplete: 21", "  cut00", "  cut19", "  and 1 more", "Unassigned: 1")
        .doesNotContain("  cut20");
    assertThat(line()).isEqualTo("1 frame; unassigned 1; incomplete 21");
    Files.delete(job.framesFolder().resolve("cut20.jpg"));
    assertThat(lines()).contains("Incomplete: 20", "  cut19").doesNotContain("  and 0 more");
  }

  @Test
  void onlyAClockThatIsOffIsNamedWithHowThatWasFound() throws Exception {
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    for (int i = 0; i < 3; i++) {
      shoot(right, "001");
      shoot(fast, "001");
    }
    assertThat(FramesDescription.clocks(job.standing()))
        .singleElement()
        .asString()
        .matches(
            "The clock of Studio Body B SB-200963 is 1 h fast \\(\\d+\\.\\d s, spread \\d\\.\\d s,"
                + " measured on 3 frames\\): its time zone or summer time is set wrongly");
    assertThat(lines()).last().asString().startsWith("The clock of Studio Body B");
  }

  @Test
  void whatASetupLacksIsSaidOnlyOfSetupsOfTheList() throws Exception {
    var standing = job.standing();
    assertThat(FramesDescription.missing(job, standing, "001"))
        .containsExactly("front: none of 1", "back: none of 2");
    assertThat(FramesDescription.missing(job, standing, "gone")).isEmpty();
    assertThat(PlainText.counted(1, "frame")).isEqualTo("1 frame");
    assertThat(Optional.of(PlainText.counted(0, "frame"))).contains("0 frames");
  }

  @Test
  void filesThatAreNotUnderstoodAreToldByTheirEndingsAndTheFirstByName() throws Exception {
    assertThat(FramesDescription.notUnderstood(job.scan())).isEmpty();
    assertThat(FramesDescription.notUnderstood(job, job.scan())).isEmpty();
    for (var name : List.of("a.h", "a2.h", "b", "b2", "b3", "c.c", "d.d", "e.e", "f.f", "g.g")) {
      Files.write(job.framesFolder().resolve(name), new byte[] {1});
    }
    assertThat(FramesDescription.notUnderstood(job.scan()).orElseThrow().what())
        .isEqualTo("10 files are not understood: without an ending, .H, .C, .D, .E, .F ...");
    for (int i = 0; i < 11; i++) {
      Files.write(job.framesFolder().resolve("x%02d.h".formatted(i)), new byte[] {1});
    }
    assertThat(FramesDescription.notUnderstood(job, job.scan()))
        .hasSize(22)
        .contains(
            "  01_frames/b: it has no ending that says what it is, and no frame here has its name")
        .last()
        .isEqualTo("  and 1 more");
  }
}
