package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;
import org.framewright.base.LockFile;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/**
 * Renames on the volumes of whoever runs the tests: {@code FRAMEWRIGHT_VOLUMES} lists folders, as
 * PATH does. The workflow gives mounted images of each kind that a system has; a person may give a
 * share, a card or a stick. What is made there is removed afterwards.
 */
@Tag("slow")
class GivenVolumesTest {
  private static List<Path> given() {
    var volumes = System.getenv().getOrDefault("FRAMEWRIGHT_VOLUMES", "");
    assumeFalse(volumes.isBlank(), "FRAMEWRIGHT_VOLUMES names no volume to try");
    return Pattern.compile(Pattern.quote(File.pathSeparator))
        .splitAsStream(volumes)
        .filter(text -> !text.isBlank())
        .map(Path::of)
        .toList();
  }

  private static AccentedScene scene(Path volume) throws IOException {
    var root = Files.createTempDirectory(volume.toRealPath(), "framewright-trial-");
    return AccentedScene.make(root, UnaryOperator.identity());
  }

  private static void remove(Path root) throws IOException {
    try (var paths = Files.walk(root)) {
      for (var path : paths.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  @Test
  void filesAreRenamedAndTakenBackOnEachVolume(TestReporter reporter) throws IOException {
    for (var volume : given()) {
      var scene = scene(volume);
      var root = scene.root();
      var renamer = Renamer.in(root);
      var outcome = renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
      assertThat(outcome).as(volume.toString()).isInstanceOf(Outcome.Applied.class);
      assertThat(scene.now()).as(volume.toString()).isEqualTo(AccentedScene.after());
      var again =
          renamer.plan(
              List.of(new RenameRequest(Path.of("Caf\u00e9_2.JPG"), Path.of("Caf\u00e9_2.JPG"))));
      assertThat(again.renames().getFirst().status()).isEqualTo(Status.UNCHANGED);
      renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
      assertThat(scene.now()).as(volume.toString()).isEqualTo(AccentedScene.before());
      reporter.publishEntry(
          volume.toString(),
          Files.getFileStore(root).type() + ", " + ((Outcome.Applied) outcome).guarantee());
      remove(root);
    }
  }

  @Test
  void killedAnywhereABatchIsWhollyOldOrWhollyNewOnEachVolume() throws IOException {
    for (var volume : given()) {
      boolean survived = false;
      for (int point = 0; !survived; point += 3) {
        var scene = scene(volume);
        var root = scene.root();
        var crashing = new CrashingDisk(new NioDisk(root, MoverFallback.movers()), point);
        var renamer = new Renamer(root, crashing, Clock.systemUTC(), () -> "cafe0001");
        try {
          renamer.apply(renamer.plan(scene.requests()), Progress.NONE);
        } catch (CrashingDisk.Crash e) {
          // The system lets go of what a process held.
        }
        survived = crashing.survived();
        var where = volume + ", killed at " + point;
        assertThat(Renamer.in(root).recover()).as(where).isNotInstanceOf(Recovery.Stuck.class);
        assertThat(scene.now()).as(where).isIn(AccentedScene.before(), AccentedScene.after());
        remove(root);
      }
    }
  }

  @Test
  void oneWorkAtATimeOnEachVolume() throws IOException {
    for (var volume : given()) {
      var scene = scene(volume);
      var root = scene.root();
      try (var _ = LockFile.hold(root.resolve("lock")).orElseThrow()) {
        assertThat(LockFile.hold(root.resolve("lock"))).as(volume.toString()).isEmpty();
      }
      LockFile.hold(root.resolve("lock")).orElseThrow().close();
      remove(root);
    }
  }
}
