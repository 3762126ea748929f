package org.framewright.studio;

import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.job.MoveRefusal;

/** What became of a move, in words. */
public final class MoveDescription {
  private MoveDescription() {}

  /** A sentence without its full stop. */
  public static Text said(SetupMove move) {
    return switch (move.outcome()) {
      case SetupMove.Outcome.Asked _ ->
          Text.of(
              "Setup {0} is to go from {1} to {2}; no computer of {1} has answered yet",
              move.code(), move.from().name(), move.to().name());
      case SetupMove.Outcome.OnItsWay(var what, _) ->
          Text.of(
              "Setup {0} is on its way from {1} to {2}; no computer of {2} has taken it yet",
              what.setup().code(), move.from().name(), move.to().name());
      case SetupMove.Outcome.Arrived(var code, _) ->
          code.equals(move.code())
              ? Text.of("Setup {0} is at {1} now", code, move.to().name())
              : Text.of("Setup {0} is at {1} now, as {2}", move.code(), move.to().name(), code);
      case SetupMove.Outcome.Stays(var why, _) ->
          why.map(
                  known ->
                      Text.of(
                          "Setup {0} stays at {1}: {2}",
                          move.code(), move.from().name(), known.what()))
              .orElseGet(() -> Text.of("Setup {0} stays at {1}", move.code(), move.from().name()));
    };
  }

  /** What a person can do; nothing where there is nothing to be done. */
  public static Optional<Text> remedy(SetupMove move) {
    return switch (move.outcome()) {
      case SetupMove.Outcome.Asked _, SetupMove.Outcome.OnItsWay _ ->
          Optional.of(
              Text.of(
                  "It goes on by itself where the app is open on the job, or studio --follow runs."
                      + " Until then it can be taken back."));
      case SetupMove.Outcome.Arrived _ -> Optional.empty();
      case SetupMove.Outcome.Stays(var why, _) ->
          why.filter(known -> known.why() != MoveRefusal.Why.TAKEN_BACK).map(MoveRefusal::remedy);
    };
  }

  /** As files write it: {@code asked}, {@code on-its-way}, {@code arrived}, {@code stays}. */
  public static String word(SetupMove move) {
    return switch (move.outcome()) {
      case SetupMove.Outcome.Asked _ -> "asked";
      case SetupMove.Outcome.OnItsWay _ -> "on-its-way";
      case SetupMove.Outcome.Arrived _ -> "arrived";
      case SetupMove.Outcome.Stays _ -> "stays";
    };
  }
}
