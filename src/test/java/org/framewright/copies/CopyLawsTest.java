package org.framewright.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.function.Function;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import org.framewright.base.Progress;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;

/**
 * Any card, copied to two places that hold anything already, while the card cannot be read in
 * places and a disk fails or the program is killed at any moment: nothing that was there is lost or
 * changed, what has a name is whole, and once all is well the same command completes the copy.
 */
@Tag("slow")
class CopyLawsTest {
  private static final List<Function<DiskOp, IOException>> FAILURES =
      List.of(Fault::noSpace, Fault::inputOutput, Fault::readOnly);

  @Property(tries = 100)
  void nothingIsLostAndTheSameCommandCompletesTheCopy(
      @ForAll long seed, @ForAll @IntRange(max = 90) int moment) throws Exception {
    var folder = Files.createTempDirectory("copy-laws");
    try {
      check(folder, new Random(seed), moment);
    } finally {
      try (var files = Files.walk(folder)) {
        for (var path : files.sorted(Comparator.reverseOrder()).toList()) {
          Files.delete(path);
        }
      }
    }
  }

  private static void check(Path folder, Random random, int moment) throws Exception {
    var scene = new CopyScene(folder);
    int count = 1 + random.nextInt(6);
    for (int i = 0; i < count; i++) {
      scene.file((random.nextBoolean() ? "DCIM/" : "") + "f" + i, content(random));
    }
    var card = CopyScene.contents(scene.card);
    var before = new TreeMap<String, Map<String, String>>();
    int taken = 0;
    for (var target : List.of(scene.first, scene.second)) {
      taken += fill(target, scene.card, random);
      before.put(target.getFileName().toString(), CopyScene.contents(target));
    }

    var disk = Recording.on(scene.root);
    boolean kill = random.nextBoolean();
    if (kill) {
      disk.killWithin(moment);
    } else {
      disk.fail(
          Fault.onceAt(moment, FAILURES.get(random.nextInt(FAILURES.size()))).afterHalfTheBytes());
    }
    int unreadable = random.nextInt(8);
    var volumes =
        new CopyScene.Disturbed() {
          @Override
          void before(Path file) throws IOException {
            if (file.toString().contains("card") && file.endsWith("f" + unreadable)) {
              throw CopyScene.inputOutput(file);
            }
          }
        };
    var root = disk.root();
    var to = List.of(root.resolve("first"), root.resolve("second"));
    boolean killed = false;
    try {
      var outcome =
          new Copier(volumes)
              .copy(scene.job(root), CopyPlan.of(root.resolve("card"), to), Progress.NONE);
      if (outcome instanceof CopyOutcome.Done done && done.report().isWhole()) {
        assertThat(taken).isZero();
        assertThat(unreadable).isGreaterThanOrEqualTo(count);
        for (var target : List.of(scene.first, scene.second)) {
          assertThat(CopyScene.contents(target)).containsAllEntriesOf(card);
        }
      }
    } catch (Killed e) {
      killed = true;
    } catch (IOException e) {
      // The job's folder is on the failing disk too.
    }
    holds(scene, card, before);

    var report = CopyScene.done(scene.copy(scene.first, scene.second));
    holds(scene, card, before);
    assertThat(report.unreadable()).isEmpty();
    for (var target : report.targets()) {
      assertThat(target.failed()).isEmpty();
      assertThat(target.verified() + target.blocked().size()).isEqualTo(card.size());
      var there = CopyScene.contents(target.folder());
      assertThat(there.keySet()).as("killed: " + killed).noneMatch(name -> name.endsWith(".part"));
      assertThat(there.keySet()).containsAll(card.keySet());
    }
    assertThat(report.targets().stream().mapToInt(one -> one.blocked().size()).sum())
        .isEqualTo(taken);
    assertThat(scene.job().folder().resolve(".framewright/copies")).isEmptyDirectory();
  }

  private static byte[] content(Random random) {
    var bytes = new byte[random.nextInt(5) == 0 ? 0 : 1 + random.nextInt(3)];
    random.nextBytes(bytes);
    return bytes;
  }

  /** Puts some files of the card there, and others of their names; says how many others. */
  private static int fill(Path target, Path card, Random random) throws IOException {
    int taken = 0;
    if (random.nextInt(3) == 0) {
      return taken;
    }
    Files.createDirectories(target);
    for (var entry : CopyScene.contents(card).keySet()) {
      int what = random.nextInt(5);
      if (what > 1) {
        continue;
      }
      var place = target.resolve(entry);
      Files.createDirectories(place.getParent());
      Files.copy(card.resolve(entry), place);
      if (what == 1) {
        Files.write(place, new byte[] {1, 2, 3, 4});
        taken++;
      }
    }
    return taken;
  }

  private static void holds(
      CopyScene scene, Map<String, String> card, Map<String, Map<String, String>> before)
      throws IOException {
    assertThat(CopyScene.contents(scene.card)).isEqualTo(card);
    for (var target : List.of(scene.first, scene.second)) {
      var there = CopyScene.copies(target);
      var was = before.get(target.getFileName().toString());
      assertThat(there).containsAllEntriesOf(was);
      there.forEach(
          (name, content) -> {
            if (!was.containsKey(name) && !name.endsWith(".part")) {
              assertThat(card).containsEntry(name, content);
            }
          });
    }
  }
}
