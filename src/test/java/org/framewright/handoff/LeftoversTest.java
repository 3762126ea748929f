package org.framewright.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Copies that a killed hand-off left are not written again, if they are what their frames are. */
class LeftoversTest {
  @TempDir private Path folder;
  private Job job;
  private HandOffPlan plan;
  private Path out;
  private Path target;
  private Path draft;
  private Path frame;
  private String name;

  @BeforeEach
  void aJobAndAPlace() throws Exception {
    on(Scene.ofOneFile(folder.toRealPath()).job(), folder.toRealPath());
    Files.createDirectory(out);
  }

  private void on(Job opened, Path root) throws Exception {
    job = opened;
    plan = Scene.handOff(job).rated(4);
    var select = plan.selects().getFirst();
    frame = select.frame().files().getFirst().path();
    name = select.files().getFirst();
    out = root.resolve("out");
    target = out.resolve("for Bram");
  }

  /** A hand-off that was killed after it had written some files. */
  private Path interrupted(Path beside) throws Exception {
    draft = Draft.beside(beside);
    Files.createDirectories(job.folder().resolve(".framewright/handoffs"));
    HandOffRecords.of(job)
        .update(
            HandOffRecord.begun(
                1, "2026-11-23T09:00:00Z", beside.toString(), draft.toString(), "all"));
    try (var made = Draft.create(draft, Draft.note(job.name(), 1, draft))) {
      Files.createDirectory(made.packageFolder());
      return Files.createDirectory(Bag.data(made.packageFolder()));
    }
  }

  private Delivery.Delivered deliver() throws Exception {
    return (Delivery.Delivered) Scene.handOff(job).deliver(plan, target, Progress.NONE);
  }

  private void assertThePackageIsWhole(Delivery.Delivered done) throws Exception {
    assertThat(done.folder().resolve("data").resolve(name))
        .hasSameBinaryContentAs(frame.toFile().toPath());
    assertThat(Files.getLastModifiedTime(done.folder().resolve("data").resolve(name)))
        .isEqualTo(Files.getLastModifiedTime(frame));
    assertThat(Scene.drafts(out)).isEmpty();
    assertThat(draft).doesNotExist();
    assertThat(done.remarks())
        .extracting(Problem::what)
        .containsExactly(
            "hand-off 1 was interrupted; what it had copied is used where it is whole");
  }

  private static Object file(Path path) throws Exception {
    return Files.getAttribute(path, "unix:ino");
  }

  @Test
  void aWholeCopyTakesItsPlaceInTheNextPackage() throws Exception {
    var copy = Files.copy(frame, interrupted(target).resolve(name));
    var before = file(copy);
    var done = deliver();
    assertThat(file(target.resolve("data").resolve(name))).isEqualTo(before);
    assertThePackageIsWhole(done);
  }

  @Test
  void aPackageOfAnotherNameInTheSameFolderUsesItToo() throws Exception {
    var before = file(Files.copy(frame, interrupted(out.resolve("other")).resolve(name)));
    deliver();
    assertThat(file(target.resolve("data").resolve(name))).isEqualTo(before);
  }

  @Test
  void oneChangedByteIsFoundAndTheFrameIsCopiedAnew() throws Exception {
    var bytes = Files.readAllBytes(frame);
    bytes[bytes.length / 2] ^= 1;
    Files.write(interrupted(target).resolve(name), bytes);
    assertThePackageIsWhole(deliver());
  }

  @Test
  void halfACopyALinkAndWhatIsNotWantedAreNotUsed() throws Exception {
    var data = interrupted(target);
    Files.write(data.resolve(name), new byte[10]);
    Files.createDirectory(data.resolve("folder"));
    Files.copy(frame, data.resolve("folder").resolve(name));
    Files.writeString(data.resolveSibling("index.csv"), "half");
    assertThePackageIsWhole(deliver());
  }

  @Test
  void aLinkIsNoCopyAndWhatItLeadsToStaysAsItIs() throws Exception {
    var elsewhere = Files.copy(frame, folder.resolve("elsewhere"));
    SymbolicLinks.make(interrupted(target).resolve(name), elsewhere);
    var done = deliver();
    assertThat(target.resolve("data").resolve(name))
        .satisfies(copy -> assertThat(Files.isSymbolicLink(copy)).isFalse());
    assertThat(elsewhere).hasSameBinaryContentAs(frame);
    assertThePackageIsWhole(done);
  }

  @Test
  void aDraftThatSomebodyWritesIsLeftToThem() throws Exception {
    var copy = Files.copy(frame, interrupted(target).resolve(name));
    Files.delete(draft.resolve("draft.txt"));
    var own = Draft.beside(target);
    Files.move(draft, own);
    Files.createDirectories(out);
    assertThat(Draft.takeOver(own, Draft.note(job.name(), 1, own))).isEmpty();
    assertThat(own.resolve(draft.relativize(copy).toString())).exists();
  }

  @Test
  void whatIsThereAlreadyNeedsNoRoom() throws Exception {
    long huge = Long.MAX_VALUE / 4;
    var aim = Target.of(target);
    var bigger =
        new HandOffPlan("all", plan.selects().stream().map(DeliveryTest::huge).toList(), List.of());
    assertThat(aim.roomProblem(bigger, MetadataMode.NONE, 0, 0)).isPresent();
    assertThat(aim.roomProblem(bigger, MetadataMode.NONE, 0, huge / 10 * 11)).isEmpty();
  }

  @Test
  void onlyWhatFitsThePlanIsKeptAndCounted() throws Exception {
    var data = interrupted(target);
    Files.copy(frame, data.resolve(name));
    Files.copy(frame, data.resolve("another.cr3"));
    try (var leftovers = new Leftovers()) {
      leftovers.add(Draft.takeOver(draft, Draft.note(job.name(), 1, draft)).orElseThrow());
      leftovers.keep(List.of(plan));
      assertThat(leftovers.bytes(plan)).isEqualTo(Files.size(frame));
      assertThat(data.resolve("another.cr3")).doesNotExist();
      assertThat(leftovers.take("another.cr3")).isEmpty();
      assertThat(leftovers.take(name)).contains(data.resolve(name));
      assertThat(leftovers.take(name)).isEmpty();
    }
    assertThat(draft).doesNotExist();
  }

  @Test
  void copiesOfALaterPackageOfSeveralAreUsedThoughAnEarlierOneIsThereAlready() throws Exception {
    var scene = Scene.rated(Files.createDirectory(folder.resolve("several")));
    scene.rename();
    job = scene.job();
    var handOff = Scene.handOff(job);
    var parts = handOff.rated(4).parts(1);
    var first =
        handOff.deliver(
            parts.get(0), out.resolve("for Bram-1"), MetadataOptions.NONE, Progress.NONE);
    assertThat(first).isInstanceOf(Delivery.Delivered.class);
    draft = Draft.beside(target);
    HandOffRecords.of(job)
        .update(
            HandOffRecord.begun(
                2, "2026-11-23T09:00:00Z", out.resolve("for Bram-3").toString(), "" + draft, "x"));
    var last = parts.get(2).selects().getFirst();
    Path copy;
    try (var made = Draft.create(draft, Draft.note(job.name(), 2, draft))) {
      Files.createDirectory(made.packageFolder());
      copy = Files.createDirectory(Bag.data(made.packageFolder())).resolve(last.files().get(0));
      Files.copy(last.frame().files().get(0).path(), copy);
    }
    var before = file(copy);
    var ended = handOff.deliver(parts, target, MetadataOptions.NONE, Progress.NONE);
    assertThat(ended).hasSize(3).allMatch(Delivery.Delivered.class::isInstance);
    assertThat(file(out.resolve("for Bram-3/data").resolve(last.files().get(0)))).isEqualTo(before);
    assertThat(Scene.drafts(out)).isEmpty();
  }

  @Test
  void aCopyIsFlushedInItsNewPlace() throws Exception {
    var real = job.folder();
    var recording = Recording.on(folder.toRealPath());
    on(Scene.open(recording.root().resolve(real.getFileName().toString())), recording.root());
    Files.copy(frame, interrupted(target).resolve(name));
    recording.clear();
    deliver();
    var ops = recording.ops();
    int moved = -1;
    for (int i = 0; i < ops.size(); i++) {
      moved =
          ops.get(i) instanceof DiskOp.Move move && move.to().endsWith("data/" + name) ? i : moved;
    }
    assertThat(moved).isPositive();
    var copy = ((DiskOp.Move) ops.get(moved)).to();
    assertThat(ops.subList(moved, ops.size())).contains(new DiskOp.Force(copy, false));
    assertThat(ops).noneMatch(op -> op instanceof DiskOp.Create && op.path().equals(copy));
  }
}
