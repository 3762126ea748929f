package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;

/**
 * A scanner at the app on the display of {@code DISPLAY}, played by xdotool on the keys of a US
 * keyboard, while the computer is set to several keyboards and its interface is held up now and
 * then. A program of its own, as {@link OnRealDisplay}.
 */
final class ScansOnRealDisplay {
  static final int NO_SCANNER = 78;

  private static final int SETUPS = 30;
  private static final List<String> KEYBOARDS = List.of("us", "de", "fr");
  private static final int SCANS = 10;
  private static final int ATTEMPTS = 20;

  /** Milliseconds a key, at most. */
  private static final int SCANNERS_PACE = 33;

  /** xdotool waits half of it before a key is let go and half after it. */
  private static final String DELAY = System.getProperty("scans.delay", "8");

  /**
   * The codes of the keys 1, 2 ... 9, 0 and Enter on every PC keyboard (xkeyboard-config, evdev).
   */
  private static final int KEY_1 = 10;

  private static final int KEY_0 = 19;
  private static final String ENTER = "36";

  private final OpenApp app;
  private final Job job;
  private final Clock clock;

  private ScansOnRealDisplay(OpenApp app, Job job, Clock clock) {
    this.app = app;
    this.job = job;
    this.clock = clock;
  }

  public static void main(String[] args) throws Exception {
    if (!runs("xdotool", "version") || !runs("setxkbmap", "us")) {
      System.exit(NO_SCANNER);
    }
    var folder = Path.of(args[0]);
    var clock = Clock.system(ZoneId.systemDefault());
    var titles = IntStream.rangeClosed(1, SETUPS).mapToObj(i -> "Wool coat " + i).toList();
    var job = FreshJob.titled(folder, clock, titles);
    for (int i = 1; i <= SETUPS; i++) {
      var setup = job.shotList().setup(code(i)).orElseThrow();
      job.changeSetup(FreshJob.with(setup, "EAN", ean(i)));
    }
    OpenApp app;
    try {
      app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(OnRealDisplay.NO_TOOLKIT);
      return;
    }
    // The toolkit's threads would keep the run alive.
    try (var uncaught = new Uncaught()) {
      new ScansOnRealDisplay(app, job, clock).run();
      uncaught.assertNone();
      System.out.println(OnRealDisplay.DONE);
      System.exit(0);
    } catch (Exception | Error e) {
      e.printStackTrace();
      System.exit(1);
    }
  }

  private static String code(int number) {
    return "%03d".formatted(number);
  }

  /** In the range that GS1 keeps for use within a company; the check digit as GS1 has it. */
  private static String ean(int number) {
    var twelve = "20%010d".formatted(number * 7_654_321L % 10_000_000_000L);
    var sum =
        IntStream.range(0, 12).map(i -> (twelve.charAt(i) - '0') * (i % 2 == 0 ? 1 : 3)).sum();
    return twelve + (10 - sum % 10) % 10;
  }

  private static boolean runs(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  private void run() throws Exception {
    app.openJob(job);
    app.await(() -> app.exists("#filter"));
    app.press(KeyCode.SLASH);
    app.await(() -> app.holdsTheKeys("#filter"));
    var typed = new StringBuilder();
    int scan = 0;
    for (var keyboard : KEYBOARDS) {
      assertThat(runs("setxkbmap", keyboard)).isTrue();
      TimeUnit.MILLISECONDS.sleep(500);
      for (int i = 0; i < (keyboard.equals("us") ? SCANS - 6 : 3); i++) {
        var letter = "wool coat ".substring(scan % 10, scan % 10 + 1);
        assertThat(runs("xdotool", "type", "--delay", "200", letter)).isTrue();
        typed.append(letter);
        awaitField(typed.toString());
        scan++;
        var code = code(2 * scan);
        if (scan % 2 == 0) {
          holdUp(50 * scan % 300);
        }
        scan(ean(2 * scan), typed.toString());
        app.awaitReading(".set-code", code);
        TimeUnit.MILLISECONDS.sleep(300);
        assertThat(field()).as("the field after a scan on " + keyboard).isEqualTo(typed.toString());
        System.out.println("scan " + scan + " on " + keyboard + ": " + code);
      }
    }
    var now = Job.open(job.folder(), clock).state();
    assertThat(now.onSet().orElseThrow().setup()).isEqualTo(code(2 * SCANS));
    app.close();
  }

  private void awaitField(String text) throws Exception {
    try {
      app.await(() -> field().equals(text));
    } catch (AssertionError e) {
      throw new AssertionError("\"%s\" in the field, not \"%s\"".formatted(field(), text), e);
    }
  }

  private String field() throws Exception {
    return onInterface(() -> ((TextField) app.app().scene().lookup("#filter")).getText());
  }

  /** A moment after the scan has begun. */
  private static void holdUp(int millis) {
    Thread.startVirtualThread(
        () -> {
          sleep(60);
          Platform.runLater(() -> sleep(millis));
        });
  }

  private static void sleep(int millis) {
    try {
      TimeUnit.MILLISECONDS.sleep(millis);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /** Where the computer is too busy to press keys as fast as a scanner, it is tried again. */
  private void scan(String digits, String field) throws Exception {
    for (int i = 0; i < ATTEMPTS; i++) {
      var began = System.nanoTime();
      press(digits);
      var took = System.nanoTime() - began;
      if (took / (digits.length() + 1) < TimeUnit.MILLISECONDS.toNanos(SCANNERS_PACE)) {
        return;
      }
      TimeUnit.SECONDS.sleep(1);
      onInterface(
          () -> {
            ((TextField) app.app().scene().lookup("#filter")).setText(field);
            return field;
          });
    }
    throw new IllegalStateException("The computer was too busy to play a scanner.");
  }

  private static void press(String digits) throws InterruptedException {
    var command = new ArrayList<>(List.of("xdotool", "key", "--delay", DELAY));
    for (int i = 0; i < digits.length(); i++) {
      char c = digits.charAt(i);
      command.add(String.valueOf(c == '0' ? KEY_0 : KEY_1 + c - '1'));
    }
    command.add(ENTER);
    assertThat(runs(command.toArray(String[]::new))).isTrue();
  }
}
