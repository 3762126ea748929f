package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.framewright.base.Progress;
import org.junit.jupiter.api.Test;

/**
 * A batch was interrupted anywhere, and before it is recovered somebody has put a file under one of
 * its names. That file is never touched, and the batch ends wholly old or wholly new, or stands
 * still until the file is moved away.
 */
class ObstaclesTest {
  private static final Path ROOT = Path.of("/model");
  private static final String STRANGER = "somebody else's";

  /** A swap, a chain into another folder, and plain ones. */
  private static final Map<String, String> RENAMES =
      Map.of("a", "b", "b", "a", "d", "e", "e", "sub/e", "f", "g", "h", "i");

  private static ModelDisk disk() {
    var disk = new ModelDisk(new Random(7), ModelVolume.linux(false, true));
    disk.makeFolder(ROOT);
    disk.makeFolder(ROOT.resolve("sub"));
    RENAMES.keySet().forEach(name -> disk.put(ROOT.resolve(name), "content of " + name));
    return disk;
  }

  private static Map<Path, String> renamed() {
    var files = new HashMap<Path, String>();
    RENAMES.forEach((from, to) -> files.put(ROOT.resolve(to), "content of " + from));
    return files;
  }

  private static Renamer on(Disk disk) {
    return new Renamer(ROOT, disk, Clock.systemUTC(), () -> "cafe0001");
  }

  private static List<RenameRequest> requests() {
    return RENAMES.entrySet().stream()
        .sorted(Map.Entry.comparingByKey())
        .map(rename -> new RenameRequest(Path.of(rename.getKey()), Path.of(rename.getValue())))
        .toList();
  }

  /** What is left of a batch that was killed at a point; null where it came to its end. */
  private static ModelDisk killedAt(int point) throws IOException {
    var disk = disk();
    var renamer = on(new CrashingDisk(disk, point));
    try {
      renamer.apply(renamer.plan(requests()), Progress.NONE);
      return null;
    } catch (CrashingDisk.Crash e) {
      disk.restart();
      return disk;
    }
  }

  /** Every name that the batch may use and that no file has. */
  private static Set<Path> freeNames(ModelDisk killed, List<Path> seen) {
    var names = new LinkedHashSet<>(renamed().keySet());
    names.addAll(disk().files().keySet());
    names.addAll(seen);
    names.removeAll(killed.files().keySet());
    return names;
  }

  @Test
  void aFileUnderAnOldOrANewNameIsGoneRoundOrNamed() throws IOException {
    var old = disk().files();
    var seen = new ArrayList<Path>(); // names between, as they were met
    var ends = new TreeSet<String>();
    for (int point = 0; ; point++) {
      var killed = killedAt(point);
      if (killed == null) {
        break;
      }
      killed.files().keySet().stream()
          .filter(file -> file.getFileName().toString().endsWith(".tmp"))
          .forEach(seen::add);
      for (var name : freeNames(killed, seen)) {
        var disk = killedAt(point);
        if (on(disk).interrupted().isEmpty()) {
          continue;
        }
        disk.put(name, STRANGER);
        var before = disk.files();
        var recovery = on(disk).recover();
        ends.add(recovery.getClass().getSimpleName());
        var after = disk.files();
        assertThat(after.remove(name)).as("%s at %d", name, point).isEqualTo(STRANGER);
        switch (recovery) {
          case Recovery.Finished finished -> {
            assertThat(after).isEqualTo(renamed());
            assertThat(finished.renames()).isEqualTo(RENAMES.size());
          }
          case Recovery.RolledBack back -> {
            assertThat(after).isEqualTo(old);
            assertThat(back.renames()).isEqualTo(RENAMES.size());
          }
          case Recovery.Stuck stuck -> {
            assertThat(disk.files()).isEqualTo(before);
            assertThat(stuck.files())
                .anySatisfy(
                    file -> {
                      assertThat(file.path()).isEqualTo(ROOT.relativize(name));
                      assertThat(file.why())
                          .contains("another file has taken the name " + ROOT.relativize(name));
                      assertThat(file.remedy()).contains("Move that file");
                    });
            disk.remove(name);
            assertThat(on(disk).recover()).isNotInstanceOf(Recovery.Stuck.class);
            assertThat(disk.files()).isIn(old, renamed());
          }
          case Recovery.Nothing _, Recovery.Refused _ -> throw new AssertionError(recovery);
        }
        boolean inTheWayBack = old.containsKey(name) || name.toString().endsWith(".tmp");
        if (!inTheWayBack && !after.equals(renamed())) {
          assertThat(recovery).as("%s at %d", name, point).isInstanceOf(Recovery.RolledBack.class);
        }
      }
    }
    assertThat(ends).contains("Finished", "RolledBack", "Stuck");
  }

  @Test
  void whereBothWaysAreTakenTheBatchStandsStillAndSaysWhichFilesAreInItsWay() throws IOException {
    int stuckAt = 0;
    for (int point = 0; ; point++) {
      var disk = killedAt(point);
      if (disk == null) {
        break;
      }
      var files = disk.files();
      boolean begun = on(disk).interrupted().isPresent();
      var free =
          RENAMES.keySet().stream()
              .filter(name -> !renamed().containsKey(ROOT.resolve(name)))
              .filter(name -> !files.containsKey(ROOT.resolve(name)))
              .sorted()
              .toList();
      if (!begun || free.isEmpty() || files.containsKey(ROOT.resolve("i"))) {
        continue;
      }
      stuckAt++;
      disk.put(ROOT.resolve(free.getFirst()), STRANGER);
      disk.put(ROOT.resolve("i"), STRANGER);
      var before = disk.files();
      assertThat(on(disk).recover())
          .isInstanceOfSatisfying(
              Recovery.Stuck.class,
              stuck ->
                  assertThat(stuck.files())
                      .extracting(StuckFile::path)
                      .contains(Path.of(free.getFirst())));
      assertThat(disk.files()).isEqualTo(before);
      disk.remove(ROOT.resolve("i"));
      assertThat(on(disk).recover()).isInstanceOf(Recovery.Finished.class);
      assertThat(disk.files().get(ROOT.resolve("i"))).isEqualTo("content of h");
    }
    assertThat(stuckAt).isPositive();
  }

  @Test
  void aFileThatIsGoneOrAnotherIsNamed() throws IOException {
    int tried = 0;
    for (int point = 0; ; point++) {
      var disk = killedAt(point);
      if (disk == null) {
        break;
      }
      if (on(disk).interrupted().isEmpty() || !disk.files().containsKey(ROOT.resolve("h"))) {
        continue;
      }
      tried++;
      disk.remove(ROOT.resolve("h"));
      assertStuck(disk, "h", "neither at its old name nor at its new name, i", "Put the file back");
      disk.put(ROOT.resolve("h"), STRANGER);
      assertStuck(disk, "h", "h is not the file that the batch renamed", "Put the file back as");
      disk.remove(ROOT.resolve("h"));
      disk.put(ROOT.resolve("i"), STRANGER);
      assertStuck(disk, "i", "i is not the file that the batch renamed", "close the batch");
      assertThat(on(disk).close()).isInstanceOf(Recovery.Stuck.class);
      assertThat(on(disk).interrupted()).isEmpty();
    }
    assertThat(tried).isPositive();
  }

  private static void assertStuck(Disk disk, String path, String why, String remedy)
      throws IOException {
    assertThat(on(disk).recover())
        .isInstanceOfSatisfying(
            Recovery.Stuck.class,
            stuck ->
                assertThat(stuck.files())
                    .singleElement()
                    .satisfies(
                        file -> {
                          assertThat(file.path()).isEqualTo(Path.of(path));
                          assertThat(file.why()).contains(why);
                          assertThat(file.remedy()).contains(remedy);
                        }));
  }
}
