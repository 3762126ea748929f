package org.framewright.ui.handoff;

import static org.assertj.core.api.Assertions.within;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.framewright.handoff.PastHandOffs;
import org.framewright.handoff.metadata.Studio;
import org.framewright.ui.handoff.ReturnLine.Kind;
import org.framewright.ui.look.Spot;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What came back of two selects that were handed off, as KVO_001_F_0001 and KVO_001_F_0002. */
@Tag("slow")
class ReturnsModelTest {
  private static final String ONE = "KVO_001_F_0001";
  private static final String TWO = "KVO_001_F_0002";

  @TempDir private Path folder;
  private HandOffScene scene;
  private Path back;
  private ReturnsModel model;
  private final List<String> said = new ArrayList<>();

  @BeforeEach
  void twoSelectsWereHandedOff() throws Exception {
    scene = new HandOffScene(folder);
    scene.handOff("package");
    back = Files.createDirectory(folder.resolve("back"));
    model = model(Tasks.immediate());
  }

  private ReturnsModel model(Tasks tasks) {
    return new ReturnsModel(
        scene.session, tasks, HandOffScene.TEXTS, scene.clock, scene.troubles::add);
  }

  @AfterEach
  void nothingUnforeseenHappened() {
    scene.close();
    assertThat(scene.troubles).isEmpty();
  }

  private List<Kind> kinds() {
    return model.lines().stream().map(ReturnLine::kind).toList();
  }

  @Test
  void eachSelectHasItsAnswerAndWhatNeedsSomebodyComesFirst() throws Exception {
    HandOffScene.picture(back.resolve(TWO + "_v01.png"));
    HandOffScene.picture(back.resolve(TWO + "_v03.png"));
    HandOffScene.picture(back.resolve("holiday.png"));
    model.read(back);
    assertThat(kinds()).containsExactly(Kind.MISSING, Kind.EXTRA, Kind.ANSWERED);
    var answered = model.lines().getLast();
    assertThat(answered.name()).isEqualTo(TWO);
    assertThat(answered.more()).startsWith("version 3").contains(TWO + "_v03.png");
    assertThat(answered.said())
        .extracting(Remark::what)
        .containsExactly("Version 1 is here, too; the newest counts.", "Version 2 did not come.");
    assertThat(model.answer().get().orElseThrow().came()).isEqualTo(1);
    assertThat(model.answer().get().orElseThrow().selects()).isEqualTo(2);
    assertThat(model.chosen().get().name()).isEqualTo(ONE);
    assertThat(model.pair().get().select()).isPresent();
    assertThat(model.pair().get().came()).isEmpty();
    model.step(1);
    model.step(1);
    model.step(1);
    assertThat(model.chosen().get().name()).as("the last one stays").isEqualTo(TWO);
    assertThat(model.pair().get().came().orElseThrow().primary().path())
        .isEqualTo(back.toRealPath().resolve(TWO + "_v03.png"));
    model.only().set(Optional.of(Kind.EXTRA));
    assertThat(model.lines()).extracting(ReturnLine::name).containsExactly("holiday.png");
    assertThat(model.chosen().get().name()).isEqualTo("holiday.png");
  }

  @Test
  void wrongNamesAreShownThenGivenThenTakenBack() throws Exception {
    HandOffScene.picture(back.resolve(ONE + " final v1.png"));
    HandOffScene.picture(back.resolve(TWO + "_v01.png"));
    model.read(back);
    assertThat(kinds()).containsExactly(Kind.MISSING, Kind.EXTRA, Kind.ANSWERED);
    assertThat(model.canRename().get()).isTrue();
    assertThat(model.canUndo().get()).isFalse();
    var asked = new ArrayList<RenameQuestion>();
    model.askRenames(question -> asked.add(((ReturnsModel.Question.Names) question).renames()));
    assertThat(asked.getFirst().lines())
        .containsExactly(new RenameQuestion.Line(ONE + " final v1.png", ONE + "_v01.png", ""));
    assertThat(back.resolve(ONE + "_v01.png")).as("nobody said so yet").doesNotExist();
    model.rename(asked.getFirst(), said::add);
    assertThat(back.resolve(ONE + "_v01.png")).exists();
    assertThat(kinds()).containsExactly(Kind.ANSWERED, Kind.ANSWERED);
    assertThat(model.canRename().get()).isFalse();
    model.undo(said::add);
    assertThat(back.resolve(ONE + " final v1.png")).exists();
    assertThat(kinds()).containsExactly(Kind.MISSING, Kind.EXTRA, Kind.ANSWERED);
    assertThat(said)
        .containsExactly("1 file has its right name.", "1 file has its name before back.");
  }

  @Test
  void aNameThatIsTakenMeanwhileIsNotReplaced() throws Exception {
    HandOffScene.picture(back.resolve(ONE + " final v1.png"));
    model.read(back);
    var asked = new ArrayList<RenameQuestion>();
    model.askRenames(question -> asked.add(((ReturnsModel.Question.Names) question).renames()));
    Files.writeString(back.resolve(ONE + "_v01.png"), "somebody else's");
    model.rename(asked.getFirst(), said::add);
    assertThat(back.resolve(ONE + "_v01.png")).hasContent("somebody else's");
    assertThat(back.resolve(ONE + " final v1.png")).exists();
    assertThat(said).isEmpty();
    assertThat(model.problem().get()).isPresent();
  }

  @Test
  void aFolderWithAManifestKeepsItsNames() throws Exception {
    var whole = folder.resolve("package");
    HandOffScene.picture(whole.resolve("data/" + ONE + " final v1.png"));
    model.read(whole);
    assertThat(model.answer().get().orElseThrow().remarks())
        .extracting(Remark::what)
        .contains("The package that it came in is not whole.");
    model.askRenames(_ -> said.add("asked"));
    assertThat(said).isEmpty();
    assertThat(model.problem().get().orElseThrow().what()).endsWith("lists its files by name.");
  }

  @Test
  void onlyOneHandOffCanBeAskedAbout() throws Exception {
    model.number().set(Optional.of(7));
    model.read(back);
    assertThat(model.answer().get()).isEmpty();
    assertThat(model.problem().get().orElseThrow().what()).contains("no hand-off 7");
    model.number().set(Optional.of(1));
    model.again();
    assertThat(model.problem().get()).isEmpty();
    assertThat(kinds()).containsExactly(Kind.MISSING, Kind.MISSING);
  }

  @Test
  void aFolderThatIsUnpluggedMeanwhileIsASentence() throws Exception {
    HandOffScene.picture(back.resolve(ONE + " final v1.png"));
    model.read(back);
    Files.move(back, folder.resolve("unplugged"), StandardCopyOption.ATOMIC_MOVE);
    model.askRenames(_ -> said.add("asked"));
    assertThat(said).isEmpty();
    assertThat(model.problem().get().orElseThrow().what()).contains("back");
    model.again();
    assertThat(model.answer().get()).isEmpty();
    assertThat(model.lines()).isEmpty();
    assertThat(model.pair().get()).isEqualTo(Pair.NONE);
    assertThat(model.problem().get()).isPresent();
  }

  @Test
  void namesThatActOnAScreenAreShownByTheirCodes() throws Exception {
    HandOffScene.picture(back.resolve("\u001b[2J\u202egnp.png"));
    HandOffScene.picture(back.resolve("x".repeat(251) + ".png"));
    model.read(back);
    assertThat(model.lines())
        .extracting(ReturnLine::name)
        .contains("\\u{1B}[2J\\u{202E}gnp.png", "x".repeat(251) + ".png");
  }

  @Test
  void readingCanBeLeftAndItsAnswerIsNotShown() {
    Deque<Runnable> background = new ArrayDeque<>();
    model = model(new Tasks(background::add, Runnable::run));
    model.read(back);
    assertThat(model.running().get()).isPresent();
    model.stop();
    assertThat(model.running().get()).isEmpty();
    background.remove().run();
    assertThat(model.answer().get()).isEmpty();
  }

  @Test
  void bothPicturesAreSeenAroundOneSpot() {
    model.look(new Spot(0.1, 0.1));
    assertThat(model.fullSize().get()).as("only at full size").isEmpty();
    model.turnFullSize(Spot.MIDDLE);
    model.look(new Spot(0.2, 0.3));
    model.pan(1, -1);
    assertThat(model.fullSize().get().orElseThrow().x()).isEqualTo(0.3, within(1e-9));
    model.turnFullSize(Spot.MIDDLE);
    assertThat(model.fullSize().get()).isEmpty();
  }

  @Test
  void whatCameBackGoesToTheClientUnderItsNameAndIsToldAsDelivered() throws Exception {
    HandOffScene.picture(back.resolve(ONE + "_v01.png"));
    model.read(back);
    assertThat(model.canDeliver().get()).isTrue();
    var client =
        new ClientDeliveryModel(
            scene.session,
            Tasks.immediate(),
            HandOffScene.TEXTS,
            page -> page,
            scene.troubles::add);
    client.begin(model.answer().get().orElseThrow().returns(), Optional.of(folder));
    assertThat(client.lines()).extracting(GoingLine::kind).containsExactly(GoingLine.Kind.GOES);
    assertThat(client.planned().get().orElseThrow().target())
        .contains(folder.resolve(scene.job().name() + "_delivery_2"));
    client.name().set("../elsewhere");
    assertThat(client.ready().get()).isFalse();
    client.name().set("for the client");
    assertThat(client.ready().get()).isTrue();
    var ended = new ArrayList<Ended>();
    model.deliver(
        client.planned().get().orElseThrow(), new Studio.Reading.Sound(Studio.NOTHING), ended::add);
    assertThat(ended.getFirst().isWhole()).isTrue();
    assertThat(folder.resolve("for the client/data")).isDirectory();
    var past = PastHandOffs.of(scene.job()).all().getFirst();
    assertThat(past.toTheClient()).isTrue();
    client.onlyNew().set(true);
    client.begin(model.answer().get().orElseThrow().returns(), Optional.of(folder));
    assertThat(client.ready().get()).as("it went before").isFalse();
  }
}
