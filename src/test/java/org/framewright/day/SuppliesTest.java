package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.Templates;
import org.framewright.base.Text;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SuppliesTest {
  private static final long GB = 1_000_000_000L;
  private static final Filling PACE =
      new Filling(12 * GB, Duration.ofHours(1), Instant.parse("2026-11-02T12:00:00Z"));

  @TempDir private Path folder;
  private Instant now = Instant.parse("2026-11-02T09:00:00Z");
  private Job job;
  private final SampleCamera camera =
      new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);

  @BeforeEach
  void startAJob() throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    folder,
                    Map.of("day", "2026-11-02", "client", "KVO", "title", "look book"),
                    ((InstantSource) () -> now).withZone(ZoneOffset.UTC)))
            .job();
  }

  private long shoot(String time) throws Exception {
    now = Instant.parse("2026-11-02T" + time + ":00Z");
    var frame = camera.take(Exposure.of(now, "001", "F"));
    frame.writeTo(job.framesFolder());
    return frame.files().values().stream().mapToLong(file -> file.length).sum();
  }

  private Optional<Filling> filling() throws Exception {
    return Filling.of(job.frameLines(job.scan()), ZoneOffset.UTC, now);
  }

  private static Optional<Filling> of(long bytes, int minutes, String until) {
    return Optional.of(
        new Filling(
            bytes, Duration.ofMinutes(minutes), Instant.parse("2026-11-02T" + until + ":00Z")));
  }

  @Test
  void theHourIsTheLastInWhichFramesWereTaken() throws Exception {
    shoot("09:00");
    shoot("09:59");
    long bytes = shoot("10:30") + shoot("11:20");
    // Nothing came since; that they were copied in now plays no part.
    now = Instant.parse("2026-11-02T15:00:00Z");
    assertThat(filling()).isEqualTo(of(bytes, 60, "11:20"));
  }

  @Test
  void aDayThatIsYoungerThanAnHourHasLess() throws Exception {
    long bytes = shoot("09:00") + shoot("09:20");
    assertThat(filling()).isEqualTo(of(bytes, 20, "09:20"));
  }

  @Test
  void aFewMinutesTellNothing() throws Exception {
    assertThat(filling()).isEmpty();
    shoot("09:00");
    shoot("09:09");
    assertThat(filling()).isEmpty();
  }

  @Test
  void aBodyWhoseClockIsAheadTellsNothing() throws Exception {
    long bytes = shoot("09:00") + shoot("09:30");
    shoot("18:00");
    now = Instant.parse("2026-11-02T09:31:00Z");
    assertThat(filling()).isEqualTo(of(bytes, 30, "09:30"));
  }

  // 30 GB at 12 GB an hour.
  @Test
  void aDiskLastsAsLongAsItsRoomIsEnough() {
    assertThat(PACE.lasts(30 * GB)).isEqualTo(Duration.ofMinutes(150));
    assertThat(PACE.lasts(0)).isEqualTo(Duration.ZERO);
    assertThat(PACE.lasts(-1)).isEqualTo(Duration.ZERO);
    assertThat(new Filling(1, Duration.ofHours(1), now).lasts(Long.MAX_VALUE))
        .isEqualTo(Duration.ofHours(100_000));
  }

  @Test
  void saysHowLongEachDiskAndTheBatteryLast() {
    var supplies =
        new Supplies(
            ZoneOffset.UTC,
            Instant.parse("2026-11-02T12:10:00Z"),
            Optional.of(PACE),
            List.of(
                new Supplies.Disk(Supplies.Use.FRAMES, "", 30 * GB),
                new Supplies.Disk(Supplies.Use.COPIES, "SAFE\u001b[31m", 3 * GB),
                new Supplies.Disk(Supplies.Use.CARD, "EOS", 4000 * GB)),
            Optional.of(new Battery(64, Optional.of(Duration.ofMinutes(130)))));
    assertThat(supplies.speed())
        .extracting(Text::english)
        .containsExactly(
            "12.0 GB came in 60 min until 12:00",
            "at that pace the disk of the frames, 30.0 GB free, lasts 2 h 30 min",
            "at that pace the disk of copies SAFE\\u{1B}[31m, 3.0 GB free, lasts 15 min",
            "at that pace the card EOS, 4000.0 GB free, lasts more than 99 h");
    assertThat(supplies.power().map(Text::english))
        .contains("the computer runs on its battery: 64 %, about 2 h 10 min at the present draw");
  }

  @Test
  void saysNothingOfDisksBeforeThereIsAPace() throws Exception {
    var supplies =
        Supplies.of(
            job,
            job.scan(),
            ZoneOffset.UTC,
            List.of(),
            () -> Optional.of(new Battery(9, Optional.empty())));
    assertThat(supplies.speed()).isEmpty();
    assertThat(supplies.power().map(Text::english))
        .contains("the computer runs on its battery: 9 %");
    assertThat(supplies.disks().getFirst().free())
        .isLessThanOrEqualTo(Files.getFileStore(folder).getTotalSpace());
  }
}
