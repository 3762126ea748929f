package org.framewright.ui.session;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ObservableValue;
import javafx.util.Subscription;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.job.FramesDescription;
import org.framewright.live.JobView;
import org.framewright.live.LostFolder;
import org.framewright.ui.look.Texts;

/**
 * What a person should know of the job's folder while it is so: files that cannot be read, a folder
 * that is gone, a log that was torn. A notice goes when its cause is fixed, or when somebody put it
 * away; one that was fixed and comes back is shown again.
 */
public final class Notices {
  /**
   * One thing to know.
   *
   * @param what is so, and where
   * @param remedy its remedy; may be empty
   */
  public record Notice(String what, String remedy) {}

  private final Path folder;
  private final Texts texts;
  private final ObservableValue<JobView> job;
  private final ObservableValue<List<Throwable>> failures;
  private final Function<Throwable, Notice> explain;
  private final ReadOnlyObjectWrapper<Optional<Notice>> alarm =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<List<Notice>> shown = new ReadOnlyObjectWrapper<>(List.of());
  private final Set<Notice> putAway = new HashSet<>();
  private final Subscription following;
  private List<Problem> problems = List.of();
  private List<Notice> ofFrames = List.of();

  /**
   * @param folder the job's
   * @param explain puts a failure into words
   */
  public Notices(
      Path folder,
      Texts texts,
      ObservableValue<JobView> job,
      ObservableValue<List<Throwable>> failures,
      Function<Throwable, Notice> explain) {
    this.folder = folder;
    this.texts = texts;
    this.job = job;
    this.failures = failures;
    this.explain = explain;
    following = Subscription.combine(job.subscribe(_ -> look()), failures.subscribe(_ -> look()));
  }

  /** What keeps the job from going on, for as long as it does; it cannot be put away. */
  public ReadOnlyObjectProperty<Optional<Notice>> alarm() {
    return alarm.getReadOnlyProperty();
  }

  /**
   * What else is so now and was not put away: what keeps the folder from being read comes first.
   */
  public ReadOnlyObjectProperty<List<Notice>> shown() {
    return shown.getReadOnlyProperty();
  }

  /** Puts away what is shown now. */
  public void putAway() {
    putAway.addAll(shown.get());
    look();
  }

  /** Stops following the job. */
  public void dispose() {
    following.unsubscribe();
  }

  private void look() {
    var now = new ArrayList<Notice>();
    failures.getValue().stream().map(this::of).distinct().forEach(now::add);
    alarm.set(now.isEmpty() ? Optional.empty() : Optional.of(now.removeFirst()));
    now.addAll(ofFrames(job.getValue().scan().problems()));
    FramesDescription.notUnderstood(job.getValue().scan())
        .ifPresent(problem -> now.add(new Notice(texts.what(problem), texts.remedy(problem))));
    job.getValue()
        .warnings()
        .forEach(warning -> now.add(new Notice(PlainText.line(texts.say(warning)), "")));
    putAway.retainAll(new HashSet<>(now));
    now.removeAll(putAway);
    if (!now.equals(shown.get())) {
      shown.set(List.copyOf(now));
    }
  }

  private Notice of(Throwable failure) {
    return failure instanceof LostFolder lost
        ? new Notice(
            texts.get("alarm.lost", lost.folder().toString()), texts.get("alarm.lost.remedy"))
        : explain.apply(failure);
  }

  private List<Notice> ofFrames(List<Problem> found) {
    if (!found.equals(problems)) {
      problems = found;
      var alike = new LinkedHashMap<Problem, List<Problem>>();
      for (var problem : found) {
        alike.computeIfAbsent(problem.at(""), _ -> new ArrayList<>()).add(problem);
      }
      ofFrames = alike.values().stream().map(this::of).toList();
    }
    return ofFrames;
  }

  /** One notice of what is wrong with several files alike. */
  private Notice of(List<Problem> alike) {
    var first = alike.getFirst();
    var where = place(first.where());
    return new Notice(
        alike.size() == 1
            ? texts.get("notice.frames", where, texts.what(first))
            : texts.get("notice.alike", where, alike.size() - 1, texts.what(first)),
        texts.remedy(first));
  }

  private String place(String where) {
    var inside = folder + folder.getFileSystem().getSeparator();
    return where.startsWith(inside) ? where.substring(inside.length()) : where;
  }
}
