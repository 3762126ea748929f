package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Every change of an apply and of an undo fails once, or from then on: a person's everyday trouble.
 */
@Tag("slow")
class FailingDiskTest {
  private static final Path ROOT = Path.of("/model");
  private static final String[][] RENAMES = {
    {"a", "b"}, {"b", "a"}, {"c", "C"}, {"d", "e"}, {"e", "sub/e"}, {"f", "g"}
  };

  private static ModelDisk disk() {
    var disk = new ModelDisk(new Random(7), ModelVolume.linux(false, true));
    disk.makeFolder(ROOT);
    disk.makeFolder(ROOT.resolve("sub"));
    for (var rename : RENAMES) {
      disk.put(ROOT.resolve(rename[0]), "content of " + rename[0]);
    }
    return disk;
  }

  private static Map<Path, String> renamed() {
    var files = new HashMap<Path, String>();
    for (var rename : RENAMES) {
      files.put(ROOT.resolve(rename[1]), "content of " + rename[0]);
    }
    return files;
  }

  private static Renamer on(Disk disk) {
    return new Renamer(ROOT, disk, Clock.systemUTC(), () -> "cafe0001");
  }

  private static Outcome apply(Renamer renamer) throws IOException {
    var requests = new ArrayList<RenameRequest>();
    for (var rename : RENAMES) {
      requests.add(new RenameRequest(Path.of(rename[0]), Path.of(rename[1])));
    }
    return renamer.apply(renamer.plan(requests), Progress.NONE);
  }

  /** Words of strerror(3). */
  @ParameterizedTest
  @CsvSource({
    "No space left on device, false, the disk is full, Make room",
    "No space left on device, true, the disk is full, Make room",
    "Input/output error, false, the disk could not read or write it, cable",
    "Input/output error, true, the disk could not read or write it, cable",
    "Read-only file system, true, the disk can only be read, Unlock it",
  })
  void whateverFailsIsSaidAndEveryFileIsWhollyOldOrNew(
      String reason, boolean lasting, String what, String remedy) throws IOException {
    var outcomes = new TreeSet<String>();
    boolean failed = true;
    for (int point = 0; failed; point++) {
      var disk = disk();
      var old = disk.files();
      var failing = CrashingDisk.failing(disk, point, lasting, reason);
      var outcome = apply(on(failing));
      outcomes.add(outcome.getClass().getSimpleName());
      failed = !failing.survived();
      if (!(outcome instanceof Outcome.Applied)) {
        assertSaid(problem(outcome), what, remedy);
        if (outcome instanceof Outcome.Refused || outcome instanceof Outcome.RolledBack) {
          assertThat(disk.files()).as("point " + point).isEqualTo(old);
        }
        assertThat(on(disk).recover()).isNotInstanceOf(Recovery.Stuck.class);
        assertThat(disk.files()).as("point " + point).isIn(old, renamed());
        if (disk.files().equals(old)) {
          assertThat(apply(on(disk))).isInstanceOf(Outcome.Applied.class);
        }
      }
      assertThat(disk.files()).isEqualTo(renamed());
    }
    assertThat(outcomes).contains("Applied", "Halted", "Refused");
    assertThat(outcomes.contains("RolledBack")).isEqualTo(!lasting);
  }

  @Test
  void anUndoThatFailsIsSaidAndCanBeDoneAgain() throws IOException {
    boolean failed = true;
    for (int point = 0; failed; point++) {
      var disk = disk();
      var old = disk.files();
      var batch = ((Outcome.Applied) apply(on(disk))).batch();
      var failing = CrashingDisk.failing(disk, point, false, "No space left on device");
      var outcome = on(failing).undo(batch, Progress.NONE);
      failed = !failing.survived();
      if (!(outcome instanceof Outcome.Applied)) {
        assertSaid(problem(outcome), "the disk is full", "Make room");
        on(disk).recover();
        if (disk.files().equals(renamed())) {
          assertThat(on(disk).undo(batch, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
        }
      }
      assertThat(disk.files()).isEqualTo(old);
    }
  }

  @Test
  void aRecoveryThatFailsCanBeDoneAgain() throws IOException {
    int failures = 0;
    for (int crash = 20; crash < 40; crash += 3) {
      boolean failed = true;
      for (int point = 0; failed; point++) {
        var disk = disk();
        var old = disk.files();
        try {
          apply(on(new CrashingDisk(disk, crash)));
        } catch (CrashingDisk.Crash e) {
          disk.restart();
        }
        failed = false;
        try {
          var recovery =
              on(CrashingDisk.failing(disk, point, false, "Input/output error")).recover();
          failed = recovery instanceof Recovery.Stuck || recovery instanceof Recovery.Refused;
        } catch (IOException e) {
          failed = true;
        }
        failures += failed ? 1 : 0;
        on(disk).recover();
        assertThat(disk.files()).isIn(old, renamed());
      }
    }
    assertThat(failures).isGreaterThan(30);
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
