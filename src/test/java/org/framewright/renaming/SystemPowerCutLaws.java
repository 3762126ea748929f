package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;
import org.framewright.base.Progress;

/**
 * The laws of {@link PowerCutLaws} on the volumes of macOS and Windows: how names are changed
 * there, which names are one, how they are listed, what a flush of a folder does, and whether a
 * rename may be torn, as {@link SystemVolume} has it.
 */
@Tag("slow")
class SystemPowerCutLaws {
  private static final Path ROOT = Path.of("/model").toAbsolutePath();

  /** Where names collide on one volume and not on another; fewer where two of them are one. */
  private static final List<String> NAMES =
      List.of(
          "a",
          "b",
          "c",
          "\u00e9",
          "stra\u00dfe",
          "STRASSE",
          "d",
          "sub/a",
          "sub/\u00e9x",
          "e",
          "e\u0301");

  private static final List<String> WANTED =
      Stream.concat(NAMES.stream(), Stream.of("A", "B", "\u00c9", "sub/A", "x", "y")).toList();

  /** Paths of Windows fold case and the model does not: there these laws say nothing. */
  private static final boolean FOLDED = Path.of("A").equals(Path.of("a"));

  /** One try: files, requests, a disk. */
  private record Case(SystemVolume volume, ModelDisk disk, List<RenameRequest> requests) {
    static Case of(SystemVolume volume, List<Integer> targets, boolean grouped, long seed) {
      var disk = new ModelDisk(new Random(seed), ModelVolume.of(volume));
      disk.makeFolder(ROOT);
      disk.makeFolder(ROOT.resolve("sub"));
      var requests = new ArrayList<RenameRequest>();
      var taken = new HashSet<String>();
      var names = NAMES.stream().filter(name -> taken.add(volume.key().apply(name))).toList();
      for (int i = 0; i < targets.size(); i++) {
        var from = Path.of(names.get(i));
        // Two files of each content, so that only numbers distinguish them.
        disk.put(ROOT.resolve(from), "content " + i / 2);
        var to = Path.of(WANTED.get(targets.get(i)));
        requests.add(new RenameRequest(from, to, grouped ? "group " + i % 3 : ""));
      }
      return new Case(volume, disk, requests);
    }

    Renamer renamer() {
      return new Renamer(ROOT, disk, Clock.systemUTC(), () -> "00000000");
    }

    /** The people's files as they shall be, as the volume lists them. */
    Map<Path, String> carriedOut(Plan plan) {
      var old = disk.files();
      var files = new HashMap<>(old);
      for (var rename : plan.renames()) {
        if (rename.status() == Status.READY) {
          files.remove(listed(rename.from()));
        }
      }
      for (var rename : plan.renames()) {
        if (rename.status() == Status.READY) {
          var over = files.put(listed(rename.to()), old.get(listed(rename.from())));
          assertThat(over).as("a ready plan puts no file over another").isNull();
        }
      }
      return files;
    }

    Path listed(Path relative) {
      return disk.listed(ROOT.resolve(relative));
    }

    /** Recovers as a person does who is told that what a power cut left has taken a name. */
    Recovery recovered() throws IOException {
      var recovery = renamer().recover();
      if (!(recovery instanceof Recovery.Stuck stuck) || disk.leftovers().isEmpty()) {
        return recovery;
      }
      assertThat(stuck.files())
          .allSatisfy(file -> assertThat(disk.isLeftover(ROOT.resolve(file.path()))).isTrue());
      disk.removeLeftovers();
      return renamer().recover();
    }

    /** Only a reserved name can be left over, and only one of the batch. */
    void leavesOnlyReservedNames() {
      if (volume.guarantee() != Guarantee.RESERVED) {
        assertThat(disk.leftovers()).isEmpty();
      }
      var own = new HashSet<Path>();
      for (var request : requests) {
        own.add(listed(request.from()));
        own.add(listed(request.to()));
      }
      assertThat(disk.leftovers())
          .allMatch(path -> own.contains(path) || TempNames.isAny(path.getFileName().toString()));
    }
  }

  @Property(tries = 20_000, edgeCases = EdgeCasesMode.NONE)
  void afterAPowerCutAndAnotherOneInTheRecoveryABatchIsWhole(
      @ForAll SystemVolume volume,
      @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 0, max = 16) Integer> targets,
      @ForAll boolean grouped,
      @ForAll boolean undo,
      @ForAll @IntRange(min = 0, max = 40) int secondCut,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    int firstCut = steps(Case.of(volume, targets, grouped, seed), undo, seed);
    var given = Case.of(volume, targets, grouped, seed);
    var disk = given.disk();
    var old = disk.files();
    var renamed = interrupted(given, undo, firstCut);
    note("first cut", disk.uncut() ? "behind the end" : "hit");
    disk.restart();
    nothingLost(disk, old);
    given.leavesOnlyReservedNames();

    disk.cutAfter(secondCut);
    cut(() -> given.renamer().recover());
    note("second cut", disk.uncut() ? "behind the end" : "hit");
    disk.restart();
    nothingLost(disk, old);
    given.leavesOnlyReservedNames();

    note("names left reserved", disk.leftovers().isEmpty() ? "none" : "some");
    var recovery = given.recovered();
    assertThat(recovery)
        .isNotInstanceOf(Recovery.Stuck.class)
        .isNotInstanceOf(Recovery.Refused.class);
    note("last recovery", volume + " " + recovery.getClass().getSimpleName());
    assertThat(disk.files()).isIn(old, renamed);
    assertThat(disk.violations()).isEmpty();
    assertThat(given.renamer().recover()).isInstanceOf(Recovery.Nothing.class);
    assertThat(disk.moves().keySet()).isSubsetOf(volume.guarantee());
    note("renamed by", volume + " " + disk.moves().keySet());
  }

  /** FAT and exFAT: of a rename both names may be there, or none. */
  @Property(tries = 6_000, edgeCases = EdgeCasesMode.NONE)
  void whatAPowerCutTearsIsToldAndNothingElseIsTouched(
      @ForAll @IntRange(min = 0, max = 2) int which,
      @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 0, max = 16) Integer> targets,
      @ForAll boolean undo,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    var volume = torn().get(which);
    int cutAt = steps(Case.of(volume, targets, false, seed), undo, seed);
    var given = Case.of(volume, targets, false, seed);
    var disk = given.disk();
    disk.tearsRenames();
    var old = disk.files();
    var renamed = interrupted(given, undo, cutAt);
    disk.restart();
    var torn = Set.copyOf(disk.torn());
    var then = disk.files();

    var recovery = torn.isEmpty() ? given.recovered() : given.renamer().recover();
    note("torn", volume + (torn.isEmpty() ? " nothing, " : " some, ") + name(recovery));
    assertThat(disk.files().values()).containsExactlyInAnyOrderElementsOf(then.values());
    if (torn.isEmpty()) {
      assertThat(disk.files()).isIn(old, renamed);
    } else if (recovery instanceof Recovery.Stuck stuck) {
      assertThat(stuck.files())
          .filteredOn(
              file ->
                  file.problem().what().contains("neither")
                      || file.problem().what().contains("twice"))
          .allSatisfy(file -> assertThat(file.problem().remedy()).contains("the system check"));
    } else {
      assertThat(List.of(old, renamed))
          .anySatisfy(
              whole ->
                  whole.forEach(
                      (path, content) -> {
                        if (!torn.contains(content)) {
                          assertThat(disk.files()).containsEntry(path, content);
                        }
                      }));
    }
  }

  @Property(tries = 4_000, edgeCases = EdgeCasesMode.NONE)
  void aReadyPlanNeverMeetsATakenNameAndUndoTakesItBack(
      @ForAll SystemVolume volume,
      @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 0, max = 16) Integer> targets,
      @ForAll boolean grouped,
      @ForAll long seed)
      throws IOException {
    if (FOLDED) {
      return;
    }
    var given = Case.of(volume, targets, grouped, seed);
    var old = given.disk().files();
    var plan = given.renamer().plan(given.requests());
    var renamed = given.carriedOut(plan);
    var outcome = given.renamer().apply(plan, Progress.NONE);
    note("ready", plan.ready() > 0);
    if (plan.ready() == 0) {
      assertThat(outcome).isInstanceOf(Outcome.Nothing.class);
      return;
    }
    assertThat(given.disk().files()).isEqualTo(renamed);
    assertThat(given.disk().moves().keySet()).containsExactly(volume.guarantee());
    var batch = ((Outcome.Applied) outcome).batch();
    assertThat(given.renamer().undo(batch, Progress.NONE)).isInstanceOf(Outcome.Applied.class);
    assertThat(given.disk().files()).isEqualTo(old);
    assertThat(given.disk().leftovers()).isEmpty();
  }

  /** The volumes that promise no rename that is done or not done. */
  private static List<SystemVolume> torn() {
    return Stream.of(SystemVolume.values())
        .filter(volume -> !volume.traits().atomicRename())
        .toList();
  }

  /** Counts what the tries were, for the report. */
  void note(String label, Object value) {
    Statistics.label(label).collect(value);
  }

  private static String name(Recovery recovery) {
    return recovery.getClass().getSimpleName();
  }

  /** Applies, or takes back, until the power is cut; what the names shall be, once applied. */
  private static Map<Path, String> interrupted(Case given, boolean undo, int cutAt)
      throws IOException {
    var plan = given.renamer().plan(given.requests());
    var renamed = given.carriedOut(plan);
    if (undo && given.renamer().apply(plan, Progress.NONE) instanceof Outcome.Applied applied) {
      assertThat(given.disk().files()).isEqualTo(renamed);
      given.disk().cutAfter(cutAt);
      cut(() -> given.renamer().undo(applied.batch(), Progress.NONE));
    } else {
      given.disk().cutAfter(cutAt);
      cut(() -> given.renamer().apply(plan, Progress.NONE));
    }
    return renamed;
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

  private static void nothingLost(ModelDisk disk, Map<Path, String> old) {
    assertThat(disk.peoplesContents()).containsExactlyInAnyOrderElementsOf(old.values());
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
