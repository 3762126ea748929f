package org.framewright.ui.copies;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Queue;
import org.framewright.frames.Frame;
import org.framewright.ui.look.Texts;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CopiesModelTest {
  @TempDir Path temp;
  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Frame> frames = new ArrayList<>();
  private CardScene scene;
  private Preferences preferences;
  private CopiesModel model;

  @BeforeEach
  void makeScene() throws Exception {
    scene = new CardScene(temp);
    preferences = Preferences.read(temp.resolve("preferences.json"), Runnable::run, troubles::add);
    preferences.put(CopiesModel.BY, "Ines");
    model = model(Tasks.immediate());
    model.look();
  }

  private CopiesModel model(Tasks tasks) {
    return new CopiesModel(
        scene.job,
        () -> frames,
        scene.disks(),
        preferences,
        tasks,
        Texts.in(Locale.UK),
        scene.clock(),
        troubles::add);
  }

  private PlaceLine place(Path folder) {
    return model.places().stream()
        .filter(line -> line.folder().equals(folder))
        .findFirst()
        .orElseThrow();
  }

  private Outcome.Answered compared(Path... folders) {
    for (var folder : folders) {
      model.add(folder);
    }
    model.compare();
    assertThat(troubles).isEmpty();
    return (Outcome.Answered) model.outcome().get();
  }

  // The places

  @Test
  void theJobIsAlwaysAPlaceAndStaysOne() {
    assertThat(model.places()).extracting(PlaceLine::kind).containsExactly(PlaceLine.Kind.JOB);
    assertThat(model.canCompare().get()).as("there is nothing to compare with").isFalse();
    model.remove(place(scene.job.folder()));
    assertThat(model.places()).hasSize(1);
  }

  @Test
  void cardsComeFirstAndAreToldByTheirFolderOfImages() {
    model.add(scene.one);
    model.add(scene.card);
    model.add(scene.card);
    assertThat(model.places())
        .extracting(PlaceLine::kind)
        .containsExactly(PlaceLine.Kind.CARD, PlaceLine.Kind.JOB, PlaceLine.Kind.BACKUP);
    assertThat(model.needsWord(place(scene.card))).as("it has DCIM at its top").isTrue();
    var shown = place(scene.card).shown().get();
    assertThat(shown.name()).isEqualTo("A1");
    assertThat(shown.device()).isEqualTo("disk card");
    assertThat(shown.size()).endsWith(" free");
    assertThat(shown.established()).isEqualTo("not compared yet");
    assertThat(scene.volumes.read()).as("looking reads nothing").isEmpty();
  }

  @Test
  void aFolderWithoutThatCanBeMadeACardAndBack() {
    model.add(scene.one);
    model.turn(place(scene.one));
    assertThat(model.places().getFirst().kind()).isEqualTo(PlaceLine.Kind.CARD);
    model.turn(place(scene.one));
    assertThat(model.places().getLast().kind()).isEqualTo(PlaceLine.Kind.BACKUP);
  }

  @Test
  void backupsAreThereForTheNextJobAndOnesThatAreTakenOffAreNot() {
    model.add(scene.one);
    model.add(scene.two);
    model.remove(place(scene.two));
    model = model(Tasks.immediate());
    model.look();
    assertThat(model.places())
        .extracting(PlaceLine::folder)
        .containsExactly(scene.job.folder(), scene.one);
  }

  @Test
  void aPlaceThatWasComparedAndIsNotConnectedIsSaidToBe() throws Exception {
    scene.copyCardTo(scene.one);
    compared(scene.card, scene.one);
    Files.move(scene.one, temp.resolve("away"));
    Files.move(scene.card, temp.resolve("pulled"));
    model = model(Tasks.immediate());
    model.look();
    assertThat(model.places())
        .extracting(PlaceLine::name)
        .as("a card that is gone is not missed")
        .containsExactly(scene.job.name(), "SSD 1");
    assertThat(place(scene.one).shown().get().established()).isEqualTo("not connected");
    assertThat(place(scene.one).shown().get().needs()).isTrue();
    assertThat(model.canCompare().get()).isFalse();
  }

  // The answers

  @Test
  void aCardWhoseFilesAreOnTwoOtherDisksMayBeCleared() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    var answer = compared(scene.card, scene.one, scene.two).answers().getFirst();
    assertThat(answer.answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    assertThat(answer.sentence())
        .isEqualTo(
            "Card A1 may be cleared as it was at 18:04: all 4 files are on SSD 1 and SSD 2. If"
                + " anything was shot on it since, ask again.");
    assertThat(answer.why()).hasSize(1);
    assertThat(answer.why().getFirst().remedy()).contains("2 copies are left");
    assertThat(model.chosen().get()).isEqualTo(answer);
    assertThat(place(scene.one).shown().get().figure()).isEqualTo("4 of 4");
    assertThat(place(scene.one).shown().get().part()).isEqualTo(1);
  }

  @Test
  void aCardWithOneCopyIsNotYetClearAndTheRemedyIsOneOfThePage() throws Exception {
    scene.copyCardTo(scene.one);
    Files.delete(scene.one.resolve(scene.cardFiles().getFirst().getFileName()));
    var answered = compared(scene.card, scene.one);
    var answer = answered.answers().getFirst();
    assertThat(answer.answer()).isEqualTo(Answer.NOT_YET);
    assertThat(answer.sentence()).startsWith("Do not clear card A1: 4 files ");
    assertThat(answer.why().getFirst().remedy()).contains("with C").doesNotContain("framewright");
    assertThat(place(scene.one).shown().get().figure()).isEqualTo("3 of 4");
    assertThat(place(scene.one).shown().get().part()).isEqualTo(0.75);
  }

  @Test
  void whatMayComeFromMemoryCannotBeTold() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    scene.volumes.unsure(scene.card);
    var answer = compared(scene.card, scene.one, scene.two).answers().getFirst();
    assertThat(answer.answer()).isEqualTo(Answer.CANNOT_TELL);
    assertThat(answer.sentence()).startsWith("Do not clear card A1, nobody can tell: ");
    assertThat(answer.why().getFirst().remedy()).startsWith("Take the card out");
  }

  @Test
  void theWorstAnswerComesFirst() throws Exception {
    var second = temp.toRealPath().resolve("B1");
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    scene.shoot(second, 1);
    Files.writeString(second.resolve("DCIM/100STUDI/VOICE.WAV"), "a memo that nobody copied");
    scene.volumes.disk(second, "second card");
    assertThat(compared(scene.card, second, scene.one, scene.two).answers())
        .extracting(CardAnswer::answer)
        .containsExactly(Answer.NOT_YET, Answer.MAY_BE_CLEARED);
    assertThat(model.chosen().get().name()).isEqualTo("B1");
  }

  @Test
  void whatNeedsAPersonStandsFirstAmongTheFilesAndEachStateAlone() throws Exception {
    scene.copyCardTo(scene.one);
    var files = scene.cardFiles();
    Files.delete(scene.one.resolve(files.getFirst().getFileName()));
    var other = scene.one.resolve(files.getLast().getFileName());
    var bytes = Files.readAllBytes(other);
    Files.write(other, Arrays.copyOf(bytes, bytes.length - 40));
    Files.writeString(scene.one.resolve("notes.txt"), "of the studio");
    compared(scene.card, scene.one);
    var states =
        model.lines().stream()
            .filter(line -> line.from().equals("SSD 1") || line.place().equals("on SSD 1"))
            .map(FileLine::state)
            .toList();
    assertThat(states)
        .containsExactly(
            FileLine.State.DIFFERENT,
            FileLine.State.MISSING,
            FileLine.State.EXTRA,
            FileLine.State.IDENTICAL,
            FileLine.State.IDENTICAL);
    assertThat(model.lines().getFirst().from()).isEqualTo("A1");
    assertThat(model.lines().getFirst().file()).startsWith("DCIM/100STUDI/");
    model.only().set(Optional.of(FileLine.State.EXTRA));
    assertThat(model.lines()).extracting(FileLine::file).containsExactly("notes.txt");
    model.only().set(Optional.empty());
    model.filter().set("ssd studi " + files.getFirst().getFileName());
    assertThat(model.lines()).extracting(FileLine::state).containsOnly(FileLine.State.MISSING);
    assertThat(model.counts().get())
        .containsEntry(FileLine.State.DIFFERENT, 1)
        .containsEntry(FileLine.State.EXTRA, 1);
  }

  @Test
  void theLastAnswersStandThereWhenThePageOpens() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    compared(scene.card, scene.one, scene.two);
    model = model(Tasks.immediate());
    model.look();
    var before = (Outcome.Before) model.outcome().get();
    assertThat(before.answers())
        .containsExactly(
            new Outcome.Earlier(
                Answer.MAY_BE_CLEARED,
                "Card A1 could be cleared at 18:04, said by Ines: 4 files on SSD 1 and SSD 2"));
    assertThat(place(scene.one).shown().get().established()).isEqualTo("compared 18:04");
  }

  @Test
  void aJobThatLiesOnACardIsRefusedWithTheRemedy() {
    model.add(scene.laptop);
    model.turn(place(scene.laptop));
    model.compare();
    assertThat(model.refused().get().orElseThrow().remedy()).contains("Move the job");
    assertThat(model.outcome().get()).isInstanceOf(Outcome.Before.class);
    assertThat(troubles).isEmpty();
  }

  @Test
  void aPlaceThatGoesInBetweenIsToldAndThePageGoesOn() throws Exception {
    model.add(scene.card);
    Files.move(scene.card, temp.resolve("pulled"));
    model.compare();
    assertThat(model.refused().get()).isPresent();
    assertThat(model.idle().get()).isTrue();
    assertThat(place(scene.card).shown().get().established()).isEqualTo("not connected");
  }

  // On how many disks

  @Test
  void filesAreNeededOnTwoDisksUntilAPersonSaysOtherwiseForTheNextJobToo() {
    assertThat(model.needed().get()).isEqualTo(2);
    model.needed().set(3);
    model = model(Tasks.immediate());
    assertThat(model.needed().get()).isEqualTo(3);
    for (double nonsense : new double[] {0, 10, 2.5, Double.NaN}) {
      preferences.put(CopiesModel.NEEDED, nonsense);
      assertThat(model(Tasks.immediate()).needed().get()).as("" + nonsense).isEqualTo(2);
    }
  }

  @Test
  void oneDiskIsEnoughWhereAPersonSaysSo() throws Exception {
    scene.copyCardTo(scene.one);
    model.needed().set(1);
    var answer = compared(scene.card, scene.one).answers().getFirst();
    assertThat(answer.answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    assertThat(answer.why().getFirst().message()).contains(" is on at least one disk besides it");
    assertThat(answer.why().getFirst().remedy()).startsWith("Once it is cleared, one copy is left");
  }

  @Test
  void twoDisksAreTooFewWhereAPersonWantsThree() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    model.needed().set(3);
    var answer = compared(scene.card, scene.one, scene.two).answers().getFirst();
    assertThat(answer.answer()).isEqualTo(Answer.NOT_YET);
    assertThat(answer.sentence()).contains("on fewer than 3 disks besides the card");
  }

  /** Of two disks that hold half of the files each, every file is on one. */
  @Test
  void whatIsSaidOfDisksHoldsForEachFile() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    var files = scene.cardFiles();
    Files.delete(scene.one.resolve(files.getFirst().getFileName()));
    Files.delete(scene.two.resolve(files.getLast().getFileName()));
    model.needed().set(1);
    var answer = compared(scene.card, scene.one, scene.two).answers().getFirst();
    assertThat(answer.why().getFirst().message()).contains(" is on at least one disk besides it");
    assertThat(answer.why().getFirst().remedy()).contains("one copy is left");
    assertThat(answer.sentence()).contains("on SSD 1 (3 of them) and SSD 2 (3 of them)");
  }

  @Test
  void anAnswerForAnotherNumberOfDisksIsOutOfDate() throws Exception {
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    model.needed().set(3);
    assertThat(model.again().get()).as("nothing was answered yet").isEmpty();
    model.needed().set(2);
    compared(scene.card, scene.one, scene.two);
    assertThat(model.again().get()).isEmpty();
    model.needed().set(4);
    assertThat(model.again().get())
        .isEqualTo("Compare again: each file now has to be on 4 disks besides the card.");
    model.needed().set(2);
    assertThat(model.again().get()).isEmpty();
    model.needed().set(1);
    model.compare();
    assertThat(model.again().get()).isEmpty();
  }

  // What need not be kept

  /** A card with an empty picture, and all that is on it on two other disks. */
  private FileLine damaged() throws Exception {
    Files.write(jpeg(), new byte[0]);
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    compared(scene.card, scene.one, scene.two);
    return model.lines().getFirst();
  }

  private Path jpeg() throws IOException {
    return scene.cardFiles().stream()
        .filter(file -> file.toString().endsWith(".JPG"))
        .findFirst()
        .orElseThrow();
  }

  private CardAnswer answer() {
    return ((Outcome.Answered) model.outcome().get()).answers().getFirst();
  }

  @Test
  void aPictureThatIsEmptyStandsFirstAmongTheFilesWithTheWayToGiveItUp() throws Exception {
    var line = damaged();
    assertThat(line.state()).isEqualTo(FileLine.State.DAMAGED);
    assertThat(line.from()).isEqualTo("A1");
    assertThat(line.file()).startsWith("DCIM/100STUDI/").endsWith(".JPG");
    assertThat(line.more()).isNotEmpty();
    assertThat(model.canWaive(line)).isTrue();
    assertThat(model.counts().get()).containsEntry(FileLine.State.DAMAGED, 1);
    assertThat(answer().answer()).isEqualTo(Answer.NOT_YET);
    assertThat(answer().why().getFirst().remedy()).contains("with W").doesNotContain("framewright");
  }

  @Test
  void aFileThatNeedNotBeKeptIsNamedInTheAnswerOfTheNextComparison() throws Exception {
    var line = damaged();
    model.waive(line, " Ines ");
    assertThat(model.again().get())
        .isEqualTo("Compare again: 1 file need not be kept, according to Ines.");
    assertThat(model.lines().getFirst().waivedBy()).contains("Ines");
    assertThat(answer().answer()).as("until it is compared again").isEqualTo(Answer.NOT_YET);
    model.compare();
    assertThat(model.again().get()).isEmpty();
    assertThat(answer().answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    assertThat(answer().sentence())
        .isEqualTo(
            "Card A1 may be cleared as it was at 18:04: 3 files are on SSD 1 and SSD 2, and 1 file"
                + " need not be kept, according to Ines. If anything was shot on it since, ask"
                + " again.");
    assertThat(answer().why().getFirst().message())
        .startsWith("Each of the 3 files of the card that have to be kept is on at least 2 disks");
    assertThat(answer().why().get(1).remedy()).isEqualTo(line.file());
    assertThat(model.lines().getFirst().waivedBy()).contains("Ines");
  }

  @Test
  void aFileThatNeedNotBeKeptNeedsNoCopyEither() throws Exception {
    var line = damaged();
    Files.delete(scene.one.resolve(jpeg().getFileName()));
    Files.delete(scene.two.resolve(jpeg().getFileName()));
    model.waive(line, "Ines");
    model.compare();
    assertThat(answer().answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    assertThat(answer().sentence()).contains(": 3 files are on SSD 1 and SSD 2, and 1 file need ");
  }

  @Test
  void itCanBeTakenBack() throws Exception {
    var line = damaged();
    model.waive(line, "Ines");
    model.keep(model.lines().getFirst());
    assertThat(model.again().get()).isEmpty();
    assertThat(model.lines().getFirst().waivedBy()).isEmpty();
    model.compare();
    assertThat(answer().answer()).isEqualTo(Answer.NOT_YET);
    model.waive(model.lines().getFirst(), "Ines");
    model.compare();
    model.keep(model.lines().getFirst());
    assertThat(model.again().get()).isEqualTo("Compare again: a file has to be kept after all.");
  }

  /** Another card in the same reader may have a file of the same name, as cameras count anew. */
  @Test
  void whatIsSaidOfOneFileIsNotSaidOfAnotherOfItsName() throws Exception {
    model.waive(damaged(), "Ines");
    var bytes = Files.readAllBytes(scene.cardFiles().getLast());
    Files.write(jpeg(), Arrays.copyOf(bytes, 300));
    model.compare();
    assertThat(troubles).isEmpty();
    assertThat(answer().answer()).isEqualTo(Answer.NOT_YET);
    assertThat(model.lines().getFirst().state()).isEqualTo(FileLine.State.DAMAGED);
    assertThat(model.lines().getFirst().waivedBy()).isEmpty();
    Files.delete(jpeg());
    model.compare();
    assertThat(model.refused().get()).as("nor is it missed").isEmpty();
  }

  @Test
  void nobodySaysSoWithoutANameNorOfAFileThatIsWholeOrWasNeverRead() throws Exception {
    model.waive(damaged(), " ");
    assertThat(model.lines().getFirst().waivedBy()).isEmpty();
    var whole = model.lines().getLast();
    assertThat(whole.state()).isEqualTo(FileLine.State.IDENTICAL);
    assertThat(model.canWaive(whole)).isFalse();
    model.waive(whole, "Ines");
    assertThat(model.again().get()).isEmpty();
    scene.volumes.failing(jpeg());
    model.compare();
    var unread = model.lines().getFirst();
    assertThat(unread.state()).isEqualTo(FileLine.State.DAMAGED);
    assertThat(model.canWaive(unread)).isFalse();
  }

  @Test
  void whatIsSaidOfAFileOfOneCardLeavesTheAnswersOfTheOthersAsTheyAre() throws Exception {
    var second = temp.toRealPath().resolve("B1");
    scene.shoot(second, 1);
    scene.volumes.disk(second, "second card");
    Files.write(second.resolve("DCIM/100STUDI/EMPTY.JPG"), new byte[0]);
    scene.copyCardTo(scene.one);
    scene.copyCardTo(scene.two);
    var answers = compared(scene.card, second, scene.one, scene.two).answers();
    assertThat(answers).extracting(CardAnswer::name).containsExactly("B1", "A1");
    assertThat(answers).noneMatch(model::isPast);
    model.waive(model.lines().getFirst(), "Ines");
    assertThat(answers)
        .filteredOn(model::isPast)
        .extracting(CardAnswer::name)
        .containsExactly("B1");
    model.needed().set(1);
    assertThat(answers).allMatch(model::isPast);
  }

  // Backups that look like cards

  /** A card that was copied as it is, so that its DCIM lies at the top of the copy. */
  private Path copiedCard() throws IOException {
    var copy = scene.two.resolve("A1 of Monday");
    scene.copyCardTo(copy.resolve("DCIM/100STUDI"));
    scene.copyCardTo(scene.one);
    for (var folder : List.of(scene.card, scene.one, copy)) {
      model.add(folder);
    }
    return copy;
  }

  @Test
  void whatLooksLikeACardIsABackupByAPersonsWordOnly() throws Exception {
    var copy = copiedCard();
    model.turn(place(copy));
    assertThat(place(copy).kind()).isEqualTo(PlaceLine.Kind.CARD);
    model.compare();
    assertThat(((Outcome.Answered) model.outcome().get()).answers()).hasSize(2);
    assertThat(answer().why().getFirst().remedy()).contains("say with K");
    assertThat(model.canAskForWord(place(copy))).isTrue();
    model.sayBackup(place(copy));
    assertThat(place(copy).kind()).isEqualTo(PlaceLine.Kind.BACKUP);
    assertThat(model.again().get())
        .isEqualTo("Compare again: a place counts as something else now.");
    model.compare();
    assertThat(((Outcome.Answered) model.outcome().get()).answers()).hasSize(1);
    assertThat(answer().answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    assertThat(answer().why())
        .contains(
            new CardAnswer.Why(
                "A1 of Monday counts as a backup because a person said so; it looks like a card.",
                copy.toString()));
    assertThat(model.question().disks()).as("no copy is made inside a copy").doesNotContain(copy);
    model.turn(place(copy));
    assertThat(place(copy).kind()).as("that is taken back").isEqualTo(PlaceLine.Kind.CARD);
    assertThat(model.again().get()).isNotEmpty();
  }

  @Test
  void ofADiskThatLooksLikeACardItCannotBeSaid() throws Exception {
    model.add(scene.card);
    assertThat(model.canAskForWord(place(scene.card))).isFalse();
    assertThat(model.refused().get().orElseThrow().what())
        .startsWith("this disk looks like a card");
    model.sayBackup(place(scene.card));
    assertThat(place(scene.card).kind()).isEqualTo(PlaceLine.Kind.CARD);
  }

  @Test
  void theWordIsNotForWhatComesToThatPathLater() throws Exception {
    var copy = copiedCard();
    model.sayBackup(place(copy));
    scene.volumes.again(scene.two);
    model.compare();
    assertThat(model.refused().get().orElseThrow().what()).contains("another volume is there now");
    assertThat(scene.volumes.read()).isEmpty();
    assertThat(place(copy).kind()).isEqualTo(PlaceLine.Kind.CARD);
  }

  @Test
  void theWordEndsWhenThePlaceIsAwayAndIsNotForTheNextRun() throws Exception {
    var copy = copiedCard();
    model.sayBackup(place(copy));
    Files.move(copy, temp.resolve("away"));
    model.look();
    Files.move(temp.resolve("away"), copy);
    model.look();
    assertThat(place(copy).kind()).isEqualTo(PlaceLine.Kind.CARD);
    model.sayBackup(place(copy));
    model.compare();
    assertThat(answer().answer()).isEqualTo(Answer.MAY_BE_CLEARED);
    model = model(Tasks.immediate());
    model.look();
    assertThat(place(copy).kind()).isEqualTo(PlaceLine.Kind.CARD);
    assertThat(preferences.recent(CopiesModel.BACKUPS)).doesNotContain(copy.toString());
  }

  @Test
  void whereNobodyTellsVolumesApartTheWordHoldsForOneComparison() throws Exception {
    copiedCard();
    var unknown = temp.toRealPath().resolve("share/A1 of Monday");
    scene.copyCardTo(unknown.resolve("DCIM/100STUDI"));
    model.add(unknown);
    model.sayBackup(place(unknown));
    model.look();
    assertThat(place(unknown).kind()).isEqualTo(PlaceLine.Kind.BACKUP);
    model.compare();
    assertThat(place(unknown).kind()).isEqualTo(PlaceLine.Kind.CARD);
    assertThat(model.again().get()).as("the answer is of now all the same").isEmpty();
  }

  // While it works

  /** Work that waits until the test lets it run, on the test's own thread. */
  private Queue<Runnable> later() {
    var waiting = new ArrayDeque<Runnable>();
    model = model(new Tasks(waiting::add, Runnable::run));
    model.look();
    waiting.remove().run();
    return waiting;
  }

  private void add(Queue<Runnable> waiting, Path... folders) {
    for (var folder : folders) {
      model.add(folder);
      waiting.remove().run();
    }
  }

  @Test
  void whileItComparesItSaysHowFarItIsAndHowLongItTakes() throws Exception {
    scene.copyCardTo(scene.one);
    var waiting = later();
    add(waiting, scene.card, scene.one);
    scene.volumes.onRead(() -> scene.later(Duration.ofMinutes(1)));
    var ways = new ArrayList<Way>();
    var figures = new ArrayList<String>();
    model.way().subscribe(way -> ways.add(way));
    place(scene.card).shown().subscribe(shown -> figures.add(shown.figure()));
    model.compare();
    assertThat(model.doing().get()).isEqualTo(CopiesModel.Doing.COMPARING);
    assertThat(model.canCompare().get()).isFalse();
    assertThat(model.canRemove(place(scene.card))).isFalse();
    waiting.remove().run();
    assertThat(figures).contains("0 of 4", "1 of 4", "4 of 4");
    assertThat(ways).anyMatch(way -> way.figure().contains(" of 8 files · "));
    assertThat(ways).anyMatch(way -> way.left().matches("about \\d+ min left"));
    assertThat(model.doing().get()).isEqualTo(CopiesModel.Doing.NOTHING);
    assertThat(model.way().get()).isEqualTo(Way.NONE);
  }

  @Test
  void stoppedItKnowsNothingAndNothingIsWritten() throws Exception {
    var waiting = later();
    add(waiting, scene.card, scene.one);
    scene.volumes.onRead(model::stop);
    model.compare();
    waiting.remove().run();
    assertThat(model.outcome().get()).isInstanceOf(Outcome.Before.class);
    assertThat(model.idle().get()).isTrue();
    assertThat(scene.job.comparisons()).isEmpty();
    assertThat(troubles).isEmpty();
  }

  // Copying

  @Test
  void theCardThatIsReadAboutIsCopiedFirstAndOnEachDiskIntoAFolderOfItsOwn() {
    model.add(scene.one);
    model.add(scene.card);
    var question = model.question();
    assertThat(question.from().get().name()).isEqualTo("A1");
    assertThat(question.targets()).containsExactly(scene.one.resolve("A1_2026-11-23"));
    question.add(scene.two);
    question.add(scene.two);
    assertThat(question.targets()).hasSize(2);
    question.from().set(place(scene.job.folder()));
    assertThat(question.targets().getFirst())
        .isEqualTo(scene.one.resolve(scene.job.name() + "_2026-11-23"));
    question.disks().clear();
    assertThat(question.ready().get()).isFalse();
  }

  private Outcome.Copied copied(Path... disks) {
    var question = model.question();
    question.disks().setAll(disks);
    model.copy(question);
    assertThat(troubles).isEmpty();
    return (Outcome.Copied) model.outcome().get();
  }

  @Test
  void aCopyThatIsWholeSaysSoAndOffersToCompareAndThenTheCardIsClear() throws Exception {
    model.add(scene.card);
    var copied = copied(scene.one, scene.two);
    assertThat(copied.whole()).isTrue();
    assertThat(copied.what())
        .isEqualTo("All 4 files are on each of these 2 places, read back and compared.");
    assertThat(copied.remedy()).startsWith("Compare now");
    assertThat(copied.targets().getFirst())
        .startsWith(scene.one.resolve("A1_2026-11-23") + ": 4 of 4, none of them there before");
    assertThat(copied.problems()).isEmpty();
    assertThat(model.places()).extracting(PlaceLine::folder).contains(scene.one, scene.two);
    model.compare();
    assertThat(model.chosen().get().answer()).isEqualTo(Answer.MAY_BE_CLEARED);
  }

  @Test
  void eachPlaceGetsAnAscMhlWhereAPersonWantsOneAndTheReportNamesIt() throws Exception {
    model.add(scene.card);
    var plain = copied(scene.one);
    assertThat(plain.targets()).hasSize(1);
    assertThat(scene.one.resolve("A1_2026-11-23/ascmhl")).doesNotExist();
    var question = model.question();
    assertThat(question.mhl().get()).isFalse();
    question.mhl().set(true);
    question.disks().setAll(List.of(scene.two));
    model.copy(question);
    var sealed = (Outcome.Copied) model.outcome().get();
    assertThat(sealed.targets().getLast())
        .startsWith("Its ASC MHL: " + scene.two.resolve("A1_2026-11-23/ascmhl/0001_A1_"));
    assertThat(model.question().mhl().get()).as("as it was wanted last").isTrue();
  }

  @Test
  void comparingAddsAnAscMhlToBackupsWhereAPersonWantsThatAndToNothingElse() throws Exception {
    scene.copyCardTo(scene.one);
    model.add(scene.card);
    assertThat(model.canSeal().get()).as("without a backup").isFalse();
    model.add(scene.one);
    model.compareAndSeal();
    assertThat(troubles).isEmpty();
    assertThat(place(scene.one).shown().get().established())
        .isEqualTo("compared 18:04, ASC MHL added");
    assertThat(scene.one.resolve("ascmhl")).isDirectory();
    assertThat(scene.card.resolve("ascmhl")).doesNotExist();
    model.compare();
    assertThat(place(scene.one).shown().get().established()).isEqualTo("compared 18:04");
  }

  @Test
  void aNameThatIsTakenIsListedByItsFile() throws Exception {
    model.add(scene.card);
    var file = scene.card.relativize(scene.cardFiles().getFirst());
    var taken = scene.one.resolve("A1_2026-11-23").resolve(file);
    Files.createDirectories(taken.getParent());
    Files.writeString(taken, "another");
    var copied = copied(scene.one);
    assertThat(copied.whole()).isFalse();
    assertThat(copied.stopUsing()).isFalse();
    assertThat(copied.problems())
        .extracting(problem -> problem.where())
        .containsExactly("" + taken);
    assertThat(taken).hasContent("another");
  }

  @Test
  void aCardThatCannotBeReadIsNotUsedAnyMore() throws Exception {
    model.add(scene.card);
    for (var file : scene.cardFiles()) {
      scene.volumes.failing(file);
    }
    var copied = copied(scene.one);
    assertThat(copied.stopUsing()).isTrue();
    assertThat(copied.what()).isEqualTo("Stop using this card");
    assertThat(copied.problems()).hasSize(3);
  }

  @Test
  void aTargetOnTheCardIsRefused() throws Exception {
    model.add(scene.card);
    var copied = copied(scene.card);
    assertThat(copied.whole()).isFalse();
    assertThat(copied.what()).contains("it lies in the folder that is copied");
    assertThat(copied.remedy()).contains("nothing is ever written on the source");
  }

  @Test
  void aCopyThatIsStoppedLeavesNothingHalfMade() throws Exception {
    var waiting = later();
    add(waiting, scene.card);
    var question = model.question();
    question.disks().setAll(List.of(scene.one));
    scene.volumes.onRead(
        () -> {
          if (scene.volumes.read().size() > 2) {
            model.stop();
          }
        });
    model.copy(question);
    while (!waiting.isEmpty()) {
      waiting.remove().run();
    }
    var copied = (Outcome.Copied) model.outcome().get();
    assertThat(copied.whole()).isFalse();
    assertThat(copied.what()).startsWith("cancelled");
    assertThat(parts(scene.one)).isEmpty();
  }

  private static List<Path> parts(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return files.filter(file -> file.toString().endsWith(".part")).toList();
    }
  }

  @Test
  void whileItCopiesEachTargetSaysHowFarItIs() throws Exception {
    var waiting = later();
    add(waiting, scene.card);
    var question = model.question();
    question.disks().setAll(List.of(scene.one, scene.two));
    var ways = new ArrayList<Way>();
    model.way().subscribe(way -> ways.add(way));
    model.copy(question);
    assertThat(model.doing().get()).isEqualTo(CopiesModel.Doing.COPYING);
    while (!waiting.isEmpty()) {
      waiting.remove().run();
    }
    var last = ways.stream().filter(way -> way.targets().size() == 2).toList().getLast();
    assertThat(last.figure()).startsWith("4 of 4 files");
    assertThat(last.targets())
        .extracting(Way.Target::name)
        .containsExactly(
            "" + scene.one.resolve("A1_2026-11-23"), "" + scene.two.resolve("A1_2026-11-23"));
    assertThat(last.targets().getFirst().figure()).startsWith("4 of 4");
  }

  // The disk that frames arrive on

  @Test
  void whereNothingIsKnownOfTheDiskNothingIsSaid() {
    assertThat(model.diskSpeed().get().words()).isEmpty();
  }

  @Test
  void whatWasMeasuredIsSaid() {
    model.measure();
    assertThat(troubles).isEmpty();
    assertThat(model.diskSpeed().get().words())
        .matches("(The disk that frames arrive on writes .*/s\\.)?");
    assertThat(model.diskSpeed().get().slower()).isFalse();
    assertThat(model.idle().get()).isTrue();
  }
}
