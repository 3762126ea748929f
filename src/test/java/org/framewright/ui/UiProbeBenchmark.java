package org.framewright.ui;

import static org.framewright.ui.OnInterface.onInterface;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.ref.WeakReference;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.StringTokenizer;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Predicate;
import javafx.application.Platform;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Region;
import javafx.stage.Stage;
import org.framewright.job.Job;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.sample.SampleFiles;
import org.framewright.sample.SampleJobs;

/**
 * Measures the interface thread on a large job: how long each opening, each key typed in the filter
 * and each tick hold it at most in one go, and how long it stalls while frames arrive in a burst.
 * The first opening is measured by itself: it loads classes and styles, and runs code that nothing
 * has compiled yet. All are wall time; the toolkit's headless platform, which draws each picture of
 * the window without a graphics processor and copies it pixel by pixel on this thread, counts
 * against us. What a machine below took from this one for others is nobody's fault here: the holds
 * in which it took nothing are counted apart.
 */
final class UiProbeBenchmark {
  private static final int BURST_PER_SECOND = 30;
  private static final int BURST_SECONDS = 10;
  private static final int TIMES = 200;
  private static final int FOLLOWS_MILLIS = 60;

  private static final Path STAT = Path.of("/proc/stat");

  /** So many words stand before it in its line. */
  private static final int STEAL = 8;

  private final Clock clock = Clock.system(ZoneId.systemDefault());

  private final int times;
  private Watch watch;

  private UiProbeBenchmark(int times) {
    this.times = times;
  }

  /** {@code UiProbeBenchmark [SETUPS FRAMES [TIMES]]}; 5,000, 20,000 and 200 if not given. */
  public static void main(String[] args) throws Exception {
    var setups = args.length > 0 ? Integer.parseInt(args[0]) : 5_000;
    var frames = args.length > 1 ? Integer.parseInt(args[1]) : 20_000;
    try {
      var times = args.length > 2 ? Integer.parseInt(args[2]) : TIMES;
      new UiProbeBenchmark(times).run(setups, frames);
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
    // No reminder comes in between, at midnight either.
    Files.writeString(work.resolve("preferences.json"), "{\"safety.reminded\": \"never again\"}");
    Platform.startup(() -> {});
    Platform.setImplicitExit(false);
    var app =
        onInterface(
            () -> {
              var stage = new Stage();
              var made = OpenApp.composed(stage, work, clock, new PlatformChoosers(stage));
              made.open();
              return made;
            });

    watch = new Watch();
    settle();
    measure("opening, the first, until the list is shown", 1, _ -> open(app, folder));
    settle();
    measure("opening again", times, _ -> open(app, folder));
    settle();
    measure("typing in the filter", times, i -> type(app, i));
    onInterface(() -> filter(app, ""));
    settle();
    measure("ticking", times, _ -> tick(app));
    settle();
    measure("burst of 30 frames a second", 1, _ -> burst(app.session().job()));
    tell(
        "frames counted at the end",
        onInterface(() -> app.session().view().get().tally().frames()));
    System.gc();
    var runtime = Runtime.getRuntime();
    tell("heap after a collection, MB", (runtime.totalMemory() - runtime.freeMemory()) / 1e6);
    watch.stop();
  }

  private static void open(Composition app, Path folder) throws Exception {
    // Held weakly: the app lets go of a job before it reads the next, and so must the probe.
    var before = new WeakReference<>(app.session());
    onInterface(
        () -> {
          app.openJob(folder);
          return app;
        });
    ListView<?> list = null;
    while (list == null) {
      TimeUnit.MILLISECONDS.sleep(5);
      list =
          onInterface(
              () ->
                  app.session() == null || before.refersTo(app.session())
                      ? null
                      : (ListView<?>) app.scene().lookup("#setups"));
    }
    var found = list;
    // It has come with all lines that there is room for.
    while (onInterface(() -> found.getMaxHeight() != Region.USE_COMPUTED_SIZE)) {
      TimeUnit.MILLISECONDS.sleep(5);
    }
  }

  private static void type(Composition app, int i) throws Exception {
    // Other digits each time: lines come as well as go.
    onInterface(() -> filter(app, String.valueOf(i * 37 % 1000).substring(0, 1 + i % 2)));
  }

  private static Object filter(Composition app, String text) {
    ((TextField) app.scene().lookup("#filter")).setText(text);
    return text;
  }

  private static void tick(Composition app) throws Exception {
    var revision = onInterface(() -> app.session().view().get().revision());
    onInterface(
        () -> {
          var list = app.scene().lookup("#setups");
          KeyStroke.on(list, KeyCode.SPACE, false);
          return list;
        });
    while (onInterface(() -> app.session().view().get().revision()).equals(revision)) {
      TimeUnit.MILLISECONDS.sleep(1);
    }
  }

  private void burst(Job job) throws Exception {
    var camera =
        new SampleCamera(SampleBody.studioB(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (var i = 0; i < BURST_PER_SECOND * BURST_SECONDS; i++) {
      camera
          .take(Exposure.of(clock.instant(), "1", "F"))
          .writeTo(job.framesFolder().resolve("burst"));
      TimeUnit.MILLISECONDS.sleep(1000 / BURST_PER_SECOND);
    }
    settle();
  }

  /**
   * Does it so many times; tells of each time the longest hold, the processor time of all holds,
   * and how long it took until it was done.
   */
  private void measure(String what, int times, Step step) throws Exception {
    var longest = new double[times];
    var undisturbed = new double[times];
    var all = new double[times];
    var took = new double[times];
    int disturbed = 0;
    for (var i = 0; i < times; i++) {
      watch.begin();
      var before = watch.processorTime();
      var began = System.nanoTime();
      step.take(i);
      took[i] = (System.nanoTime() - began) / 1e6;
      // What follows in the next pulses belongs to it.
      TimeUnit.MILLISECONDS.sleep(FOLLOWS_MILLIS);
      longest[i] = watch.longest(_ -> true);
      undisturbed[i] = watch.longest(hold -> hold.stolen() == 0);
      disturbed += longest[i] > undisturbed[i] ? 1 : 0;
      all[i] = watch.processorTime() - before;
    }
    tellSpread(what + ": longest hold of each", longest);
    tellSpread("  without holds that were stolen from (%d)".formatted(disturbed), undisturbed);
    tellSpread(what + ": processor time of each", all);
    tellSpread(what + ": time of each", took);
  }

  /**
   * How much of our processors the machine below took for others, in ticks of mostly 10 ms; 0 where
   * nobody tells. On a virtual machine with busy neighbours this holds any thread, ours and the
   * toolkit's alike. "steal" of /proc/stat, proc_stat(5) of the Linux manual.
   */
  private static long stolenTicks() throws IOException {
    if (!Files.isReadable(STAT)) {
      return 0;
    }
    try (var stat = Files.newBufferedReader(STAT, StandardCharsets.US_ASCII)) {
      var processors = new StringTokenizer(stat.readLine());
      for (var before = 0; before < STEAL; before++) {
        processors.nextToken();
      }
      return Long.parseLong(processors.nextToken());
    }
  }

  /** One time of what is measured; returns when it is over. */
  @FunctionalInterface
  private interface Step {
    void take(int time) throws Exception;
  }

  /**
   * The interface thread seen from outside: posts to it again and again and keeps how long each
   * post waited, behind work of ours, pulses with their styles and layout, collections, whatever it
   * was.
   */
  private static final class Watch {
    /**
     * How long a post waited.
     *
     * @param millis in milliseconds
     * @param stolen what was taken from this machine meanwhile, in ticks
     */
    record Hold(double millis, long stolen) {}

    private final ConcurrentLinkedQueue<Hold> holds = new ConcurrentLinkedQueue<>();
    private final AtomicBoolean running = new AtomicBoolean(true);
    private final Thread interfaceThread;

    Watch() throws Exception {
      interfaceThread = onInterface(Thread::currentThread);
      Thread.ofPlatform().daemon().start(this::run);
    }

    private void run() {
      try {
        while (running.get()) {
          var stolen = stolenTicks();
          var posted = System.nanoTime();
          onInterface(() -> "");
          var millis = (System.nanoTime() - posted) / 1e6;
          holds.add(new Hold(millis, stolenTicks() - stolen));
          TimeUnit.MILLISECONDS.sleep(1);
        }
      } catch (Exception _) {
        running.set(false);
      }
    }

    void begin() {
      holds.clear();
    }

    double longest(Predicate<Hold> of) {
      return holds.stream().filter(of).mapToDouble(Hold::millis).max().orElse(0);
    }

    double processorTime() {
      return ManagementFactory.getThreadMXBean().getThreadCpuTime(interfaceThread.threadId()) / 1e6;
    }

    void stop() {
      running.set(false);
    }
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
