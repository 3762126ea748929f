package org.framewright.ui.session;

import java.util.List;
import java.util.Optional;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.frames.SlateDoubt;
import org.framewright.job.MarkDetails;
import org.framewright.job.SlateWord;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.SetupState;

/**
 * What a person does to the list or to frames in one go: it is undone as one, and done again as
 * one.
 */
public sealed interface Step {

  /** Setups are ticked, one after the other. */
  record Ticked(List<Mark> marks) implements Step {
    public Ticked {
      marks = List.copyOf(marks);
    }

    /** One setup is ticked. */
    public Ticked(String setup, SetupState state, MarkDetails details) {
      this(List.of(new Mark(setup, state, details)));
    }
  }

  /** One tick. */
  record Mark(String setup, SetupState state, MarkDetails details) {}

  /**
   * The list comes into another order.
   *
   * @param codes all of them in their new order
   * @param moved the one that a person moved
   */
  record Moved(List<String> codes, String moved) implements Step {
    public Moved {
      codes = List.copyOf(codes);
    }
  }

  /**
   * What is left comes into another order, as a whole.
   *
   * @param codes all of the list in their new order
   */
  record Ordered(List<String> codes) implements Step {
    public Ordered {
      codes = List.copyOf(codes);
    }
  }

  /**
   * A setup comes into the list.
   *
   * @param behind the one that it comes right behind; at the end if empty
   */
  record Added(Setup setup, Optional<String> behind) implements Step {}

  /** The list says something else of a setup. */
  record Changed(Setup setup) implements Step {}

  /**
   * Frames that a step is about.
   *
   * @param ids every identity that they are known by
   * @param count how many frames they are
   * @param name what it is called, if it is one
   */
  record Frames(List<FrameId> ids, int count, Optional<String> name) {
    public Frames {
      ids = List.copyOf(ids);
    }

    /** These frames. */
    public static Frames of(List<Frame> frames) {
      return new Frames(
          frames.stream().flatMap(frame -> frame.knownAs().stream()).toList(),
          frames.size(),
          frames.size() == 1 ? Optional.of(frames.getFirst().stem()) : Optional.empty());
    }
  }

  /**
   * Frames are chosen for retouching, and others no longer.
   *
   * @param by who chose
   */
  record Selected(Frames chosen, Frames not, String by) implements Step {}

  /**
   * Frames are rated.
   *
   * @param rating from 0, not rated, to 5
   * @param by who rated
   */
  record Rated(Frames frames, int rating, String by) implements Step {}

  /**
   * Something is said of a setup, or of a frame of it.
   *
   * @param frames the frame; none where it is said of the setup
   * @param by who said it; may be empty
   */
  record Commented(String setup, Frames frames, String text, String by) implements Step {}

  /**
   * Frames are moved to a setup.
   *
   * @param by who moved them
   */
  record Placed(Frames frames, Place place, String by) implements Step {}

  /**
   * Something is said of a slate, or of a frame that is said to be one.
   *
   * @param by who said so
   */
  record SaidOfSlate(Frame frame, SlateWord word, String by) implements Step {}

  /**
   * A slate is right, and what is on set is not.
   *
   * @param by who said so
   */
  record Followed(SlateDoubt doubt, String by) implements Step {}
}
