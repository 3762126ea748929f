package org.framewright.frames;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;

/**
 * The slates among the frames of a scan.
 *
 * @param frames each slate, by body and in the order in which they were taken
 * @param doubts where a slate contradicts what was on set and nobody ruled
 * @param remarks what a person should know of the order in which frames were taken
 */
public record SlateTally(List<SlateFrame> frames, List<SlateDoubt> doubts, List<Text> remarks) {
  /** No slates. */
  public static final SlateTally NONE = new SlateTally(List.of(), List.of(), List.of());

  public SlateTally {
    frames = List.copyOf(frames);
    doubts = List.copyOf(doubts);
    remarks = List.copyOf(remarks);
  }

  /** The slate that a frame shows, if it shows one. */
  public Optional<SlateFrame> of(Frame frame) {
    return frames.stream().filter(one -> one.frame().id().equals(frame.id())).findFirst();
  }
}
