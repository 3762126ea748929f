package org.framewright.ui.board;

import java.util.OptionalInt;

/**
 * The frames of one view of a setup.
 *
 * @param code the view's; empty for frames of no view
 * @param frames counted
 * @param wanted by the list, if it says
 * @param before whether it is before the camera now
 */
public record ViewCount(String code, int frames, OptionalInt wanted, boolean before) {
  /** Whether it has what is wanted: the number, or one frame where the list gives none. */
  public boolean complete() {
    return frames >= wanted.orElse(1);
  }
}
