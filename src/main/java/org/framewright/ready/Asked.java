package org.framewright.ready;

import java.nio.file.Path;
import java.util.List;

/**
 * What somebody wants to know.
 *
 * @param burst how many frames follow each other at once, above 0
 * @param places for copies; those of the last answer where none is named
 * @param quick whether the disk is not measured, which takes seconds
 */
public record Asked(int burst, List<Path> places, boolean quick) {
  /** Frames of a burst where nobody says. Common practice, no source. */
  public static final int USUAL_BURST = 20;

  public Asked {
    places = List.copyOf(places);
  }
}
