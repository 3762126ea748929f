package org.framewright.studio;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.job.MoveRefusal;
import org.framewright.job.OtherJob;
import org.framewright.shotlist.Setup;

/**
 * What a producer does about setups that are to be shot by another set. It is written into the
 * store; the computers of both sets carry it out as they exchange their jobs with it.
 */
public final class Moves {
  private static final int LONGEST_NAME = 100;
  private static final Duration BETWEEN = Duration.ofMillis(300);

  private final StoredMoves book;

  private Moves(StoredMoves book) {
    this.book = book;
  }

  /** The moves of a store. */
  public static Moves of(Store store) {
    return new Moves(new StoredMoves(store));
  }

  /**
   * Asks that another set shoots a setup.
   *
   * @param code the setup's, in the set that has it
   * @param by who asks; may be empty
   * @return the move as the store has it
   */
  public SetupMove ask(OtherJob from, OtherJob to, String code, String by) throws IOException {
    var id = UUID.randomUUID();
    book.ask(
        new SetupMove(
            id,
            from,
            to,
            PlainText.line(code.strip()),
            PlainText.start(PlainText.line(by.strip()), LONGEST_NAME),
            Instant.EPOCH,
            List.of()));
    return now(from.id(), id).orElseThrow(() -> new IOException("the store has no such job"));
  }

  /** A move as it is now. */
  public SetupMove now(SetupMove move) throws IOException {
    return now(move.from().id(), move.id()).orElse(move);
  }

  private Optional<SetupMove> now(UUID job, UUID id) throws IOException {
    return book.of(job).stream().filter(move -> move.id().equals(id)).findFirst();
  }

  /** The moves from a set that are not at their end, those asked for first first. */
  public List<SetupMove> open(UUID job) throws IOException {
    return book.of(job).stream()
        .filter(move -> move.from().id().equals(job))
        .filter(move -> !move.isEnded())
        .toList();
  }

  /**
   * A setup that is to be shot.
   *
   * @param title may be empty
   */
  public record ToShoot(String code, String title) {}

  /**
   * The setups of a set that are to be shot and go nowhere, as one of its computers told them last,
   * by their codes.
   */
  public List<ToShoot> toShoot(UUID job) throws IOException {
    var going =
        open(job).stream().map(move -> Setup.canonicalKey(move.code())).collect(Collectors.toSet());
    return book.toShoot(job).stream()
        .filter(setup -> !going.contains(Setup.canonicalKey(setup.code())))
        .sorted(
            Comparator.comparingInt((ToShoot setup) -> setup.code().length())
                .thenComparing(ToShoot::code))
        .toList();
  }

  /**
   * The moves once all are at their end, or after some time.
   *
   * @param asked as the store had them
   */
  public List<SetupMove> answered(List<SetupMove> asked, Duration patience) throws IOException {
    long begun = System.nanoTime();
    while (true) {
      var now = new ArrayList<SetupMove>();
      for (var move : asked) {
        now.add(now(move));
      }
      if (now.stream().allMatch(SetupMove::isEnded)
          || System.nanoTime() - begun >= patience.toNanos()) {
        return now;
      }
      try {
        Thread.sleep(BETWEEN);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return now;
      }
    }
  }

  /** The moves that were asked for within some days, of all sets. */
  public List<SetupMove> recent(int days) throws IOException {
    return book.recent(days);
  }

  /**
   * Takes a move back, unless the other set took the setup before.
   *
   * @return the move as the store has it then
   */
  public SetupMove takeBack(SetupMove move) throws IOException {
    var now = now(move);
    while (!takeBack(book, now, "producer")) {
      now = now(move);
    }
    return now(move);
  }

  /** False if something else happened to the setup meanwhile. */
  static boolean takeBack(MoveBook book, SetupMove move, String station) throws IOException {
    return switch (move.outcome()) {
      case SetupMove.Outcome.Asked _, SetupMove.Outcome.OnItsWay _ ->
          book.step(
              move,
              MoveStep.Kind.STAYS,
              station,
              SetupMove.facts(new MoveRefusal(MoveRefusal.Why.TAKEN_BACK, move.code(), "")));
      case SetupMove.Outcome.Arrived _, SetupMove.Outcome.Stays _ -> true;
    };
  }
}
