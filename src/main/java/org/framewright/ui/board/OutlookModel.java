package org.framewright.ui.board;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.job.JobState;
import org.framewright.live.JobView;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * Works out in the background how fast the job goes: anew when something was ticked, and once a
 * minute, since time passes.
 */
final class OutlookModel {
  /** Less than the minute after which it is asked again, so that no minute is passed over. */
  private static final Duration AGAIN = Duration.ofSeconds(50);

  private final ReadOnlyObjectWrapper<Optional<Outlook>> outlook =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Newest<JobView, Optional<Outlook>> working;
  private Optional<JobState> seen = Optional.empty();
  private Instant last = Instant.MIN;

  /**
   * @param work works it out of the job as it is shown; called in the background
   * @param failed hears why it could not be worked out
   */
  OutlookModel(
      Newest.Work<JobView, Optional<Outlook>> work, Tasks tasks, Consumer<Throwable> failed) {
    this.working = new Newest<>(tasks, work, outlook::set, failed);
  }

  /** How fast the job goes; empty where it is too early to tell. */
  ReadOnlyObjectProperty<Optional<Outlook>> outlook() {
    return outlook.getReadOnlyProperty();
  }

  /** The hours of work may be others now. */
  void workAgain() {
    seen = Optional.empty();
  }

  /** Looks whether it is time to work it out anew. */
  void look(JobView job, Instant now) {
    var ticked = seen.filter(job.state()::equals).isEmpty();
    if (ticked || !now.isBefore(last.plus(AGAIN)) || now.isBefore(last)) {
      seen = Optional.of(job.state());
      last = now;
      working.offer(job);
    }
  }
}
