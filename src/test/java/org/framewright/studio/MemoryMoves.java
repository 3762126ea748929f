package org.framewright.studio;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.UUID;

/** A book of moves in memory, by the rules of the store's. */
final class MemoryMoves implements MoveBook {
  private record SetupOf(UUID job, String key) {}

  private final SequencedMap<UUID, SetupMove> moves = new LinkedHashMap<>();
  private final Map<SetupOf, List<MoveStep>> steps = new LinkedHashMap<>();

  List<SetupMove> all() {
    return moves.values().stream().map(this::withSteps).toList();
  }

  /** As a book that came back from a copy of before. */
  void clear() {
    moves.clear();
    steps.clear();
  }

  private List<MoveStep> steps(SetupMove move) {
    return steps.computeIfAbsent(new SetupOf(move.from().id(), move.key()), _ -> new ArrayList<>());
  }

  private SetupMove withSteps(SetupMove move) {
    return new SetupMove(
        move.id(), move.from(), move.to(), move.code(), move.by(), move.asked(), steps(move));
  }

  @Override
  public List<SetupMove> of(UUID job) {
    return all().stream()
        .filter(move -> move.from().id().equals(job) || move.to().id().equals(job))
        .toList();
  }

  @Override
  public void ask(SetupMove move) {
    moves.putIfAbsent(move.id(), move);
  }

  @Override
  public boolean step(SetupMove move, MoveStep.Kind kind, String station, String facts) {
    var there = steps(move);
    if (there.size() + 1 == move.next()) {
      there.add(new MoveStep(move.next(), move.id(), kind, station, Instant.EPOCH, facts));
      return true;
    }
    return there.stream()
        .anyMatch(
            step ->
                step.equals(
                    new MoveStep(move.next(), move.id(), kind, station, Instant.EPOCH, facts)));
  }
}
