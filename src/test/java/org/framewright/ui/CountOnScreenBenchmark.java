package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import javafx.application.Platform;
import javafx.scene.control.Label;
import javafx.stage.Stage;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;

/**
 * Measures how long it takes from a frame's file being closed until the count of the setup on set
 * is laid out in the window, while frames come in at five a second. What is told includes the time
 * for which a file must hold still before it counts ({@code FrameScanner}).
 */
final class CountOnScreenBenchmark {
  private static final int PER_SECOND = 5;
  private static final int WARM = 20;

  private CountOnScreenBenchmark() {}

  /** {@code CountOnScreenBenchmark [SETUPS FRAMES [TIMES]]}; 400, 5,000 and 120 if not given. */
  public static void main(String[] args) throws Exception {
    var setups = args.length > 0 ? Integer.parseInt(args[0]) : 400;
    var frames = args.length > 1 ? Integer.parseInt(args[1]) : 5_000;
    var times = args.length > 2 ? Integer.parseInt(args[2]) : 120;
    try {
      run(setups, frames, times);
      System.exit(0);
    } catch (Exception e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private static void run(int setups, int frames, int times) throws Exception {
    Locale.setDefault(Locale.ENGLISH);
    var clock = Clock.system(ZoneId.systemDefault());
    var work = Files.createTempDirectory("framewright-count");
    var folder =
        SampleJobs.large(
            SampleFiles.below(Path.of("").toAbsolutePath()),
            work.resolve("job"),
            setups,
            frames,
            clock.instant());
    Files.writeString(work.resolve("preferences.json"), "{\"safety.reminded\": \"never again\"}");
    Platform.startup(() -> {});
    Platform.setImplicitExit(false);
    var app =
        onInterface(
            () -> {
              var stage = new Stage();
              var made = OpenApp.composed(stage, work, clock, new PlatformChoosers(stage));
              made.open();
              made.openJob(folder);
              return made;
            });
    while (onInterface(() -> app.session() == null || count(app) == null)) {
      TimeUnit.MILLISECONDS.sleep(50);
    }
    TimeUnit.SECONDS.sleep(5);
    var shown = new AtomicLong();
    onInterface(
        () -> {
          app.scene().addPostLayoutPulseListener(() -> shown.set(Long.parseLong(count(app))));
          return app;
        });
    var camera =
        new SampleCamera(SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    var job = app.session().job();
    var code = job.state().onSet().orElseThrow().setup();
    var took = new double[times];
    long before = Long.parseLong(onInterface(() -> count(app)));
    for (var i = -WARM; i < times; i++) {
      camera
          .take(Exposure.of(clock.instant(), code, "F"))
          .writeTo(job.framesFolder().resolve("new"));
      var closed = System.nanoTime();
      before++;
      while (shown.get() < before) {
        TimeUnit.MILLISECONDS.sleep(1);
      }
      var millis = (System.nanoTime() - closed) / 1e6;
      if (i >= 0) {
        took[i] = millis;
      }
      TimeUnit.MILLISECONDS.sleep(Math.max(0, 1000 / PER_SECOND - (long) millis));
    }
    Arrays.sort(took);
    System.out.printf(
        Locale.ROOT,
        "from file closed to count laid out, %d frames: median %.0f, p99 %.0f, most %.0f ms%n",
        times,
        took[times / 2],
        took[(int) (times * 0.99)],
        took[times - 1]);
  }

  private static String count(Composition app) {
    return app.scene().lookup(".view-count") instanceof Label label ? label.getText() : null;
  }
}
