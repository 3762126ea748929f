package org.framewright.studio;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.framewright.job.MoveRefusal;
import org.framewright.job.MovedSetup;
import org.framewright.job.OtherJob;
import org.framewright.shotlist.Setup;

/**
 * A setup that somebody wants shot by another set.
 *
 * @param from the set that has it
 * @param to the set that is to have it
 * @param code its code, as whoever asked wrote it
 * @param by who asked; may be empty
 * @param asked when, by the server's clock
 * @param steps what happened to the setup so far, by all of its moves from this set, in order
 */
public record SetupMove(
    UUID id,
    OtherJob from,
    OtherJob to,
    String code,
    String by,
    Instant asked,
    List<MoveStep> steps) {
  private static final JsonMapper JSON = new JsonMapper();

  /** What became of it. */
  public sealed interface Outcome {
    /** No computer of the set that has it answered yet. */
    record Asked() implements Outcome {}

    /** It was given, and no computer of the other set took it yet. */
    record OnItsWay(MovedSetup what, Instant since) implements Outcome {}

    /** The other set has it, under this code. */
    record Arrived(String code, Instant at) implements Outcome {}

    /** It stays where it was; without a reason where a newer program gave one. */
    record Stays(Optional<MoveRefusal> why, Instant at) implements Outcome {}
  }

  public SetupMove {
    steps = List.copyOf(steps);
  }

  /** The first of its ends counts, which is that with the lowest number. */
  public Outcome outcome() {
    Outcome outcome = new Outcome.Asked();
    for (var step : steps) {
      if (!step.move().equals(id)) {
        continue;
      }
      switch (step.kind()) {
        case GIVEN -> {
          var what = MovedSetup.read(step.facts());
          if (what.isPresent() && outcome instanceof Outcome.Asked) {
            outcome = new Outcome.OnItsWay(what.get(), step.at());
          }
        }
        case TAKEN -> {
          if (outcome instanceof Outcome.OnItsWay) {
            return new Outcome.Arrived(code(step.facts()), step.at());
          }
        }
        case STAYS -> {
          return new Outcome.Stays(refusal(step.facts()), step.at());
        }
      }
    }
    return outcome;
  }

  /** Whether the other set has it, or it stays. */
  public boolean isEnded() {
    return outcome() instanceof Outcome.Arrived || outcome() instanceof Outcome.Stays;
  }

  /** The setup as it was given, where it was. */
  Optional<MovedSetup> what() {
    return steps.stream()
        .filter(step -> step.move().equals(id) && step.kind() == MoveStep.Kind.GIVEN)
        .findFirst()
        .flatMap(step -> MovedSetup.read(step.facts()));
  }

  /** Another move of the same setup that is on its way or arrived, if that is the last one. */
  Optional<UUID> lostTo() {
    Optional<UUID> open = Optional.empty();
    for (var step : steps) {
      open =
          switch (step.kind()) {
            case GIVEN -> Optional.of(step.move());
            case STAYS -> open.filter(move -> !move.equals(step.move()));
            case TAKEN -> open;
          };
    }
    return open.filter(move -> !move.equals(id));
  }

  /** The number of the step that would come next. */
  int next() {
    return steps.isEmpty() ? 1 : steps.getLast().number() + 1;
  }

  /** What two codes share that names cannot tell apart. */
  String key() {
    return Setup.canonicalKey(code);
  }

  static String facts(String code) {
    return JSON.createObjectNode().put("code", code).toString();
  }

  private String code(String facts) {
    try {
      return JSON.readTree(facts).path("code").asText(code);
    } catch (JsonProcessingException e) {
      return code;
    }
  }

  static String facts(MoveRefusal why) {
    return JSON.createObjectNode()
        .put("why", why.why().name().toLowerCase(Locale.ROOT).replace('_', '-'))
        .put("setup", why.setup())
        .put("detail", why.detail())
        .toString();
  }

  private static Optional<MoveRefusal> refusal(String facts) {
    try {
      var json = JSON.readTree(facts);
      return Optional.of(
          new MoveRefusal(
              MoveRefusal.Why.valueOf(
                  json.path("why").asText().toUpperCase(Locale.ROOT).replace('-', '_')),
              json.path("setup").asText(),
              json.path("detail").asText()));
    } catch (JsonProcessingException | IllegalArgumentException e) {
      return Optional.empty();
    }
  }
}
