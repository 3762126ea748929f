package org.framewright.share;

import java.util.List;
import org.framewright.frames.slate.JobKey;
import org.framewright.job.Job;
import org.framewright.job.SetupCodes;
import org.framewright.shotlist.ShotList;

/** The codes of the list, read once for each list. Safe from any thread. */
final class Codes {
  private record Read(ShotList list, List<JobKey> keys, SetupCodes codes) {}

  private final Job job;
  private Read last;

  Codes(Job job) {
    this.job = job;
  }

  synchronized SetupCodes of(ShotList list) {
    var keys = job.slateKeys();
    if (last == null || !last.keys().equals(keys) || !isSame(last.list(), list)) {
      last = new Read(list, keys, SetupCodes.of(list, job.convention(), keys));
    }
    return last.codes();
  }

  /** A list that was not read anew is the same one, which takes no time to see. */
  @SuppressWarnings("ReferenceEquality")
  private static boolean isSame(ShotList one, ShotList other) {
    return one == other;
  }
}
