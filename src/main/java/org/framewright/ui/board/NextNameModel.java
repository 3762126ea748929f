package org.framewright.ui.board;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.ObservableValue;
import org.framewright.base.Problem;
import org.framewright.frames.Frame;
import org.framewright.frames.FrameScan;
import org.framewright.job.NextName;
import org.framewright.live.JobView;
import org.framewright.shotlist.Setup;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/**
 * The name that the next frame of the setup on set will get: copied, for the program that takes the
 * pictures; where it cannot be said, why.
 */
final class NextNameModel {
  private static final FrameScan NO_FRAMES = new FrameScan(List.of(), 0, List.of());

  /** Says a name; asked in the background. */
  @FunctionalInterface
  interface Names {
    /** The name of the next frame of a setup and a view that will lie in a folder. */
    NextName next(String setup, Optional<String> view, Path folder, FrameScan scan)
        throws Exception;
  }

  /** What a name depends on besides the frames that are there. */
  private record Asked(Setup setup, Optional<String> view, Optional<Path> folder) {}

  private final ObservableValue<JobView> job;
  private final Path frames;
  private final Names names;
  private final Texts texts;
  private final UnaryOperator<String> viewWord;
  private final Tasks tasks;
  private final Predicate<String> clipboard;
  private final Consumer<String> said;
  private final Consumer<Throwable> failed;
  private final ReadOnlyObjectWrapper<Optional<String>> obstacle = new ReadOnlyObjectWrapper<>();
  private final Newest<Asked, NextName> trial;
  private final ChangeListener<JobView> follow = (_, _, now) -> take(now);
  private Optional<Asked> asked = Optional.empty();

  /**
   * @param frames the job's frames folder, where the first frame will lie
   * @param viewWord what a view's code means
   * @param clipboard puts a text on the clipboard; false if it could not
   * @param said hears what is to be told
   * @param failed hears of failures that nobody foresaw
   */
  NextNameModel(
      ObservableValue<JobView> job,
      Path frames,
      Names names,
      Texts texts,
      UnaryOperator<String> viewWord,
      Tasks tasks,
      Predicate<String> clipboard,
      Consumer<String> said,
      Consumer<Throwable> failed) {
    this.job = job;
    this.frames = frames;
    this.names = names;
    this.texts = texts;
    this.viewWord = viewWord;
    this.tasks = tasks;
    this.clipboard = clipboard;
    this.said = said;
    this.failed = failed;
    this.trial =
        new Newest<>(
            tasks,
            input -> name(input, NO_FRAMES),
            this::tried,
            _ -> obstacle.set(Optional.empty()));
    obstacle.set(nothing());
    job.addListener(follow);
    take(job.getValue());
  }

  /** Why no name can be copied now, in words; empty where one can. */
  ReadOnlyObjectProperty<Optional<String>> obstacle() {
    return obstacle.getReadOnlyProperty();
  }

  /** Puts the next name on the clipboard, and says so; where it cannot be said, says why. */
  void copy() {
    var now = job.getValue();
    var of = asked(now);
    if (of.isEmpty()) {
      said.accept(nothing().orElseThrow());
      return;
    }
    var input = of.get();
    tasks.quietly(() -> name(input, now.scan()), name -> told(input, name), failed);
  }

  /** Stops following the job. */
  void dispose() {
    job.removeListener(follow);
    trial.clear();
  }

  private NextName name(Asked input, FrameScan scan) throws Exception {
    return names.next(input.setup().code(), input.view(), input.folder().orElse(frames), scan);
  }

  private void told(Asked input, NextName name) {
    tried(name);
    said.accept(
        switch (name) {
          case NextName.Known(var stem) when clipboard.test(stem) ->
              texts.get("board.copied", stem, whose(input));
          case NextName.Known(var stem) -> texts.get("board.notCopied", stem);
          case NextName.Unknown(var problem) -> words(problem);
        });
  }

  private String whose(Asked input) {
    var view = input.view().map(viewWord).orElse("");
    return (input.setup().code() + " " + view).strip();
  }

  private void tried(NextName name) {
    obstacle.set(
        name instanceof NextName.Unknown(var problem)
            ? Optional.of(words(problem))
            : Optional.empty());
  }

  private String words(Problem problem) {
    return texts.get("board.noNextName", texts.sentences(problem));
  }

  private Optional<String> nothing() {
    return Optional.of(texts.get("board.noNextName.nothing"));
  }

  private void take(JobView now) {
    var next = asked(now);
    if (next.equals(asked)) {
      return;
    }
    asked = next;
    next.ifPresentOrElse(trial::offer, () -> obstacle.set(nothing()));
  }

  private static Optional<Asked> asked(JobView now) {
    return now.state()
        .onSet()
        .flatMap(
            set ->
                now.list()
                    .setup(set.setup())
                    .map(setup -> new Asked(setup, set.view(), folder(now, setup.code()))));
  }

  /** Where the setup's last frame lies, else the one that was written last. */
  private static Optional<Path> folder(JobView now, String setup) {
    return now.latest().getOrDefault(setup, List.of()).stream()
        .findFirst()
        .or(
            () ->
                now.scan().frames().stream()
                    .filter(frame -> !frame.files().isEmpty())
                    .max(Comparator.comparing(frame -> frame.primary().modified())))
        .map(Frame::folder);
  }
}
