package org.framewright.ui.day;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.day.Battery;
import org.framewright.day.DayHours;
import org.framewright.day.Supplies;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.TestClock;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.FreshJob;
import org.framewright.ui.look.Texts;
import org.framewright.ui.page.ViewWords;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;

/** A job in the middle of its day, at ten to twelve, opened on the test's own thread. */
final class DayScene implements AutoCloseable {
  static final Texts TEXTS = Texts.in(Locale.UK);
  static final DayHours HOURS = DayHours.usual(ZoneOffset.UTC);

  final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  final List<Throwable> troubles = new ArrayList<>();
  final JobSession session;

  private DayScene(Path folder, List<String> titles) throws Exception {
    var job = FreshJob.titled(Files.createDirectory(folder.resolve("shoot")), clock, titles);
    this.session =
        JobSession.begin(Job.open(job.folder(), clock), Progress.NONE, Runnable::run, Runnable::run)
            .orElseThrow();
  }

  /** Nothing was shot yet. */
  static DayScene fresh(Path folder, String... titles) throws Exception {
    return new DayScene(folder, List.of(titles));
  }

  /** Three of five setups are shot, in 30, 40 and 50 minutes, with two frames each. */
  static DayScene inTheMiddle(Path folder) throws Exception {
    var scene =
        new DayScene(
            folder,
            List.of("Wool coat", "معطف صوفي طويل", "羊毛のコート", "Silk blouse", "Pleated skirt"));
    var job = scene.job();
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    int minutes = 20;
    for (var setup : List.of("001", "002", "003")) {
      minutes += 10;
      job.mark(setup, SetupState.ON_SET, MarkDetails.NONE.andView("F"));
      for (int i = 0; i < 2; i++) {
        camera.take(Exposure.of(scene.clock.instant(), setup, "F")).writeTo(job.framesFolder());
        job.recordArrivals(job.scan());
        scene.clock.pass(Duration.ofMinutes(minutes / 2));
      }
      job.mark(setup, SetupState.SHOT, MarkDetails.NONE);
    }
    job.mark("001", SetupState.SIGNED_OFF, MarkDetails.by("Odette"));
    scene.clock.pass(Duration.ofMinutes(50));
    scene.session.look();
    return scene;
  }

  Job job() {
    return session.job();
  }

  void mark(String setup, SetupState to, Optional<String> reason) throws Exception {
    session.change(
        "",
        job -> job.mark(setup, to, new MarkDetails(Optional.empty(), Optional.empty(), reason)),
        _ -> {},
        troubles::add);
  }

  DayModel model() {
    return model(Tasks.immediate());
  }

  DayModel model(Tasks tasks) {
    var reader =
        new DayNow.Reader(
            job(),
            () -> HOURS,
            () -> List.of(new Supplies.Disk(Supplies.Use.COPIES, "SSD 1", 500_000_000_000L)),
            () -> Optional.of(new Battery(64, Optional.of(Duration.ofMinutes(130)))));
    var views = new ViewWords(job().convention());
    return new DayModel(
        session.view(),
        clock::instant,
        view -> DayShown.of(reader.read(view), TEXTS, views),
        tasks,
        troubles::add);
  }

  Instant now() {
    return clock.instant();
  }

  @Override
  public void close() {
    session.close();
  }
}
