package org.framewright.cli;

import java.util.List;
import org.framewright.base.PlainText;
import org.framewright.base.Text;
import org.framewright.live.LiveJob;
import org.framewright.studio.SetFollower;
import org.framewright.studio.StoreException;

/** Says beside a page that is served what becomes of the exchange with the studio's store. */
record StudioRemarks(LiveJob job, ServeTalk talk) implements SetFollower.Listener {
  @Override
  public void brought() {
    job.refresh();
  }

  @Override
  public void told(List<Text> told) {
    told.forEach(one -> talk.remark(PlainText.line(one.english())));
  }

  @Override
  public void away(StoreException why) {
    talk.remark(why.problem().sentence() + "; it is tried again, and what it lacks follows.");
  }

  @Override
  public void reached() {
    talk.remark("The store is reached again.");
  }
}
