package org.framewright.job;

import java.util.List;
import org.framewright.frames.FrameId;
import org.framewright.shotlist.SetupState;

/** What a person does on a device. */
public sealed interface Asked {
  /**
   * Says what people call the device.
   *
   * @param name one line, {@link #LONGEST_NAME} letters at most
   */
  record Named(String name) implements Asked {}

  /** Ticks a setup. */
  record Ticked(String setup, SetupState state, MarkDetails details) implements Asked {}

  /**
   * Says something of a setup, or of frames of it.
   *
   * @param frames one frame, by each identity that it is known by; empty where it is of the setup
   */
  record Commented(String setup, List<FrameId> frames, String text, String by) implements Asked {
    public Commented {
      frames = List.copyOf(frames);
    }
  }

  /**
   * Takes a tick or a comment of the same device back.
   *
   * @param number its number
   */
  record TakenBack(long number) implements Asked {}

  /** The longest name of a device or a person that is kept, in letters. */
  int LONGEST_NAME = 100;
}
