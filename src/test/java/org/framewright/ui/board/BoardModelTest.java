package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ListChangeListener;
import org.framewright.frames.FrameId;
import org.framewright.job.Comment;
import org.framewright.job.MarkDetails;
import org.framewright.job.MovedSetup;
import org.framewright.job.OtherJob;
import org.framewright.job.SetupMoves;
import org.framewright.job.SetupStatus;
import org.framewright.live.JobView;
import org.framewright.live.ViewCount;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.Answer;
import org.framewright.ui.session.Step;
import org.framewright.ui.session.Steps;
import org.junit.jupiter.api.Test;

class BoardModelTest {
  private final JobViews job = JobViews.of(9);
  private final SimpleObjectProperty<JobView> view = new SimpleObjectProperty<>(job.build());
  private final Ledger ledger = new Ledger();
  private final List<Throwable> troubles = new ArrayList<>();
  private final List<Answer> answers = new ArrayList<>();
  private final List<Comment> heard = new ArrayList<>();
  private final BoardModel board =
      new BoardModel(
          view,
          ledger,
          Texts.in(Locale.ENGLISH),
          CommentsModelTest.comments(),
          heard::add,
          answers::add,
          troubles::add);

  /** Keeps steps as words; shows them only when the test says they are on the disk. */
  private final class Ledger implements Steps {
    private final List<String> said = new ArrayList<>();
    private final Deque<Step> taken = new ArrayDeque<>();
    private Runnable pending = () -> {};
    private boolean refuses;

    @Override
    public void take(Step step, Runnable then, Consumer<Throwable> failed) {
      if (refuses) {
        failed.accept(new IOException("no space left"));
        return;
      }
      switch (step) {
        case Step.Selected _, Step.Rated _, Step.Placed _, Step.SaidOfSlate _, Step.Followed _ ->
            throw new AssertionError(step);
        case Step.Ticked(var marks) -> {
          marks.forEach(mark -> said.add(words(mark)));
          pending =
              () -> {
                marks.forEach(mark -> job.state(mark.setup(), mark.state()));
                reached(step, then);
              };
        }
        case Step.Commented(var setup, var frames, var text, var by) -> {
          said.add(setup + frames.name().map(name -> " " + name).orElse("") + ": " + text);
          pending =
              () -> {
                job.said("here", setup, by, text, frames.ids().toArray(FrameId[]::new));
                reached(step, then);
              };
        }
        case Step.Moved(var codes, _) -> {
          said.add(String.join(" ", codes));
          pending = () -> reached(step, then);
        }
        case Step.Ordered(var codes) -> {
          said.add("all " + String.join(" ", codes));
          pending = () -> reached(step, then);
        }
        case Step.Added(var setup, var behind) -> {
          said.add(setup.code() + " behind " + behind.orElse("all"));
          pending =
              () -> {
                job.add(setup.code(), setup.title(), "day 1");
                reached(step, then);
              };
        }
        case Step.Changed(var setup) -> {
          said.add(setup.code() + " is " + setup.title());
          pending = () -> reached(step, then);
        }
      }
    }

    private void reached(Step step, Runnable then) {
      taken.push(step);
      view.set(job.build());
      then.run();
    }

    private String words(Step.Mark mark) {
      return mark.setup()
          + " "
          + mark.state().word()
          + mark.details().by().map(by -> " by " + by).orElse("")
          + mark.details().view().map(seen -> " view " + seen).orElse("")
          + mark.details().reason().map(why -> " for " + why).orElse("");
    }

    @Override
    public void undo(Consumer<Optional<Step>> then, Consumer<Throwable> failed) {
      said.add("undo");
      pending = () -> then.accept(Optional.ofNullable(taken.poll()));
    }

    @Override
    public void redo(Consumer<Optional<Step>> then, Consumer<Throwable> failed) {
      said.add("redo");
      pending = () -> then.accept(Optional.ofNullable(taken.poll()));
    }

    void reachesTheDisk() {
      pending.run();
    }
  }

  private List<String> shown() {
    return board.lines().stream()
        .map(
            line ->
                switch (line) {
                  case Line.Heading heading -> "[" + heading.text() + "]";
                  case SetupRow row -> row.code();
                })
        .toList();
  }

  @Test
  void saysWhatOtherSetsShootAndWhatCameFromThere() {
    var texts = Texts.in(Locale.ENGLISH);
    var other = new OtherJob(new UUID(1, 1), "set_02");
    var given =
        IntStream.rangeClosed(11, 16)
            .mapToObj(
                i ->
                    new SetupMoves.Given(
                        new UUID(2, i),
                        new MovedSetup(
                            new Setup("0" + i, "Coat"), List.of(), new LinkedHashMap<>()),
                        other,
                        "",
                        JobViews.NOON,
                        i != 12,
                        false))
            .toList();
    var came = new LinkedHashMap<String, SetupMoves.Came>();
    came.put(
        "002",
        new SetupMoves.Came(new UUID(2, 1), other, "019", new LinkedHashMap<>(), JobViews.NOON));
    view.set(job.moves(new SetupMoves(given, came, Set.of(), Set.of())).build());
    assertThat(board.standing().get().givenWords(texts))
        .isEqualTo(
            "Given to other sets: 011 to set_02, 012 on its way to set_02, 013 to set_02,"
                + " 014 to set_02, 2 more");
    assertThat(board.standing().get().rows().stream().limit(2).map(row -> row.title(texts)))
        .containsExactly("Garment 1", "Garment 2, from set_02");
    board.filter().set("set_02");
    assertThat(shown()).containsExactly("002");
  }

  @Test
  void aJobWithoutAListIsReportedApartFromOneThatIsShot() {
    var none =
        new BoardModel(
            new SimpleObjectProperty<>(JobViews.of(0).build()),
            ledger,
            Texts.in(Locale.ENGLISH),
            CommentsModelTest.comments(),
            heard::add,
            answers::add,
            troubles::add);
    assertThat(none.now().get().noList()).isTrue();
    assertThat(board.now().get().noList()).isFalse();
  }

  @Test
  void choosesTheFirstSetupToShootWhenNothingIsOnSet() {
    assertThat(board.selected().get()).isEqualTo("001");
    assertThat(board.now().get().next())
        .extracting(SetupRow::code)
        .containsExactly("001", "002", "003");
  }

  @Test
  void putsTheChosenSetupOnSetOnlyAfterTheTickIsKept() {
    board.putOnSet();
    assertThat(ledger.said).containsExactly("001 on-set view F");
    assertThat(board.now().get().onSet()).isEmpty();
    ledger.reachesTheDisk();
    assertThat(board.now().get().onSet()).map(SetupRow::code).contains("001");
  }

  @Test
  void shotAndNextTicksBothAndChoosesTheNext() {
    job.state("003", SetupState.ON_SET);
    view.set(job.build());
    board.shotAndNext();
    ledger.reachesTheDisk();
    assertThat(ledger.said).containsExactly("003 shot", "004 on-set view F");
    assertThat(board.selected().get()).isEqualTo("004");
    assertThat(board.now().get().next())
        .extracting(SetupRow::code)
        .containsExactly("005", "006", "007");
  }

  @Test
  void whatWasSkippedComesAfterTheEndOfTheListAndPickupsComeLast() {
    job.state("008", SetupState.ON_SET).state("002", SetupState.PICKUP);
    for (var code : List.of("003", "004", "005", "006", "007")) {
      job.state(code, SetupState.SHOT);
    }
    view.set(job.build());
    assertThat(board.now().get().next())
        .extracting(SetupRow::code)
        .containsExactly("009", "001", "002");
  }

  @Test
  void theLastSetupIsShotEvenIfNothingComesNext() {
    for (var i = 1; i <= 8; i++) {
      job.state("00" + i, SetupState.SIGNED_OFF);
    }
    job.state("009", SetupState.ON_SET);
    view.set(job.build());
    board.shotAndNext();
    assertThat(ledger.said).containsExactly("009 shot");
  }

  @Test
  void signOffCarriesTheNameOfWhoAgrees() {
    board.signOff("002", "Ines Varga");
    assertThat(ledger.said).containsExactly("002 signed-off by Ines Varga");
  }

  @Test
  void pickupAndDropCarryTheirReason() {
    board.pickup("sleeve creased");
    board.selected().set("002");
    board.drop("garment missing");
    assertThat(ledger.said)
        .containsExactly("001 pickup for sleeve creased", "002 dropped for garment missing");
  }

  @Test
  void aTickThatCannotBeKeptIsReportedAndNotShown() {
    ledger.refuses = true;
    board.putOnSet();
    assertThat(troubles).hasSize(1);
    assertThat(board.now().get().onSet()).isEmpty();
  }

  @Test
  void turnsThroughTheWantedViewsRoundAndRound() {
    job.state("001", SetupState.ON_SET);
    view.set(job.build());
    board.turnView(1);
    job.view("F");
    view.set(job.build());
    board.turnView(1);
    job.view("B");
    view.set(job.build());
    board.turnView(1);
    board.turnView(-1);
    assertThat(ledger.said)
        .containsExactly(
            "001 on-set view F", "001 on-set view B", "001 on-set view F", "001 on-set view F");
  }

  @Test
  void aViewThatIsClickedComesBeforeTheCamera() {
    job.state("001", SetupState.ON_SET);
    view.set(job.build());
    board.bringView("B");
    job.view("B");
    view.set(job.build());
    board.bringView("B");
    board.bringView("no such view");
    assertThat(ledger.said)
        .as("what is there is not ticked again")
        .containsExactly("001 on-set view B");
  }

  @Test
  void theOneThatComesNextIsMarkedAndNoOther() {
    assertThat(next()).containsExactly("001");
    job.state("001", SetupState.ON_SET);
    view.set(job.build());
    assertThat(next()).containsExactly("002");
    job.state("002", SetupState.DROPPED);
    view.set(job.build());
    assertThat(next()).containsExactly("003");
  }

  private List<String> next() {
    return board.standing().get().rows().stream()
        .filter(SetupRow::comesNext)
        .map(SetupRow::code)
        .toList();
  }

  @Test
  void everyWordTypedMustBeFoundWhateverItsCase() {
    board.filter().set("GARMENT 7");
    assertThat(shown()).containsExactly("007");
    board.filter().set("2 day gar");
    assertThat(shown()).as("a code or a day with a 2").containsExactly("001", "002", "004", "007");
    board.filter().set("  ");
    assertThat(shown()).hasSize(9);
  }

  @Test
  void stateIsFoundByTheWordOfTheLanguage() {
    job.state("005", SetupState.SIGNED_OFF);
    view.set(job.build());
    var german =
        new BoardModel(
            view,
            ledger,
            Texts.in(Locale.GERMANY),
            CommentsModelTest.comments(),
            heard::add,
            answers::add,
            troubles::add);
    german.filter().set("freigegeben");
    assertThat(german.lines().stream().filter(SetupRow.class::isInstance)).hasSize(1);
  }

  @Test
  void stateIsFoundByItsWord() {
    job.state("005", SetupState.SIGNED_OFF);
    view.set(job.build());
    board.filter().set("signed");
    assertThat(shown()).containsExactly("005");
  }

  @Test
  void groupsUnderHeadingsAndLeavesOutWhatTheListDoesNotHave() {
    board.regroup();
    assertThat(board.grouping().get()).isEqualTo(Grouping.DAY);
    assertThat(shown())
        .containsExactly(
            "[day 2]", "001", "004", "007", "[day 3]", "002", "005", "008", "[day 1]", "003", "006",
            "009");
    board.regroup();
    assertThat(board.grouping().get()).isEqualTo(Grouping.NONE);
  }

  @Test
  void stepsOverHeadingsAndStopsAtTheEnds() {
    board.regroup();
    board.selected().set("007");
    board.step(1);
    assertThat(board.selected().get()).isEqualTo("002");
    board.step(-100);
    assertThat(board.selected().get()).isEqualTo("001");
  }

  @Test
  void choosingTheSetupOnSetClearsAFilterThatHidesIt() {
    job.state("003", SetupState.ON_SET);
    view.set(job.build());
    board.filter().set("007");
    board.selectOnSet();
    assertThat(board.filter().get()).isEmpty();
    assertThat(board.selected().get()).isEqualTo("003");
  }

  @Test
  void aTickChangesItsLineAlone() {
    var changes = new ArrayList<Integer>();
    board
        .lines()
        .addListener(
            (ListChangeListener<Line>)
                change -> {
                  while (change.next()) {
                    changes.add(change.getFrom());
                  }
                });
    job.state("004", SetupState.SHOT);
    view.set(job.build());
    assertThat(changes).containsExactly(3);
  }

  @Test
  void anUnchangedSetupKeepsItsRow() {
    var before = board.lines().getFirst();
    job.frames("002", Map.of("F", 1));
    view.set(job.build());
    assertThat(board.lines().getFirst()).isSameAs(before);
  }

  @Test
  void countsEachViewAgainstWhatIsWanted() {
    job.frames("001", Map.of("F", 2, "B", 1, "", 3, "X", 1));
    view.set(job.build());
    var row = board.row("001").orElseThrow();
    assertThat(row.frames()).isEqualTo(7);
    assertThat(row.views())
        .extracting(ViewCount::code, ViewCount::frames, ViewCount::complete)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("F", 2, true),
            org.assertj.core.groups.Tuple.tuple("B", 1, false),
            org.assertj.core.groups.Tuple.tuple("", 3, true),
            org.assertj.core.groups.Tuple.tuple("X", 1, true));
    assertThat(row.viewMissing()).isTrue();
  }

  @Test
  void movesTheChosenSetupInTheRunningOrder() {
    board.selected().set("002");
    board.move(1);
    ledger.reachesTheDisk();
    board.move(-1);
    assertThat(ledger.said)
        .containsExactly(
            "001 003 002 004 005 006 007 008 009", "002 001 003 004 005 006 007 008 009");
  }

  @Test
  void movesPastTheLineThatIsSeenBesideItWhereOthersAreHidden() {
    board.filter().set("day 1");
    board.selected().set("003");
    board.move(1);
    assertThat(ledger.said).containsExactly("001 002 004 005 006 003 007 008 009");
  }

  @Test
  void aDraggedSetupGoesRightBeforeOrRightBehindTheOtherAndIsChosen() {
    board.moveBeside("007", "002", false);
    ledger.reachesTheDisk();
    board.moveBeside("001", "004", true);
    assertThat(ledger.said)
        .containsExactly(
            "001 007 002 003 004 005 006 008 009", "002 003 004 001 005 006 007 008 009");
    assertThat(board.selected().get()).isEqualTo("001");
  }

  @Test
  void twoMovesInOneBreathBothCount() {
    board.selected().set("003");
    board.move(-1);
    board.move(-1);
    assertThat(ledger.said)
        .containsExactly(
            "001 003 002 004 005 006 007 008 009", "003 001 002 004 005 006 007 008 009");
  }

  @Test
  void aSetupDroppedWhereItIsMovesNothing() {
    board.moveBeside("003", "003", true);
    board.moveBeside("003", "002", true);
    board.moveBeside("003", "none", true);
    assertThat(ledger.said).isEmpty();
  }

  @Test
  void theFirstSetupMovesNoFurtherUp() {
    board.selected().set("001");
    board.move(-1);
    assertThat(ledger.said).isEmpty();
  }

  @Test
  void bringsASetupRightBehindTheOneOnSet() {
    job.state("003", SetupState.ON_SET);
    view.set(job.build());
    board.selected().set("008");
    board.bringNext();
    assertThat(ledger.said).containsExactly("001 002 003 008 004 005 006 007 009");
  }

  @Test
  void timeOnSetRunsFromTheTickAndIsNeverNegative() {
    assertThat(board.timeOnSet(JobViews.NOON)).isEmpty();
    job.state("003", SetupState.ON_SET);
    view.set(job.build());
    assertThat(board.timeOnSet(JobViews.NOON.plusSeconds(90))).contains(Duration.ofSeconds(90));
    assertThat(board.timeOnSet(JobViews.NOON.minusSeconds(90))).contains(Duration.ZERO);
  }

  @Test
  void totalsLeaveDroppedSetupsOut() {
    job.state("001", SetupState.SIGNED_OFF)
        .state("002", SetupState.SHOT)
        .state("003", SetupState.PICKUP)
        .state("004", SetupState.DROPPED);
    view.set(job.build());
    assertThat(board.totals()).isEqualTo(new Totals(8, 5, 1, 1, 1, 1));
  }

  @Test
  void aFrameAfterTheSignOffIsSeen() {
    job.status(
        "001",
        new SetupStatus(
            SetupState.SIGNED_OFF,
            Optional.of(JobViews.NOON),
            Optional.of("I. Varga"),
            Optional.of(JobViews.NOON),
            Optional.empty(),
            true));
    view.set(job.build());
    assertThat(board.row("001").orElseThrow().status().changedSinceSignOff()).isTrue();
  }

  @Test
  void aDisposedBoardFollowsTheJobNoMore() {
    board.dispose();
    job.state("001", SetupState.ON_SET);
    view.set(job.build());
    assertThat(board.now().get().onSet()).isEmpty();
  }

  @Test
  void eachStepIsAnsweredOnceItIsKept() {
    board.shotAndNext();
    assertThat(answers).isEmpty();
    ledger.reachesTheDisk();
    var kept =
        new Answer.Taken(new Step.Ticked("001", SetupState.ON_SET, MarkDetails.NONE.andView("F")));
    assertThat(answers).containsExactly(kept);
    board.moveBeside("003", "001", false);
    ledger.reachesTheDisk();
    assertThat(answers.getLast())
        .isInstanceOfSatisfying(
            Answer.Taken.class,
            answer ->
                assertThat(answer.step())
                    .isInstanceOfSatisfying(
                        Step.Moved.class, moved -> assertThat(moved.moved()).isEqualTo("003")));
    ledger.refuses = true;
    board.shot();
    assertThat(answers).hasSize(2);
    assertThat(troubles).hasSize(1);
  }

  @Test
  void whatIsUndoneIsChosenAndAnswered() {
    board.select(board.row("004").orElseThrow());
    board.moveBeside("004", "001", false);
    ledger.reachesTheDisk();
    board.select(board.row("002").orElseThrow());
    board.undo();
    ledger.reachesTheDisk();
    assertThat(board.selected().get()).isEqualTo("004");
    assertThat(answers.getLast()).isInstanceOf(Answer.Undone.class);
    board.redo();
    ledger.reachesTheDisk();
    assertThat(answers.getLast()).isEqualTo(new Answer.Redone(Optional.empty()));
    assertThat(board.selected().get()).isEqualTo("004");
  }

  @Test
  void aSetupIsAddedBehindTheChosenOneAndChosen() {
    board.select(board.row("003").orElseThrow());
    board.add(new Setup("010", "Belt"));
    assertThat(board.selected().get()).isEqualTo("003");
    ledger.reachesTheDisk();
    assertThat(ledger.said).containsExactly("010 behind 003");
    assertThat(board.selected().get()).isEqualTo("010");
    assertThat(board.selectedRow()).map(row -> row.setup().title()).contains("Belt");
  }

  @Test
  void theFirstWantedViewThatLacksFramesIsBeforeTheCameraWhenASetupComesOnSet() {
    job.frames("002", Map.of("F", 2)).frames("003", Map.of("F", 2, "B", 3));
    view.set(job.build());
    for (var code : List.of("001", "002", "003")) {
      board.select(board.row(code).orElseThrow());
      board.putOnSet();
      ledger.reachesTheDisk();
    }
    assertThat(ledger.said)
        .containsExactly("001 on-set view F", "002 on-set view B", "003 on-set view F");
  }

  @Test
  void aSetupOfWhichNoViewIsWantedComesOnSetWithoutOne() {
    job.add("020", "Portrait", "day 1");
    view.set(job.build());
    board.select(board.row("020").orElseThrow());
    board.putOnSet();
    assertThat(ledger.said).containsExactly("020 on-set");
  }

  @Test
  void theWantedViewsWithoutAFrameAreKnownBeforeTheSignOff() {
    job.frames("002", Map.of("F", 1, "X", 4));
    view.set(job.build());
    assertThat(board.withoutFrames(board.row("002").orElseThrow())).containsExactly("B");
    assertThat(board.withoutFrames(board.row("001").orElseThrow())).containsExactly("F", "B");
  }

  @Test
  void whatWasSaidElsewhereIsNewOnItsLineAndOnThePageUntilSomebodyHasSeenIt() {
    job.state("002", SetupState.ON_SET);
    view.set(job.build());
    board.goTo("003");
    job.said("page-0a1b2c3d", "002", "Ada", "collar lower");
    job.said("page-0a1b2c3d", "003", "Ada", "once more, please");
    view.set(job.build());
    assertThat(heard.stream().map(Comment::text))
        .containsExactly("collar lower", "once more, please");
    assertThat(board.said().get().onSet()).singleElement().matches(Said::isNew);
    assertThat(board.said().get().chosen()).singleElement().matches(Said::isNew);
    assertThat(board.row("002").orElseThrow().said()).isEqualTo(new SaidCount(1, 1));

    board.seeComments();
    assertThat(board.said().get().isAnyNew()).isFalse();
    assertThat(board.said().get().onSet().getFirst().text()).isEqualTo("collar lower");
    assertThat(board.row("002").orElseThrow().said()).isEqualTo(new SaidCount(1, 0));
    assertThat(board.row("003").orElseThrow().said()).isEqualTo(new SaidCount(1, 0));
    assertThat(board.row("004").orElseThrow().said()).isEqualTo(SaidCount.NONE);
    assertThat(heard).hasSize(2);
  }

  @Test
  void whatWasSaidOfTheSetupOnSetStandsThereOnlyThoughItIsChosenToo() {
    job.state("002", SetupState.ON_SET).said("page-0a1b2c3d", "002", "Ada", "collar lower");
    view.set(job.build());
    board.goTo("002");
    assertThat(board.said().get().onSet()).hasSize(1);
    assertThat(board.said().get().chosen()).isEmpty();
    board.goTo("001");
    assertThat(board.said().get().chosen()).isEmpty();
  }

  @Test
  void aCommentOfOnesOwnIsAStepAndNeverNew() {
    board.goTo("004");
    board.comment("004", "the zip is stiff", "Timo");
    ledger.reachesTheDisk();
    assertThat(ledger.said).containsExactly("004: the zip is stiff");
    assertThat(answers).singleElement().isInstanceOf(Answer.Taken.class);
    assertThat(board.row("004").orElseThrow().said()).isEqualTo(new SaidCount(1, 0));
    assertThat(heard).isEmpty();
    board.goTo("001");
    board.undo();
    ledger.reachesTheDisk();
    assertThat(board.selected().get()).isEqualTo("004");
  }
}
