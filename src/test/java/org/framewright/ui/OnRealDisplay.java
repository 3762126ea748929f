package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import javafx.scene.control.Labeled;
import javafx.scene.input.KeyCode;
import javafx.stage.Window;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.job.Station;
import org.framewright.sample.Exposure;
import org.framewright.sample.SampleBody;
import org.framewright.sample.SampleCamera;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.settings.Places;

/**
 * The app on the display of {@code DISPLAY}, driven by events of the window system: a program of
 * its own, because a test's toolkit has no display. {@code OnRealDisplay FOLDER}: what it did goes
 * to standard output, step by step; it ends with 0 if all went well, and with {@link #NO_TOOLKIT}
 * where no window can be shown.
 */
final class OnRealDisplay {
  static final int NO_TOOLKIT = 77;
  static final String DONE = "all steps done";

  private static final int SETUPS = 400;
  private static final int TEN = 10;
  private static final int PER_SECOND = 5;
  private static final int FRAMES = 30;
  private static final List<String> TITLES =
      List.of(
          "Wool coat, double-breasted, with a detachable hood and horn buttons",
          "\u0645\u0639\u0637\u0641 \u0637\u0648\u064a\u0644 \u0645\u0646"
              + " \u0627\u0644\u0635\u0648\u0641 \u0627\u0644\u0623\u0632\u0631\u0642 \u0645\u0639"
              + " \u062d\u0632\u0627\u0645",
          "\u30a6\u30fc\u30eb\u30b3\u30fc\u30c8\u3001\u30c0\u30d6\u30eb\u30d6\u30ec\u30b9\u30c8\u3001\u30ed\u30f3\u30b0\u4e08",
          "\u0e40\u0e2a\u0e37\u0e49\u0e2d\u0e42\u0e04\u0e49\u0e17\u0e02\u0e19\u0e2a\u0e31\u0e15\u0e27\u0e4c\u0e2a\u0e35\u0e19\u0e49\u0e33\u0e40\u0e07\u0e34\u0e19");

  private final Path folder;
  private final Clock clock = Clock.system(ZoneId.systemDefault());
  private final Job job;
  private final OpenApp app;

  private OnRealDisplay(Path folder, Job job, OpenApp app) {
    this.folder = folder;
    this.job = job;
    this.app = app;
  }

  public static void main(String[] args) throws Exception {
    var folder = Path.of(args[0]);
    var clock = Clock.system(ZoneId.systemDefault());
    var titles = IntStream.range(0, SETUPS).mapToObj(i -> TITLES.get(i % TITLES.size())).toList();
    var job = FreshJob.titled(folder, clock, titles);
    OpenApp app;
    try {
      app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(NO_TOOLKIT);
      return;
    }
    // The toolkit's threads would keep the run alive.
    try (var uncaught = new Uncaught()) {
      new OnRealDisplay(folder, job, app).run();
      uncaught.assertNone();
      System.out.println(DONE);
      System.exit(0);
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private void run() throws Exception {
    step("a job of 400 setups in four scripts opens", () -> app.openJob(job));
    step("the first setup comes on set by a key", this::firstOnSet);
    step("frames arrive", this::framesArrive);
    step("ten setups are shot by keyboard", this::tenByKeyboard);
    step("ten setups are shot by mouse", this::tenByMouse);
    step("each page is enlarged and shrunk", this::eachPageLargerAndSmaller);
    step("the client's screen comes and goes", this::clientsScreen);
    step("the folder is moved away and back", this::folderMovedAway);
    step("another program ticks in the same job", this::anotherProgram);
    step("what was done is in the job", this::allIsKept);
    step("the app closes", app::close);
  }

  @FunctionalInterface
  private interface Action {
    void run() throws Exception;
  }

  private static void step(String what, Action action) throws Exception {
    var began = System.nanoTime();
    action.run();
    System.out.printf("%s: %d ms%n", what, (System.nanoTime() - began) / 1_000_000);
  }

  private String code() throws Exception {
    return app.reads(".set-code");
  }

  /** The key is held down for longer than it takes the system to repeat it. */
  private void firstOnSet() throws Exception {
    app.robot().press(KeyCode.SPACE);
    app.awaitReading(".set-code", "001");
    TimeUnit.MILLISECONDS.sleep(1500);
    app.robot().release(KeyCode.SPACE);
    TimeUnit.MILLISECONDS.sleep(500);
    assertThat(code()).as("a key that is held down").isEqualTo("001");
  }

  private void framesArrive() throws Exception {
    var camera =
        new SampleCamera(SampleBody.studioA(), SampleCamera.Size.TINY, SampleCamera.Writes.JPEG, 1);
    for (int i = 0; i < FRAMES; i++) {
      camera.take(Exposure.of(clock.instant(), "001", "F")).writeTo(job.framesFolder());
      TimeUnit.MILLISECONDS.sleep(1000 / PER_SECOND);
    }
    await(() -> app.app().session().view().get().tally().frames() == FRAMES);
  }

  private void tenByKeyboard() throws Exception {
    for (int i = 2; i < 2 + TEN; i++) {
      app.press(KeyCode.SPACE);
      app.awaitReading(".set-code", "%03d".formatted(i));
    }
  }

  private void tenByMouse() throws Exception {
    for (int i = 2 + TEN; i < 2 + 2 * TEN; i++) {
      app.robot().clickOn("#act-next");
      app.awaitReading(".set-code", "%03d".formatted(i));
    }
  }

  private void eachPageLargerAndSmaller() throws Exception {
    for (var page :
        List.of(
            KeyCode.F3, KeyCode.F4, KeyCode.F5, KeyCode.F6, KeyCode.F7, KeyCode.F12, KeyCode.F2)) {
      app.press(page);
      for (var turn : List.of(KeyCode.EQUALS, KeyCode.MINUS)) {
        for (int i = 0; i < 3; i++) {
          var before = size();
          app.press(KeyCode.CONTROL, turn);
          app.await(() -> size() != before);
        }
      }
    }
    app.awaitReading(".set-code", "%03d".formatted(1 + 2 * TEN));
  }

  private double size() {
    return ((Labeled) app.app().scene().getRoot().lookup(".job-title")).getFont().getSize();
  }

  private void clientsScreen() throws Exception {
    for (int windows : new int[] {2, 1, 2, 1}) {
      onInterface(
          () -> {
            app.app().turnClient();
            return app;
          });
      app.await(() -> showing() == windows);
    }
  }

  private static long showing() {
    return Window.getWindows().stream().filter(Window::isShowing).count();
  }

  private void folderMovedAway() throws Exception {
    var before = code();
    var away = Files.move(job.folder(), folder.resolve("away"));
    app.await(() -> !app.reads("#alarm").isEmpty());
    app.press(KeyCode.SPACE);
    app.awaitReading("#status", "That was not done: the job\u2019s folder is not there.");
    assertThat(code()).isEqualTo(before);
    Files.move(away, job.folder());
    app.await(() -> app.reads("#alarm").isEmpty());
  }

  private void anotherProgram() throws Exception {
    var other = Job.open(job.folder(), clock, new Station("other"));
    other.mark("400", SetupState.DROPPED, MarkDetails.NONE);
    app.await(
        () -> app.app().session().view().get().state().of("400").state() == SetupState.DROPPED);
  }

  private void allIsKept() throws Exception {
    var now = Job.open(job.folder(), clock).state();
    for (int i = 1; i <= 2 * TEN; i++) {
      assertThat(now.of("%03d".formatted(i)).state()).isEqualTo(SetupState.SHOT);
    }
    assertThat(now.onSet().orElseThrow().setup()).isEqualTo("%03d".formatted(1 + 2 * TEN));
    assertThat(now.arrivals()).hasSize(FRAMES);
    assertThat(Places.in(folder.resolve("settings")).log())
        .as("the file that takes what nobody foresaw")
        .doesNotExist();
  }

  private void await(Callable<Boolean> condition) throws Exception {
    app.await(condition);
  }
}
