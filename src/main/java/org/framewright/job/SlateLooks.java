package org.framewright.job;

import java.io.IOException;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Progress;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.frames.SlateSearch;
import org.framewright.frames.slate.SlateReading;

/** Searches frames for slates that were not searched before, and keeps what it finds in the job. */
public final class SlateLooks {
  /** So many are written at a time: whoever stops it loses no more. */
  static final int PORTION = 200;

  private SlateLooks() {}

  /**
   * Searches, in the order of a scan, until it has them all, is stopped, or the time is over.
   *
   * @return how many frames are left
   */
  public static int of(Job job, FrameScan scan, Duration most, Progress progress)
      throws IOException {
    var frames = job.notLookedAt(scan);
    var search = new SlateSearch();
    long begin = System.nanoTime();
    int done = 0;
    var found = new LinkedHashMap<Frame, Optional<String>>();
    while (done < frames.size()
        && !progress.cancelled()
        && System.nanoTime() - begin < most.toNanos()) {
      var frame = frames.get(done++);
      found.put(frame, text(search.read(frame)));
      progress.step(done, frames.size());
      if (found.size() == PORTION) {
        keep(job, found);
      }
    }
    keep(job, found);
    return frames.size() - done;
  }

  private static void keep(Job job, Map<Frame, Optional<String>> found) throws IOException {
    job.recordLooks(found);
    found.clear();
  }

  /** The text of the slate that was found; two that say different things are none. */
  static Optional<String> text(SlateReading reading) {
    return reading instanceof SlateReading.Found(var slate)
        ? Optional.of(slate.print())
        : Optional.empty();
  }
}
