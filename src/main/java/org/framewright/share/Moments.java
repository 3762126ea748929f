package org.framewright.share;

import java.time.Duration;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.framewright.live.JobView;

/** The newest moment of a job, for all who wait for one. Safe from any thread. */
final class Moments {
  private final Newest<Moment> newest;

  Moments(JobView view, boolean lost) {
    newest = new Newest<>(new Moment(1, view, lost, DayNow.NONE));
  }

  Moment newest() {
    return newest.now();
  }

  /** The job is as in this view; one that is older than what is known changes nothing. */
  void show(JobView view) {
    newest.change(
        now ->
            view.revision() > now.view().revision()
                ? Optional.of(new Moment(now.number() + 1, view, now.lost(), now.day()))
                : Optional.empty());
  }

  void show(DayNow day) {
    newest.change(
        now ->
            day.equals(now.day())
                ? Optional.empty()
                : Optional.of(new Moment(now.number() + 1, now.view(), now.lost(), day)));
  }

  void lost(boolean lost) {
    newest.change(
        now ->
            lost == now.lost()
                ? Optional.empty()
                : Optional.of(new Moment(now.number() + 1, now.view(), lost, now.day())));
  }

  /** Lets all who wait look at why they do. */
  void wake() {
    newest.wake();
  }

  /**
   * Waits for a moment later than one.
   *
   * @param number of the moment that is known
   * @param most how long to wait
   * @param over whether there is nothing more to wait for
   * @return nothing where there was none in time, or it is over
   */
  Optional<Moment> after(long number, Duration most, BooleanSupplier over)
      throws InterruptedException {
    return newest.after(moment -> moment.number() > number, most, over);
  }
}
