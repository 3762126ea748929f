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
import javafx.collections.ObservableList;
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
  private final LatestWork work;
  private final Texts texts;
  private final Clock clock;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<Path>> folder =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Answer>> answer =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Narrowed<CheckLine, Kind> lines = new Narrowed<>(CheckLine::kind);

  CheckModel(Tasks tasks, Texts texts, Clock clock, Consumer<Throwable> trouble) {
    this.work = new LatestWork(tasks);
    this.texts = texts;
    this.clock = clock;
    this.trouble = trouble;
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
    return work.running();
  }

  /** What was found in detail, as far as the filter lets it through. */
  ObservableList<CheckLine> lines() {
    return lines.lines();
  }

  /** The kind that is shown; all where there is none. */
  ObjectProperty<Optional<Kind>> only() {
    return lines.only();
  }

  /** Reads a folder; one that is being read is left. */
  void check(Path of) {
    stop();
    folder.set(Optional.of(of));
    answer.set(Optional.empty());
    lines.clear();
    work.begin(
        texts.get("handoff.checking", name(of)),
        steps -> {
          var opened = OpenPackage.in(of);
          return opened.isEmpty() ? none(of) : found(of, opened.get().read(steps));
        },
        this::show,
        failure -> failed(of, failure));
  }

  /** Reads the same folder again. */
  void again() {
    folder.get().ifPresent(this::check);
  }

  /** Asks the check to stop. */
  void stop() {
    work.stop();
  }

  private void show(Found found) {
    lines.setAll(found.lines(), found.answer().counts().keySet());
    answer.set(Optional.of(found.answer()));
  }

  private void failed(Path of, Throwable failure) {
    var problem = Remark.foreseen(failure);
    if (problem.isEmpty()) {
      trouble.accept(failure);
    }
    show(
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

  /** What is under way ends. */
  void close() {
    work.leave();
  }
}
