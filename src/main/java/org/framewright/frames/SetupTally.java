package org.framewright.frames;

import java.util.SequencedMap;

/**
 * How many complete frames a setup has.
 *
 * @param frames all of them but the clips
 * @param byView by the view's code; those with no view are counted under the empty text
 * @param clips the video clips, which no number of wanted frames counts
 */
public record SetupTally(int frames, SequencedMap<String, Integer> byView, int clips) {

  /** A setup without clips. */
  public SetupTally(int frames, SequencedMap<String, Integer> byView) {
    this(frames, byView, 0);
  }
}
