package org.framewright.ui.handoff;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** Work about one thing after another: what an older piece finds is not shown for a newer one. */
final class LatestWork {
  private final Tasks tasks;
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private int begun;

  LatestWork(Tasks tasks) {
    this.tasks = tasks;
  }

  /** What is under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  boolean isIdle() {
    return running.get().isEmpty();
  }

  /** A number that changes with each piece of work. */
  int number() {
    return begun;
  }

  <T> void begin(
      String title, Tasks.Work<T> work, Consumer<? super T> then, Consumer<Throwable> failed) {
    int mine = ++begun;
    var task =
        tasks.run(
            title, work, result -> end(mine, then, result), failure -> end(mine, failed, failure));
    if (!task.finished().get()) {
      running.set(Optional.of(task));
    }
  }

  private <T> void end(int mine, Consumer<T> then, T with) {
    if (mine == begun) {
      running.set(Optional.empty());
      then.accept(with);
    }
  }

  /** Asks it to stop; it then says how it ended. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  /** Asks it to stop, and does not wait for what it says. */
  void leave() {
    stop();
    begun++;
    running.set(Optional.empty());
  }
}
