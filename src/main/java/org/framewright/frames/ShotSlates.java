package org.framewright.frames;

import java.util.Map;

/**
 * What is known of the slates among a job's frames.
 *
 * @param byFrame the frames that show one
 * @param names the names without ending that frames had when they were first looked at; a frame
 *     that is not here has the name that it came with
 */
public record ShotSlates(Map<FrameId, ShotSlate> byFrame, Map<FrameId, String> names) {
  /** No frame shows a slate. */
  public static final ShotSlates NONE = new ShotSlates(Map.of(), Map.of());

  /** The slate that a frame shows, by any identity that it is known by; null for none. */
  ShotSlate of(Frame frame) {
    for (var id : frame.knownAs()) {
      var slate = byFrame.get(id);
      if (slate != null) {
        return slate;
      }
    }
    return null;
  }

  String name(Frame frame) {
    for (var id : frame.knownAs()) {
      var name = names.get(id);
      if (name != null) {
        return name;
      }
    }
    return frame.stem();
  }
}
