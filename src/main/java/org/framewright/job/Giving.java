package org.framewright.job;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.PlainText;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.FrameScan;
import org.framewright.shotlist.Setup;

/** Whether a setup can be given to another job, and what goes with it. */
final class Giving {
  private Giving() {}

  /**
   * What keeps a setup where it is.
   *
   * @param now what the log says
   * @param standing how the job stands with the frames of the scan
   */
  static Optional<MoveRefusal> refusal(String code, Fold now, Standing standing, FrameScan scan) {
    var given = now.moves().given(code);
    if (given.isPresent()) {
      return refusal(MoveRefusal.Why.GIVEN, given.get().setup().code(), given.get().to().name());
    }
    var found = now.index().setup(code);
    if (found.isEmpty()) {
      return refusal(MoveRefusal.Why.NO_SETUP, PlainText.line(code), "");
    }
    var setup = found.get().code();
    var counted = Optional.ofNullable(standing.tally().bySetup().get(setup));
    int frames =
        Math.max(
            counted.map(one -> one.frames() + one.clips()).orElse(0),
            movedTo(setup, now.state().moves()));
    return switch (standing.state().of(setup).state()) {
      case ON_SET -> refusal(MoveRefusal.Why.ON_SET, setup, "");
      case SHOT, SIGNED_OFF -> refusal(MoveRefusal.Why.SHOT, setup, "");
      case PICKUP -> refusal(MoveRefusal.Why.PICKUP, setup, "");
      case DROPPED -> refusal(MoveRefusal.Why.DROPPED, setup, "");
      case TO_SHOOT ->
          frames > 0
              ? refusal(MoveRefusal.Why.FRAMES, setup, "" + frames)
              : haveArrivedElsewhere(now.state(), setup, scan)
                  ? refusal(MoveRefusal.Why.FRAMES_ELSEWHERE, setup, "")
                  : Optional.empty();
    };
  }

  private static Optional<MoveRefusal> refusal(MoveRefusal.Why why, String setup, String detail) {
    return Optional.of(new MoveRefusal(why, setup, detail));
  }

  /** How many frames people moved to a setup, wherever they lie. */
  private static int movedTo(String setup, List<FrameMove> moves) {
    var last = new HashMap<FrameId, String>();
    moves.forEach(move -> last.put(move.frame(), move.setup()));
    return Collections.frequency(last.values(), setup);
  }

  /** Whether frames came while a setup was on set that are in no folder of this computer. */
  private static boolean haveArrivedElsewhere(JobState state, String setup, FrameScan scan) {
    var spans = state.spans().stream().filter(span -> span.setup().equals(setup)).toList();
    if (spans.isEmpty()) {
      return false;
    }
    var here = new HashSet<FrameId>();
    scan.frames().forEach(frame -> here.addAll(frame.knownAs()));
    return state.arrivals().entrySet().stream()
        .filter(arrival -> !here.contains(arrival.getKey()))
        .anyMatch(
            arrival ->
                spans.stream()
                    .anyMatch(
                        span ->
                            !arrival.getValue().isBefore(span.from())
                                && span.until().map(arrival.getValue()::isBefore).orElse(true)));
  }

  /**
   * The setup with what is said of it, and the codes that it had in other jobs.
   *
   * @param here what the store calls this job
   */
  static MovedSetup moved(Setup setup, Fold now, UUID here) {
    var notes =
        now.comments().stream()
            .filter(comment -> comment.isOf(setup) && comment.frames().isEmpty())
            .map(
                comment ->
                    new MovedSetup.Note(
                        comment.text(), comment.by(), comment.station(), comment.at()))
            .toList();
    var codes = new LinkedHashMap<UUID, String>();
    now.moves().came(setup.code()).ifPresent(came -> codes.putAll(came.codes()));
    codes.put(here, setup.code());
    return new MovedSetup(setup, notes, codes);
  }
}
