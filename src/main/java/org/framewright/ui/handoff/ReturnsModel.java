package org.framewright.ui.handoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.ObservableList;
import org.framewright.base.PlainText;
import org.framewright.base.Progress;
import org.framewright.handoff.Returns;
import org.framewright.handoff.metadata.Studio;
import org.framewright.job.JobException;
import org.framewright.renaming.Batch;
import org.framewright.renaming.Interrupted;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Recovery;
import org.framewright.renaming.Renamer;
import org.framewright.ui.handoff.ReturnLine.Kind;
import org.framewright.ui.look.Spot;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/**
 * What came back from the retoucher, read against what was handed off. Files get other names only
 * when a person says so; what was renamed can be taken back.
 */
final class ReturnsModel {
  private final JobSession session;
  private final LatestWork work;
  private final Texts texts;
  private final Clock clock;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<Path>> folder =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Optional<Integer>> number =
      new SimpleObjectProperty<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Answer>> answer =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Remark>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Narrowed<ReturnLine, Kind> narrowed = new Narrowed<>(ReturnLine::kind);
  private final ObservableList<ReturnLine> lines = narrowed.lines();
  private final ObjectProperty<ReturnLine> chosen = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<Pair> pair = new ReadOnlyObjectWrapper<>(Pair.NONE);
  private final ReadOnlyObjectWrapper<Optional<Spot>> fullSize =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final BooleanBinding canRename;
  private final BooleanBinding canUndo;
  private final BooleanBinding canDeliver;

  /** What can be left at any time, for nothing is changed by it. */
  private boolean reading;

  ReturnsModel(
      JobSession session, Tasks tasks, Texts texts, Clock clock, Consumer<Throwable> trouble) {
    this.session = session;
    this.work = new LatestWork(tasks);
    this.texts = texts;
    this.clock = clock;
    this.trouble = trouble;
    narrowed.only().addListener((_, _, _) -> chooseAmongShown());
    chosen.addListener(_ -> pair.set(pairOf(chosen.get())));
    canRename =
        Bindings.createBooleanBinding(
            () -> work.isIdle() && answer.get().filter(it -> it.renames() > 0).isPresent(),
            work.running(),
            answer);
    canDeliver =
        Bindings.createBooleanBinding(
            () ->
                work.isIdle()
                    && answer
                        .get()
                        .filter(
                            it ->
                                it.counts().keySet().stream()
                                    .anyMatch(kind -> kind != Kind.MISSING && kind != Kind.EXTRA))
                        .isPresent(),
            work.running(),
            answer);
    canUndo =
        Bindings.createBooleanBinding(
            () -> work.isIdle() && answer.get().flatMap(Answer::undo).isPresent(),
            work.running(),
            answer);
  }

  /**
   * What came back.
   *
   * @param counts how many lines of each kind there are
   * @param selects how many were handed off
   * @param came how many of them came back under a name of the convention
   * @param renames how many files can get their right names
   * @param undo what was renamed there last
   * @param remarks what a person should know besides
   */
  record Answer(
      Returns returns,
      Map<Kind, Integer> counts,
      int selects,
      int came,
      int renames,
      Optional<Batch> undo,
      List<Remark> remarks) {}

  private record Found(Answer answer, List<ReturnLine> lines) {}

  /** The folder in question. */
  ReadOnlyObjectProperty<Optional<Path>> folder() {
    return folder.getReadOnlyProperty();
  }

  /** The hand-off whose selects are asked about; all where there is none. */
  ObjectProperty<Optional<Integer>> number() {
    return number;
  }

  /** What came back; none before, and where it could not be read. */
  ReadOnlyObjectProperty<Optional<Answer>> answer() {
    return answer.getReadOnlyProperty();
  }

  /** Why it could not be read or renamed. */
  ReadOnlyObjectProperty<Optional<Remark>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** What is under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return work.running();
  }

  /** Selects and files, as far as the filter lets them through; what needs a person first. */
  ObservableList<ReturnLine> lines() {
    return lines;
  }

  /** The kind that is shown; all where there is none. */
  ObjectProperty<Optional<Kind>> only() {
    return narrowed.only();
  }

  /** The line that is looked at; none is null. */
  ObjectProperty<ReturnLine> chosen() {
    return chosen;
  }

  /** The pictures of the line that is looked at. */
  ReadOnlyObjectProperty<Pair> pair() {
    return pair.getReadOnlyProperty();
  }

  /** Around which spot both pictures are seen at full size; empty where they are seen whole. */
  ReadOnlyObjectProperty<Optional<Spot>> fullSize() {
    return fullSize.getReadOnlyProperty();
  }

  /** Whether files can get their right names. */
  BooleanBinding canRename() {
    return canRename;
  }

  /** Whether the last renames there can be taken back. */
  BooleanBinding canUndo() {
    return canUndo;
  }

  // Reading

  /** Reads a folder; one that is being read is left. */
  void read(Path of) {
    boolean another = !folder.get().equals(Optional.of(of));
    folder.set(Optional.of(of));
    if (another) {
      clear();
    }
    again();
  }

  private void clear() {
    answer.set(Optional.empty());
    narrowed.clear();
    chosen.set(null);
  }

  /** Reads the same folder again. */
  void again() {
    if (folder.get().isEmpty() || (!work.isIdle() && !reading)) {
      return;
    }
    stop();
    var of = folder.get().get();
    var wanted = number.get();
    problem.set(Optional.empty());
    reading = true;
    begin(
        texts.get("handoff.reading"),
        steps -> found(of, wanted, steps),
        found -> {
          reading = false;
          found.ifPresent(this::show);
        },
        () -> {
          reading = false;
          clear();
          fullSize.set(Optional.empty());
        });
  }

  /** On the work's thread; nothing where it was stopped. */
  private Optional<Found> found(Path of, Optional<Integer> wanted, Progress steps)
      throws IOException, JobException {
    if (!Files.isDirectory(of)) {
      throw new NoSuchFileException(of.toString());
    }
    var number = wanted.map(OptionalInt::of).orElseGet(OptionalInt::empty);
    return Returns.read(session.job(), of, number, steps).map(returns -> found(of, returns));
  }

  private Found found(Path of, Returns returns) {
    var lines = ReturnLine.of(returns, texts);
    var counts = new EnumMap<Kind, Integer>(Kind.class);
    lines.forEach(line -> counts.merge(line.kind(), 1, Integer::sum));
    return new Found(
        new Answer(
            returns,
            counts,
            returns.answers().size(),
            (int) returns.count(Returns.State.ANSWERED),
            returns.renames().size(),
            undoable(of),
            remarks(returns)),
        lines);
  }

  /** Where the journals cannot be read, nothing can be taken back, and the rest holds. */
  private Optional<Batch> undoable(Path of) {
    try {
      return Renamer.in(of, clock).nextUndo();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private List<Remark> remarks(Returns returns) {
    var remarks =
        new ArrayList<>(returns.problems().stream().map(one -> Remark.of(one, texts)).toList());
    returns
        .bag()
        .filter(bag -> !bag.whole())
        .ifPresent(
            _ ->
                remarks.add(
                    new Remark(
                        texts.get("handoff.returns.bag"),
                        texts.get("handoff.returns.bag.remedy"))));
    return List.copyOf(remarks);
  }

  private void show(Found found) {
    var before = Optional.ofNullable(chosen.get()).map(ReturnLine::name);
    narrowed.setAll(found.lines(), found.answer().counts().keySet());
    answer.set(Optional.of(found.answer()));
    chosen.set(
        lines.stream()
            .filter(line -> before.filter(line.name()::equals).isPresent())
            .findFirst()
            .orElse(lines.isEmpty() ? null : lines.getFirst()));
  }

  private void chooseAmongShown() {
    if (!lines.contains(chosen.get())) {
      chosen.set(lines.isEmpty() ? null : lines.getFirst());
    }
  }

  /** Leaves what is being read, or asks a rename to stop, which then says how it ended. */
  void stop() {
    if (reading) {
      reading = false;
      work.leave();
    } else {
      work.stop();
    }
  }

  /** What is under way ends, and is not shown. */
  void close() {
    reading = false;
    work.leave();
  }

  private <T> void begin(
      String title, Tasks.Work<T> what, Consumer<? super T> then, Runnable failed) {
    work.begin(
        title,
        what,
        then,
        failure -> {
          failed.run();
          fail(failure);
        });
  }

  private void fail(Throwable failure) {
    var foreseen = Remark.foreseen(failure);
    problem.set(foreseen.map(one -> Remark.of(one, texts)));
    if (foreseen.isEmpty()) {
      trouble.accept(failure);
    }
  }

  // Looking

  private Pair pairOf(ReturnLine line) {
    return line == null ? Pair.NONE : Pair.of(line, work.number());
  }

  /** On to the next line, or to the one before. */
  void step(int by) {
    if (!lines.isEmpty()) {
      int at = lines.indexOf(chosen.get());
      chosen.set(lines.get(Math.clamp((long) at + by, 0, lines.size() - 1)));
    }
  }

  /** Sees both pictures at full size, or whole again. */
  void turnFullSize(Spot spot) {
    fullSize.set(fullSize.get().isPresent() ? Optional.empty() : Optional.of(spot));
  }

  /** Sees that spot in both, where they are seen at full size. */
  void look(Spot spot) {
    if (fullSize.get().filter(now -> !now.equals(spot)).isPresent()) {
      fullSize.set(Optional.of(spot));
    }
  }

  /** Moves what is seen at full size by a step. */
  void pan(int right, int down) {
    fullSize.get().ifPresent(now -> look(now.moved(right, down)));
  }

  // Delivering

  /** Whether something came back that may go to the client. */
  BooleanBinding canDeliver() {
    return canDeliver;
  }

  /**
   * Writes a package for the client; {@code then} gets how it ended.
   *
   * @param said what the settings say of the studio
   */
  void deliver(ClientDeliveryModel.Planned planned, Studio.Reading said, Consumer<Ended> then) {
    problem.set(Optional.empty());
    begin(
        texts.get("handoff.client.delivering", planned.plan().files()),
        steps -> planned.deliver(session, said, texts, steps),
        ended -> {
          if (!ended.isWhole()) {
            problem.set(Optional.of(ended.why()));
          }
          then.accept(ended);
        },
        () -> {});
  }

  // Renaming

  /** What can be asked before files are renamed. */
  sealed interface Question {
    /** The names that they would get. */
    record Names(RenameQuestion renames) implements Question {}

    /** An earlier rename there was interrupted. */
    record Order(Interrupted left) implements Question {}
  }

  /** Plans the renames; {@code then} gets what is to be asked. Nothing is changed. */
  void askRenames(Consumer<Question> then) {
    var now = answer.get();
    var of = folder.get();
    if (!canRename.get() || now.isEmpty() || of.isEmpty()) {
      return;
    }
    if (now.get().returns().bag().isPresent()) {
      problem.set(
          Optional.of(
              new Remark(
                  texts.get("handoff.returns.listed", PlainText.line(of.get().toString())),
                  texts.get("handoff.returns.listed.remedy"))));
      return;
    }
    begin(
        texts.get("handoff.planning"),
        _ -> {
          var renamer = Renamer.in(of.get(), clock);
          var left = renamer.interrupted();
          return left.isPresent()
              ? new Question.Order(left.get())
              : new Question.Names(
                  RenameQuestion.of(renamer.plan(now.get().returns().renames()), texts));
        },
        then,
        () -> {});
  }

  /** Gives the files their names; {@code said} gets how it ended, in words. */
  void rename(RenameQuestion question, Consumer<String> said) {
    named(
        texts.get("handoff.renaming", question.plan().ready()),
        (renamer, steps) -> renamer.apply(question.plan(), steps),
        outcome -> ended(outcome, "handoff.renamed", said));
  }

  /** Takes the last renames there back. */
  void undo(Consumer<String> said) {
    var batch = answer.get().flatMap(Answer::undo);
    if (!canUndo.get() || batch.isEmpty()) {
      return;
    }
    named(
        texts.get("handoff.renaming.back", batch.get().renames()),
        (renamer, steps) -> renamer.undo(batch.get().id(), steps),
        outcome -> ended(outcome, "handoff.renamed.back", said));
  }

  /** Brings an interrupted rename to an end. */
  void recover(Consumer<String> said) {
    named(
        texts.get("handoff.recovering"),
        (renamer, _) -> renamer.recover(),
        recovery -> recovered(recovery, said));
  }

  /** Something that is done with the names in a folder. */
  @FunctionalInterface
  private interface WithNames<T> {
    T of(Renamer renamer, Progress progress) throws IOException;
  }

  private <T> void named(String title, WithNames<T> what, Consumer<? super T> then) {
    var of = folder.get().orElseThrow();
    problem.set(Optional.empty());
    begin(title, steps -> what.of(Renamer.in(of, clock), steps), then, () -> {});
  }

  private void ended(Outcome outcome, String done, Consumer<String> said) {
    var failed =
        switch (outcome) {
          case Outcome.Applied applied -> {
            said.accept(texts.get(done, applied.done()));
            yield Optional.<Remark>empty();
          }
          case Outcome.Nothing _ -> Optional.of(new Remark(texts.get("handoff.renamed.none"), ""));
          case Outcome.Cancelled _ ->
              Optional.of(new Remark(texts.get("handoff.renamed.stopped"), ""));
          case Outcome.RolledBack back -> Optional.of(Remark.of(back.problem(), texts));
          case Outcome.Halted halted -> Optional.of(Remark.of(halted.problem(), texts));
          case Outcome.Refused refused -> Optional.of(Remark.of(refused.problem(), texts));
        };
    again();
    failed.ifPresent(why -> problem.set(Optional.of(why)));
  }

  private void recovered(Recovery recovery, Consumer<String> said) {
    var failed =
        switch (recovery) {
          case Recovery.Nothing _ -> Optional.<Remark>empty();
          case Recovery.RolledBack back -> {
            said.accept(texts.get("handoff.recovered.back", back.renames()));
            yield Optional.<Remark>empty();
          }
          case Recovery.Finished finished -> {
            said.accept(texts.get("handoff.recovered.finished", finished.renames()));
            yield Optional.<Remark>empty();
          }
          case Recovery.Stuck stuck ->
              Optional.of(
                  new Remark(
                      texts.get("handoff.recovered.stuck", stuck.files().size()),
                      texts.get("handoff.recovered.stuck.remedy")));
          case Recovery.Refused refused -> Optional.of(Remark.of(refused.problem(), texts));
        };
    again();
    failed.ifPresent(why -> problem.set(Optional.of(why)));
  }
}
