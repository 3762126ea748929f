package org.framewright.ui.client;

import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import org.framewright.frames.Frame;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.session.JobView;

/** The client's screen without its controls. */
public final class ClientModel {
  /**
   * What the client sees.
   *
   * @param code the setup on set, else the one that was ticked last; empty before the first
   * @param title what it is
   * @param state where it stands
   * @param agreedBy who agreed to it
   * @param frame its last frame
   * @param agreed setups agreed to
   * @param setups setups wanted
   */
  public record Shown(
      String code,
      String title,
      SetupState state,
      Optional<String> agreedBy,
      Optional<Frame> frame,
      int agreed,
      int setups) {
    /** Whether there is something to agree to. */
    public boolean canAgree() {
      return !code.isEmpty() && state != SetupState.SIGNED_OFF && state != SetupState.DROPPED;
    }
  }

  private final ObservableValue<JobView> job;
  private final ReadOnlyObjectWrapper<Shown> shown = new ReadOnlyObjectWrapper<>();
  private final ChangeListener<JobView> follow = (_, _, now) -> take(now);

  /** A client's screen of the job. */
  public ClientModel(ObservableValue<JobView> job) {
    this.job = job;
    job.addListener(follow);
    take(job.getValue());
  }

  /** What the client sees now. */
  public ReadOnlyObjectProperty<Shown> shown() {
    return shown.getReadOnlyProperty();
  }

  /** Stops following the job. */
  public void dispose() {
    job.removeListener(follow);
  }

  private void take(JobView now) {
    var states = now.state().setups();
    var wanted =
        (int) states.values().stream().filter(one -> one.state() != SetupState.DROPPED).count();
    var agreed =
        (int) states.values().stream().filter(one -> one.state() == SetupState.SIGNED_OFF).count();
    var code =
        now.state()
            .onSet()
            .map(set -> set.setup())
            .or(() -> lastTouched(now))
            .filter(one -> now.list().setup(one).isPresent())
            .orElse("");
    var status = now.state().of(code);
    shown.set(
        new Shown(
            code,
            now.list().setup(code).map(setup -> setup.title()).orElse(""),
            status.state(),
            status.signedOffBy(),
            now.latest().getOrDefault(code, java.util.List.of()).stream().findFirst(),
            agreed,
            wanted));
  }

  private static Optional<String> lastTouched(JobView now) {
    return now.state().setups().entrySet().stream()
        .filter(entry -> entry.getValue().since().isPresent())
        .filter(
            entry ->
                entry.getValue().state() == SetupState.SHOT
                    || entry.getValue().state() == SetupState.SIGNED_OFF)
        .max(java.util.Comparator.comparing(entry -> entry.getValue().since().orElseThrow()))
        .map(java.util.Map.Entry::getKey);
  }
}
