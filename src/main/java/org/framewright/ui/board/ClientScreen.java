package org.framewright.ui.board;

import org.framewright.frames.FrameId;

/** The client's screen, as far as it is run from the list's page. */
public interface ClientScreen {
  /** Opens or closes it. */
  void turn();

  /** Whether it is there. */
  boolean isShown();

  /** It turns to a frame, if it is there and the frame is one of the last of its setup. */
  void lookAt(FrameId frame);

  /** It shows the picture only, or again what stands beside it. */
  void turnPictureOnly();
}
