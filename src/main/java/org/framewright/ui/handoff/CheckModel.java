package org.framewright.ui.handoff;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.transformation.FilteredList;
import org.framewright.base.PlainText;
import org.framewright.handoff.verify.OpenPackage;
import org.framewright.handoff.verify.PackageCheck;
import org.framewright.handoff.verify.Verified;
import org.framewright.ui.handoff.CheckLine.Kind;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** Whether a package, ours or anybody's, is whole. Nothing in it is written. */
final class CheckModel {
  private final Tasks tasks;
  private final Texts texts;
  private final Clock clock;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<Path>> folder =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Answer>> answer =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<CheckLine> all = FXCollections.observableArrayList();
  private final FilteredList<CheckLine> lines = new FilteredList<>(all);
  private final ObjectProperty<Optional<Kind>> only = new SimpleObjectProperty<>(Optional.empty());

  /** The folder that was asked about last: an older answer is not shown. */
  private int asked;

  CheckModel(Tasks tasks, Texts texts, Clock clock, Consumer<Throwable> trouble) {
    this.tasks = tasks;
    this.texts = texts;
    this.clock = clock;
    this.trouble = trouble;
    only.addListener(_ -> narrow());
  }

  /**
   * What was found.
   *
   * @param what what it means, in a sentence or two
   * @param by which lists were read
   * @param sentence to be passed on; empty where there is nothing to say
   * @param counts how many lines of each kind there are
   */
  record Answer(
      Verdict verdict,
      Path folder,
      Remark what,
      String by,
      String sentence,
      Map<Kind, Integer> counts) {}

  private record Found(Answer answer, List<CheckLine> lines) {}

  /** The folder in question. */
  ReadOnlyObjectProperty<Optional<Path>> folder() {
    return folder.getReadOnlyProperty();
  }

  /** What was found; none before, and while it is read. */
  ReadOnlyObjectProperty<Optional<Answer>> answer() {
    return answer.getReadOnlyProperty();
  }

  /** The check under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** What was found in detail, as far as the filter lets it through. */
  ObservableList<CheckLine> lines() {
    return lines;
  }

  /** The kind that is shown; all where there is none. */
  ObjectProperty<Optional<Kind>> only() {
    return only;
  }

  /** Reads a folder; one that is being read is left. */
  void check(Path of) {
    stop();
    int mine = ++asked;
    folder.set(Optional.of(of));
    answer.set(Optional.empty());
    all.clear();
    only.set(Optional.empty());
    var task =
        tasks.run(
            texts.get("handoff.checking", name(of)),
            steps -> {
              var opened = OpenPackage.in(of);
              return opened.isEmpty() ? none(of) : found(of, opened.get().read(steps));
            },
            found -> show(mine, found),
            failure -> failed(mine, of, failure));
    if (!task.finished().get()) {
      running.set(Optional.of(task));
    }
  }

  /** Reads the same folder again. */
  void again() {
    folder.get().ifPresent(this::check);
  }

  /** Asks the check to stop. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  private void show(int mine, Found found) {
    if (mine == asked) {
      running.set(Optional.empty());
      all.setAll(found.lines());
      answer.set(Optional.of(found.answer()));
    }
  }

  private void failed(int mine, Path of, Throwable failure) {
    var problem = Remark.foreseen(failure);
    if (problem.isEmpty()) {
      trouble.accept(failure);
    }
    show(
        mine,
        new Found(
            new Answer(
                Verdict.UNKNOWN,
                of,
                problem
                    .map(one -> Remark.of(one, texts))
                    .orElse(new Remark(texts.get("handoff.check.unknown"), "")),
                "",
                "",
                Map.of()),
            List.of()));
  }

  private Found none(Path of) {
    return new Found(
        new Answer(
            Verdict.NONE,
            of,
            new Remark(texts.get("handoff.check.none"), texts.get("handoff.check.none.remedy")),
            "",
            "",
            Map.of()),
        List.of());
  }

  private Found found(Path of, Verified verified) {
    return switch (verified) {
      case Verified.Cancelled _ ->
          new Found(
              new Answer(
                  Verdict.UNKNOWN,
                  of,
                  new Remark(
                      texts.get("handoff.check.stopped"),
                      texts.get("handoff.check.stopped.remedy")),
                  "",
                  "",
                  Map.of()),
              List.of());
      case Verified.Read read -> found(of, read.check());
    };
  }

  private Found found(Path of, PackageCheck check) {
    var found = CheckLine.of(check, texts);
    var counts = new EnumMap<Kind, Integer>(Kind.class);
    found.forEach(line -> counts.merge(line.kind(), 1, Integer::sum));
    var by =
        texts.get(
            "handoff.check.by",
            texts.get("handoff.check.kind." + check.kind().word()),
            check.files(),
            check.lists().stream().findFirst().orElse(""),
            check.lists().size() - 1);
    int wrong =
        check.different().size()
            + check.missing().size()
            + check.notFetched().size()
            + check.faults().size()
            + (check.closed() ? check.unlisted().size() : 0);
    var what =
        check.whole()
            ? new Remark(texts.get("handoff.check.whole", check.files()), "")
            : new Remark(
                texts.get("handoff.check.notWhole", wrong),
                texts.get("handoff.check.notWhole.remedy"));
    var at = texts.formats().time(LocalTime.now(clock));
    var sentence =
        check.whole()
            ? texts.get("handoff.check.say.whole", name(of), check.files(), at)
            : texts.get("handoff.check.say.notWhole", name(of), at, counted(counts));
    return new Found(
        new Answer(
            check.whole() ? Verdict.WHOLE : Verdict.NOT_WHOLE, of, what, by, sentence, counts),
        found);
  }

  private String counted(Map<Kind, Integer> counts) {
    return texts
        .formats()
        .list(
            counts.entrySet().stream()
                .filter(one -> one.getKey() != Kind.NOTE)
                .map(one -> texts.get("handoff.check.total." + one.getKey().word(), one.getValue()))
                .toList());
  }

  private static String name(Path of) {
    return PlainText.line(of.getFileName() == null ? of.toString() : of.getFileName().toString());
  }

  private void narrow() {
    var kind = only.get();
    lines.setPredicate(kind.isEmpty() ? null : line -> line.kind() == kind.get());
  }

  /** What is under way ends. */
  void close() {
    asked++;
    stop();
  }
}
