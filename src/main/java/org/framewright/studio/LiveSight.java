package org.framewright.studio;

import org.framewright.job.Standing;
import org.framewright.live.LiveJob;

/** The frames of a job that is followed: its newest picture, so that no file is looked at again. */
record LiveSight(LiveJob live) implements Sight {
  @Override
  public long revision() {
    return live.now().revision();
  }

  @Override
  public Seen now() {
    var view = live.now();
    return new Seen(view.scan(), new Standing(view.tally(), view.state()));
  }
}
