package org.framewright.copies;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Problem;
import org.framewright.base.Progress;
import org.framewright.copies.device.Reading;
import org.framewright.copies.device.Volumes;
import org.framewright.disk.Fault;
import org.framewright.disk.Recording;
import org.framewright.disk.SymbolicLinks;
import org.framewright.mhl.MhlHistory;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Copies of a card. */
@Tag("slow")
class CopierTest {
  private CopyScene scene;

  @BeforeEach
  void aCard(@TempDir Path folder) throws Exception {
    var big = new byte[4 * 1024 * 1024 + 17];
    new Random(1).nextBytes(big);
    scene =
        new CopyScene(folder)
            .file("DCIM/100STUDA/A_0001.RAW", big)
            .file("DCIM/100STUDA/A_0001.JPG", "jpeg")
            .file("MISC/.index", "the camera's own")
            .file("empty", "");
  }

  @Test
  void everyFileIsOnEveryTargetWithItsTimeAndTheCardIsAsItWas() throws Exception {
    var before = CopyScene.contents(scene.card);
    var report = CopyScene.done(scene.copy(scene.first, scene.second));
    assertThat(report.isWhole()).isTrue();
    for (var target : List.of(scene.first, scene.second)) {
      assertThat(CopyScene.copies(target)).isEqualTo(before);
      assertThat(Files.getLastModifiedTime(target.resolve("MISC/.index")))
          .isEqualTo(Files.getLastModifiedTime(scene.card.resolve("MISC/.index")));
    }
    assertThat(CopyScene.contents(scene.card)).isEqualTo(before);
    assertThat(scene.job().folder().resolve(".framewright/copies")).isEmptyDirectory();
  }

  @Test
  void howFarAndHowFastEachTargetIsIsTold() throws Exception {
    var told = new ArrayList<PlaceProgress>();
    new Copier(Volumes.ofThisSystem())
        .copy(
            scene.job(),
            CopyPlan.of(scene.card, List.of(scene.first, scene.second)),
            Progress.NONE,
            told::add);
    for (var target : List.of(scene.first, scene.second)) {
      var ofThis = told.stream().filter(one -> one.folder().equals(target)).toList();
      assertThat(ofThis.getFirst().files()).isZero();
      assertThat(ofThis.getLast().files()).isEqualTo(4);
      assertThat(ofThis.getLast().bytes()).isEqualTo(ofThis.getLast().ofBytes()).isPositive();
      assertThat(ofThis.getLast().bytesPerSecond()).isPositive();
    }
  }

  @Test
  void onlyACardThatCannotBeReadIsNotUsedAnyMore() throws Exception {
    var failing =
        new CopyScene.Disturbed() {
          @Override
          void before(Path file) throws IOException {
            if (file.startsWith(scene.card)) {
              throw CopyScene.inputOutput(file);
            }
          }
        };
    assertThat(scene.copy(failing, Progress.NONE, scene.first))
        .isInstanceOfSatisfying(
            CopyOutcome.Stopped.class, stopped -> assertThat(stopped.sourceFails()).isTrue());
    assertThat(scene.copy(Volumes.ofThisSystem(), Progress.until(() -> true), scene.second))
        .isInstanceOfSatisfying(
            CopyOutcome.Stopped.class, stopped -> assertThat(stopped.sourceFails()).isFalse());
  }

  @Test
  void theListIsOneThatSha256sumChecks() throws Exception {
    scene.file("odd \\ name", "x");
    var report = CopyScene.done(scene.copy(scene.first));
    var list = report.targets().getFirst().list().orElseThrow();
    Process check;
    try {
      check =
          new ProcessBuilder("sha256sum", "--strict", "-c", list.toString())
              .directory(scene.first.toFile())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      Assumptions.abort("there is no sha256sum here; the list is not checked by it");
      return;
    }
    var said = new String(check.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(check.waitFor()).as(said).isZero();
    assertThat(said.lines()).hasSize(5);
  }

  @Test
  void theSameCommandOnceMoreCopiesNothingAndWritesNoSecondList() throws Exception {
    scene.copy(scene.first);
    var before = CopyScene.contents(scene.first);
    var report = CopyScene.done(scene.copy(scene.first));
    assertThat(report.targets().getFirst().alreadyThere()).isEqualTo(4);
    assertThat(report.isWhole()).isTrue();
    assertThat(CopyScene.contents(scene.first)).isEqualTo(before);
  }

  @Test
  void aNameThatIsTakenIsNeverReplacedAndNeverGivenASuffix() throws Exception {
    Files.createDirectories(scene.first.resolve("MISC"));
    Files.writeString(scene.first.resolve("MISC/.index"), "The Camera's own");
    Files.createDirectories(scene.first.resolve("empty"));
    var report = CopyScene.done(scene.copy(scene.first));
    var target = report.targets().getFirst();
    assertThat(target.blocked())
        .extracting(problem -> Path.of(problem.where()).getFileName().toString())
        .containsExactlyInAnyOrder(".index", "empty");
    assertThat(target.copied()).isEqualTo(2);
    assertThat(Files.readString(scene.first.resolve("MISC/.index"))).isEqualTo("The Camera's own");
    assertThat(CopyScene.copies(scene.first)).hasSize(3);
  }

  @Test
  void aReadErrorIsTriedAgainAndThenNamedAndTheRestGoesOn() throws Exception {
    var tries = new HashMap<String, Integer>();
    var volumes =
        new CopyScene.Disturbed() {
          @Override
          void before(Path file) throws IOException {
            if (file.startsWith(scene.card)) {
              int count = tries.merge(file.getFileName().toString(), 1, Integer::sum);
              boolean never = file.endsWith("A_0001.JPG");
              if (never || (file.endsWith("A_0001.RAW") && count < 3)) {
                throw CopyScene.inputOutput(file);
              }
            }
          }
        };
    var report = CopyScene.done(scene.copy(volumes, Progress.NONE, scene.first));
    assertThat(tries).containsEntry("A_0001.JPG", 3).containsEntry("A_0001.RAW", 3);
    assertThat(report.unreadable()).hasSize(1);
    assertThat(report.unreadable().getFirst().where()).endsWith("A_0001.JPG");
    assertThat(report.targets().getFirst().copied()).isEqualTo(3);
    assertThat(scene.first.resolve("DCIM/100STUDA/A_0001.JPG")).doesNotExist();
  }

  @Test
  void threeFilesInARowThatCannotBeReadEndWithTheWordToStopUsingTheCard() throws Exception {
    var asked = new ArrayList<Path>();
    var volumes =
        new CopyScene.Disturbed() {
          @Override
          void before(Path file) throws IOException {
            asked.add(file);
            throw CopyScene.inputOutput(file);
          }
        };
    var outcome = scene.copy(volumes, Progress.NONE, scene.first);
    assertThat(outcome)
        .isInstanceOfSatisfying(
            CopyOutcome.Stopped.class,
            stopped -> {
              assertThat(stopped.problem().remedy()).startsWith("Stop using this card");
              assertThat(stopped.report().unreadable()).hasSize(3);
            });
    assertThat(asked).hasSize(9);
    assertThat(scene.first).doesNotExist();
  }

  @Test
  void aDiskThatGivesBackOtherBytesGetsNoNameAndNoFurtherFile() throws Exception {
    var volumes =
        new CopyScene.Disturbed() {
          @Override
          Reading after(Path file, Reading reading) {
            return file.startsWith(scene.first) ? CopyScene.wrong(reading) : reading;
          }
        };
    var report = CopyScene.done(scene.copy(volumes, Progress.NONE, scene.first, scene.second));
    assertThat(report.targets().getFirst().verified()).isZero();
    assertThat(report.targets().getFirst().failed().getFirst().what())
        .isEqualTo("what was read back is not what was written");
    assertThat(CopyScene.contents(scene.first)).isEmpty();
    assertThat(report.targets().getLast().verified()).isEqualTo(4);
    assertThat(report.isWhole()).isFalse();
  }

  /** A card and a target are two disks: neither waits for the other longer than it must. */
  @Test
  void whileOneFileIsReadTheOneBeforeItIsReadBack() throws Exception {
    var secondIsRead = new CountDownLatch(1);
    var firstIsReadBack = new CountDownLatch(1);
    var volumes =
        new CopyScene.Disturbed() {
          private int ofCard;

          @Override
          void before(Path file) throws IOException {
            if (!file.startsWith(scene.card)) {
              await(secondIsRead);
              firstIsReadBack.countDown();
            } else if (++ofCard == 2) {
              secondIsRead.countDown();
              await(firstIsReadBack);
            }
          }
        };
    assertThat(CopyScene.done(scene.copy(volumes, Progress.NONE, scene.first)).isWhole()).isTrue();
  }

  private static void await(CountDownLatch latch) throws IOException {
    try {
      if (!latch.await(30, TimeUnit.SECONDS)) {
        throw new IOException("one waits for the other");
      }
    } catch (InterruptedException e) {
      throw new IOException(e);
    }
  }

  @Test
  void theFileThatIsWrittenWhileADiskIsFoundToGiveBackOtherBytesIsDroppedToo() throws Exception {
    var begun = new CountDownLatch(1);
    var volumes =
        new CopyScene.Disturbed() {
          private int ofCard;

          @Override
          void before(Path file) throws IOException {
            if (file.startsWith(scene.card) && ++ofCard == 2) {
              begun.countDown();
            } else if (file.startsWith(scene.first)) {
              await(begun);
            }
          }

          @Override
          Reading after(Path file, Reading reading) {
            return file.startsWith(scene.first) ? CopyScene.wrong(reading) : reading;
          }
        };
    var outcome = scene.copy(volumes, Progress.NONE, scene.first);
    assertThat(outcome)
        .isInstanceOfSatisfying(
            CopyOutcome.Stopped.class,
            stopped -> {
              var target = stopped.report().targets().getFirst();
              assertThat(target.verified()).isZero();
              assertThat(target.failed()).hasSize(2);
            });
    assertThat(CopyScene.contents(scene.root.resolve("first"))).isEmpty();
    assertThat(scene.job().folder().resolve(".framewright/copies")).isEmptyDirectory();
  }

  @Test
  void aFileThatFailsOnATargetWhileTheCardFailsToGiveItIsToldOfBoth() throws Exception {
    Files.createDirectories(scene.first);
    Files.writeString(scene.first.resolve("DCIM"), "a file where a folder is to be");
    var volumes =
        new CopyScene.Disturbed() {
          @Override
          void before(Path file) throws IOException {
            if (file.endsWith("A_0001.JPG")) {
              throw CopyScene.inputOutput(file);
            }
          }
        };
    CopyReport report =
        switch (scene.copy(volumes, Progress.NONE, scene.first, scene.second)) {
          case CopyOutcome.Done done -> done.report();
          case CopyOutcome.Stopped stopped -> stopped.report();
          case CopyOutcome.Refused refused -> throw new AssertionError(refused);
        };
    assertThat(report.unreadable()).hasSize(1);
    assertThat(report.targets().getFirst().failed())
        .extracting(Problem::where)
        .anyMatch(where -> where.endsWith("A_0001.JPG"));
    assertThat(report.targets().getLast().verified()).isEqualTo(3);
  }

  @Test
  void aCancelLeavesWholeFilesOnly() throws Exception {
    var progress =
        new Progress() {
          private boolean stop;

          @Override
          public void step(int done, int total) {
            stop = done >= 3;
          }

          @Override
          public boolean cancelled() {
            return stop;
          }
        };
    var outcome =
        scene.copy(org.framewright.copies.device.Volumes.ofThisSystem(), progress, scene.first);
    assertThat(outcome).isInstanceOf(CopyOutcome.Stopped.class);
    var card = CopyScene.contents(scene.card);
    assertThat(card).containsAllEntriesOf(CopyScene.copies(scene.first));
    assertThat(CopyScene.copies(scene.first).size()).isLessThan(4);
    assertThat(scene.job().folder().resolve(".framewright/copies")).isEmptyDirectory();
    assertThat(CopyScene.done(scene.copy(scene.first)).isWhole()).isTrue();
  }

  @Test
  void refusesPlacesWhereCopiesWouldDoHarm() throws Exception {
    var job = scene.job();
    var refused =
        List.of(
            scene.card.resolve("backup"),
            scene.card,
            scene.root,
            job.framesFolder(),
            job.folder().resolve(".framewright"));
    var before = CopyScene.contents(scene.root);
    for (var place : refused) {
      assertThat(scene.copy(place)).as("" + place).isInstanceOf(CopyOutcome.Refused.class);
    }
    assertThat(scene.copy(scene.first, scene.first)).isInstanceOf(CopyOutcome.Refused.class);
    assertThat(scene.copy(scene.first, scene.first.resolve("..").resolve("first")))
        .isInstanceOf(CopyOutcome.Refused.class);
    var onCard = CopyPlan.of(scene.card.resolve("DCIM"), List.of(scene.card.resolve("backup")));
    assertThat(new Copier(new CopyScene.Disturbed()).copy(job, onCard, Progress.NONE))
        .isInstanceOf(CopyOutcome.Refused.class);
    assertThat(CopyScene.contents(scene.root)).isEqualTo(before);
  }

  /** A disk of which the top has DCIM, whatever lies there besides. */
  private static final class CardLike extends CopyScene.Disturbed {
    private final Path top;

    CardLike(Path top) {
      this.top = top;
    }

    @Override
    public Path topOf(Path folder) throws IOException {
      return folder.toRealPath().startsWith(top) ? top : folder.getRoot();
    }
  }

  @Test
  void nothingIsWrittenOnADiskThatLooksLikeACardUnlessItWasCopiedTo() throws Exception {
    Files.createDirectories(scene.first.resolve("DCIM"));
    var volumes = new CardLike(scene.first);
    var backup = scene.first.resolve("backup");
    assertThat(scene.copy(volumes, Progress.NONE, backup)).isInstanceOf(CopyOutcome.Refused.class);
    assertThat(backup).doesNotExist();
    Files.delete(scene.first.resolve("DCIM"));
    var report = CopyScene.done(scene.copy(volumes, Progress.NONE, scene.first));
    assertThat(report.isWhole()).isTrue();
    assertThat(scene.first.resolve("DCIM")).exists();
    assertThat(CopyScene.done(scene.copy(volumes, Progress.NONE, scene.first)).isWhole()).isTrue();
    assertThat(CopyScene.done(scene.copy(volumes, Progress.NONE, backup)).isWhole()).isTrue();
  }

  /** A full disk gets DCIM and no list. */
  @Test
  void aCopyToTheTopOfADiskThatHadNoRoomForItsListCanBeFinished() throws Exception {
    Files.createDirectories(scene.first);
    var disk = Recording.on(scene.root);
    disk.fail(
        (op, _) ->
            op.path().endsWith("-0.part") ? Optional.of(Fault.noSpace(op)) : Optional.empty());
    var plan = CopyPlan.of(disk.root().resolve("card"), List.of(disk.root().resolve("first")));
    var outcome =
        new Copier(new CopyScene.Disturbed()).copy(scene.job(disk.root()), plan, Progress.NONE);
    var target = CopyScene.done(outcome).targets().getFirst();
    assertThat(target.verified()).isEqualTo(4);
    assertThat(target.list()).isEmpty();
    var again = scene.copy(new CardLike(scene.first), Progress.NONE, scene.first);
    assertThat(CopyScene.done(again).targets().getFirst().list()).isPresent();
    assertThat(scene.job().folder().resolve(".framewright/copies")).isEmptyDirectory();
  }

  /** A killed run leaves DCIM and no list. */
  @Test
  void aKilledCopyToTheTopOfADiskCanBeFinished() throws Exception {
    Files.createDirectories(scene.first.resolve("DCIM"));
    var runs = Files.createDirectories(scene.job().folder().resolve(".framewright/copies"));
    Files.writeString(runs.resolve("copy-00112233445566aa.txt"), scene.first + "\n");
    var outcome = scene.copy(new CardLike(scene.first), Progress.NONE, scene.first);
    assertThat(CopyScene.done(outcome).isWhole()).isTrue();
  }

  @Test
  void aKilledCopyToTheTopOfADiskCanBeFinishedAfterACopyToAnotherOne() throws Exception {
    Files.createDirectories(scene.first.resolve("DCIM"));
    var runs = Files.createDirectories(scene.job().folder().resolve(".framewright/copies"));
    Files.writeString(runs.resolve("copy-00112233445566aa.txt"), scene.first + "\n");
    assertThat(CopyScene.done(scene.copy(scene.second)).isWhole()).isTrue();
    var outcome = scene.copy(new CardLike(scene.first), Progress.NONE, scene.first);
    assertThat(CopyScene.done(outcome).isWhole()).isTrue();
    assertThat(runs).isEmptyDirectory();
  }

  @Test
  void whatTheJobKeepsOfItselfIsNotCopiedWithItsFolder() throws Exception {
    var job = scene.job();
    Files.writeString(job.framesFolder().resolve("A_0001.JPG"), "jpeg");
    var plan = CopyPlan.of(job.folder(), List.of(scene.first));
    var outcome = new Copier(new CopyScene.Disturbed()).copy(job, plan, Progress.NONE);
    assertThat(CopyScene.done(outcome).isWhole()).isTrue();
    assertThat(CopyScene.copies(scene.first).keySet())
        .anyMatch(name -> name.endsWith("A_0001.JPG"))
        .noneMatch(name -> name.contains(".framewright"));
  }

  @Test
  void eachTargetGetsAGenerationOfItsMhlAndTheCardNone() throws Exception {
    Files.createDirectories(scene.second);
    Files.writeString(scene.second.resolve("other"), "x");
    var before = CopyScene.contents(scene.card);
    var report = CopyScene.done(scene.copyWithMhl(scene.first, scene.second));
    assertThat(report.isWhole()).isTrue();
    for (var target : report.targets()) {
      assertThat(target.failed()).isEmpty();
      assertThat(target.mhl().orElseThrow()).exists();
      var claims = MhlHistory.read(target.folder()).orElseThrow().claims();
      assertThat(claims.keySet()).isEqualTo(before.keySet());
    }
    assertThat(CopyScene.contents(scene.card)).isEqualTo(before);
    var again = CopyScene.done(scene.copyWithMhl(scene.first)).targets().getFirst();
    assertThat(again.mhl().orElseThrow().getFileName().toString()).startsWith("0002_first_");
    assertThat(again.failed()).isEmpty();
  }

  @Test
  void whatAnEarlierListSaysOfAFileIsComparedWithWhatIsCopiedInItsPlace() throws Exception {
    scene.copyWithMhl(scene.first);
    Files.delete(scene.first.resolve("MISC/.index"));
    scene.file("MISC/.index", "another one");
    var target = CopyScene.done(scene.copyWithMhl(scene.first)).targets().getFirst();
    assertThat(target.mhl()).isPresent();
    assertThat(target.failed())
        .extracting(problem -> Path.of(problem.where()).getFileName().toString())
        .containsExactly(".index");
  }

  @Test
  void toADamagedMhlNothingIsAddedAndTheCopyIsMadeAllTheSame() throws Exception {
    var list = CopyScene.done(scene.copyWithMhl(scene.first)).targets().getFirst().mhl();
    Files.writeString(list.orElseThrow(), Files.readString(list.orElseThrow()) + " ");
    scene.file("DCIM/new", "new");
    var target = CopyScene.done(scene.copyWithMhl(scene.first)).targets().getFirst();
    assertThat(target.copied()).isEqualTo(1);
    assertThat(target.mhl()).isEmpty();
    assertThat(target.failed().getFirst().what()).contains("not what the chain");
  }

  @Test
  void theMhlThatACardBringsAlongIsCopiedAndNeverChanged() throws Exception {
    scene.copyWithMhl(scene.first);
    var plan = CopyPlan.of(scene.first, List.of(scene.second));
    var outcome =
        new Copier(new CopyScene.Disturbed()).withMhl().copy(scene.job(), plan, Progress.NONE);
    var report = CopyScene.done(outcome);
    assertThat(report.isWhole()).isTrue();
    assertThat(report.targets().getFirst().mhl()).isEmpty();
    assertThat(report.targets().getFirst().failed()).hasSize(1);
    assertThat(CopyScene.contents(scene.second))
        .containsAllEntriesOf(CopyScene.contents(scene.first));
  }

  @Test
  void aTargetBelowAFolderThatIsNotThereIsNotMade() {
    var nowhere = scene.root.resolve("not-plugged-in").resolve("backup");
    assertThatThrownBy(() -> scene.copy(nowhere)).isInstanceOf(NoSuchFileException.class);
    assertThat(scene.root.resolve("not-plugged-in")).doesNotExist();
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void noLinkInATargetLeadsElsewhere() throws Exception {
    Files.createDirectories(scene.first);
    var elsewhere = Files.createDirectories(scene.root.resolve("elsewhere"));
    SymbolicLinks.make(scene.first.resolve("MISC"), elsewhere);
    var report = CopyScene.done(scene.copy(scene.first));
    assertThat(report.targets().getFirst().failed()).isNotEmpty();
    assertThat(elsewhere).isEmptyDirectory();
  }

  @Test
  @DisabledOnOs(OS.WINDOWS)
  void aLinkOnTheCardIsToldAndNotFollowed() throws Exception {
    SymbolicLinks.make(scene.card.resolve("link"), scene.root);
    var plan = CopyPlan.of(scene.card, List.of(scene.first));
    assertThat(plan.leftOut()).hasSize(1);
    assertThat(plan.files()).hasSize(4);
  }

  @Test
  void onlyThePartsOfARunThatIsKnownToBeDeadAreRemoved() throws Exception {
    Files.createDirectories(scene.first);
    var runs = Files.createDirectories(scene.job().folder().resolve(".framewright/copies"));
    Files.writeString(runs.resolve("copy-00112233445566aa.txt"), scene.first + "\n");
    var ours = scene.first.resolve(".framewright-copy-00112233445566aa-7.part");
    var others = scene.first.resolve(".framewright-copy-ffffffffffffffff-7.part");
    Files.writeString(ours, "half");
    Files.writeString(others, "of another job");
    assertThat(CopyScene.done(scene.copy(scene.first)).isWhole()).isTrue();
    assertThat(ours).doesNotExist();
    assertThat(others).exists();
    assertThat(runs).isEmptyDirectory();
  }

  @Test
  void theLogSaysWhatWasCopiedWhere() throws Exception {
    scene.copy(scene.first);
    var log = new ArrayList<String>();
    try (var files = Files.walk(scene.job().folder().resolve(".framewright/log"))) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        log.addAll(Files.readAllLines(file));
      }
    }
    assertThat(log)
        .anyMatch(line -> line.contains("\"type\":\"copied\"") && line.contains("first"));
    assertThat(scene.job().warnings()).isEmpty();
  }

  @Test
  void theLineOfAnOddNameIsEscapedAsCoreutilsDoes() {
    // GNU coreutils manual, md5sum invocation.
    assertThat(CopyLine.of("ab", Path.of("a\nb"))).isEqualTo("\\ab  a\\nb\n");
    assertThat(Map.of("x", CopyLine.of("ab", Path.of("a b")))).containsEntry("x", "ab  a b\n");
  }
}
