package org.framewright.ui.frames;

import static org.assertj.core.api.Assertions.fail;
import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.SimpleBooleanProperty;
import org.framewright.frames.Place;
import org.framewright.frames.slate.Slate;
import org.framewright.job.Job;
import org.framewright.job.TestClock;
import org.framewright.ui.command.Command;
import org.framewright.ui.frames.FrameHeading.Kind;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FramesModelTest {
  @TempDir private Path folder;

  private final TestClock clock = new TestClock("2026-11-23T09:00:00Z");
  private FramesOfASetup frames;
  private JobSession session;
  private List<Answer> answers;
  private FramesModel model;

  @BeforeEach
  void fourFramesOfOneSetupAreThere() throws Exception {
    frames = FramesOfASetup.in(folder, clock, 2);
    session = frames.session();
    answers = frames.answers();
    model = frames.model();
  }

  @AfterEach
  void close() {
    frames.close();
  }

  private FrameHeading heading(Kind kind) {
    return model.headings().stream().filter(h -> h.kind() == kind).findFirst().orElseThrow();
  }

  @Test
  void gathersFramesUnderSetupsAndViews() {
    assertThat(model.headings())
        .extracting(FrameHeading::kind)
        .containsExactly(Kind.ALL, Kind.SELECTS, Kind.SETUP, Kind.VIEW, Kind.VIEW);
    assertThat(heading(Kind.SETUP).frames()).isEqualTo(4);
    model.heading().set(heading(Kind.VIEW));
    assertThat(model.tiles()).hasSize(2);
    assertThat(model.tiles())
        .allMatch(tile -> tile.place().equals(Optional.of(new Place("001", Optional.of("F")))));
  }

  @Test
  void goesToAFrameAmongThoseOfItsSetup() {
    var wanted = model.tiles().get(2).frame().id();
    model.filter().set("nothing is called so");
    model.goTo(wanted);
    assertThat(model.heading().get().kind()).isEqualTo(Kind.SETUP);
    assertThat(model.current()).map(tile -> tile.frame().id()).contains(wanted);
    model.pause();
    model.heading().set(heading(Kind.ALL));
    model.goTo(wanted);
    model.follow();
    assertThat(model.heading().get().place()).map(Place::setup).contains("001");
    assertThat(model.current()).map(tile -> tile.frame().id()).contains(wanted);
  }

  @Test
  void looksAtAllFramesWhereNoneIsOfNoSetup() {
    model.lookAt(FrameHeading.unassigned());
    model.pause();
    model.follow();
    assertThat(model.heading().get().kind()).isEqualTo(Kind.ALL);
  }

  @Test
  void slatesHaveAPartOfTheirOwnAndAreOfNoSetup() throws Exception {
    var first = model.tiles().getFirst().frame();
    session.change(
        "",
        job -> {
          var slate = Slate.of(job.slateKey(), "002");
          return job.recordLooks(Map.of(first, Optional.of(slate.print())));
        },
        _ -> {},
        failure -> {
          throw new AssertionError(failure);
        });
    assertThat(heading(Kind.SLATES).frames()).isEqualTo(1);
    assertThat(heading(Kind.SETUP).frames()).isEqualTo(3);
    model.heading().set(heading(Kind.SLATES));
    assertThat(model.tiles())
        .singleElement()
        .satisfies(
            tile -> {
              assertThat(tile.frame().id()).isEqualTo(first.id());
              assertThat(tile.place()).isEmpty();
              assertThat(tile.slate(Texts.in(Locale.ENGLISH))).contains("Slate 002");
            });
  }

  @Test
  void marksSelectsInTheJobAndTakesTheMarkOff() throws Exception {
    model.selection().go(0);
    model.selection().stretch(1);
    model.toggleSelect();
    assertThat(model.tiles()).filteredOn(Tile::select).hasSize(2);
    assertThat(heading(Kind.SELECTS).frames()).isEqualTo(2);
    assertThat(Job.open(session.job().folder(), clock).state().selects()).hasSize(2);
    model.toggleSelect();
    assertThat(model.tiles()).noneMatch(Tile::select);
    assertThat(Job.open(session.job().folder(), clock).state().selects()).isEmpty();
  }

  @Test
  void ratesTheChosenFramesAndUndoesIt() throws Exception {
    model.selection().go(0);
    model.selection().stretch(1);
    model.rate(4);
    assertThat(model.tiles())
        .extracting(tile -> tile.rating().orElse(0))
        .containsExactly(4, 4, 0, 0);
    assertThat(Job.open(session.job().folder(), clock).state().ratings()).hasSize(2);
    assertThat(answers.getLast()).isInstanceOf(Answer.Taken.class);
    model.rate(0);
    assertThat(model.tiles()).allMatch(tile -> tile.rating().isEmpty());
    model.undo();
    assertThat(model.tiles().getFirst().rating()).hasValue(4);
    assertThat(answers.getLast()).isInstanceOf(Answer.Undone.class);
    model.redo();
    assertThat(model.tiles().getFirst().rating()).isEmpty();
  }

  @Test
  void doesNothingWhereNothingIsChosen() {
    model.filter().set("nothing is called so");
    model.toggleSelect();
    model.rate(3);
    model.move(new Place("002", Optional.empty()));
    assertThat(answers).isEmpty();
  }

  @Test
  void marksAllOfAMixedChoice() {
    model.selection().go(0);
    model.toggleSelect();
    model.selection().all();
    model.toggleSelect();
    assertThat(model.tiles()).hasSize(4).allMatch(Tile::select);
  }

  @Test
  void movesTheChosenFramesAndTakesItBack() throws Exception {
    model.selection().go(0);
    var moved = model.selection().inOrder().getFirst();
    model.move(new Place("002", Optional.of("F")));
    assertThat(session.view().get().tally().places().get(moved).setup()).isEqualTo("002");
    assertThat(Job.open(session.job().folder(), clock).state().moves()).hasSize(1);
    model.undo();
    assertThat(session.view().get().tally().places().get(moved).setup()).isEqualTo("001");
  }

  @Test
  void findsDestinationsByCodeOrTitle() {
    assertThat(model.destinations("002")).extracting(setup -> setup.code()).contains("002");
    assertThat(model.destinations("no such garment anywhere")).isEmpty();
    assertThat(model.destinations("")).hasSameSizeAs(session.view().get().list().setups());
  }

  @Test
  void staysUnderItsHeadingWhenTheFramesChange() {
    model.heading().set(heading(Kind.VIEW));
    model.selection().go(1);
    model.toggleSelect();
    assertThat(model.heading().get().kind()).isEqualTo(Kind.VIEW);
    assertThat(model.heading().get().selects()).isEqualTo(1);
    assertThat(model.selection().cursor().get()).isEqualTo(1);
  }

  @Test
  void findsAFrameByPartOfItsName() {
    var stem = model.tiles().getLast().frame().stem();
    model.filter().set(stem.toLowerCase(Locale.ROOT));
    assertThat(model.tiles()).extracting(tile -> tile.frame().stem()).containsExactly(stem);
  }

  @Test
  void noFramesAreTakenForNotLookedThroughYetUntilTheyAreSorted() {
    var fresh =
        new FramesModel(
            session,
            Tasks.immediate(),
            Texts.in(Locale.ENGLISH),
            () -> "Timo",
            _ -> {},
            failure -> fail(failure));
    assertThat(fresh.sorted().get()).isFalse();
    fresh.follow();
    assertThat(fresh.sorted().get()).isTrue();
    fresh.dispose();
  }

  @Test
  void ratingIsOfferedWhereThereIsSomethingToRate() {
    var some = new SimpleBooleanProperty();
    var given = new ArrayList<Integer>();
    var ratings = Ratings.commands(Texts.in(Locale.ENGLISH), "frames", given::add, some);
    assertThat(ratings).noneMatch(Command::fire);
    some.set(true);
    assertThat(ratings.get(3).fire()).isTrue();
    assertThat(given).containsExactly(3);
  }
}
