package org.framewright.frames;

import java.util.Optional;
import org.framewright.base.Text;

/**
 * A complete frame that no setup claims.
 *
 * @param frame the frame
 * @param likely the setup that was on set nearest in time, where a time is known
 * @param said why, in plain words
 */
public record Unassigned(Frame frame, Optional<String> likely, Text said) {
  /** Why, in English. */
  public String why() {
    return said.english();
  }
}
