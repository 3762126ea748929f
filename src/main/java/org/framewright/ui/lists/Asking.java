package org.framewright.ui.lists;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.framewright.job.Job;
import org.framewright.live.JobView;
import org.framewright.shotlist.Column;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * Asks in the background how a list reads and what it changes. Of many requests only the newest is
 * answered; the answer to one that is withdrawn comes to nobody.
 */
final class Asking {
  private final Job job;
  private final Newest<Numbered, Answer> newest;
  private final Consumer<Answer> then;
  private int last;

  /**
   * @param carried what was said of the columns, as far as there are such in the list that is found
   * @param asBefore whether what was chosen for an earlier list holds
   * @param again a list that was read and only has to be compared anew
   * @param job what it is compared with
   */
  record Request(
      Path file,
      ListOptions options,
      ListOptions carried,
      boolean asBefore,
      Optional<ListReading> again,
      JobView job) {}

  /** What came of a request: a reading, or a failure that nobody foresaw. */
  record Answer(
      Numbered request,
      Optional<ListReading> reading,
      Optional<ListChange> change,
      List<ResultLine.Difference> differences,
      Optional<Throwable> failure) {}

  /**
   * @param number larger for a later one
   */
  record Numbered(int number, Request request) {}

  /**
   * @param tasks where lists are read
   * @param then gets the answer to the newest request, on the interface thread
   */
  Asking(Job job, Tasks tasks, Consumer<Answer> then, Consumer<Throwable> trouble) {
    this.job = job;
    this.then = then;
    this.newest = new Newest<>(tasks, this::answer, this::answered, trouble);
  }

  void ask(Request request) {
    newest.offer(new Numbered(++last, request));
  }

  /** Wants no answer any more. */
  void withdraw() {
    last++;
    newest.clear();
  }

  private void answered(Answer answer) {
    if (answer.request().number() == last) {
      then.accept(answer);
    }
  }

  private Answer answer(Numbered numbered) {
    var request = numbered.request();
    try {
      var reading = request.again().orElseGet(() -> read(request));
      var change =
          reading instanceof ListReading.Understood understood
              ? Optional.of(job.previewImport(understood.list(), request.job().tally()))
              : Optional.<ListChange>empty();
      return new Answer(
          numbered,
          Optional.of(reading),
          change,
          change.map(Looked::differences).orElse(List.of()),
          Optional.empty());
    } catch (RuntimeException | Error e) {
      return new Answer(numbered, Optional.empty(), Optional.empty(), List.of(), Optional.of(e));
    }
  }

  private ListReading read(Request request) {
    var reading =
        request.asBefore()
            ? job.readList(request.file(), request.options())
            : job.readListAnew(request.file(), request.options());
    var carried =
        request.carried().ofColumns(reading.columns().stream().map(Column::heading).toList());
    return carried.isNone()
        ? reading
        : job.readListAnew(request.file(), carried.over(reading.options()));
  }
}
