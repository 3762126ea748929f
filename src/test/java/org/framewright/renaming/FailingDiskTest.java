package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every change of an apply and of an undo fails once, or from then on: a person's everyday trouble.
 */
class FailingDiskTest {
  @TempDir Path scratch;

  private static Renamer on(Path root, int point, boolean lasting, String reason)
      throws IOException {
    var disk = new NioDisk(root, MoverFallback.movers());
    return new Renamer(
        root,
        CrashingDisk.failing(disk, point, lasting, reason),
        Clock.systemUTC(),
        () -> "cafe0001");
  }

  /** Words of strerror(3). */
  @ParameterizedTest
  @CsvSource({
    "No space left on device, false, the disk is full, Make room",
    "Input/output error, true, the disk could not read or write it, cable",
    "Read-only file system, true, the disk can only be read, Unlock it",
  })
  void whateverFailsIsSaidAndEveryFileIsWhollyOldOrNew(
      String reason, boolean lasting, String what, String remedy) throws IOException {
    int failures = 0;
    boolean failed = true;
    for (int point = 0; failed; point++) {
      var root = Files.createDirectory(scratch.toRealPath().resolve(reason.charAt(0) + "" + point));
      var scene = Scene.make(root);
      var renamer = on(root, point, lasting, reason);
      var outcome = renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
      failed = !(outcome instanceof Outcome.Applied);
      if (failed) {
        failures++;
        assertSaid(problem(outcome), what, remedy);
        if (outcome instanceof Outcome.Refused || outcome instanceof Outcome.RolledBack) {
          assertThat(scene.now()).as("point " + point).isEqualTo(scene.before());
        }
        assertThat(Renamer.in(root).recover()).isNotInstanceOf(Recovery.Stuck.class);
        assertThat(scene.now()).as("point " + point).isIn(scene.before(), scene.after());
      }
      var again = Renamer.in(root);
      if (scene.now().equals(scene.before())) {
        assertThat(again.apply(again.plan(scene.requests()), Progress.NONE))
            .isInstanceOf(Outcome.Applied.class);
      }
      assertThat(scene.now()).isEqualTo(scene.after());
    }
    assertThat(failures).isGreaterThan(60);
  }

  @Test
  void anUndoThatFailsIsSaidAndCanBeDoneAgain() throws IOException {
    boolean failed = true;
    for (int point = 0; failed; point += 3) {
      var root = Files.createDirectory(scratch.toRealPath().resolve("undo" + point));
      var scene = Scene.make(root);
      var healthy = Renamer.in(root);
      healthy.apply(healthy.plan(scene.requests()), Progress.NONE);
      var batch = healthy.nextUndo().orElseThrow().id();
      var outcome = on(root, point, false, "No space left on device").undo(batch, Progress.NONE);
      failed = !(outcome instanceof Outcome.Applied);
      if (failed) {
        assertSaid(problem(outcome), "the disk is full", "Make room");
        healthy.recover();
        if (scene.now().equals(scene.after())) {
          assertThat(healthy.undo(batch, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
        }
      }
      assertThat(scene.now()).isEqualTo(scene.before());
    }
  }

  private static void assertSaid(Problem problem, String what, String remedy) {
    assertThat(problem.sentence()).contains(what);
    assertThat(problem.remedy()).contains(remedy);
  }

  private static Problem problem(Outcome outcome) {
    return switch (outcome) {
      case Outcome.Refused refused -> refused.problem();
      case Outcome.RolledBack back -> back.problem();
      case Outcome.Halted halted -> halted.problem();
      case Outcome.Applied _, Outcome.Nothing _, Outcome.Cancelled _ ->
          throw new AssertionError(outcome.toString());
    };
  }
}
