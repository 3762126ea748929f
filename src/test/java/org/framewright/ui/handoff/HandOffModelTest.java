package org.framewright.ui.handoff;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.handoff.Extent;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.SlateWord;
import org.framewright.ui.handoff.Asked.Basis;
import org.framewright.ui.handoff.GoingLine.Kind;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What would go, as a person answers, and how it ends. */
@Tag("slow")
class HandOffModelTest {
  @TempDir private Path folder;
  private HandOffScene scene;
  private Path out;
  private HandOffModel model;
  private Studio.Reading studio = new Studio.Reading.Sound(Studio.NOTHING);

  @BeforeEach
  void aJobIsOpen() throws Exception {
    scene = new HandOffScene(folder);
    out = Files.createDirectory(folder.resolve("out"));
    model = model(Tasks.immediate());
    model.follow();
    model.startAt(Optional.of(out));
  }

  private HandOffModel model(Tasks tasks) {
    return new HandOffModel(
        scene.session, tasks, HandOffScene.TEXTS, () -> studio, page -> page, scene.troubles::add);
  }

  @AfterEach
  void nothingUnforeseenHappened() {
    scene.close();
    assertThat(scene.troubles).isEmpty();
  }

  private Looked looked() {
    return model.looked().get().orElseThrow();
  }

  private List<String> names() {
    return model.lines().stream().map(GoingLine::to).toList();
  }

  @Test
  void theSelectsOfTheJobGoUnlessOneSaysOtherwise() {
    assertThat(names()).containsExactly("KVO_001_F_0001", "KVO_001_F_0002");
    assertThat(looked().files()).isEqualTo(4);
    assertThat(looked().target()).contains(out.resolve(scene.job().name() + "_hand-off_1"));
    assertThat(looked().room().orElseThrow().needed()).isPositive();
    assertThat(model.ready().get()).isTrue();
  }

  @Test
  void eachAnswerIsPlannedAnew() {
    model.basis().set(Basis.RATED);
    assertThat(names()).containsExactly("KVO_001_F_0004");
    model.rating().set(1);
    assertThat(names()).containsExactly("KVO_001_F_0004");
    model.basis().set(Basis.EVERY);
    assertThat(names()).hasSize(4);
    model.pictures().set(Extent.Pictures.JPEG);
    assertThat(looked().files()).isEqualTo(4);
    model.setups().set("002..004");
    assertThat(model.lines()).isEmpty();
    assertThat(model.ready().get()).isFalse();
    model.setups().set("001, 003");
    assertThat(names()).hasSize(4);
    model.basis().set(Basis.LABELLED);
    assertThat(model.lines()).isEmpty();
    model.basis().set(Basis.LISTED);
    assertThat(model.lines()).as("no list yet").isEmpty();
  }

  @Test
  void slatesGoAlongWhereTheJobHasSomeAndTheyAreAskedFor() {
    assertThat(model.hasSlates().get()).isFalse();
    model.slates().set(true);
    assertThat(names()).hasSize(2);
    var third =
        scene.session.view().get().scan().frames().stream()
            .filter(frame -> frame.stem().endsWith("_0003"))
            .findFirst()
            .orElseThrow();
    scene.session.change(
        "",
        job ->
            job.saySlate(
                third, new SlateWord.OfSetup("001"), "Ines", scene.session.view().get().scan()),
        _ -> {},
        scene.troubles::add);
    assertThat(model.hasSlates().get()).isTrue();
    assertThat(names()).containsExactly(third.stem(), "KVO_001_F_0001", "KVO_001_F_0002");
    assertThat(model.lines().getFirst().more()).contains("slate");
    assertThat(looked().selects()).isEqualTo(2);
    assertThat(looked().slates()).isEqualTo(1);
    model.slates().set(false);
    assertThat(names()).hasSize(2);
  }

  @Test
  void whatCannotBeIsSaidAndNothingCanGo() {
    model.setups().set("999");
    assertThat(looked().problem().orElseThrow().what()).contains("999");
    assertThat(model.ready().get()).isFalse();
    model.setups().set("");
    model.split().set("a lot");
    assertThat(looked().problem().orElseThrow().what()).isEqualTo("This is no size of a package.");
    model.split().set("1 KB");
    assertThat(looked().problem().orElseThrow().what()).contains("more than a package may have");
    model.split().set("");
    for (var name : List.of("a/b", "..", "../out", "/tmp", "nul\0")) {
      model.name().set(name);
      assertThat(looked().problem().orElseThrow().what())
          .as(name)
          .isEqualTo("This cannot be the name of a folder.");
      assertThat(model.ready().get()).isFalse();
    }
    model.name().set("for Bram");
    assertThat(looked().target()).contains(out.resolve("for Bram"));
    model.place().set(scene.job().framesFolder());
    assertThat(looked().problem().orElseThrow().what()).contains("frames folder");
    assertThat(model.ready().get()).isFalse();
  }

  @Test
  void whatWasHandedOffIsToldWithWhatProvesItAndTheNextNumberIsOffered() {
    model.deliver();
    var end = model.ended().get().orElseThrow();
    assertThat(end.isWhole()).isTrue();
    var one = end.packages().getFirst();
    assertThat(one.number()).isEqualTo(1);
    assertThat(one.folder()).isDirectory();
    assertThat(one.digest()).hasSize(64);
    assertThat(end.sentence())
        .startsWith("Hand-off 1 of " + scene.job().name() + ": 2 selects in 4 files")
        .contains(one.folder().toString(), one.digest());
    assertThat(looked().usualName()).endsWith("_hand-off_2");
    assertThat(model.lines()).extracting(GoingLine::kind).containsOnly(Kind.AGAIN);
    model.onlyNew().set(true);
    assertThat(model.lines()).isEmpty();
    assertThat(looked().stay()).isEqualTo(2);
    assertThat(model.ready().get()).isFalse();
  }

  @Tag("slow")
  @Test
  void aContactSheetAndAListLieInThePackageWhereAskedFor() {
    long plain = looked().room().orElseThrow().needed();
    model.sheet().set(true);
    model.table().set(true);
    assertThat(looked().room().orElseThrow().needed()).isGreaterThan(plain);
    model.deliver();
    var one = model.ended().get().orElseThrow().packages().getFirst();
    assertThat(one.folder().resolve("contact-sheet.pdf")).isNotEmptyFile();
    assertThat(one.folder().resolve("list.xlsx")).isNotEmptyFile();
  }

  @Test
  void aPackageIsSplitIntoSeveral() {
    model.basis().set(Basis.EVERY);
    long one = looked().parts().getFirst().selects().getFirst().bytes();
    model.split().set(Math.ceilDiv(2 * one, 1000) + " KB");
    assertThat(looked().parts()).hasSize(2);
    assertThat(model.lines()).extracting(GoingLine::more).last().asString().endsWith("package 2");
    model.name().set("parts");
    model.deliver();
    assertThat(model.ended().get().orElseThrow().packages())
        .extracting(Ended.Handed::folder)
        .containsExactly(out.resolve("parts-1"), out.resolve("parts-2"));
    assertThat(model.ended().get().orElseThrow().sentence())
        .contains("Hand-off 1 of ", "\n\nHand-off 2 of ");
  }

  @Test
  void aHandOffThatIsStoppedLeavesNothing() {
    Deque<Runnable> background = new ArrayDeque<>();
    model = model(new Tasks(background::add, Runnable::run));
    model.follow();
    model.place().set(out);
    while (!background.isEmpty()) {
      background.remove().run();
    }
    model.deliver();
    assertThat(model.running().get()).isPresent();
    assertThat(model.ready().get()).as("one at a time").isFalse();
    model.stop();
    background.remove().run();
    assertThat(model.running().get()).isEmpty();
    assertThat(model.ended().get().orElseThrow().why().what())
        .isEqualTo("Stopped. Nothing is left of the package.");
    assertThat(out).isEmptyDirectory();
  }

  @Test
  void settingsThatDoNotHoldAreSaidBeforeAnythingIsWritten() {
    studio =
        new Studio.Reading.Faulty(new Problem("the phone is no phone", "preferences", "Mend it."));
    model.deliver();
    assertThat(model.ended().get().orElseThrow().why())
        .isEqualTo(new Remark("preferences: the phone is no phone", "Mend it."));
    assertThat(out).isEmptyDirectory();
    model.metadata().set(MetadataMode.NONE);
    model.deliver();
    assertThat(model.ended().get().orElseThrow().isWhole()).isTrue();
  }

  @Test
  void aPlaceThatIsGoneMeanwhileIsASentence() throws Exception {
    Files.delete(out);
    Files.writeString(out, "a file now");
    model.deliver();
    var end = model.ended().get().orElseThrow();
    assertThat(end.packages()).isEmpty();
    assertThat(end.why().what()).isNotBlank();
  }

  @Test
  void framesWithoutTheirNamesStayWithTheWayToTheirRemedy() throws Exception {
    var first = scene.job().framesFolder();
    try (var files = Files.walk(first)) {
      for (var file : files.filter(it -> it.toString().contains("_0001.")).toList()) {
        Files.move(file, file.resolveSibling("odd" + file.getFileName().toString().substring(17)));
      }
    }
    scene.session.look();
    assertThat(model.lines()).extracting(GoingLine::kind).containsExactly(Kind.HELD, Kind.GOES);
    assertThat(model.lines().getFirst().remedy()).endsWith("See the names.");
  }

  @Test
  void whatIsAskedMeanwhileIsPlannedLast() {
    Deque<Runnable> background = new ArrayDeque<>();
    model = model(new Tasks(background::add, Runnable::run));
    model.place().set(out);
    for (var typed : List.of("0", "00", "001")) {
      model.setups().set(typed);
    }
    assertThat(background).as("one at work").hasSize(1);
    background.remove().run();
    assertThat(model.ready().get()).isFalse();
    background.remove().run();
    assertThat(background).isEmpty();
    assertThat(model.ready().get()).isTrue();
  }

  @Test
  void ofSeveralPackagesThoseThatAreThereStayAndTheSameAgainGoesOn() throws Exception {
    model.basis().set(Basis.EVERY);
    long one = looked().parts().getFirst().selects().getFirst().bytes();
    model.split().set(Math.ceilDiv(2 * one, 1000) + " KB");
    model.name().set("parts");
    var inTheWay = Files.createDirectory(out.resolve("parts-2"));
    model.deliver();
    var end = model.ended().get().orElseThrow();
    assertThat(end.isWhole()).isFalse();
    assertThat(end.packages()).extracting(Ended.Handed::number).containsExactly(1);
    assertThat(end.why().what()).contains("parts-2");
    Files.delete(inTheWay);
    model.deliver();
    assertThat(model.ended().get().orElseThrow().isWhole()).isTrue();
    assertThat(model.ended().get().orElseThrow().packages())
        .extracting(Ended.Handed::folder)
        .containsExactly(out.resolve("parts-1"), out.resolve("parts-2"));
  }

  @Test
  void anotherAnswerPutsTheLastHandOffAway() {
    model.deliver();
    assertThat(model.ended().get()).isPresent();
    model.rating().set(2);
    assertThat(model.ended().get()).isEmpty();
  }
}
