package org.framewright.ui.client;

import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameId;
import org.framewright.frames.Place;
import org.framewright.frames.SetupTally;
import org.framewright.live.JobView;
import org.framewright.live.ShownToClient;
import org.framewright.ui.session.LookedAt;

/** The client's screen without its controls. */
public final class ClientModel {
  /**
   * What is said of a frame.
   *
   * @param view its view's code, if it has one
   * @param number the how many of its setup it is
   */
  public record Caption(Optional<String> view, int number) {}

  private final ObservableValue<JobView> job;
  private final ReadOnlyObjectWrapper<ShownToClient> shown = new ReadOnlyObjectWrapper<>();
  private final LookedAt looked = new LookedAt(true);
  private final ReadOnlyBooleanWrapper pictureOnly = new ReadOnlyBooleanWrapper(false);
  private final ChangeListener<JobView> follow = (_, _, now) -> take(now);

  /** The setup that the client is asked about; it stays until they answered. */
  private Optional<String> asked = Optional.empty();

  /** A client's screen of the job. */
  public ClientModel(ObservableValue<JobView> job) {
    this.job = job;
    job.addListener(follow);
    take(job.getValue());
  }

  /** What the client reads now. */
  public ReadOnlyObjectProperty<ShownToClient> shown() {
    return shown.getReadOnlyProperty();
  }

  /** What the client looks at: the newest frame, until somebody goes back to one before. */
  public LookedAt looked() {
    return looked;
  }

  /** Whether there is the picture only. */
  public ReadOnlyBooleanProperty pictureOnly() {
    return pictureOnly.getReadOnlyProperty();
  }

  /** Leaves the picture only, or brings the rest back. */
  public void turnPictureOnly() {
    pictureOnly.set(!pictureOnly.get());
  }

  /** What is said of one of the frames at hand. */
  public Caption caption(Frame frame) {
    var now = job.getValue();
    var at = looked.look().get().frames().indexOf(frame);
    return new Caption(
        Optional.ofNullable(now.tally().places().get(frame.id())).flatMap(Place::view),
        counted(now, shown.get().code()).map(tally -> tally.frames() + tally.clips()).orElse(0)
            - Math.max(0, at));
  }

  /** The client is asked about what is shown: it stays, whatever comes on set meanwhile. */
  public void ask() {
    pictureOnly.set(false);
    asked = Optional.of(shown.get().code());
  }

  /** The client answered, or nobody asks any more. */
  public void answered() {
    asked = Optional.empty();
    take(job.getValue());
  }

  /** Stops following the job. */
  public void dispose() {
    job.removeListener(follow);
  }

  private void take(JobView now) {
    shown.set(ShownToClient.of(now, asked));
    var code = shown.get().code();
    looked.show(code, now.latest().getOrDefault(code, List.of()), frame -> older(now, code, frame));
  }

  private static Optional<SetupTally> counted(JobView now, String code) {
    return Optional.ofNullable(now.tally().bySetup().get(code));
  }

  /** A frame that is not among the last any more, if it is still of the setup. */
  private static Optional<Frame> older(JobView now, String code, FrameId id) {
    return now.scan().frames().stream()
        .filter(frame -> frame.knownAs().contains(id))
        .filter(
            frame ->
                Optional.ofNullable(now.tally().places().get(frame.id()))
                    .filter(place -> place.setup().equals(code))
                    .isPresent())
        .findFirst();
  }
}
