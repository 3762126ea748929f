package org.framewright.renaming;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.text.Normalizer;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
  private static final String[][] RENAMES = {
    {"a.jpg", "b.jpg", ""},
    {"b.jpg", "a.jpg", ""},
    {"Caf\u00e9_1.JPG", "Caf\u00e9_2.JPG", ""},
    {"Umlaut.JPG", "umlaut.jpg", ""},
    {"IMG_1.CR3", "\u00c4rmel_1.CR3", "1"},
    {"IMG_1.xmp", "\u00c4rmel_1.xmp", "1"},
    {"out.jpg", "day 2/\u00fcber.jpg", ""},
  };

  private static List<Path> given() {
    var volumes = System.getenv().getOrDefault("FRAMEWRIGHT_VOLUMES", "");
    assumeFalse(volumes.isBlank(), "FRAMEWRIGHT_VOLUMES names no volume to try");
    return Pattern.compile(Pattern.quote(File.pathSeparator))
        .splitAsStream(volumes)
        .filter(text -> !text.isBlank())
        .map(Path::of)
        .toList();
  }

  private static Path folder(Path volume) throws IOException {
    var root = Files.createTempDirectory(volume.toRealPath(), "framewright-trial-");
    Files.createDirectory(root.resolve("day 2"));
    for (var rename : RENAMES) {
      Files.writeString(root.resolve(rename[0]), rename[0]);
    }
    return root;
  }

  private static List<RenameRequest> requests() {
    var requests = new ArrayList<RenameRequest>();
    for (var rename : RENAMES) {
      requests.add(new RenameRequest(Path.of(rename[0]), Path.of(rename[1]), rename[2]));
    }
    return requests;
  }

  private static Map<String, String> named(int column) {
    var names = new TreeMap<String, String>();
    for (var rename : RENAMES) {
      names.put(rename[0], Path.of(rename[column]).toString());
    }
    return names;
  }

  private static Map<String, String> files(Path root) throws IOException {
    var files = new TreeMap<String, String>();
    try (var paths = Files.walk(root)) {
      for (var path : paths.toList()) {
        var name = root.relativize(path).toString();
        if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)
            && !name.startsWith(Folders.OURS)) {
          files.put(Files.readString(path), Normalizer.normalize(name, Normalizer.Form.NFC));
        }
      }
    }
    return files;
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
      var root = folder(volume);
      var renamer = Renamer.in(root);
      var outcome = renamer.apply(renamer.plan(requests()), Progress.NONE);
      assertThat(outcome).as(volume.toString()).isInstanceOf(Outcome.Applied.class);
      assertThat(files(root)).as(volume.toString()).isEqualTo(named(1));
      var again =
          renamer.plan(
              List.of(new RenameRequest(Path.of("Caf\u00e9_2.JPG"), Path.of("Caf\u00e9_2.JPG"))));
      assertThat(again.renames().getFirst().status()).isEqualTo(Status.UNCHANGED);
      renamer.undo(renamer.nextUndo().orElseThrow().id(), Progress.NONE);
      assertThat(files(root)).as(volume.toString()).isEqualTo(named(0));
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
        var root = folder(volume);
        var crashing = new CrashingDisk(new NioDisk(root, MoverFallback.movers()), point);
        var renamer = new Renamer(root, crashing, Clock.systemUTC(), () -> "cafe0001");
        try {
          renamer.apply(renamer.plan(requests()), Progress.NONE);
        } catch (CrashingDisk.Crash e) {
          // The system lets go of what a process held.
        }
        survived = crashing.survived();
        var where = volume + ", killed at " + point;
        assertThat(Renamer.in(root).recover()).as(where).isNotInstanceOf(Recovery.Stuck.class);
        assertThat(files(root)).as(where).isIn(named(0), named(1));
        remove(root);
      }
    }
  }

  @Test
  void oneWorkAtATimeOnEachVolume() throws IOException {
    for (var volume : given()) {
      var root = folder(volume);
      try (var _ = LockFile.hold(root.resolve("lock")).orElseThrow()) {
        assertThat(LockFile.hold(root.resolve("lock"))).as(volume.toString()).isEmpty();
      }
      LockFile.hold(root.resolve("lock")).orElseThrow().close();
      remove(root);
    }
  }
}
