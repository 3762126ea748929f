package org.framewright.job;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.ShotSlate;
import org.framewright.frames.ShotSlates;
import org.framewright.frames.SlateSays;
import org.framewright.frames.slate.JobKey;
import org.framewright.frames.slate.Slate;
import org.framewright.frames.slate.SlateSetups;

/**
 * What is known of the slates among a job's frames.
 *
 * @param keys by which the job's slates are told from those of another
 * @param looked the frames whose pictures were searched, with the names that they came with
 * @param read the texts of the slates that were found
 * @param words what people said of them
 */
public record SlatesKnown(
    List<JobKey> keys,
    Map<FrameId, String> looked,
    Map<FrameId, String> read,
    Map<FrameId, SlateWords> words) {
  static final SlatesKnown NONE = new SlatesKnown(List.of(), Map.of(), Map.of(), Map.of());

  /** Whether a frame's first picture was searched; one that came later may show more. */
  boolean isLookedAt(Frame frame) {
    return looked.containsKey(frame.id());
  }

  /** The slates, in the light of the list. */
  ShotSlates among(SlateSetups setups) {
    if (read.isEmpty() && words.isEmpty()) {
      return ShotSlates.NONE;
    }
    var slates = new HashMap<FrameId, ShotSlate>();
    read.forEach(
        (frame, text) -> says(frame, text, setups).ifPresent(one -> slates.put(frame, one)));
    words.forEach(
        (frame, said) -> {
          if (said.is() && said.setup().isEmpty()) {
            slates.remove(frame);
          } else if (said.is()) {
            var says = new SlateSays.OfSetup(said.setup().get());
            slates.put(frame, new ShotSlate(says, true, said.backwards(), said.ruling()));
          }
        });
    return new ShotSlates(Map.copyOf(slates), looked);
  }

  private Optional<ShotSlate> says(FrameId frame, String text, SlateSetups setups) {
    var said = words.getOrDefault(frame, SlateWords.NONE);
    return Slate.read(text)
        .map(slate -> says(slate, setups))
        .map(says -> new ShotSlate(says, false, said.backwards(), said.ruling()));
  }

  private SlateSays says(Slate slate, SlateSetups setups) {
    if (!keys.contains(slate.job())) {
      return new SlateSays.OfAnotherJob(slate.code());
    }
    return setups
        .setup(slate)
        .<SlateSays>map(setup -> new SlateSays.OfSetup(setup.code()))
        .orElseGet(() -> new SlateSays.Unlisted(slate.code()));
  }
}
