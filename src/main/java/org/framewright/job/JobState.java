package org.framewright.job;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.FrameMove;
import org.framewright.frames.OnSetSpan;

/**
 * The state that the events of a job make. All times are the job's time.
 *
 * @param setups every setup of the list by its code, in the list's order
 * @param spans when each setup was before the camera; a setup that was ticked shot stays there
 *     until the next one comes, an hour at most
 * @param moves frames that people moved, in the order in which they did
 * @param arrivals when each frame was seen to arrive
 * @param selects the frames that people chose
 * @param ratings of the frames that people rated here, from 0 to {@link #MOST_RATED}
 * @param onSet the setup that is on set now
 * @param pickups the codes of the setups to be shot again, in the order in which they were ticked
 * @param slates what is known of the slates among the frames
 */
public record JobState(
    SequencedMap<String, SetupStatus> setups,
    List<OnSetSpan> spans,
    List<FrameMove> moves,
    Map<FrameId, Instant> arrivals,
    Set<FrameId> selects,
    Map<FrameId, Integer> ratings,
    Optional<OnSet> onSet,
    List<String> pickups,
    SlatesKnown slates) {
  /** The highest rating, as XMP has it (ISO 16684-1, property {@code xmp:Rating}). */
  public static final int MOST_RATED = 5;

  /** A state without slates. */
  public JobState(
      SequencedMap<String, SetupStatus> setups,
      List<OnSetSpan> spans,
      List<FrameMove> moves,
      Map<FrameId, Instant> arrivals,
      Set<FrameId> selects,
      Map<FrameId, Integer> ratings,
      Optional<OnSet> onSet,
      List<String> pickups) {
    this(setups, spans, moves, arrivals, selects, ratings, onSet, pickups, SlatesKnown.NONE);
  }

  /** The status of a setup; that of one never ticked where the code is unknown. */
  public SetupStatus of(String setup) {
    return setups.getOrDefault(setup, SetupStatus.TO_SHOOT);
  }

  /**
   * The rating of a frame: what a person said here, else what its files say.
   *
   * @return from 1 to {@link #MOST_RATED}, -1 for a frame that its files reject; nothing if it is
   *     not rated
   */
  public OptionalInt rating(Frame frame) {
    var here = ratingHere(frame);
    var rating = here.isPresent() ? here : frame.capture().rating();
    return rating.orElse(0) == 0 ? OptionalInt.empty() : rating;
  }

  /**
   * The rating that people gave a frame here, whatever its files say.
   *
   * @return from 0, not rated, to {@link #MOST_RATED}; nothing if nobody said anything here
   */
  public OptionalInt ratingHere(Frame frame) {
    for (var id : frame.knownAs()) {
      var rating = ratings.get(id);
      if (rating != null) {
        return OptionalInt.of(rating);
      }
    }
    return OptionalInt.empty();
  }

  /** Whether a frame was chosen for retouching, under any identity that it is known by. */
  public boolean isSelect(Frame frame) {
    return frame.knownAs().stream().anyMatch(selects::contains);
  }

  /** This state, had nobody moved a frame. */
  JobState withoutMoves() {
    return new JobState(
        setups, spans, List.of(), arrivals, selects, ratings, onSet, pickups, slates);
  }

  /** This state, in which some setups got frames after their sign-off. */
  JobState changedSinceSignOff(Set<String> codes) {
    var marked =
        Statuses.changed(
            setups, codes, status -> status.signedOffAt().isPresent() ? status.changed() : status);
    return new JobState(marked, spans, moves, arrivals, selects, ratings, onSet, pickups, slates);
  }
}
