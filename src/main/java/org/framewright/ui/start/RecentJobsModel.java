package org.framewright.ui.start;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.base.Problem;
import org.framewright.job.JobProgress;
import org.framewright.ui.start.RecentJob.Found;
import org.framewright.ui.task.Tasks;

/**
 * The jobs opened lately, newest first. Each is looked at in the background, for itself: one on a
 * drive that does not answer keeps no other waiting. Nothing in a job is written or locked.
 */
final class RecentJobsModel {
  private final Tasks tasks;
  private final Clock clock;
  private final Function<Throwable, Problem> words;
  private final ObservableList<RecentJob> jobs = FXCollections.observableArrayList();
  private final ObservableList<RecentJob> shown = FXCollections.unmodifiableObservableList(jobs);

  /**
   * @param words puts a failure into words
   */
  RecentJobsModel(Tasks tasks, Clock clock, Function<Throwable, Problem> words) {
    this.tasks = tasks;
    this.clock = clock;
    this.words = words;
  }

  ObservableList<RecentJob> jobs() {
    return shown;
  }

  /** Shows these jobs; what was known of them stands until they are looked at again. */
  void show(List<Path> folders) {
    var before = List.copyOf(jobs);
    jobs.setAll(
        folders.stream()
            .map(
                folder ->
                    before.stream()
                        .filter(job -> job.folder().equals(folder))
                        .findFirst()
                        .orElseGet(() -> RecentJob.at(folder)))
            .toList());
    folders.forEach(this::look);
  }

  private void look(Path folder) {
    tasks.quietly(
        () -> found(folder),
        found -> {
          change(folder, job -> job.with(found));
          if (found instanceof Found.Read read) {
            picture(folder, read.progress().frames());
          }
        },
        failure -> change(folder, job -> job.with(new Found.Unreadable(words.apply(failure)))));
  }

  private Found found(Path folder) throws Exception {
    return Files.isDirectory(folder)
        ? new Found.Read(JobProgress.read(folder, clock))
        : new Found.Gone();
  }

  private void picture(Path folder, Path frames) {
    tasks.quietly(
        () -> LastPicture.in(frames),
        picture -> change(folder, job -> job.with(picture)),
        // A job without a picture is shown without one.
        _ -> {});
  }

  private void change(Path folder, UnaryOperator<RecentJob> change) {
    for (int i = 0; i < jobs.size(); i++) {
      var job = jobs.get(i);
      if (job.folder().equals(folder)) {
        var next = change.apply(job);
        if (!Objects.equals(job, next)) {
          jobs.set(i, next);
        }
      }
    }
  }
}
