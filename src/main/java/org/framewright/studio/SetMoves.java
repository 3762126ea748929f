package org.framewright.studio;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.framewright.job.Entering;
import org.framewright.job.Job;
import org.framewright.job.JobMirror;
import org.framewright.job.MoveRefusal;
import org.framewright.job.MovedSetup;
import org.framewright.job.OtherJob;
import org.framewright.job.SetupMoves;

/**
 * Carries out, at one computer of a set, what was decided of setups that go to other sets and come
 * from there. Whatever it broke off at is done the next time, by this computer or another one of
 * the set.
 *
 * <p>A set that gives a setup says so in its own log first, and sends that, and only then in the
 * book of moves: so nobody shoots what is on its way. A set that takes one says so in the book
 * first: so it has it only if nobody took it back.
 */
final class SetMoves {
  private final MoveBook book;
  private final UUID id;
  private final Job job;
  private final JobMirror mirror;

  SetMoves(MoveBook book, UUID id, Job job, JobMirror mirror) {
    this.book = book;
    this.id = id;
    this.job = job;
    this.mirror = mirror;
  }

  /**
   * Exchanges the logs, and does what is to be done.
   *
   * @return what was exchanged; what was written to the folder here counts as brought
   */
  JobMirror.Exchanged follow() throws IOException {
    // In this order: what the book says of this set is then in the logs that were brought.
    var moves = book.of(id);
    var exchanged = mirror.exchange();
    job.refresh();
    long before = job.events();
    for (var move : moves) {
      if (move.from().id().equals(id)) {
        give(move);
      } else {
        take(move);
      }
    }
    for (var given : job.moves().given()) {
      if (!given.arrived() && moves.stream().noneMatch(move -> move.id().equals(given.move()))) {
        askAgain(given);
      }
    }
    long written = job.events() - before;
    if (written == 0) {
      return exchanged;
    }
    var again = mirror.exchange();
    return new JobMirror.Exchanged(
        exchanged.sent() + again.sent(), exchanged.brought() + again.brought() + written);
  }

  private void give(SetupMove move) throws IOException {
    var given = job.moves().given(move.id());
    boolean ended = job.moves().ended().contains(move.id());
    switch (move.outcome()) {
      case SetupMove.Outcome.Asked _ when !ended -> answer(move);
      case SetupMove.Outcome.OnItsWay _ when given.map(SetupMoves.Given::workedOn).orElse(false) ->
          stays(move, new MoveRefusal(MoveRefusal.Why.WORKED_ON, move.code(), ""));
      case SetupMove.Outcome.Arrived _ when !ended -> job.endGive(move.id(), true);
      case SetupMove.Outcome.Stays _ when given.isPresent() -> job.endGive(move.id(), false);
      default -> {}
    }
  }

  private void answer(SetupMove move) throws IOException {
    var given = job.moves().given(move.id());
    if (given.isEmpty()) {
      var refusal = job.give(move.id(), move.code(), move.to(), move.by(), id, job.scan());
      if (refusal.isPresent()) {
        stays(move, refusal.get());
        return;
      }
      mirror.exchange();
      given = job.moves().given(move.id());
    }
    if (given.isEmpty()) {
      return;
    }
    var what = given.get();
    if (what.workedOn()) {
      stays(move, new MoveRefusal(MoveRefusal.Why.WORKED_ON, move.code(), ""));
    } else if (isTaken(move)) {
      stays(move, new MoveRefusal(MoveRefusal.Why.GIVEN, move.code(), elsewhere(move)));
    } else {
      book.step(move, MoveStep.Kind.GIVEN, job.station(), what.what().json());
    }
  }

  /** Whether another move of the same setup came before this one. */
  private boolean isTaken(SetupMove move) {
    return move.lostTo().filter(other -> job.moves().given(other).isPresent()).isPresent();
  }

  private String elsewhere(SetupMove move) {
    return move.lostTo().flatMap(job.moves()::given).map(given -> given.to().name()).orElseThrow();
  }

  private void stays(SetupMove move, MoveRefusal why) throws IOException {
    if (book.step(move, MoveStep.Kind.STAYS, job.station(), SetupMove.facts(why))
        && job.moves().given(move.id()).isPresent()) {
      job.endGive(move.id(), false);
    }
  }

  private void take(SetupMove move) throws IOException {
    boolean here = job.moves().taken().contains(move.id());
    switch (move.outcome()) {
      // The book came back from an older copy.
      case SetupMove.Outcome.OnItsWay(var what, _) when here ->
          book.step(move, MoveStep.Kind.TAKEN, job.station(), SetupMove.facts(code(move, what)));
      case SetupMove.Outcome.OnItsWay(var what, _) -> {
        switch (job.entering(what, id)) {
          case Entering.As(var setup) -> {
            var facts = SetupMove.facts(setup.code());
            if (book.step(move, MoveStep.Kind.TAKEN, job.station(), facts)) {
              job.take(move.id(), setup.code(), what, move.from());
            }
          }
          case Entering.Refused(var why) ->
              book.step(move, MoveStep.Kind.STAYS, job.station(), SetupMove.facts(why));
        }
      }
      case SetupMove.Outcome.Arrived(var code, _) when !here ->
          job.take(move.id(), code, move.what().orElseThrow(), move.from());
      default -> {}
    }
  }

  private String code(SetupMove move, MovedSetup what) {
    return job.moves().came().entrySet().stream()
        .filter(came -> came.getValue().move().equals(move.id()))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElse(what.setup().code());
  }

  /** A book that came back from an older copy does not have a move that is on its way. */
  private void askAgain(SetupMoves.Given given) throws IOException {
    book.ask(
        new SetupMove(
            given.move(),
            new OtherJob(id, job.name()),
            given.to(),
            given.setup().code(),
            given.by(),
            given.at(),
            List.of()));
  }
}
