package org.framewright.ui;

import java.util.List;
import org.framewright.base.FileProblemException;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.framewright.studio.SetFollower;
import org.framewright.studio.StoreException;
import org.framewright.ui.page.Desk;
import org.framewright.ui.session.JobSession;

/** Says on the interface what becomes of the exchange with the studio's store. */
record StudioNews(Desk desk, JobSession session) implements SetFollower.Listener {
  @Override
  public void brought() {
    onInterface(session::refresh);
  }

  @Override
  public void told(List<Text> told) {
    for (var one : told) {
      var problem = new Problem(one, session.job().folder().toString(), Text.of(""));
      onInterface(() -> desk.trouble(new FileProblemException(problem)));
    }
  }

  @Override
  public void away(StoreException why) {
    onInterface(() -> desk.say(desk.texts().get("studio.away", desk.texts().what(why.problem()))));
  }

  @Override
  public void reached() {
    onInterface(() -> desk.say(desk.texts().get("studio.reached")));
  }

  private void onInterface(Runnable work) {
    desk.tasks().ui().execute(work);
  }
}
