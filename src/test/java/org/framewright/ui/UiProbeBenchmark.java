package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Platform;
import javafx.event.Event;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.stage.Stage;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;
import org.framewright.ui.settings.Places;

/**
 * Measures the interface thread on a large job: how long opening, typing in the filter and ticking
 * hold it, and how long it stalls while frames arrive in a burst.
 */
final class UiProbeBenchmark {
  private static final int BURST_PER_SECOND = 30;
  private static final int BURST_SECONDS = 10;
  private static final int TICKS = 100;

  private final Clock clock = Clock.system(ZoneId.systemDefault());

  private UiProbeBenchmark() {}

  /** {@code UiProbeBenchmark [SETUPS FRAMES]}; 5,000 and 20,000 if not told. */
  public static void main(String[] args) throws Exception {
    var setups = args.length > 0 ? Integer.parseInt(args[0]) : 5_000;
    var frames = args.length > 1 ? Integer.parseInt(args[1]) : 20_000;
    try {
      new UiProbeBenchmark().run(setups, frames);
      System.exit(0);
    } catch (Exception e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private void run(int setups, int frames) throws Exception {
    Locale.setDefault(Locale.ENGLISH);
    var work = Files.createTempDirectory("framewright-probe");
    var folder =
        SampleJobs.large(
            SampleFiles.below(Path.of("").toAbsolutePath()),
            work.resolve("job"),
            setups,
            frames,
            clock.instant());
    Files.writeString(
        work.resolve("preferences.json"),
        "{\"safety.reminded\": \"" + LocalDate.now(clock) + "\"}");
    Platform.startup(() -> {});
    Platform.setImplicitExit(false);
    var app =
        onInterface(
            () -> {
              var stage = new Stage();
              var made =
                  new Composition(
                      stage,
                      Places.in(work),
                      clock,
                      Locale.ENGLISH,
                      Background.threads(),
                      Platform::runLater,
                      new PlatformChoosers(stage));
              made.open();
              return made;
            });

    var stalls = new Stalls();
    stalls.begin();
    var begun = System.nanoTime();
    onInterface(
        () -> {
          app.openJob(folder);
          return app;
        });
    while (!onInterface(app::pageIds).contains("board")) {
      TimeUnit.MILLISECONDS.sleep(5);
    }
    onInterface(() -> app);
    tell("opening, until the list is shown", (System.nanoTime() - begun) / 1e6);
    tell("opening, interface thread held at most", stalls.longest());

    settle();
    stalls.begin();
    var typing = new double[TICKS];
    for (var i = 0; i < TICKS; i++) {
      var text = String.valueOf(i * 37 % 1000).substring(0, 1 + i % 2);
      typing[i] =
          held(
              () -> {
                ((TextField) app.scene().lookup("#filter")).setText(text);
                app.scene().getRoot().applyCss();
                app.scene().getRoot().layout();
              });
    }
    tellSpread("typing in the filter, with layout, processor time", typing);
    tell("typing, interface thread held at most", stalls.longest());
    held(() -> ((TextField) app.scene().lookup("#filter")).clear());

    settle();
    stalls.begin();
    var shown = new double[TICKS];
    for (var i = 0; i < TICKS; i++) {
      var revision = onInterface(() -> app.session().view().get().revision());
      var start = System.nanoTime();
      onInterface(
          () -> {
            app.scene().lookup("#setups").requestFocus();
            Event.fireEvent(
                app.scene().lookup("#setups"),
                new KeyEvent(
                    KeyEvent.KEY_PRESSED, " ", "", KeyCode.SPACE, false, false, false, false));
            return app;
          });
      while (onInterface(() -> app.session().view().get().revision()).equals(revision)) {
        Thread.onSpinWait();
      }
      shown[i] = (System.nanoTime() - start) / 1e6;
    }
    tellSpread("a tick, from the key to the screen, flushed to the disk between", shown);
    tellSpread("ticking, each hold of the interface thread", stalls.all());
    tell("ticking, interface thread held at most", stalls.longest());

    settle();
    stalls.begin();
    var job = app.session().job();
    var camera =
        new SampleCamera(SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (var i = 0; i < BURST_PER_SECOND * BURST_SECONDS; i++) {
      camera
          .take(Exposure.of(clock.instant(), "1", "F"))
          .writeTo(job.framesFolder().resolve("burst"));
      TimeUnit.MILLISECONDS.sleep(1000 / BURST_PER_SECOND);
    }
    settle();
    tellSpread("burst of 30 frames a second, each hold of the interface thread", stalls.all());
    tell("burst, interface thread held at most", stalls.longest());
    tell(
        "frames counted at the end",
        onInterface(() -> app.session().view().get().tally().frames()));

    System.gc();
    var runtime = Runtime.getRuntime();
    tell("heap after a collection, MB", (runtime.totalMemory() - runtime.freeMemory()) / 1e6);
    stalls.stop();
  }

  /** Posts to the interface again and again and keeps how long each post waited. */
  private static final class Stalls {
    private final ConcurrentLinkedQueue<Double> waits = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean running = new AtomicBoolean(true);

    Stalls() {
      Thread.ofPlatform()
          .daemon()
          .start(
              () -> {
                try {
                  while (running.get()) {
                    var posted = System.nanoTime();
                    onInterface(() -> "");
                    waits.add((System.nanoTime() - posted) / 1e6);
                    TimeUnit.MILLISECONDS.sleep(2);
                  }
                } catch (Exception _) {
                  running.set(false);
                }
              });
    }

    void begin() {
      waits.clear();
    }

    double[] all() {
      return waits.stream().mapToDouble(Double::doubleValue).toArray();
    }

    double longest() {
      return Arrays.stream(all()).max().orElse(0);
    }

    void stop() {
      running.set(false);
    }
  }

  private static double held(Runnable action) throws Exception {
    return onInterface(
        () -> {
          // Processor time: other programs on the machine do not count.
          var threads = ManagementFactory.getThreadMXBean();
          var start = threads.getCurrentThreadCpuTime();
          action.run();
          return (threads.getCurrentThreadCpuTime() - start) / 1e6;
        });
  }

  private static void settle() throws InterruptedException {
    TimeUnit.SECONDS.sleep(3);
  }

  private static void tellSpread(String what, double[] millis) {
    Arrays.sort(millis);
    if (millis.length > 0) {
      System.out.printf(
          Locale.ROOT,
          "%-66s median %7.2f  p99 %7.2f  most %7.2f ms%n",
          what,
          millis[millis.length / 2],
          millis[(int) (millis.length * 0.99)],
          millis[millis.length - 1]);
    }
  }

  private static void tell(String what, double value) {
    System.out.printf(Locale.ROOT, "%-66s %8.2f%n", what, value);
  }
}
