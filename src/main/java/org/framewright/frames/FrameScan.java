package org.framewright.frames;

import java.util.HashSet;
import java.util.List;
import org.framewright.base.Problem;

/**
 * What lay in the folder.
 *
 * <p>A frame may lie there several times, as copies of the same files in two folders. Whoever
 * counts, shows or hands on frames takes {@link #distinct}; whoever renames files takes all.
 *
 * @param frames all frames, complete or not, copies too, by folder and then by stem
 * @param files how many files these have together
 * @param problems what was unreadable or broken, and which frames are copies; {@code where} is the
 *     path of the file or folder
 * @param notUnderstood the files that are neither of frames nor litter, by folder
 */
public record FrameScan(
    List<Frame> frames, int files, List<Problem> problems, List<NotUnderstood> notUnderstood) {

  /** A scan that understood every file. */
  public FrameScan(List<Frame> frames, int files, List<Problem> problems) {
    this(frames, files, problems, List.of());
  }

  /** The frames, each once: of copies of one frame the first. */
  public List<Frame> distinct() {
    return distinct(frames);
  }

  static List<Frame> distinct(List<Frame> frames) {
    var seen = HashSet.<FrameId>newHashSet(frames.size());
    return frames.stream().filter(frame -> seen.add(frame.id())).toList();
  }
}
