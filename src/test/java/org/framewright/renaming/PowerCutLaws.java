package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;
import org.framewright.base.Progress;

/**
 * Laws of renaming on a disk that, at a power cut, keeps any subset of the changes of names since
 * the last flush.
 */
@Tag("slow")
class PowerCutLaws {
  /** Where names collide: by case, by ligature, by the form of an accent. */
  private static final List<String> NAMES =
      List.of("a", "b", "c", "A", "é", "e\u0301", "straße", "STRASSE", "d", "e", "sub/a", "sub/x");

  private static final Path ROOT = Path.of("/model").toAbsolutePath();

  private final List<Map<Path, String>> whole = new ArrayList<>();

  /** Paths of Windows fold case and the model does not: there these laws say nothing. */
  private static final boolean FOLDED = Path.of("A").equals(Path.of("a"));

  /** One try: files, requests, a disk and when its power fails. */
  private record Case(ModelDisk disk, List<RenameRequest> requests) {
    static Case of(
        List<Integer> targets, boolean folds, boolean numbers, boolean grouped, long seed) {
      var disk = new ModelDisk(new Random(seed), ModelVolume.linux(folds, numbers));
      disk.makeFolder(ROOT);
      disk.makeFolder(ROOT.resolve("sub"));
      var requests = new ArrayList<RenameRequest>();
      for (int i = 0; i < targets.size(); i++) {
        var from = Path.of(folds ? "f" + i : NAMES.get(i));
        // Two files of each content, so that only numbers distinguish them.
        disk.put(ROOT.resolve(from), "content " + i / 2);
        var to = Path.of(folds && i % 2 == 0 ? "F" + (i + 2) % targets.size() : name(targets, i));
        requests.add(new RenameRequest(from, to, grouped ? "group " + i % 3 : ""));
      }
      return new Case(disk, requests);
    }

    private static String name(List<Integer> targets, int index) {
      return NAMES.get(targets.get(index));
    }

    Renamer renamer() {
      return new Renamer(ROOT, disk, Clock.systemUTC(), () -> "00000000");
    }
  }

  @Property(tries = 10_000, edgeCases = EdgeCasesMode.NONE)
  void afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(
      @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 0, max = 11) Integer> targets,
      @ForAll boolean folds,
      @ForAll boolean numbers,
      @ForAll boolean grouped,
      @ForAll boolean undo,
      @ForAll @IntRange(min = 0, max = 30) int secondCut,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    int firstCut = steps(Case.of(targets, folds, numbers, grouped, seed), undo, seed);
    var given = Case.of(targets, folds, numbers, grouped, seed);
    var disk = given.disk();
    var old = disk.files();
    var plan = given.renamer().plan(given.requests());
    var renamed = carriedOut(plan, old);
    whole.clear();
    whole.add(old);
    whole.add(renamed);

    if (undo && given.renamer().apply(plan, Progress.NONE) instanceof Outcome.Applied applied) {
      assertThat(disk.files()).isEqualTo(renamed);
      disk.cutAfter(firstCut);
      cut(() -> given.renamer().undo(applied.batch(), Progress.NONE));
    } else {
      disk.cutAfter(firstCut);
      cut(() -> given.renamer().apply(plan, Progress.NONE));
    }
    note("first cut", disk.uncut() ? "behind the end" : "hit");
    disk.restart();
    nothingLost(disk, old);

    disk.cutAfter(secondCut);
    cut(() -> given.renamer().recover());
    note("second cut", disk.uncut() ? "behind the end" : "hit");
    disk.restart();
    nothingLost(disk, old);

    var recovery = given.renamer().recover();
    assertThat(recovery)
        .isNotInstanceOf(Recovery.Stuck.class)
        .isNotInstanceOf(Recovery.Refused.class);
    note("last recovery", recovery.getClass().getSimpleName());
    assertThat(disk.files()).isIn(whole);
    assertThat(disk.violations()).isEmpty();
    assertThat(given.renamer().recover()).isInstanceOf(Recovery.Nothing.class);
  }

  @Property(tries = 3_000, edgeCases = EdgeCasesMode.NONE)
  void afterAPowerCutACopyIsBroughtToAnEndOrStandsStillAsItIs(
      @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 0, max = 11) Integer> targets,
      @ForAll boolean folds,
      @ForAll boolean numbers,
      @ForAll boolean undo,
      @ForAll boolean withTimes,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    int cutAt = steps(Case.of(targets, folds, numbers, false, seed), undo, seed);
    var given = Case.of(targets, folds, numbers, false, seed);
    var old = given.disk().files();
    var plan = given.renamer().plan(given.requests());
    var renamed = carriedOut(plan, old);
    if (undo && given.renamer().apply(plan, Progress.NONE) instanceof Outcome.Applied applied) {
      given.disk().cutAfter(cutAt);
      cut(() -> given.renamer().undo(applied.batch(), Progress.NONE));
    } else {
      given.disk().cutAfter(cutAt);
      cut(() -> given.renamer().apply(plan, Progress.NONE));
    }
    given.disk().restart();

    var copy = given.disk().copy(withTimes);
    var then = copy.files();
    var recovery = new Case(copy, List.of()).renamer().recover();
    note("recovery in the copy", recovery.getClass().getSimpleName());
    if (recovery instanceof Recovery.Stuck) {
      assertThat(copy.files()).isEqualTo(then);
    } else {
      assertThat(copy.files()).isIn(old, renamed);
    }
    assertThat(copy.violations()).isEmpty();
  }

  @Property(tries = 2_000, edgeCases = EdgeCasesMode.NONE)
  void aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack(
      @ForAll @Size(min = 1, max = 12) List<@IntRange(min = 0, max = 11) Integer> targets,
      @ForAll boolean folds,
      @ForAll boolean grouped,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    var given = Case.of(targets, folds, true, grouped, seed);
    var old = given.disk().files();
    var plan = given.renamer().plan(given.requests());
    note("ready", plan.ready() > 0);
    var outcome = given.renamer().apply(plan, Progress.NONE);
    if (plan.ready() == 0) {
      assertThat(outcome).isInstanceOf(Outcome.Nothing.class);
      return;
    }
    assertThat(outcome).isInstanceOf(Outcome.Applied.class);
    assertThat(given.disk().files()).isEqualTo(carriedOut(plan, old));
    var batch = ((Outcome.Applied) outcome).batch();
    assertThat(given.renamer().undo(batch, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(given.disk().files()).isEqualTo(old);
  }

  /** Counts what the tries were, for the report. */
  void note(String label, Object value) {
    Statistics.label(label).collect(value);
  }

  /** A step of the work at which the power can fail; counted by doing it undisturbed. */
  private static int steps(Case given, boolean undo, long seed) throws IOException {
    var renamer = given.renamer();
    given.disk().cutAfter(Integer.MAX_VALUE);
    var outcome = renamer.apply(renamer.plan(given.requests()), Progress.NONE);
    if (undo && outcome instanceof Outcome.Applied applied) {
      given.disk().cutAfter(Integer.MAX_VALUE);
      renamer.undo(applied.batch(), Progress.NONE);
    }
    return new Random(seed).nextInt(Math.max(1, given.disk().stepsDone()));
  }

  private static Map<Path, String> carriedOut(Plan plan, Map<Path, String> old) {
    var files = new HashMap<>(old);
    for (var rename : plan.renames()) {
      if (rename.status() == Status.READY) {
        files.remove(ROOT.resolve(rename.from()));
      }
    }
    for (var rename : plan.renames()) {
      if (rename.status() == Status.READY) {
        var over = files.put(ROOT.resolve(rename.to()), old.get(ROOT.resolve(rename.from())));
        assertThat(over).as("a ready plan puts no file over another").isNull();
      }
    }
    return files;
  }

  private static void nothingLost(ModelDisk disk, Map<Path, String> old) {
    assertThat(disk.files().values()).containsExactlyInAnyOrderElementsOf(old.values());
  }

  private interface Work {
    void run() throws IOException;
  }

  private static void cut(Work work) throws IOException {
    try {
      work.run();
    } catch (ModelDisk.PowerCut e) {
      // As meant; the caller restarts the disk.
    }
  }
}
