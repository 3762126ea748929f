package org.framewright.ui.day;

import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.value.ChangeListener;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.live.JobView;
import org.framewright.ui.day.LookLine.Group;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/** The day as it stands, and what a person looked at. */
final class DayModel {
  /** Time passes, whatever happens. */
  private static final Duration AGAIN = Duration.ofMinutes(1);

  private final ReadOnlyObjectProperty<JobView> view;
  private final Supplier<Instant> clock;
  private final Newest<JobView, DayShown> reading;
  private final ChangeListener<JobView> follow = (_, _, _) -> read();
  private final ReadOnlyObjectWrapper<Optional<DayShown>> shown =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyBooleanWrapper past = new ReadOnlyBooleanWrapper(false);
  private final ObservableList<LookLine> lines = FXCollections.observableArrayList();
  private final ObservableList<LookLine> readOnly = FXCollections.unmodifiableObservableList(lines);
  private final ObjectProperty<Optional<LookLine>> chosen =
      new SimpleObjectProperty<>(Optional.empty());
  private final Set<String> looked = new HashSet<>();
  private boolean following;
  private Instant last = Instant.MIN;

  /**
   * @param clock the time of day
   * @param work reads and words the day; called in the background
   * @param unforeseen hears of what is no fault of the folder
   */
  DayModel(
      ReadOnlyObjectProperty<JobView> view,
      Supplier<Instant> clock,
      Newest.Work<JobView, DayShown> work,
      Tasks tasks,
      Consumer<Throwable> unforeseen) {
    this.view = view;
    this.clock = clock;
    this.reading = new Newest<>(tasks, work, this::show, failure -> failed(failure, unforeseen));
  }

  /** The day as it was read last; nothing before it was read once. */
  ReadOnlyObjectProperty<Optional<DayShown>> shown() {
    return shown.getReadOnlyProperty();
  }

  /** Whether the folder cannot be read now, so that what is shown is of before. */
  ReadOnlyBooleanProperty past() {
    return past.getReadOnlyProperty();
  }

  /** What to look at. */
  ObservableList<LookLine> lines() {
    return readOnly;
  }

  /** The line that the keys are on. */
  ObjectProperty<Optional<LookLine>> chosen() {
    return chosen;
  }

  /** Follows the job and the time from now on. */
  void follow() {
    if (!following) {
      following = true;
      view.addListener(follow);
    }
    read();
  }

  /** Stops following: reading many thousand frames is for a page that is looked at. */
  void pause() {
    following = false;
    view.removeListener(follow);
    reading.clear();
  }

  /** Looks whether time has passed. */
  void look() {
    var now = clock.get();
    if (following && (!now.isBefore(last.plus(AGAIN)) || now.isBefore(last))) {
      read();
    }
  }

  private void read() {
    last = clock.get();
    reading.offer(view.get());
  }

  private void show(DayShown now) {
    past.set(false);
    shown.set(Optional.of(now));
    var next = now.lines().stream().map(line -> line.looked(looked.contains(line.id()))).toList();
    if (!lines.equals(next)) {
      var before = chosen.get();
      lines.setAll(next);
      chosen.set(
          before.flatMap(
              one -> next.stream().filter(line -> line.id().equals(one.id())).findFirst()));
    }
  }

  private void failed(Throwable failure, Consumer<Throwable> unforeseen) {
    past.set(true);
    if (failure instanceof Error || failure instanceof RuntimeException) {
      unforeseen.accept(failure);
    }
  }

  /** Ticks the chosen line as looked at, and goes on to the next that is not; or takes it back. */
  void turnLooked() {
    chosen.get().ifPresent(this::turnLooked);
  }

  /** The same with this one. */
  void turnLooked(LookLine line) {
    int at = lines.indexOf(line);
    if (at < 0) {
      return;
    }
    var turned = line.looked(!line.looked());
    if (turned.looked()) {
      looked.add(line.id());
    } else {
      looked.remove(line.id());
    }
    lines.set(at, turned);
    chosen.set(
        Optional.of(
            turned.looked()
                ? lines.subList(at, lines.size()).stream()
                    .filter(one -> !one.looked())
                    .findFirst()
                    .orElse(turned)
                : turned));
  }

  /** How many of a group nobody looked at yet. */
  int left(Group group) {
    return (int) lines.stream().filter(line -> line.group() == group && !line.looked()).count();
  }

  /** How many were looked at. */
  int lookedAt() {
    return (int) lines.stream().filter(LookLine::looked).count();
  }
}
