package org.framewright.ui.frames;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.framewright.job.TestClock;
import org.framewright.ui.look.Spot;
import org.framewright.ui.session.Answer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CompareModelTest {
  @TempDir private Path folder;

  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private FramesOfASetup frames;
  private List<Answer> answers;
  private FramesModel model;
  private CompareModel compare;

  @BeforeEach
  void sixFramesOfOneSetupAreThere() throws Exception {
    frames = FramesOfASetup.in(folder, clock, 3);
    answers = frames.answers();
    model = frames.model();
    compare = new CompareModel(model);
    compare.follow();
  }

  @AfterEach
  void close() {
    compare.pause();
    frames.close();
  }

  private CompareModel.Shown shown() {
    return compare.shown().get();
  }

  private List<String> names() {
    return shown().tiles().stream().map(tile -> tile.frame().stem()).toList();
  }

  private String name(int place) {
    return model.tiles().get(place).frame().stem();
  }

  private void choose(int from, int to) {
    model.selection().go(from);
    model.selection().stretch(to);
    compare.begin();
  }

  @Test
  void oneFrameIsLookedAtAloneAndTheKeysWalkToTheNext() {
    choose(1, 1);
    assertThat(names()).containsExactly(name(1));
    assertThat(shown().sideBySide()).isFalse();
    compare.step(1);
    assertThat(names()).containsExactly(name(2));
    assertThat(model.selection().cursor().get()).isEqualTo(2);
    compare.step(-1);
    compare.step(-1);
    compare.step(-1);
    assertThat(names()).containsExactly(name(0));
    compare.step(100);
    assertThat(names()).containsExactly(name(5));
  }

  @Test
  void nothingIsSeenWhereThereAreNoFrames() {
    model.filter().set("nothing is called so");
    compare.begin();
    assertThat(shown()).isEqualTo(CompareModel.Shown.NOTHING);
    compare.step(1);
    compare.toggleSelect();
    compare.rate(3);
    compare.selectOnly();
    compare.takeAway();
    assertThat(answers).isEmpty();
  }

  @Test
  void ofThoseSideBySideTheOneThatTheKeysWereOnIsTheCurrentOne() {
    choose(3, 1);
    assertThat(names()).containsExactly(name(1), name(2), name(3));
    assertThat(shown().current()).isZero();
    assertThat(shown().left()).isZero();
    compare.step(-1);
    assertThat(shown().current()).isEqualTo(2);
    compare.step(1);
    assertThat(shown().current()).isZero();
    compare.choose(1);
    assertThat(shown().current()).isEqualTo(1);
    compare.choose(7);
    compare.choose(-1);
    assertThat(shown().current()).isEqualTo(1);
  }

  @Test
  void moreThanFourAreCutToFourWithTheOneThatTheKeysAreOn() {
    choose(0, 5);
    assertThat(names()).containsExactly(name(2), name(3), name(4), name(5));
    assertThat(shown().current()).isEqualTo(3);
    assertThat(shown().left()).isEqualTo(2);
    choose(5, 0);
    assertThat(names()).containsExactly(name(0), name(1), name(2), name(3));
    assertThat(shown().current()).isZero();
  }

  @Test
  void theCurrentOneBecomesTheOnlySelectInOneStep() {
    choose(0, 5);
    model.toggleSelect();
    choose(0, 2);
    compare.choose(1);
    compare.selectOnly();
    assertThat(shown().tiles()).extracting(Tile::select).containsExactly(false, true, false);
    assertThat(model.tiles()).filteredOn(Tile::select).hasSize(4);
    model.undo();
    assertThat(model.tiles()).allMatch(Tile::select);
  }

  @Test
  void marksAndRatingsAreAboutTheCurrentOne() {
    choose(0, 2);
    compare.choose(2);
    compare.rate(5);
    compare.toggleSelect();
    assertThat(shown().tiles())
        .extracting(Tile::rating)
        .containsExactly(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.of(5));
    assertThat(shown().currentTile()).map(Tile::select).contains(true);
    compare.toggleSelect();
    assertThat(shown().currentTile()).map(Tile::select).contains(false);
  }

  @Test
  void whatIsTakenAwayLeavesTheOthersAndTheLastOneStays() {
    choose(0, 2);
    compare.choose(2);
    compare.takeAway();
    assertThat(names()).containsExactly(name(0), name(1));
    assertThat(shown().current()).isEqualTo(1);
    compare.takeAway();
    compare.takeAway();
    assertThat(names()).containsExactly(name(0));
    assertThat(model.tiles()).hasSize(6);
  }

  @Test
  void aFrameStaysInSightThoughItsHeadingHasItNoLonger() {
    choose(0, 1);
    model.toggleSelect();
    model.heading().set(model.headings().get(1));
    choose(0, 0);
    compare.toggleSelect();
    assertThat(model.tiles()).hasSize(1);
    assertThat(names()).hasSize(1);
    assertThat(shown().currentTile()).map(Tile::select).contains(false);
  }

  @Test
  void fullSizeIsAroundASpotThatMovesWithinThePicture() {
    choose(0, 1);
    compare.look(new Spot(0.2, 0.2));
    compare.pan(1, 1);
    assertThat(compare.fullSize().get()).isEmpty();
    compare.turnFullSize();
    assertThat(compare.fullSize().get()).contains(Spot.MIDDLE);
    compare.look(new Spot(0.95, 0.2));
    compare.pan(1, -1);
    assertThat(compare.fullSize().get()).contains(new Spot(1, 0.1));
    compare.turnFullSize(new Spot(0.3, 0.3));
    assertThat(compare.fullSize().get()).isEmpty();
    compare.turnFullSize(new Spot(0.3, -7));
    assertThat(compare.fullSize().get()).contains(new Spot(0.3, 0));
    compare.begin();
    assertThat(compare.fullSize().get()).isEmpty();
  }
}
