package org.framewright.job;

import org.framewright.base.Problem;
import org.framewright.base.Text;

/**
 * Why a setup stays where it is.
 *
 * @param setup its code
 * @param detail what the reason needs to be told: another job's name, a count, a field's fault
 */
public record MoveRefusal(Why why, String setup, String detail) {
  /** The reasons. */
  public enum Why {
    /** The list has none of this code. */
    NO_SETUP,
    /** It is before the camera. */
    ON_SET,
    /** It is shot, or signed off. */
    SHOT,
    /** It is to be shot again. */
    PICKUP,
    /** It is dropped. */
    DROPPED,
    /** It has frames. */
    FRAMES,
    /** It was on set while frames arrived that only another computer of the set has. */
    FRAMES_ELSEWHERE,
    /** It was given to another job already. */
    GIVEN,
    /** Frames of it could not be named there. */
    NAMES,
    /** It was worked on while it was on its way. */
    WORKED_ON,
    /** Whoever asked for it, or somebody else, took it back. */
    TAKEN_BACK
  }

  /** The same with its remedy. */
  public Problem problem(String where) {
    return new Problem(what(), where, remedy());
  }

  /** What keeps it. */
  public Text what() {
    return switch (why) {
      case NO_SETUP -> Text.of("there is no setup \"{0}\" in the shot list", setup);
      case ON_SET -> Text.of("setup {0} is on set", setup);
      case SHOT -> Text.of("setup {0} is shot", setup);
      case PICKUP -> Text.of("setup {0} is to be shot again where its frames are", setup);
      case DROPPED -> Text.of("setup {0} is dropped", setup);
      case FRAMES -> Text.of("setup {0} has frames ({1})", setup, detail);
      case FRAMES_ELSEWHERE ->
          Text.of("setup {0} was on set while frames arrived on another computer", setup);
      case GIVEN -> Text.of("setup {0} was given to {1}", setup, detail);
      case NAMES -> Text.of("frames of setup {0} could not be named there: {1}", setup, detail);
      case WORKED_ON -> Text.of("setup {0} was worked on before it was taken", setup);
      case TAKEN_BACK -> Text.of("setup {0} was taken back", setup);
    };
  }

  /** What to do. */
  public Text remedy() {
    return switch (why) {
      case NO_SETUP -> Text.of("Look at the list of the set for its number.");
      case ON_SET ->
          Text.of("Let it be shot there, or put it back to \"to shoot\" there, and move it then.");
      case SHOT, PICKUP, FRAMES ->
          Text.of(
              "Shoot it to its end there. If the frames belong to another setup, move them to that"
                  + " first.");
      case DROPPED -> Text.of("Tick it \"to shoot\" there first, if it is to be shot after all.");
      case FRAMES_ELSEWHERE ->
          Text.of("Move it from the computer that has the frames, or shoot it to its end there.");
      case GIVEN -> Text.of("Move it on from there.");
      case NAMES -> Text.of("Correct what its line says, or let it be shot where it is.");
      case WORKED_ON, TAKEN_BACK -> Text.of("Move it again, if it is to be shot elsewhere.");
    };
  }
}
