package org.framewright.sample;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import org.framewright.base.Progress;
import org.framewright.base.Text;
import org.framewright.frames.slate.Slate;
import org.framewright.job.FramesDescription;
import org.framewright.job.Job;
import org.framewright.job.JobException;
import org.framewright.job.SlateLooks;
import org.framewright.job.Started;
import org.framewright.naming.Convention;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;

/**
 * A day without a cable and without a tick: two bodies whose clocks are wrong, and a slate in the
 * first picture of each setup. Its few pictures are always large enough for slates.
 */
final class SlateDay {
  private static final List<Setup> SETUPS =
      List.of(
          new Setup("001", "Raincoat by the lake"),
          new Setup("002", "Scarf on the jetty"),
          new Setup("003", "Boots in the boathouse"));

  private final Job job;
  private final SampleClock clock;
  private final Narration narration;

  private SlateDay(Job job, SampleClock clock, Narration narration) {
    this.job = job;
    this.clock = clock;
    this.narration = narration;
  }

  /**
   * Plays it.
   *
   * @param into where its job folder is made
   */
  static void play(Convention convention, Path into, Duration shift, Narration narration)
      throws IOException, JobException {
    var clock = new SampleClock(SampleSet.moment(5, 9, 0, shift), SampleSet.ZONE);
    var values = new LinkedHashMap<String, String>();
    values.put(
        convention.fields().containsKey("start") ? "start" : "day",
        LocalDate.ofInstant(clock.instant(), SampleSet.ZONE).toString());
    values.put("client", "KVÖ");
    values.put("title", "AW by the lake");
    switch (Job.start(convention, into, values, clock)) {
      case Started.Opened opened -> new SlateDay(opened.job(), clock, narration).play();
      case Started.Refused refused ->
          throw new JobException(
              SampleDay.told(refused.findings()),
              SampleDay.TEMPLATE,
              Text.of("Fix the template, then play again."));
    }
  }

  private void play() throws IOException {
    narration.heading("A day with slates only");
    job.importList(new ShotList(SETUPS));
    narration.line("On Friday they are by the lake: no cable, no computer, nothing is ticked.");
    narration.line(
        "Body B is an hour fast, and somebody sets body A's clock back by three hours at noon.");
    shoot();
    clock.set(clock.instant().plus(Duration.ofHours(2)));
    var scan = job.scan();
    job.foundPresent(scan);
    narration.line("In the evening both cards are copied into the job, and the slates are read:");
    narration.line("$ framewright frames JOB");
    SlateLooks.of(job, scan, Duration.ofMinutes(1), Progress.NONE);
    FramesDescription.lines(job, job.standing(scan)).forEach(narration::line);
  }

  private void shoot() throws IOException {
    var a = camera(SampleBody.studioA(), 131);
    var b = camera(SampleBody.studioB(), 9996);
    var key = job.slateKey();
    for (var setup : SETUPS) {
      if (setup.equals(SETUPS.getLast())) {
        var body = SampleBody.studioA();
        var back = Duration.ofHours(-3);
        a =
            camera(
                new SampleBody(
                    body.make(), body.model(), body.serial(), ZoneOffset.ofHours(1), back),
                131 + 2 * 5);
      }
      var slate = Slate.of(key, setup.code());
      clock.pass(Duration.ofMinutes(40));
      take(a, exposure(setup).with(slate), "A");
      take(b, exposure(setup).with(slate), "B");
      for (int i = 0; i < 4; i++) {
        take(a, exposure(setup), "A");
        if (i % 2 == 0) {
          take(b, exposure(setup), "B");
        }
      }
    }
  }

  private static SampleCamera camera(SampleBody body, int number) {
    return new SampleCamera(body, SampleCamera.Size.SMALL, SampleCamera.Writes.JPEG, number);
  }

  private Exposure exposure(Setup setup) {
    return Exposure.of(clock.instant(), setup.code(), "F");
  }

  private void take(SampleCamera camera, Exposure exposure, String folder) throws IOException {
    camera.take(exposure).writeTo(job.framesFolder().resolve(folder));
    clock.pass(Duration.ofSeconds(7));
  }
}
