package org.framewright.report;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Progress;
import org.framewright.day.DayHours;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Started;
import org.framewright.job.TestClock;
import org.framewright.naming.Convention;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.shotlist.ShotList;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A contact sheet of thousands takes no more memory than computers have to spare. */
@Tag("slow")
class LargeSheetTest {
  private static final int SETUPS = 40;
  private static final int EACH = 50;

  @TempDir private Path folder;

  @Test
  void twoThousandPicturesArePrintedIn300Megabytes() throws Exception {
    var job = job();
    var pdf = folder.resolve("sheet.pdf");
    var words =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx300m",
                "-XX:+UseSerialGC",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                LargeSheetTest.class.getName(),
                job.toString(),
                pdf.toString()));
    var told = folder.resolve("told");
    var process =
        new ProcessBuilder(words).redirectErrorStream(true).redirectOutput(told.toFile()).start();
    assertThat(process.waitFor(15, TimeUnit.MINUTES)).isTrue();
    assertThat(Files.readString(told)).contains("Done[pictures=" + SETUPS * EACH);
    assertThat(process.exitValue()).isZero();
    assertThat(Files.size(pdf)).isLessThan(100L << 20);
  }

  private Path job() throws Exception {
    var clock = new TestClock("2026-11-23T09:00:00Z");
    var text = Files.readString(Path.of("templates/fashion-days.yaml"));
    var convention = ((Convention.Parsed.Sound) Convention.parse(text, "test.yaml")).convention();
    var job =
        ((Started.Opened)
                Job.start(
                    convention,
                    folder,
                    Map.of("day", "2026-11-23", "client", "KVO", "title", "Wool"),
                    clock))
            .job();
    var setups = new ArrayList<Setup>();
    for (int i = 1; i <= SETUPS; i++) {
      setups.add(ReportScene.setup(i, "Coat " + i));
    }
    job.importList(new ShotList(setups));
    var camera =
        new SampleCamera(
            SampleBody.studioA(), SampleCamera.Size.SMALL, SampleCamera.Writes.JPEG, 1);
    for (var setup : setups) {
      job.mark(setup.code(), SetupState.ON_SET, MarkDetails.by("Timo").andView("F"));
      for (int i = 0; i < EACH; i++) {
        clock.pass(Duration.ofSeconds(5));
        var exposure = Exposure.of(clock.instant(), setup.code(), "F");
        camera.take(i % 3 == 0 ? exposure.heldUpright() : exposure).writeTo(job.framesFolder());
      }
    }
    return job.folder();
  }

  /** Prints the sheet of a job: the part that is run with little memory. */
  public static void main(String[] arguments) throws Exception {
    var job =
        Job.open(
            Path.of(arguments[0]),
            Clock.fixed(Instant.parse("2026-11-23T18:00:00Z"), ZoneOffset.UTC));
    var options =
        new ReportOptions(
            ReportKind.SHEET,
            Paper.A4,
            Locale.ENGLISH,
            DayHours.usual(ZoneOffset.UTC),
            Letterhead.NONE);
    var written =
        Report.of(job, job.scan(), options)
            .write(Path.of(arguments[1]), ReportForm.PDF, true, Progress.NONE);
    System.out.println(written);
  }
}
