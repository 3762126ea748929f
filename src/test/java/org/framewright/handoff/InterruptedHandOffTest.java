package org.framewright.handoff;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.disk.CutDisk;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;
import org.junit.jupiter.api.io.TempDir;

/** A hand-off is killed, or fails, at each change of the disk that it makes. */
@Tag("slow")
class InterruptedHandOffTest {
  @TempDir private Path folder;
  private Path template;
  private String jobName;
  private Map<String, String> frames;
  private MetadataOptions metadata = MetadataOptions.NONE;
  private List<ExtraPaper> papers = List.of();

  @BeforeEach
  void aJobOfOneFile() throws Exception {
    take(Scene.ofOneFile(Files.createDirectory(folder.resolve("template"))));
  }

  private void take(Scene scene) throws Exception {
    template = scene.job().folder().getParent();
    jobName = scene.job().name();
    frames = Scene.contents(scene.job().framesFolder());
  }

  private static final class Run {
    private final Path real;
    private final Recording recording;
    private Delivery outcome;
    private Throwable thrown;

    Run(Path real) throws Exception {
      this.real = real;
      this.recording = Recording.on(real);
    }

    List<DiskOp> ops() {
      return recording.ops();
    }
  }

  private interface Disturbance {
    void on(Recording recording);
  }

  /** Hands off to {@code out/package} beside the job; {@code out} is there or not. */
  private Run deliver(String called, boolean place, Disturbance disturbance) throws Exception {
    var run = new Run(Scene.copied(template, folder.resolve(called)));
    if (place) {
      Files.createDirectory(run.real.resolve("out"));
    }
    var job = Scene.open(run.recording.root().resolve(jobName));
    var handOff = Scene.handOff(job).enclosing(papers);
    var plan = handOff.rated(4);
    run.recording.clear();
    disturbance.on(run.recording);
    run.thrown =
        catchThrowable(
            () ->
                run.outcome =
                    handOff.deliver(
                        plan,
                        run.recording.root().resolve("out/package"),
                        metadata,
                        Progress.NONE));
    return run;
  }

  private void assertNothingHalfMade(Path real, String as) throws Exception {
    var target = real.resolve("out/package");
    if (Files.exists(target)) {
      assertThat(OpenPackage.check(target).orElseThrow()).as(as).matches(PackageCheck::whole);
      assertThat(Files.exists(target.resolve("tagmanifest-sha256.txt"))).as(as).isTrue();
    }
    var job = Scene.open(real.resolve(jobName));
    assertThat(Scene.contents(job.framesFolder())).as(as).isEqualTo(frames);
  }

  /** The same hand-off again succeeds, nothing is left of the first, and numbers go on. */
  private void assertTheSameCommandSucceeds(Path real, String as) throws Exception {
    var job = Scene.open(real.resolve(jobName));
    var target = real.resolve("out/package");
    var again = deliver(job, target);
    assertThat(again).as(as).isInstanceOf(Delivery.Delivered.class);
    int number = ((Delivery.Delivered) again).number();
    assertThat(OpenPackage.check(target).orElseThrow()).as(as).matches(PackageCheck::whole);
    assertThat(target.resolve("README.txt")).as(as).content().contains("hand-off " + number + "\n");
    assertThat(Scene.drafts(real.resolve("out"))).as(as).isEmpty();
    var delivered =
        HandOffRecords.of(job).read().usable().values().stream()
            .filter(one -> one.state() == HandOffRecord.State.DELIVERED)
            .toList();
    assertThat(delivered).as(as).extracting(HandOffRecord::number).containsExactly(number);
    assertThat(Returns.of(job, target, OptionalInt.empty()).answers())
        .as(as)
        .isNotEmpty()
        .allMatch(answer -> answer.state() == Returns.State.UNTOUCHED);
    var next = deliver(job, real.resolve("out/next"));
    assertThat(next).as(as).isInstanceOf(Delivery.Delivered.class);
    assertThat(((Delivery.Delivered) next).number()).as(as).isGreaterThan(number);
    assertThat(next.remarks()).as(as).isEmpty();
    assertThat(Scene.contents(job.framesFolder())).as(as).isEqualTo(frames);
  }

  private Delivery deliver(Job job, Path target) throws Exception {
    var handOff = Scene.handOff(job).enclosing(papers);
    return handOff.deliver(handOff.rated(4), target, metadata, Progress.NONE);
  }

  private int killEverywhere(boolean within) throws Exception {
    int points = deliver("whole" + within, true, _ -> {}).ops().size();
    for (int i = 0; i < points; i++) {
      int n = i;
      var run =
          deliver(
              "kill" + within + n,
              true,
              recording -> {
                if (within) {
                  recording.killWithin(n);
                } else {
                  recording.killAt(n);
                }
              });
      var as = "killed at " + n + (within ? ", half-way" : "");
      assertThat(run.thrown).as(as).isInstanceOf(Killed.class);
      assertNothingHalfMade(run.real, as);
      assertTheSameCommandSucceeds(run.real, as);
    }
    return points;
  }

  @Test
  void aKillAtAnyChangeLeavesNothingHalfMadeAndTheSameCommandSucceeds(TestReporter report)
      throws Exception {
    report.publishEntry("points killed", "" + killEverywhere(false));
  }

  @Test
  void aKillInTheMiddleOfAnyWriteToo(TestReporter report) throws Exception {
    take(Scene.rated(Files.createDirectory(folder.resolve("large"))), true);
    int points = killEverywhere(false) + killEverywhere(true);
    report.publishEntry("points killed", "" + points);
  }

  @Test
  void nothingIsHalfMadeEitherWhereTheCopiesAreMadeToSayWhatTheyShow(TestReporter report)
      throws Exception {
    take(Scene.rated(Files.createDirectory(folder.resolve("described"))), true);
    metadata = new MetadataOptions(MetadataMode.EMBED, false, Studio.NOTHING);
    report.publishEntry("points killed", "" + killEverywhere(false));
    report.publishEntry(
        "points failed",
        "" + failEverywhere("full once ", Fault::noSpace, true, "the disk is full"));
  }

  @Test
  void norWhereOtherPapersLieInThePackage(TestReporter report) throws Exception {
    papers = List.of(ExtraPapersTest.names());
    report.publishEntry("points killed", "" + killEverywhere(false));
    report.publishEntry(
        "points failed",
        "" + failEverywhere("full once ", Fault::noSpace, true, "the disk is full"));
  }

  private void take(Scene scene, boolean rename) throws Exception {
    if (rename) {
      scene.rename();
    }
    take(scene);
  }

  private int failEverywhere(
      String called, Function<DiskOp, java.io.IOException> failure, boolean once, String words)
      throws Exception {
    int points = deliver("whole" + called, false, _ -> {}).ops().size();
    for (int i = 0; i < points; i++) {
      int n = i;
      var run =
          deliver(
              called + n,
              false,
              recording -> {
                if (once) {
                  recording.failAt(n, failure);
                } else {
                  recording.failFrom(n, failure);
                }
              });
      var as = called + " at " + n + ": " + run.outcome;
      assertThat(run.thrown).as(as).isNull();
      assertNothingHalfMade(run.real, as);
      assertSaid(run, words, as);
      if (once) {
        assertNothingIsLeft(run, as);
      }
      run.recording.heal();
      assertTheSameCommandSucceeds(run.real, as);
    }
    return points;
  }

  private void assertSaid(Run run, String words, String as) {
    switch (run.outcome) {
      case Delivery.Failed failed -> {
        assertThat(failed.problem().what()).as(as).contains(words);
        assertThat(failed.problem().where()).as(as).isNotBlank().doesNotContain(".framewright-");
        assertThat(failed.problem().remedy()).as(as).isNotBlank();
      }
      case Delivery.Delivered done ->
          assertThat(run.real.resolve("out/package")).as(as + done.remarks()).isDirectory();
      default -> throw new AssertionError(as);
    }
  }

  private static void assertNothingIsLeft(Run run, String as) {
    if (run.outcome instanceof Delivery.Failed failed
        && Files.isDirectory(run.real.resolve("out"))) {
      var drafts = Scene.drafts(run.real.resolve("out"));
      var said = failed.remarks().stream().map(Problem::where).toList();
      assertThat(drafts).as(as).allMatch(draft -> said.toString().contains(draft));
      assertThat(run.real.resolve("out/package")).as(as).doesNotExist();
    }
  }

  @Test
  void aFullDiskAtAnyChangeIsNamedAndTheSameCommandSucceedsLater(TestReporter report)
      throws Exception {
    report.publishEntry(
        "points failed", "" + failEverywhere("full", Fault::noSpace, true, "the disk is full"));
  }

  @Test
  void everyOtherFailureToo(TestReporter report) throws Exception {
    take(Scene.rated(Files.createDirectory(folder.resolve("large"))), true);
    int points =
        failEverywhere("full once ", Fault::noSpace, true, "the disk is full")
            + failEverywhere("full ", Fault::noSpace, false, "the disk is full")
            + failEverywhere("io once ", Fault::inputOutput, true, "could not read or write")
            + failEverywhere("io ", Fault::inputOutput, false, "could not read or write")
            + failEverywhere("locked ", Fault::readOnly, false, "can only be read");
    report.publishEntry("points failed", "" + points);
  }

  @Test
  void afterAPowerCutAtAnyChangeThePackageIsWholeOrNotThere(TestReporter report) throws Exception {
    int points = powerCuts(CutDisk.Names.LOST) + powerCuts(CutDisk.Names.KEPT);
    report.publishEntry("points cut", "" + points);
  }

  private int powerCuts(CutDisk.Names names) throws Exception {
    int points = deliver("whole" + names, true, _ -> {}).ops().size();
    for (int i = 0; i <= points; i++) {
      int n = i;
      var cut = new ArrayList<CutDisk>();
      var run =
          deliver(
              "before" + names + n,
              true,
              recording -> {
                try {
                  cut.add(recording.cutDisk());
                } catch (java.io.IOException e) {
                  throw new java.io.UncheckedIOException(e);
                }
                recording.killAt(n);
              });
      var left = cut.getFirst().afterPowerCut(folder.resolve("after" + names + n), names);
      var as = names + " after a power cut at " + n + " " + run.outcome;
      var target = left.resolve("out/package");
      if (n == points) {
        assertThat(target).as(as).isDirectory();
      }
      if (Files.exists(target)) {
        assertThat(Files.exists(target.resolve("tagmanifest-sha256.txt"))).as(as).isTrue();
        assertThat(OpenPackage.check(target).orElseThrow()).as(as).matches(PackageCheck::whole);
        assertThat(HandOffRecords.of(Scene.open(left.resolve(jobName))).read().usable().values())
            .as(as)
            .anyMatch(one -> one.state().mayBeOut());
      }
    }
    return points;
  }
}
