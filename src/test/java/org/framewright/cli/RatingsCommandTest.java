package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.cli.Ran.run;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.framewright.Templates;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code frames JOB --write-ratings}. */
class RatingsCommandTest {
  @TempDir private Path folder;
  private Job job;
  private Path sidecar;

  @BeforeEach
  void aJobWithARatedFrame() throws Exception {
    var values = Map.of("day", "2026-11-23", "client", "KVO", "title", "look book");
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(), folder, values, Clock.system(ZoneId.systemDefault())))
            .job();
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    camera
        .take(Exposure.of(Instant.parse("2026-11-23T09:00:00Z"), "001", "F"))
        .writeTo(job.framesFolder());
    try (var files = Files.list(job.framesFolder())) {
      for (var file : files.toList()) {
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(Duration.ofHours(1))));
      }
    }
    var frame = job.scan().frames().getFirst();
    job.rate(List.of(frame.id()), 4, "Ines");
    sidecar = frame.folder().resolve(frame.stem() + ".xmp");
  }

  @Test
  void aPreviewNamesTheSidecarsAndWritesNone() {
    var ran = run("frames", job.folder(), "--write-ratings", "--preview");
    assertThat(ran.status()).isZero();
    assertThat(ran.out())
        .contains(sidecar.getFileName() + "  4  new", "1 sidecar would be written");
    assertThat(sidecar).doesNotExist();
  }

  @Test
  void theRatingIsWrittenAndNothingIsLeftToWrite() throws Exception {
    var ran = run("frames", job.folder(), "--write-ratings", "--json");
    assertThat(ran.status()).isZero();
    assertThat(ran.json().path("written").asBoolean()).isTrue();
    assertThat(ran.json().path("sidecars").path(0).path("rating").asInt()).isEqualTo(4);
    assertThat(ran.json().path("sidecars").path(0).path("new").asBoolean()).isTrue();
    assertThat(sidecar).content().contains("Rating>4<");
    assertThat(run("frames", job.folder(), "--write-ratings").out()).contains("0 sidecars written");
  }

  @Test
  void whatCannotBeWrittenNeedsAPerson() throws Exception {
    Files.writeString(sidecar, "no packet");
    Files.setLastModifiedTime(sidecar, FileTime.from(Instant.now().minus(Duration.ofHours(1))));
    var ran = run("frames", job.folder(), "--write-ratings");
    assertThat(ran.status()).isEqualTo(1);
    assertThat(ran.err()).contains("the rating is not in its sidecar", "it stayed as it was");
  }

  @Test
  void anotherTaskTogetherWithItIsRefused() {
    assertThat(run("frames", job.folder(), "--write-ratings", "--watch").status()).isEqualTo(2);
    assertThat(run("frames", job.folder(), "--preview").status()).isEqualTo(2);
    assertThat(sidecar).doesNotExist();
  }
}
