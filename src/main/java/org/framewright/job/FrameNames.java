package org.framewright.job;

import java.util.List;
import org.framewright.base.Text;
import org.framewright.frames.Frame;
import org.framewright.renaming.RenameRequest;

/**
 * The names that frames are to have.
 *
 * @param requests one for each file of each frame that has a name, also where it has it already;
 *     paths are relative to the job folder
 * @param leftOut the frames that have no name, and why
 */
public record FrameNames(List<RenameRequest> requests, List<LeftOut> leftOut) {
  public FrameNames {
    requests = List.copyOf(requests);
    leftOut = List.copyOf(leftOut);
  }

  /** A frame without a name. */
  public record LeftOut(Frame frame, Text said, Text fix) {
    /** Why, in English. */
    public String why() {
      return said.english();
    }

    /** What to do about it, in English. */
    public String remedy() {
      return fix.english();
    }
  }
}
