package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
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

class FramesCommandTest {
  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-23T09:00:00Z");
  private final Clock clock = ((InstantSource) () -> now).withZone(ZoneId.systemDefault());
  private Ran ran;
  private Job job;
  private SampleCamera camera;

  /** 001 has four frames of the front, numbered across 9999; 002 has one, of its only view. */
  @BeforeEach
  void aJobWithFrames() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job = ((Started.Opened) Job.start(Templates.fashionDays(), folder, values, clock)).job();
    job.importList(
        new ShotList(
            List.of(
                setup("001", "Coat", new View("F"), new View("B", OptionalInt.of(2))),
                setup("002", "Dress", new View("D")))));
    camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.RAW_AND_JPEG, 9998);
    job.mark("001", SetupState.ON_SET, MarkDetails.NONE.andView("F"));
    shoot("001", "F", 4);
    job.mark("002", SetupState.ON_SET, MarkDetails.NONE);
    shoot("002", "D", 1);
  }

  @Test
  void countsFramesBySetupAndViewAndSaysWhatIsMissing() {
    assertThat(run("frames", job.folder().toString())).isZero();
    assertThat(ran.out().lines())
        .containsExactly(
            "5 frames, 10 files",
            "  001: 4 (F 4)",
            "    missing back: none of 2",
            "  002: 1 (D 1)");
  }

  @Test
  void writesTheSameAsJson() throws Exception {
    assertThat(run("frames", job.folder().toString(), "--json")).isZero();
    var report = ran.json();
    assertThat(report.get("frames").asInt()).isEqualTo(5);
    assertThat(report.get("files").asInt()).isEqualTo(10);
    assertThat(report.at("/bySetup/001/byView/F").asInt()).isEqualTo(4);
    assertThat(report.at("/bySetup/001/missing/0").asText()).isEqualTo("back: none of 2");
    assertThat(report.at("/cameras/0/model").asText()).isEqualTo(SampleBody.studioA().model());
    assertThat(report.at("/cameras/0/clockOffsetSeconds").isNumber()).isTrue();
  }

  @Test
  void movesARangeInTheOrderOfTimeAndTakesItBack() throws Exception {
    // In the order of names, 0001 and 0002 come before 9998; in the order of time after 9999.
    int status =
        run("frames", job.folder().toString(), "--move", "IMG_9999..img_0001", "002", "--json");
    assertThat(status).isZero();
    assertThat(ran.err()).contains("2 frames moved to 002");
    assertThat(ran.json().at("/bySetup/002/frames").asInt()).isEqualTo(3);
    assertThat(run("frames", job.folder().toString(), "--take-back", "--json")).isZero();
    assertThat(ran.json().at("/bySetup/002/frames").asInt()).isEqualTo(1);
  }

  @Test
  void takesTheEndsOfARangeInWhateverOrder() throws Exception {
    int status =
        run("frames", job.folder().toString(), "--move", "IMG_0001..IMG_9999", "002", "--json");
    assertThat(status).isZero();
    assertThat(ran.err()).contains("2 frames moved to 002");
    assertThat(ran.json().at("/bySetup/002/frames").asInt()).isEqualTo(3);
  }

  @Test
  void refusesARangeThatIsNoneAndChangesNothing() throws Exception {
    for (var range : List.of("IMG_0001..IMG_7777", "..", "IMG_1..IMG_2")) {
      assertThat(run("frames", job.folder().toString(), "--move", range, "002"))
          .as(range)
          .isEqualTo(2);
    }
    assertThat(run("frames", job.folder().toString(), "--move", "IMG_0001", "009")).isEqualTo(2);
    assertThat(ran.err()).doesNotContain("Exception");
    assertThat(run("frames", job.folder().toString(), "--json")).isZero();
    assertThat(ran.json().at("/bySetup/002/frames").asInt()).isEqualTo(1);
  }

  @Test
  void asksForTheFolderWhereTwoBodiesShareAName() throws Exception {
    now = now.plusSeconds(60);
    var other =
        new SampleCamera(
            SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 9998);
    var second = Files.createDirectories(job.framesFolder().resolve("B"));
    other.take(Exposure.of(now, "002", "D")).writeTo(second);
    assertThat(run("frames", job.folder().toString(), "--move", "IMG_9998", "002")).isEqualTo(2);
    assertThat(ran.err())
        .contains("there are 2 frames")
        .contains(Path.of("B", "IMG_9998").toString());
    assertThat(run("frames", job.folder().toString(), "--move", "B/IMG_9998", "001")).isZero();
  }

  @Test
  void aFrameThatIsNotWholeNeedsAPerson() throws Exception {
    var file = job.framesFolder().resolve("IMG_0500.JPG");
    Files.write(file, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF});
    assertThat(run("frames", job.folder().toString())).isEqualTo(1);
    assertThat(ran.out()).contains("Incomplete: 1").contains("IMG_0500");
    assertThat(ran.err()).contains("01_frames");
  }

  @Test
  void saysThatASignedOffSetupChanged() throws Exception {
    now = now.plusSeconds(10);
    job.mark("002", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    shoot("002", "D", 1);
    assertThat(run("frames", job.folder().toString())).isZero();
    assertThat(ran.out()).contains("changed since sign-off");
  }

  @Test
  void watchesAndPrintsOneLineACount() throws Exception {
    assertThat(run("frames", job.folder().toString(), "--watch", "--for", "0", "--json")).isZero();
    assertThat(run("frames", job.folder().toString(), "--watch", "--for", "0")).isZero();
    assertThat(ran.out()).contains("5 frames; on set 002: 1");
  }

  @Test
  void aCopiedFrameCountsOnceAndIsReportedWithARemedy() throws Exception {
    var copies = Files.createDirectory(job.framesFolder().resolve("copies"));
    try (var files = Files.newDirectoryStream(job.framesFolder(), "IMG_9999.*")) {
      for (var file : files) {
        Files.copy(file, copies.resolve(file.getFileName()));
      }
    }
    assertThat(run("frames", job.folder().toString())).isZero();
    assertThat(ran.out().lines().findFirst()).contains("5 frames, 10 files");
    assertThat(ran.err()).contains("it is a copy of").contains("Move one of the two away");
    assertThat(run("frames", job.folder().toString(), "--json")).isZero();
    assertThat(ran.json().at("/frames").asInt()).isEqualTo(5);
    assertThat(ran.json().at("/troubles/0/remedy").asText()).contains("Move one");
    assertThat(ran.json().at("/troubles/0/path").asText()).startsWith("01_frames");
    // What is moved is counted in the same way.
    assertThat(run("frames", job.folder().toString(), "--move", "IMG_9998..IMG_0001", "002"))
        .isZero();
    assertThat(ran.err()).contains("3 frames moved to 002");
  }

  @Test
  void namesCannotActOnTheTerminal() throws Exception {
    var name = "IMG\u001b[31m\u0007.JPG";
    Files.write(job.framesFolder().resolve(name), new byte[] {1, 2, 3});
    assertThat(run("frames", job.folder().toString())).isEqualTo(1);
    assertThat(ran.out() + ran.err()).doesNotContain("\u001b").doesNotContain("\u0007");
    assertThat(run("frames", job.folder().toString(), "--move", "a\0b", "001")).isEqualTo(2);
    assertThat(ran.err()).contains("Give the name of a file");
    assertThat(run("frames", job.folder().toString(), "--move", "IMG_9998", "\u001b[31m"))
        .isEqualTo(2);
    assertThat(ran.err()).doesNotContain("\u001b");
  }

  @Test
  void listsTheFirstTwentyOfMany() throws Exception {
    for (int i = 0; i < 23; i++) {
      Files.write(job.framesFolder().resolve("BAD_%02d.JPG".formatted(i)), new byte[] {1});
    }
    assertThat(run("frames", job.folder().toString())).isEqualTo(1);
    assertThat(ran.out()).contains("Incomplete: 23", "  BAD_19", "  and 3 more");
    assertThat(ran.out()).doesNotContain("BAD_20");
    assertThat(ran.err().lines().filter(line -> line.contains("BAD_"))).hasSize(20);
    assertThat(ran.err()).contains("and 3 more");
  }

  @Test
  void aFolderThatIsNoJobIsBadInput() {
    assertThat(run("frames", folder.toString())).isEqualTo(2);
    assertThat(ran.err()).contains("no job folder");
  }

  private static Setup setup(String code, String title, View... views) {
    return new Setup(code, title, List.of(views), OptionalInt.empty(), new TreeMap<>());
  }

  private void shoot(String setup, String view, int frames) throws Exception {
    for (int i = 0; i < frames; i++) {
      now = now.plusSeconds(2);
      camera.take(Exposure.of(now, setup, view)).writeTo(job.framesFolder());
    }
    now = now.plusMillis(800);
    job.recordArrivals(job.scan());
    now = now.plusSeconds(60);
  }

  private int run(String... args) {
    ran = Ran.run((Object[]) args);
    return ran.status();
  }
}
