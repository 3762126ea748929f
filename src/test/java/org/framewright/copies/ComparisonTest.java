package org.framewright.copies;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import org.framewright.base.Progress;
import org.framewright.base.Sha256;
import org.framewright.copies.device.Device;
import org.framewright.job.Job;
import org.framewright.mhl.MhlHistory;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComparisonTest {
  @TempDir Path temp;
  private CopiesScene scene;

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CopiesScene(temp);
  }

  @Test
  void aCardOfWhichTwoOtherDisksHoldEveryFileMayBeCleared() throws Exception {
    scene.copyCardTo(scene.frames(), "20261123_KVO_001_F_");
    scene.copyCardTo(scene.two.resolve("backup"), "");
    var compared = scene.compare(scene.card, scene.two);
    assertThat(CopiesScene.verdict(compared)).isInstanceOf(Verdict.MayClear.class);
    assertThat(compared.allIsWell()).isTrue();
    var clear = (Verdict.MayClear) CopiesScene.verdict(compared);
    assertThat(clear.state().files()).isEqualTo(4);
    assertThat(clear.by()).extracting(Witness::files).containsExactly(4, 4);
    assertThat(compared.frames().frames()).isEqualTo(2);
    assertThat(compared.frames().once()).isZero();
    assertThat(compared.places()).allMatch(place -> place.missing().isEmpty());
    var words = CopiesDescription.lines(compared, ZoneOffset.UTC);
    assertThat(words)
        .anyMatch(line -> line.contains("MAY BE CLEARED"))
        .anyMatch(line -> line.contains("If anything was shot on it since, ask again."))
        .anyMatch(line -> line.contains("3-2-1"));
  }

  @Test
  void eachFileThatIsThereIsNamedWithTheOneThatItIs() throws Exception {
    scene.copyCardTo(scene.one, "kept_");
    var place = scene.compare(scene.card, scene.one).places().getLast();
    assertThat(place.same()).hasSize(4);
    assertThat(place.same())
        .allSatisfy(pair -> assertThat("kept_" + pair.file().getFileName()).isEqualTo(pair.here()));
  }

  @Test
  void howFarEachPlaceIsIsTold() throws Exception {
    scene.copyCardTo(scene.one, "");
    var told = new ConcurrentLinkedQueue<PlaceProgress>();
    new Comparison(scene.job, scene.volumes)
        .run(CopiesRequest.of(List.of(scene.card, scene.one), "Ines"), Progress.NONE, told::add);
    for (var folder : List.of(scene.card, scene.one)) {
      var ofThis = told.stream().filter(one -> one.folder().equals(folder)).toList();
      assertThat(ofThis.getFirst().files()).isZero();
      assertThat(ofThis.getLast().files()).isEqualTo(4);
      assertThat(ofThis.getLast().ofFiles()).isEqualTo(4);
      assertThat(ofThis.getLast().bytes()).isEqualTo(ofThis.getLast().ofBytes()).isPositive();
      assertThat(ofThis).isSortedAccordingTo(Comparator.comparingLong(PlaceProgress::bytes));
    }
  }

  @Test
  void oneCopyIsNotEnoughAndSaysWhatIsMissing() throws Exception {
    scene.copyCardTo(scene.one, "");
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one));
    assertThat(verdict).isInstanceOf(Verdict.NotYet.class);
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.COPIES);
    assertThat(verdict.why().getFirst().count()).isEqualTo(4);
    assertThat(verdict.why().getFirst().remedy()).contains("framewright copy");
  }

  @Test
  void twoFoldersOnOneDiskAreOneCopy() throws Exception {
    scene.copyCardTo(scene.one.resolve("a"), "");
    scene.copyCardTo(scene.one.resolve("b"), "");
    var verdict =
        CopiesScene.verdict(
            scene.compare(scene.card, scene.one.resolve("a"), scene.one.resolve("b")));
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.COPIES);
  }

  @Test
  void aCopyWithOneOtherBitIsNone() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    var file = CopiesScene.files(scene.two).getFirst();
    var bytes = Files.readAllBytes(file);
    bytes[bytes.length / 2] ^= 1;
    var time = Files.getLastModifiedTime(file);
    Files.write(file, bytes);
    Files.setLastModifiedTime(file, time);
    var compared = scene.compare(scene.card, scene.one, scene.two);
    assertThat(CopiesScene.rules(CopiesScene.verdict(compared))).containsExactly(Rule.COPIES);
    assertThat(CopiesScene.verdict(compared).why().getFirst().count()).isEqualTo(1);
    var place = compared.places().getLast();
    assertThat(place.identical()).isEqualTo(3);
    assertThat(place.different()).hasSize(1);
    assertThat(place.missing()).isEmpty();
  }

  @Test
  void otherFilesOfTheCardNeedCopiesToo() throws Exception {
    Files.writeString(scene.card.resolve("DCIM/100STUDI/VOICE.WAV"), "memo");
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    Files.delete(scene.two.resolve("VOICE.WAV"));
    var compared = scene.compare(scene.card, scene.one, scene.two);
    assertThat(CopiesScene.verdict(compared).why().getFirst().files())
        .containsExactly("DCIM/100STUDI/VOICE.WAV");
    assertThat(compared.places().getLast().missing())
        .containsExactly(scene.card.resolve("DCIM/100STUDI/VOICE.WAV"));
  }

  @Test
  void theCardIsByteForByteAsItWas() throws Exception {
    scene.copyCardTo(scene.one, "");
    var before = snapshot(scene.card);
    var backup = snapshot(scene.one);
    scene.compare(scene.card, scene.one);
    assertThat(snapshot(scene.card)).isEqualTo(before);
    assertThat(snapshot(scene.one)).isEqualTo(backup);
  }

  private static List<String> snapshot(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return files
          .map(
              file -> {
                try {
                  return file
                      + " "
                      + Files.getLastModifiedTime(file)
                      + (Files.isRegularFile(file) ? Sha256.of(Files.readAllBytes(file)) : "");
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              })
          .sorted()
          .toList();
    }
  }

  @Test
  void aFrameThatIsShotWhileTheCardIsReadIsNoticed() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.onRead(
        () -> {
          try {
            Files.writeString(scene.card.resolve("DCIM/100STUDI/LATE.JPG"), "late");
          } catch (IOException e) {
            throw new UncheckedIOException(e);
          }
        });
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two));
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.UNCHANGED);
  }

  @Test
  void aCopyThatChangesAfterItWasReadDoesNotCount() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    var file = CopiesScene.files(scene.two).getFirst();
    var stop =
        new Progress() {
          @Override
          public void step(int done, int total) {
            if (done == total) {
              try {
                Files.setLastModifiedTime(file, FileTime.fromMillis(0));
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            }
          }
        };
    var request = CopiesRequest.of(List.of(scene.card, scene.one, scene.two), "Ines");
    var verdict = CopiesScene.verdict(scene.run(request, stop).orElseThrow());
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.COPIES_READ);
  }

  @Test
  void aCardFileThatCannotBeReadIsToldAndNeverCounts() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.failing(scene.cardFiles().getFirst());
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two));
    assertThat(CopiesScene.rules(verdict)).contains(Rule.READ);
  }

  @Test
  void whatMayComeFromMemoryCountsOnlyAfterTheDiskWasAway() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.unsure(scene.two);
    var folders = new Path[] {scene.card, scene.one, scene.two};
    assertThat(CopiesScene.rules(CopiesScene.verdict(scene.compare(folders))))
        .containsExactly(Rule.COPIES_READ);
    scene.later();
    assertThat(CopiesScene.rules(CopiesScene.verdict(scene.compare(folders))))
        .as("the disk never was away")
        .containsExactly(Rule.COPIES_READ);
    scene.later();
    scene.volumes.again(scene.two);
    assertThat(CopiesScene.verdict(scene.compare(folders))).isInstanceOf(Verdict.MayClear.class);
  }

  @Test
  void evidenceThatSomebodyChangedProvesNothing() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.unsure(scene.two);
    var folders = new Path[] {scene.card, scene.one, scene.two};
    var evidence = scene.compare(folders).evidence().orElseThrow();
    Files.writeString(evidence, Files.readString(evidence) + "# more\n");
    scene.later();
    scene.volumes.again(scene.two);
    assertThat(CopiesScene.rules(CopiesScene.verdict(scene.compare(folders))))
        .containsExactly(Rule.COPIES_READ);
  }

  @Test
  void aCardThatIsReadFromMemoryCannotBeTold() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.unsure(scene.card);
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two));
    assertThat(verdict).isInstanceOf(Verdict.CannotTell.class);
    assertThat(verdict.why().getFirst().remedy()).contains("put it in again");
  }

  @Test
  void disksThatAreNotKnownCannotBeTold() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.device(scene.two, new Device("unknown:2", Device.Kind.UNKNOWN, "some disk"));
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two));
    assertThat(verdict).isInstanceOf(Verdict.CannotTell.class);
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.DEVICES);
  }

  @Test
  void twoServersCountAsOne() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    scene.volumes.device(scene.one, new Device("server:a", Device.Kind.REMOTE, "server a"));
    scene.volumes.device(scene.two, new Device("server:b", Device.Kind.REMOTE, "server b"));
    assertThat(CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two)))
        .isNotInstanceOf(Verdict.MayClear.class);
  }

  @Test
  void twoMirroredCardsDoNotVouchForEachOther() throws Exception {
    scene.copyCardTo(scene.one, "");
    var mirror = Files.createDirectory(temp.toRealPath().resolve("B1"));
    scene.copyCardTo(mirror.resolve("DCIM/100STUDI"), "");
    scene.volumes.disk(mirror, "mirror");
    var compared = scene.compare(scene.card, mirror, scene.one);
    assertThat(compared.cards()).hasSize(2).noneMatch(Compared.CardCompared::mayClear);
    assertThat(CopiesScene.rules(compared.cards().getFirst().verdict()))
        .containsExactly(Rule.WITNESSES);
  }

  /** A copied card, with its folders, is a backup by a person's word only. */
  @Test
  void aCopiedCardIsABackupIfAPersonSaysSo() throws Exception {
    scene.copyCardTo(scene.one, "");
    var copied = scene.two.resolve("card A1");
    scene.copyCardTo(copied.resolve("DCIM/100STUDI"), "");
    assertThat(scene.compare(scene.card, scene.one, copied).cards()).hasSize(2);
    assertThat(CopiesScene.verdict(compareWithBackup(copied))).isInstanceOf(Verdict.MayClear.class);
  }

  private Compared compareWithBackup(Path backup) throws Exception {
    var request =
        new CopiesRequest(
            List.of(scene.card, scene.one),
            List.of(),
            List.of(backup),
            2,
            List.of(),
            "Ines",
            false);
    return scene.run(request, Progress.NONE).orElseThrow();
  }

  @Test
  void aDiskThatLooksLikeACardIsNoBackupUnlessThisProgramCopiedToIt() throws Exception {
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two.resolve("DCIM/100STUDI"), "");
    for (var folder : List.of(scene.two, scene.two.resolve("DCIM"))) {
      assertThatThrownBy(() -> compareWithBackup(folder))
          .isInstanceOfSatisfying(CopiesException.class, e -> assertThat(e.isRefused()).isTrue());
    }
    Files.writeString(scene.two.resolve("copied-2026-11-23T180400Z.sha256"), "");
    assertThat(CopiesScene.verdict(compareWithBackup(scene.two)))
        .isInstanceOf(Verdict.MayClear.class);
    assertThatThrownBy(
            () ->
                scene.run(
                    new CopiesRequest(
                        List.of(),
                        List.of(scene.card),
                        List.of(scene.card),
                        2,
                        List.of(),
                        "Ines",
                        false),
                    Progress.NONE))
        .isInstanceOfSatisfying(CopiesException.class, e -> assertThat(e.isRefused()).isFalse());
  }

  /** However a folder of it is given, a card vouches for no other card. */
  @Test
  void aFolderInsideAnotherCardIsNoCopy() throws Exception {
    scene.copyCardTo(scene.one, "");
    var mirror = Files.createDirectory(temp.toRealPath().resolve("B1"));
    scene.volumes.disk(mirror, "mirror");
    scene.copyCardTo(mirror.resolve("DCIM/100STUDI"), "");
    scene.copyCardTo(mirror.resolve("beside"), "");
    for (var folder : List.of(mirror.resolve("DCIM"), mirror.resolve("beside"))) {
      var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, folder));
      assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.WITNESSES);
    }
  }

  private Compared compareWithMhl(Path... folders) throws Exception {
    var request =
        new CopiesRequest(List.of(folders), List.of(), List.of(), 2, List.of(), "Ines", true);
    return scene.run(request, Progress.NONE).orElseThrow();
  }

  @Test
  void eachBackupGetsAGenerationOfAllThatIsThereAndCardAndJobNone() throws Exception {
    scene.copyCardTo(scene.one, "");
    Files.writeString(scene.one.resolve("more.txt"), "of no size of the card's");
    var card = snapshot(scene.card);
    var compared = compareWithMhl(scene.card, scene.one);
    assertThat(snapshot(scene.card)).isEqualTo(card);
    assertThat(scene.job.folder().resolve("ascmhl")).doesNotExist();
    var place = compared.places().getLast();
    assertThat(place.mhl().orElseThrow().getFileName().toString()).startsWith("0001_SSD 1_");
    assertThat(place.troubles()).isEmpty();
    assertThat(MhlHistory.read(scene.one).orElseThrow().claims())
        .hasSize(5)
        .containsKey("more.txt");
    scene.later();
    assertThat(compareWithMhl(scene.card, scene.one).places().getLast().troubles()).isEmpty();
    assertThat(scene.job.folder().resolve(".framewright/copies"))
        .isDirectoryNotContaining("glob:**copy-*");
  }

  /** A list is no evidence; what contradicts it is told. */
  @Test
  void aFileThatIsNotWhatAnMhlSaysIsToldAndOnACardKeepsItFromBeingCleared() throws Exception {
    scene.copyCardTo(scene.one, "");
    compareWithMhl(scene.one);
    var file = CopiesScene.files(scene.one).getFirst();
    var history = scene.one.resolve("ascmhl");
    var onCard = Files.createDirectory(scene.card.resolve("DCIM/100STUDI/ascmhl"));
    for (var list : CopiesScene.files(history)) {
      Files.copy(list, onCard.resolve(list.getFileName()));
    }
    for (var place : List.of(scene.one, scene.two)) {
      scene.copyCardTo(place.resolve("all"), "");
    }
    assertThat(CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two)))
        .isInstanceOf(Verdict.MayClear.class);
    assertThat(compareWithMhl(scene.card, scene.one).places().getLast().troubles())
        .extracting(problem -> problem.what())
        .anyMatch(what -> what.contains("its copy is never changed"));

    var name = file.getFileName().toString();
    for (var copy :
        List.of(
            scene.card.resolve("DCIM/100STUDI").resolve(name),
            file,
            scene.one.resolve("all").resolve(name),
            scene.two.resolve("all").resolve(name))) {
      var bytes = Files.readAllBytes(copy);
      bytes[bytes.length - 9] ^= 1;
      Files.write(copy, bytes);
    }
    var compared = scene.compare(scene.card, scene.one, scene.two);
    var verdict = CopiesScene.verdict(compared);
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.WHOLE_PICTURES);
    assertThat(verdict.why().getFirst().message()).contains("is not what the ASC MHL 0001_SSD 1_");
    assertThat(compared.places().stream().flatMap(place -> place.troubles().stream()))
        .anyMatch(problem -> problem.where().equals(file.toString()));
  }

  @Test
  void aPictureThatIsNotWholeIsToldUntilAPersonWaivesIt() throws Exception {
    var broken = scene.card.resolve("DCIM/100STUDI/IMG_0.JPG");
    Files.write(broken, new byte[0]);
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    var folders = List.of(scene.card, scene.one, scene.two);
    var verdict =
        CopiesScene.verdict(
            scene.run(CopiesRequest.of(folders, "Ines"), Progress.NONE).orElseThrow());
    assertThat(CopiesScene.rules(verdict)).containsExactly(Rule.WHOLE_PICTURES);
    var waiving = new CopiesRequest(folders, List.of(), 2, List.of(broken), "Ines");
    var waived = CopiesScene.verdict(scene.run(waiving, Progress.NONE).orElseThrow());
    assertThat(waived).isInstanceOf(Verdict.MayClear.class);
    assertThat(((Verdict.MayClear) waived).waived()).extracting(Waiver::by).containsExactly("Ines");
    assertThat(((Verdict.MayClear) waived).kept()).isEqualTo(4);
    assertThat(((Verdict.MayClear) waived).by()).extracting(Witness::files).containsOnly(4);
  }

  private Compared compareWaiving(WaivedFile waived) throws Exception {
    var request =
        new CopiesRequest(
            List.of(scene.card, scene.one, scene.two),
            List.of(),
            List.of(),
            2,
            List.of(waived),
            "Max",
            false);
    return scene.run(request, Progress.NONE).orElseThrow();
  }

  @Test
  void aContentThatIsWaivedIsNoOtherContentOfThatName() throws Exception {
    var broken = scene.card.resolve("DCIM/100STUDI/IMG_0.JPG");
    Files.write(broken, new byte[0]);
    scene.copyCardTo(scene.one, "");
    scene.copyCardTo(scene.two, "");
    var found = scene.compare(scene.card, scene.one, scene.two).cards().getFirst().damaged();
    assertThat(found).extracting(Compared.Damaged::path).containsExactly("DCIM/100STUDI/IMG_0.JPG");
    // FIPS 180-4, SHA-256 of the empty message, as every implementation's tests have it.
    var empty = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
    assertThat(found.getFirst().sha256()).contains(empty);
    var waived = new WaivedFile(broken, Optional.of(empty), "Ines");
    var compared = compareWaiving(waived);
    assertThat(CopiesScene.verdict(compared)).isInstanceOf(Verdict.MayClear.class);
    assertThat(compared.cards().getFirst().damaged()).as("still told").isEqualTo(found);
    assertThat(
            CopiesDescription.sentence(compared.cards().getFirst(), compared.at(), ZoneOffset.UTC))
        .contains(": 4 files on ")
        .contains("; 1 file need not be kept, according to Ines. ");
    Files.write(broken, new byte[] {1});
    assertThat(CopiesScene.rules(CopiesScene.verdict(compareWaiving(waived))))
        .contains(Rule.WHOLE_PICTURES, Rule.COPIES);
    Files.delete(broken);
    assertThat(CopiesScene.verdict(compareWaiving(waived)))
        .as("one that is gone is not asked for")
        .isInstanceOf(Verdict.MayClear.class);
    assertThatThrownBy(() -> compareWaiving(WaivedFile.byName(broken, "Ines")))
        .isInstanceOf(CopiesException.class);
  }

  /** Two copies of one file and three of the others are two copies of each at the least. */
  @Test
  void theAnswerCountsTheCopiesOfTheFileThatHasTheFewest() throws Exception {
    var three = Files.createDirectory(temp.toRealPath().resolve("three"));
    scene.volumes.disk(three, "three");
    for (var disk : List.of(scene.one, scene.two, three)) {
      scene.copyCardTo(disk, "");
    }
    Files.delete(CopiesScene.files(three).getFirst());
    var verdict = CopiesScene.verdict(scene.compare(scene.card, scene.one, scene.two, three));
    assertThat(((Verdict.MayClear) verdict).by()).hasSize(3);
    assertThat(((Verdict.MayClear) verdict).copies()).isEqualTo(2);
    assertThat(CopiesDescription.afterClearing(verdict).orElseThrow())
        .contains("2 places are left");
  }

  @Test
  void aFileOfAnotherSizeIsNotRead() throws Exception {
    var other = Files.writeString(scene.one.resolve("holiday.jpg"), "of no size of the card's");
    scene.copyCardTo(scene.one, "");
    scene.compare(scene.card, scene.one);
    assertThat(scene.volumes.read()).doesNotContain(other).hasSize(8);
  }

  @Test
  void aCancelWritesNothing() throws Exception {
    scene.copyCardTo(scene.one, "");
    var before = snapshot(scene.job.folder());
    var stop =
        new Progress() {
          private boolean begun;

          @Override
          public void step(int done, int total) {
            begun = true;
          }

          @Override
          public boolean cancelled() {
            return begun;
          }
        };
    assertThat(scene.run(CopiesRequest.of(List.of(scene.card, scene.one), "Ines"), stop)).isEmpty();
    assertThat(snapshot(scene.job.folder())).isEqualTo(before);
    assertThat(scene.job.comparisons()).isEmpty();
  }

  @Test
  void aJobOnTheCardIsRefusedAndFoldersInACardAreNoCopies() throws Exception {
    assertThatThrownBy(
            () ->
                scene.run(
                    new CopiesRequest(List.of(), List.of(scene.laptop), 2, List.of(), "Ines"),
                    Progress.NONE))
        .isInstanceOfSatisfying(CopiesException.class, e -> assertThat(e.isRefused()).isTrue());
    var inside = Files.createDirectory(scene.card.resolve("backup"));
    assertThatThrownBy(() -> scene.compare(scene.card, inside))
        .isInstanceOfSatisfying(CopiesException.class, e -> assertThat(e.isRefused()).isFalse());
    assertThatThrownBy(() -> scene.compare(scene.card.resolve("nowhere")))
        .isInstanceOf(CopiesException.class);
  }

  @Test
  void theLogTellsTheLastAnswersAndHowManyFramesAreInOnePlace() throws Exception {
    scene.copyCardTo(scene.frames(), "");
    assertThat(FramesOnce.of(scene.job, scene.job.scan())).isEmpty();
    scene.compare(scene.card.resolve("DCIM").getParent());
    scene.copyCardTo(scene.two, "");
    scene.later();
    scene.compare(scene.card, scene.two);
    var again = Job.open(scene.job.folder(), scene.clock());
    assertThat(CopiesDescription.last(again, ZoneOffset.UTC))
        .containsExactly(
            "Card A1 was clear at 18:14, by Ines, 4 files on 2026-11-23_KVO_look-book and SSD 2");
    var once = FramesOnce.of(again, again.scan()).orElseThrow();
    assertThat(once.frames()).isEqualTo(2);
    assertThat(once.once()).isZero();
    assertThat(once.notCompared()).isZero();
  }

  /** A watch counts at each arrival, and a day has many. */
  @Test
  void evidenceIsReadOnceAndAgainWhenTheLogTellsOfMoreOrItChanged() throws Exception {
    scene.copyCardTo(scene.frames(), "");
    var counter = new FramesOnce.Counter(scene.job);
    assertThat(counter.of(scene.job.scan())).isEmpty();
    var evidence = scene.compare(scene.one).evidence().orElseThrow();
    assertThat(counter.of(scene.job.scan()).orElseThrow().once()).isEqualTo(2);

    // Other bytes with the same size and time: who read them would see that they are no evidence.
    var time = Files.getLastModifiedTime(evidence);
    var bytes = Files.readAllBytes(evidence);
    Files.write(evidence, new byte[bytes.length]);
    Files.setLastModifiedTime(evidence, time);
    assertThat(counter.of(scene.job.scan()).orElseThrow().once()).isEqualTo(2);
    Files.setLastModifiedTime(evidence, FileTime.fromMillis(0));
    assertThat(counter.of(scene.job.scan()).orElseThrow().notCompared()).isEqualTo(2);
    Files.delete(evidence);
    assertThat(counter.of(scene.job.scan()).orElseThrow().notCompared()).isEqualTo(2);
    Files.write(evidence, bytes);
    assertThat(counter.of(scene.job.scan()).orElseThrow().once()).isEqualTo(2);

    scene.copyCardTo(scene.two, "");
    scene.later();
    scene.compare(scene.two);
    assertThat(counter.of(scene.job.scan()).orElseThrow().once()).isZero();
  }

  @Test
  void aFrameThatLiesOnTheJobsDiskOnlyIsCounted() throws Exception {
    scene.copyCardTo(scene.frames(), "");
    for (var file : CopiesScene.files(scene.frames())) {
      if (file.toString().endsWith("1.JPG")) {
        continue;
      }
      Files.copy(file, scene.one.resolve(file.getFileName()));
    }
    var compared = scene.compare(scene.one);
    assertThat(compared.cards()).isEmpty();
    assertThat(compared.frames().once()).isEqualTo(1);
    assertThat(compared.allIsWell()).isFalse();
    assertThat(FramesOnce.of(scene.job, scene.job.scan()).orElseThrow().once()).isEqualTo(1);
  }

  /** The check of GNU coreutils. */
  @Test
  void theEvidenceIsCheckedBySha256sum() throws Exception {
    scene.copyCardTo(scene.one, "back\\slash ");
    var evidence = scene.compare(scene.card, scene.one).evidence().orElseThrow();
    Process process;
    try {
      process =
          new ProcessBuilder("sha256sum", "-c", evidence.toString())
              .redirectErrorStream(true)
              .start();
    } catch (IOException e) {
      Assumptions.abort("sha256sum is not here");
      return;
    }
    var said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
    assertThat(process.exitValue()).as(said).isZero();
    assertThat(said.lines().filter(line -> line.endsWith(": OK")).count()).isEqualTo(8);
  }
}
