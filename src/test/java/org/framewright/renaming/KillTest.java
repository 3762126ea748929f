package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.lang.System.Logger.Level;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.locks.LockSupport;
import org.framewright.base.Progress;
import org.framewright.disk.Strace;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInfo;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The program is killed, or its system calls fail, at every rename and every flush: a real process
 * on a real file system, by strace(1). The kernel lives on, so this shows what a crash of the
 * program leaves; what a power cut leaves is shown by the model and by the loop-mounted volumes.
 */
@Tag("slow")
class KillTest {
  private static final String KILL = ":signal=SIGKILL:when=";

  @TempDir Path scratch;
  private Strace strace;
  private final Map<String, Integer> tally = new TreeMap<>();

  @BeforeEach
  void needsStrace() throws IOException, InterruptedException {
    strace = Strace.in(scratch);
  }

  /** A run that is to be killed at a call, the first being 1; it says whether it was. */
  private interface Attempt {
    boolean killedAt(int point) throws Exception;
  }

  /** Kills at one call later each time, until there are no more calls; says how many there were. */
  private static int killPoints(Attempt attempt) throws Exception {
    int points = 0;
    while (attempt.killedAt(points + 1)) {
      points++;
    }
    return points;
  }

  @ParameterizedTest
  @ValueSource(strings = {"renameat2", "fsync"})
  void anApplyKilledAtAnyCallEndsWhollyOldOrWhollyNew(
      String call, TestInfo info, TestReporter reporter) throws Exception {
    int points =
        killPoints(
            point -> {
              var scene = Scene.make(folder());
              var run = run("apply", call + KILL + point);
              endsWhole(scene, scene.before(), scene.after());
              return run.killed();
            });
    report(info, reporter, call, points);
    assertThat(points).isGreaterThanOrEqualTo(call.equals("fsync") ? 6 : 29);
  }

  @ParameterizedTest
  @ValueSource(strings = {"renameat2", "fsync"})
  void anUndoKilledAtAnyCallEndsWhollyOldOrWhollyNew(
      String call, TestInfo info, TestReporter reporter) throws Exception {
    int points =
        killPoints(
            point -> {
              var scene = Scene.make(folder());
              apply(scene);
              var run = run("undo", call + KILL + point);
              endsWhole(scene, scene.after(), scene.before());
              return run.killed();
            });
    report(info, reporter, call, points);
    assertThat(points).isGreaterThanOrEqualTo(call.equals("fsync") ? 6 : 29);
  }

  @ParameterizedTest
  @ValueSource(strings = {"renameat2", "fsync"})
  void aRecoveryKilledAtAnyCallEndsWhollyOldOrWhollyNew(
      String call, TestInfo info, TestReporter reporter) throws Exception {
    int points = 0;
    // Amid the first epoch, behind it, amid the second, behind it.
    for (int crash : new int[] {10, 29, 50, 63}) {
      points +=
          killPoints(
              point -> {
                var scene = Scene.make(folder());
                crashedApply(scene, crash);
                var run = run("recover", call + KILL + point);
                endsWhole(scene, scene.before(), scene.after());
                return run.killed();
              });
    }
    report(info, reporter, call, points);
    assertThat(points).isGreaterThan(call.equals("fsync") ? 16 : 40);
  }

  @Test
  void onLinksAnApplyKilledBetweenTheTwoLinksEndsWhole(TestInfo info, TestReporter reporter)
      throws Exception {
    int points =
        killPoints(
            point -> {
              var scene = Scene.make(folder());
              var run = run("apply", "renameat2:error=EINVAL", "unlink" + KILL + point);
              endsWhole(scene, scene.before(), scene.after());
              return run.killed();
            });
    report(info, reporter, "unlink", points);
    assertThat(points).isGreaterThan(27);
  }

  @Test
  void onReservedNamesAnApplyKilledBeforeTheRenameEndsWhole(TestInfo info, TestReporter reporter)
      throws Exception {
    int points =
        killPoints(
            point -> {
              var scene = Scene.make(folder());
              var run =
                  run(
                      "apply",
                      "renameat2:error=EINVAL",
                      "link:error=EPERM",
                      "rename" + KILL + point);
              endsWhole(scene, scene.before(), scene.after());
              return run.killed();
            });
    report(info, reporter, "rename", points);
    assertThat(points).isGreaterThan(26);
  }

  @ParameterizedTest
  @ValueSource(strings = {"renameat2:error=EIO", "fsync:error=EIO"})
  void anErrorAtAnyCallIsTakenBackAndReported(
      String injection, TestInfo info, TestReporter reporter) throws Exception {
    int points = 0;
    // Until the point lies behind the last call.
    for (boolean failed = true; failed; ) {
      var scene = Scene.make(folder());
      var run = run("apply", injection + ":when=" + (points + 1));
      assertThat(run.status()).as(run.output()).isZero();
      failed = strace.injected();
      points += failed ? 1 : 0;
      tally.merge("said " + run.output().replaceFirst("(?s)\\[.*", ""), 1, Integer::sum);
      if (run.output().startsWith("Applied")) {
        assertThat(scene.now()).isEqualTo(scene.after());
      } else {
        endsWhole(scene, scene.before(), scene.after());
      }
    }
    report(info, reporter, injection, points);
    assertThat(points).isGreaterThanOrEqualTo(injection.startsWith("fsync") ? 6 : 29);
  }

  @ParameterizedTest
  @ValueSource(strings = {"EIO", "EROFS", "ENOSPC", "EACCES"})
  void aDiskThatFailsForGoodIsRecoveredOnceItWorks(
      String error, TestInfo info, TestReporter reporter) throws Exception {
    for (int from : new int[] {4, 9, 14, 15, 20, 27}) {
      var scene = Scene.make(folder());
      var run = run("apply", "renameat2:error=" + error + ":when=" + from + "+");
      assertThat(run.status()).as(run.output()).isZero();
      assertThat(run.output()).startsWith(from == 4 ? "RolledBack" : "Halted");
      endsWhole(scene, scene.before(), scene.after());
    }
    report(info, reporter, error, 6);
  }

  @Test
  void anInterloperThatTakesATargetBeforeTheRenameLosesNothing() throws Exception {
    var scene = Scene.make(folder());
    // The 27th rename of this scene is that of plain.jpg; it waits while somebody takes its target.
    var running = strace.start(program("apply"), "renameat2:delay_enter=3000000:when=27");
    await(root().resolve("A_F_0001.xmp"), running);
    Files.writeString(root().resolve("A_B_0002.jpg"), "interloper");
    var run = running.end();
    assertThat(run.output()).startsWith("RolledBack").contains("taken the name A_B_0002.jpg");
    var expected = scene.before();
    expected.put("A_B_0002.jpg", "interloper");
    assertThat(scene.now()).isEqualTo(expected);
  }

  @Test
  void aFileThatWasReplacedAfterTheCrashStandsStillAndIsNamed() throws Exception {
    var scene = Scene.make(folder());
    crashedApply(scene, 50);
    var expected = scene.now();
    var replaced = root().resolve("swap2.jpg");
    assertThat(replaced).exists();
    var replacement = Files.writeString(scratch.resolve("new"), "replacement");
    Files.move(replacement, replaced, StandardCopyOption.REPLACE_EXISTING);
    expected.put("swap2.jpg", "replacement");

    var renamer = Renamer.in(root());
    var recovery = renamer.recover();
    assertThat(recovery)
        .isInstanceOfSatisfying(
            Recovery.Stuck.class,
            stuck ->
                assertThat(stuck.files())
                    .singleElement()
                    .satisfies(file -> assertThat(file.path()).hasToString("swap2.jpg")));
    assertThat(scene.now()).isEqualTo(expected);
    assertThat(renamer.close()).isInstanceOf(Recovery.Stuck.class);
    assertThat(renamer.recover()).isInstanceOf(Recovery.Nothing.class);
    assertThat(scene.now()).isEqualTo(expected);
    assertThat(renamer.batches().getFirst().state()).isEqualTo(BatchState.STUCK);
  }

  // ---- helpers

  private List<String> program(String step) {
    return List.of(SceneProgram.class.getName(), step, root().toString());
  }

  private Strace.Run run(String step, String... injections)
      throws IOException, InterruptedException {
    return strace.run(program(step), injections);
  }

  private int folders;

  /** A new folder for a scene. */
  private Path folder() throws IOException {
    folders++;
    return Files.createDirectory(root());
  }

  private Path root() {
    return scratch.resolve("scene" + folders);
  }

  private void apply(Scene scene) throws IOException {
    var renamer = Renamer.in(root());
    assertThat(renamer.apply(renamer.plan(scene.requests()), Progress.NONE))
        .isInstanceOf(Outcome.Applied.class);
    assertThat(scene.now()).isEqualTo(scene.after());
  }

  private void crashedApply(Scene scene, int point) throws IOException {
    var disk = new CrashingDisk(new NioDisk(root(), MoverFallback.movers()), point);
    var renamer = new Renamer(root(), disk, Clock.systemUTC(), () -> "cafe0001");
    try {
      renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
    } catch (CrashingDisk.Crash e) {
      return;
    }
    throw new AssertionError("no crash at " + point);
  }

  private void endsWhole(Scene scene, Map<String, String> old, Map<String, String> renamed)
      throws IOException {
    assertThat(List.copyOf(new TreeSet<>(scene.now().values())))
        .as("no content is lost by the crash")
        .containsAll(old.values());
    var recovery = Renamer.in(root()).recover();
    var expected =
        switch (recovery) {
          case Recovery.RolledBack back -> List.of(old);
          case Recovery.Finished finished -> List.of(renamed);
          case Recovery.Nothing nothing -> List.of(old, renamed);
          case Recovery.Stuck stuck -> throw new AssertionError(stuck.toString());
          case Recovery.Refused refused -> throw new AssertionError(refused.toString());
        };
    assertThat(scene.now()).isIn(expected);
    tally.merge(
        recovery.getClass().getSimpleName() + (scene.now().equals(old) ? " old" : " new"),
        1,
        Integer::sum);
    assertThat(Renamer.in(root()).recover()).isInstanceOf(Recovery.Nothing.class);
  }

  private void report(TestInfo info, TestReporter reporter, String what, int points) {
    var name = info.getTestMethod().orElseThrow().getName() + " " + what;
    var words = points + " points: " + tally;
    reporter.publishEntry(name, words);
    System.getLogger(KillTest.class.getName()).log(Level.INFO, name + ": " + words);
  }

  private static void await(Path file, Strace.Running running) {
    while (!Files.exists(file)) {
      assertThat(running.process().isAlive()).isTrue();
      LockSupport.parkNanos(1_000_000);
    }
  }
}
