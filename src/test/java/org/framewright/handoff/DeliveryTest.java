package org.framewright.handoff;

import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.InstanceOfAssertFactories.type;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.framewright.base.Progress;
import org.framewright.disk.DiskOp;
import org.framewright.disk.Fault;
import org.framewright.disk.Killed;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.job.Job;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a hand-off does on the disk, in which order, and what it finds of earlier ones. */
class DeliveryTest {
  @TempDir private Path folder;
  private Recording recording;
  private Path target;
  private Job job;
  private HandOff handOff;
  private HandOffPlan plan;
  private FrameCopy copy;

  /** The one file of the plan: the frame, and the name of its copy in the record of the disk. */
  private record FrameCopy(Path frame, String name) {}

  @BeforeEach
  void aJobOfOneFileOnARecordedDisk() throws Exception {
    var real = Scene.ofOneFile(folder).job().folder();
    Files.createDirectory(folder.resolve("out"));
    recording = Recording.on(folder);
    target = recording.root().resolve("out/package");
    prepare(recording.root().resolve(real.getFileName().toString()));
  }

  private void prepare(Path jobFolder) throws Exception {
    job = Scene.open(jobFolder);
    handOff = Scene.handOff(job);
    plan = handOff.rated(4);
    var select = plan.selects().getFirst();
    copy =
        new FrameCopy(
            Path.of(select.frame().files().getFirst().path().toString()),
            "package/data/" + select.files().getFirst());
    recording.clear();
  }

  private Delivery deliver() {
    return handOff.deliver(plan, target, Progress.NONE);
  }

  private Path real(Path path) {
    return recording.real(path);
  }

  /** The program comes back after its end, over the plain disk. */
  private Delivery again() throws Exception {
    return Scene.deliver(Scene.open(real(job.folder())), real(target));
  }

  private static boolean isRecord(DiskOp op) {
    return op.path().matches(".*/handoffs/.*\\d{4}\\.json.*");
  }

  private int index(Predicate<DiskOp> wanted) {
    var ops = recording.ops();
    for (int i = 0; i < ops.size(); i++) {
      if (wanted.test(ops.get(i))) {
        return i;
      }
    }
    throw new AssertionError("no such change: " + ops);
  }

  private int last(Predicate<DiskOp> wanted) {
    var ops = recording.ops();
    for (int i = ops.size() - 1; i >= 0; i--) {
      if (wanted.test(ops.get(i))) {
        return i;
      }
    }
    throw new AssertionError("no such change: " + ops);
  }

  private boolean isPlacing(DiskOp op) {
    return op instanceof DiskOp.Move move && move.to().equals("out/package");
  }

  private int draftMade() {
    return index(op -> op instanceof DiskOp.CreateFolder && op.path().contains(".framewright-"));
  }

  @Test
  void theRecordIsOnTheDiskBeforeTheDraftAndBeforeThePackageTakesItsPlace() {
    assertThat(deliver()).isInstanceOf(Delivery.Delivered.class);
    var ops = recording.ops();
    int begun = index(op -> op instanceof DiskOp.Link && isRecord(op));
    int placed = index(this::isPlacing);
    assertThat(ops.subList(begun, draftMade()))
        .anyMatch(op -> op instanceof DiskOp.Force f && f.isFolder() && f.path().endsWith("offs"));
    var between = ops.subList(draftMade(), placed);
    int update = -1;
    for (int i = 0; i < between.size(); i++) {
      update = between.get(i) instanceof DiskOp.Move move && isRecord(move) ? i : update;
    }
    assertThat(update).isPositive();
    assertThat(between.subList(update, between.size()))
        .anyMatch(op -> op instanceof DiskOp.Force f && f.isFolder() && f.path().endsWith("offs"));
    assertThat(ops.subList(placed, ops.size()))
        .anyMatch(op -> op.equals(new DiskOp.Force("out", true)))
        .anyMatch(op -> op instanceof DiskOp.Move move && isRecord(move));
    int flushed = index(op -> op.equals(new DiskOp.Force("out", true)) && ops.indexOf(op) >= 0);
    assertThat(flushed).isPositive();
    assertThat(last(op -> op.equals(new DiskOp.Force("out", true)))).isGreaterThan(placed);
    assertThat(last(op -> op instanceof DiskOp.Move move && isRecord(move)))
        .isGreaterThan(last(op -> op.path().contains(".framewright-")));
  }

  @Test
  void everyFileAndFolderOfThePackageIsFlushedAfterItsLastChangeAndBeforeItTakesItsPlace() {
    deliver();
    int placed = index(this::isPlacing);
    var before = recording.ops().subList(draftMade(), placed);
    var written =
        before.stream()
            .filter(op -> op instanceof DiskOp.Write)
            .map(DiskOp::path)
            .filter(path -> path.contains("/package/"))
            .distinct()
            .toList();
    assertThat(written).hasSize(9);
    for (var path : written) {
      assertThat(before.lastIndexOf(new DiskOp.Force(path, false)))
          .as(path)
          .isGreaterThan(lastWrite(before, path));
    }
    var draft = recording.ops().get(draftMade()).path();
    for (var path : List.of(draft + "/package/data", draft + "/package", draft)) {
      assertThat(before.lastIndexOf(new DiskOp.Force(path, true)))
          .as(path)
          .isGreaterThan(lastCreated(before, path));
    }
  }

  private static int lastWrite(List<DiskOp> ops, String path) {
    int last = -1;
    for (int i = 0; i < ops.size(); i++) {
      last = ops.get(i) instanceof DiskOp.Write && ops.get(i).path().equals(path) ? i : last;
    }
    return last;
  }

  private static int lastCreated(List<DiskOp> ops, String in) {
    int last = -1;
    for (int i = 0; i < ops.size(); i++) {
      var op = ops.get(i);
      boolean made = op instanceof DiskOp.Create || op instanceof DiskOp.CreateFolder;
      boolean directly =
          op.path().startsWith(in + "/") && op.path().lastIndexOf('/') == in.length();
      last = made && directly ? i : last;
    }
    return last;
  }

  /** Does something at the first change that is wanted, before it is made. */
  private void at(Predicate<DiskOp> wanted, Fault done) {
    var over = new boolean[1];
    recording.fail(
        (op, index) -> {
          if (!over[0] && wanted.test(op)) {
            over[0] = true;
            return done.at(op, index);
          }
          return Optional.empty();
        });
  }

  private interface Deed {
    void run() throws IOException;
  }

  private static Fault quietly(Deed deed) {
    return (op, index) -> {
      try {
        deed.run();
        return Optional.empty();
      } catch (IOException e) {
        throw new java.io.UncheckedIOException(e);
      }
    };
  }

  private void assertNothingIsLeft() throws Exception {
    assertThat(folder.resolve("out")).isEmptyDirectory();
    assertThat(HandOffRecords.of(job).read().nextNumber()).isEqualTo(1);
  }

  @Test
  void aCopyThatIsNotWhatWasReadIsFoundByReadingItAgain() throws Exception {
    at(
        op -> op instanceof DiskOp.SetTimes && op.path().endsWith(copy.name()),
        (op, _) -> {
          try {
            var file = folder.resolve(op.path());
            var bytes = Files.readAllBytes(file);
            bytes[bytes.length / 2] ^= 1;
            Files.write(file, bytes);
            return Optional.empty();
          } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
          }
        });
    assertThat(deliver())
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(
            failed -> {
              assertThat(failed.problem().what()).contains("not what was read");
              assertThat(failed.problem().where()).endsWith("KVO_001_F_0001.JPG");
            });
    assertNothingIsLeft();
  }

  private void assertChanged() throws Exception {
    assertThat(deliver())
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(
            failed -> {
              assertThat(failed.problem().what()).contains("changed while");
              assertThat(failed.problem().where()).isEqualTo(copy.frame().toString());
            });
    assertNothingIsLeft();
  }

  @Test
  void aFrameThatGrowsWhileItIsCopiedIsNotHandedOffEvenIfItKeepsItsTime() throws Exception {
    at(
        op -> op instanceof DiskOp.SetTimes && op.path().endsWith(copy.name()),
        quietly(
            () -> {
              var time = Files.getLastModifiedTime(copy.frame());
              Files.write(copy.frame(), new byte[] {1}, java.nio.file.StandardOpenOption.APPEND);
              Files.setLastModifiedTime(copy.frame(), time);
            }));
    assertChanged();
  }

  @Test
  void aFrameThatIsWrittenAnewWhileItIsCopiedIsNotHandedOffEvenIfItKeepsItsSize() throws Exception {
    at(
        op -> op instanceof DiskOp.SetTimes && op.path().endsWith(copy.name()),
        quietly(() -> Files.setLastModifiedTime(copy.frame(), FileTime.fromMillis(1_000_000))));
    assertChanged();
  }

  @Test
  void aLinkInPlaceOfAFrameIsNotRead() throws Exception {
    Files.move(copy.frame(), folder.resolve("elsewhere"));
    SymbolicLinks.make(copy.frame(), folder.resolve("elsewhere"));
    assertThat(deliver()).isInstanceOf(Delivery.Failed.class);
    assertNothingIsLeft();
  }

  @Test
  void whatTakesThePlaceMeanwhileIsLeftAsItIs() throws Exception {
    at(this::isPlacing, quietly(() -> Files.createDirectory(folder.resolve("out/package"))));
    assertThat(deliver())
        .asInstanceOf(type(Delivery.Refused.class))
        .satisfies(refused -> assertThat(refused.problem().what()).contains("is there already"));
    assertThat(folder.resolve("out/package")).isEmptyDirectory();
    Files.delete(folder.resolve("out/package"));
    assertNothingIsLeft();
  }

  @Test
  void aServerThatFlushesNoFoldersGetsThePackageToo() {
    recording.fail(
        (op, _) ->
            op instanceof DiskOp.Force force && force.isFolder()
                ? Optional.of(new IOException("Invalid argument"))
                : Optional.empty());
    assertThat(deliver()).isInstanceOf(Delivery.Delivered.class);
    assertThat(deliver().remarks()).singleElement().matches(one -> one.what().contains("whole"));
  }

  @Test
  void aFullDiskIsNamedWithItsPlaceAndLeavesNothing() throws Exception {
    at(
        op -> op instanceof DiskOp.Write && op.path().endsWith(copy.name()),
        (op, _) -> Optional.of(Fault.noSpace(op)));
    assertThat(deliver())
        .asInstanceOf(type(Delivery.Failed.class))
        .satisfies(
            failed -> {
              assertThat(failed.problem().what()).isEqualTo("the disk is full");
              assertThat(failed.problem().where()).startsWith(folder.resolve("out").toString());
              assertThat(failed.problem().where()).doesNotContain(".framewright-");
              assertThat(failed.problem().remedy()).contains("Make room");
              assertThat(failed.remarks()).isEmpty();
            });
    assertNothingIsLeft();
  }

  @Test
  void aDraftThatCannotBeRemovedIsNamedAndTheNextHandOffRemovesIt() throws Exception {
    at(
        op -> op instanceof DiskOp.Write && op.path().endsWith(copy.name()),
        (op, _) -> {
          recording.fail(Fault.ofEach(DiskOp.Delete.class, Fault::inputOutput));
          return Optional.of(Fault.noSpace(op));
        });
    var draft =
        assertThat(deliver())
            .asInstanceOf(type(Delivery.Failed.class))
            .actual()
            .remarks()
            .getFirst()
            .where();
    assertThat(Path.of(draft)).isDirectory();
    assertThat(again())
        .asInstanceOf(type(Delivery.Delivered.class))
        .satisfies(
            done -> {
              assertThat(done.number()).isEqualTo(2);
              assertThat(done.remarks())
                  .singleElement()
                  .satisfies(
                      remark -> {
                        assertThat(remark.what()).contains("hand-off 1 was interrupted");
                        assertThat(remark.where()).isEqualTo(draft);
                      });
            });
    assertThat(Path.of(draft)).doesNotExist();
  }

  @Test
  void aRecordThatCannotBeCompletedIsCompletedByTheNextHandOff() throws Exception {
    at(
        this::isPlacing,
        (_, _) -> {
          recording.fail(
              (op, _) -> isPlacing(op) ? Optional.empty() : Optional.of(Fault.inputOutput(op)));
          return Optional.empty();
        });
    assertThat(deliver())
        .asInstanceOf(type(Delivery.Delivered.class))
        .satisfies(
            done ->
                assertThat(done.remarks())
                    .singleElement()
                    .matches(remark -> remark.what().contains("whole and in its place")));
    assertThat(again())
        .asInstanceOf(type(Delivery.Delivered.class))
        .satisfies(done -> assertThat(done.number()).isEqualTo(1))
        .satisfies(done -> assertThat(done.bytes()).isEqualTo(plan.bytes()))
        .satisfies(done -> assertThat(done.files()).isEqualTo(2))
        .satisfies(done -> assertThat(done.selects()).isEqualTo(1));
    assertThat(Scene.drafts(folder.resolve("out"))).isEmpty();
  }

  private void killAt(Predicate<DiskOp> wanted) throws Exception {
    at(
        wanted,
        (_, index) -> {
          recording.killAt(index + 1);
          return Optional.empty();
        });
    assertThat(catchThrowable(this::deliver)).isInstanceOf(Killed.class);
    assertThat(recording.isKilled()).isTrue();
  }

  private HandOffRecord.State state(int number) throws Exception {
    return HandOffRecords.of(Scene.open(real(job.folder()))).read().usable().get(number).state();
  }

  private String remark(Delivery delivery) {
    assertThat(delivery.remarks()).hasSize(1);
    return delivery.remarks().getFirst().what();
  }

  @Test
  void aHandOffKilledWhileItCopiesIsGivenUpByTheNextOne() throws Exception {
    killAt(op -> op instanceof DiskOp.Create && op.path().endsWith(copy.name()));
    assertThat(state(1)).isEqualTo(HandOffRecord.State.BEGUN);
    assertThat(Scene.drafts(folder.resolve("out"))).hasSize(1);
    assertThat(remark(again())).contains("what it had copied is used");
    assertThat(state(1)).isEqualTo(HandOffRecord.State.ABANDONED);
    assertThat(state(2)).isEqualTo(HandOffRecord.State.DELIVERED);
    assertThat(Scene.drafts(folder.resolve("out"))).isEmpty();
  }

  @Test
  void aHandOffKilledJustAfterItsPackageTookItsPlaceIsRecordedByTheNextOne() throws Exception {
    killAt(this::isPlacing);
    assertThat(state(1)).isEqualTo(HandOffRecord.State.PLACING);
    var again = again();
    assertThat(again.remarks()).hasSize(2);
    assertThat(again.remarks().getFirst().what()).contains("it is recorded now");
    assertThat(((Delivery.Delivered) again).number()).isEqualTo(1);
    assertThat(state(1)).isEqualTo(HandOffRecord.State.DELIVERED);
    assertThat(Scene.drafts(folder.resolve("out"))).isEmpty();
  }

  @Test
  void whatComesBackIsReadAgainstAHandOffThatWasKilledThen() throws Exception {
    killAt(this::isPlacing);
    var returns =
        Returns.of(Scene.open(real(job.folder())), real(target), java.util.OptionalInt.empty());
    assertThat(returns.count(Returns.State.UNTOUCHED)).isEqualTo(1);
  }

  @Test
  void aWholePackageThatIsNowhereAnyMoreIsNamedUntilItsRecordIsDeleted() throws Exception {
    killAt(this::isPlacing);
    Files.move(real(target), folder.resolve("taken away"));
    var next = Scene.deliver(Scene.open(real(job.folder())), folder.resolve("out/next"));
    assertThat(remark(next)).contains("is not there now");
    assertThat(next.remarks().getFirst().remedy()).contains("0001.json");
    assertThat(state(1)).isEqualTo(HandOffRecord.State.PLACING);
    assertThat(((Delivery.Delivered) next).number()).isEqualTo(2);
    assertThat(Scene.drafts(folder.resolve("out"))).isEmpty();
    Files.move(folder.resolve("taken away"), real(target));
    var back = Scene.deliver(Scene.open(real(job.folder())), folder.resolve("out/third"));
    assertThat(remark(back)).contains("it is recorded now");
    assertThat(state(1)).isEqualTo(HandOffRecord.State.DELIVERED);
  }

  @Test
  void aWholePackageThatDidNotTakeItsPlaceIsRemoved() throws Exception {
    at(
        op -> op instanceof DiskOp.Move move && isRecord(move),
        (_, index) -> {
          recording.killAt(index + 2);
          return Optional.empty();
        });
    assertThat(catchThrowable(this::deliver)).isInstanceOf(Killed.class);
    assertThat(state(1)).isEqualTo(HandOffRecord.State.PLACING);
    assertThat(remark(again())).contains("what it had copied is used");
    assertThat(state(1)).isEqualTo(HandOffRecord.State.ABANDONED);
    assertThat(state(2)).isEqualTo(HandOffRecord.State.DELIVERED);
  }

  @Test
  void aDraftOnADriveThatIsNotConnectedIsRemovedOnceItIsConnectedAgain() throws Exception {
    killAt(op -> op instanceof DiskOp.Create && op.path().endsWith(copy.name()));
    Files.move(folder.resolve("out"), folder.resolve("unplugged"));
    Files.createDirectory(folder.resolve("other"));
    var other = Scene.deliver(Scene.open(real(job.folder())), folder.resolve("other/package"));
    assertThat(remark(other)).contains("not connected");
    assertThat(state(1)).isEqualTo(HandOffRecord.State.BEGUN);
    Files.move(folder.resolve("unplugged"), folder.resolve("mounted elsewhere"));
    Files.createDirectory(folder.resolve("out"));
    var empty = Scene.deliver(Scene.open(real(job.folder())), folder.resolve("other/package 2"));
    assertThat(empty.remarks()).isEmpty();
    var back =
        Scene.deliver(Scene.open(real(job.folder())), folder.resolve("mounted elsewhere/package"));
    assertThat(remark(back)).contains("what it had copied is used");
    assertThat(Scene.drafts(folder.resolve("mounted elsewhere"))).isEmpty();
  }

  @Test
  void aDraftThatSomebodyWritesIsNeitherRemovedNorNamed() throws Exception {
    var foreign = Draft.beside(real(target));
    try (var _ = Draft.create(foreign, "somebody else's")) {
      assertThat(again().remarks()).isEmpty();
      assertThat(foreign).isDirectory();
    }
    var next = Scene.deliver(Scene.open(real(job.folder())), folder.resolve("out/next"));
    assertThat(remark(next)).contains("it is not this job's");
    assertThat(next.remarks().getFirst().where()).isEqualTo(foreign.toString());
    assertThat(foreign.resolve("draft.txt")).exists();
  }

  @Test
  void aRecordThatPointsAtAFolderOfSomebodyElseRemovesNothing() throws Exception {
    killAt(op -> op instanceof DiskOp.Create && op.path().endsWith(copy.name()));
    var draft = folder.resolve("out").resolve(Scene.drafts(folder.resolve("out")).getFirst());
    Files.writeString(draft.resolve("draft.txt"), "another note");
    var again = again();
    assertThat(remark(again)).contains("it is not certain that nobody needs it");
    assertThat(draft.resolve("package")).isDirectory();
  }

  @Test
  void aLinkInADraftIsRemovedAndWhatItLeadsToStays() throws Exception {
    killAt(op -> op instanceof DiskOp.Create && op.path().endsWith(copy.name()));
    var draft = folder.resolve("out").resolve(Scene.drafts(folder.resolve("out")).getFirst());
    var precious = Files.createDirectory(folder.resolve("precious"));
    Files.writeString(precious.resolve("file"), "precious");
    SymbolicLinks.make(draft.resolve("package/link"), precious);
    assertThat(again()).isInstanceOf(Delivery.Delivered.class);
    assertThat(draft).doesNotExist();
    assertThat(precious.resolve("file")).hasContent("precious");
  }

  @Test
  void theSameHandOffToTheSamePlaceAgainComparesAndWritesNoPackage() throws Exception {
    deliver();
    var before = Scene.contents(real(target));
    var again = again();
    assertThat(remark(again)).contains("compared again and is whole");
    assertThat(((Delivery.Delivered) again).number()).isEqualTo(1);
    assertThat(Scene.contents(real(target))).isEqualTo(before);
  }

  @Test
  void aPackageThatIsDamagedIsNotTakenForTheSame() throws Exception {
    deliver();
    Files.writeString(
        real(target).resolve("data").resolve(plan.selects().getFirst().files().getFirst()), "bad");
    assertThat(again()).isInstanceOf(Delivery.Refused.class);
  }

  @Test
  void aFrameThatIsOtherNowMakesItAnotherHandOff() throws Exception {
    deliver();
    var bytes = Files.readAllBytes(copy.frame());
    bytes[bytes.length - 10] ^= 1;
    var time = Files.getLastModifiedTime(copy.frame());
    Files.write(copy.frame(), bytes);
    Files.setLastModifiedTime(copy.frame(), time);
    assertThat(again()).isInstanceOf(Delivery.Refused.class);
  }

  @Test
  void aFaultInTheProgressLeavesNothing() throws Exception {
    var thrown =
        catchThrowable(
            () ->
                handOff.deliver(
                    plan,
                    target,
                    (_, _) -> {
                      throw new IllegalStateException("screen");
                    }));
    assertThat(thrown).hasMessage("screen");
    assertNothingIsLeft();
  }

  @Test
  void anEmptyDraftOrAHalfWrittenNoteIsRecognised() throws Exception {
    var path = Draft.beside(real(target));
    Files.createDirectory(path);
    assertThat(Draft.clear(path, "the note")).isEqualTo(Draft.Cleared.REMOVED);
    Files.createDirectory(path);
    Files.writeString(path.resolve("draft.txt"), "the n");
    assertThat(Draft.clear(path, "the note")).isEqualTo(Draft.Cleared.REMOVED);
    Files.createDirectories(path.resolve("package"));
    Files.writeString(path.resolve("draft.txt"), "the n");
    assertThat(Draft.clear(path, "the note")).isEqualTo(Draft.Cleared.NOT_OURS);
    Files.writeString(path.resolve("draft.txt"), "the note");
    Files.writeString(path.resolve("of a person"), "text");
    assertThat(Draft.clear(path, "the note")).isEqualTo(Draft.Cleared.NOT_OURS);
    assertThat(path.resolve("of a person")).exists();
    assertThat(Draft.clear(path.resolveSibling("other"), "")).isEqualTo(Draft.Cleared.ABSENT);
    assertThat(Draft.clear(path.getParent(), "")).isEqualTo(Draft.Cleared.NOT_OURS);
    assertThat(Draft.clear(SymbolicLinks.make(Draft.beside(path), path), ""))
        .isEqualTo(Draft.Cleared.NOT_OURS);
  }

  @Test
  void roomIsCountedWithBlocksAndPapers() throws Exception {
    assertThat(Target.of(real(target)).roomProblem(plan, MetadataMode.NONE, 0, 0)).isEmpty();
    var huge =
        new HandOffPlan("all", plan.selects().stream().map(DeliveryTest::huge).toList(), List.of());
    var problem = Target.of(real(target)).roomProblem(huge, MetadataMode.NONE, 0, 0).orElseThrow();
    assertThat(problem.what()).contains("not enough room", " MB are free");
    assertThat(problem.where()).isEqualTo(folder.toRealPath().resolve("out").toString());
    assertThat(handOff.deliver(huge, target, Progress.NONE)).isInstanceOf(Delivery.Refused.class);
    assertNothingIsLeft();
  }

  // OWASP, "CSV Injection": a cell must not begin with = + - @.
  @Test
  void theIndexRunsNoFormulaInASpreadsheet() {
    var select = plan.selects().getFirst();
    var hostile =
        new Select(
            select.frame(),
            "=cmd()",
            select.place(),
            select.rating(),
            "@SUM(A1), or so",
            select.fields(),
            select.files());
    var lines =
        PackagePapers.index(
            new HandOffPlan("all", List.of(hostile), List.of()), List.of(), ZoneOffset.UTC);
    assertThat(lines.lines().toList().getLast()).contains(",'=cmd(),\"'@SUM(A1), or so\",");
  }

  static Select huge(Select select) {
    var frame = select.frame();
    var files =
        frame.files().stream()
            .map(
                file ->
                    new org.framewright.frames.FrameFile(
                        file.path(), 1L << 60, file.modified(), file.role()))
            .toList();
    return new Select(
        new org.framewright.frames.Frame(
            frame.id(),
            frame.knownAs(),
            frame.folder(),
            frame.stem(),
            files,
            frame.capture(),
            frame.complete()),
        select.original(),
        select.place(),
        select.rating(),
        select.name(),
        select.fields(),
        select.files());
  }
}
