package org.framewright.ui.renaming;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import javafx.collections.transformation.FilteredList;
import org.framewright.job.FrameNames;
import org.framewright.renaming.Batch;
import org.framewright.renaming.Guarantee;
import org.framewright.renaming.Interrupted;
import org.framewright.renaming.Outcome;
import org.framewright.renaming.Plan;
import org.framewright.renaming.Recovery;
import org.framewright.renaming.Renamer;
import org.framewright.renaming.Status;
import org.framewright.ui.command.TypedWords;
import org.framewright.ui.look.Texts;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/**
 * The plan of new names, its batches, and what a crash left behind. One piece of work at a time:
 * while names are looked at or changed, nothing else can be begun.
 */
final class RenamesModel {
  private final Tasks tasks;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final Runnable namesChanged;

  private final ObservableList<PlanLine> all = FXCollections.observableArrayList();
  private final FilteredList<PlanLine> lines = new FilteredList<>(all);
  private final StringProperty filter = new SimpleStringProperty("");
  private final ReadOnlyIntegerWrapper ready = new ReadOnlyIntegerWrapper();
  private final ReadOnlyIntegerWrapper blocked = new ReadOnlyIntegerWrapper();
  private final ReadOnlyIntegerWrapper unchanged = new ReadOnlyIntegerWrapper();
  private final ReadOnlyIntegerWrapper nameless = new ReadOnlyIntegerWrapper();
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObservableList<Batch> batches = FXCollections.observableArrayList();
  private final ReadOnlyObjectWrapper<Optional<Interrupted>> interrupted =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<RenameResult>> result =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Plan>> plan =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Widest> widest = new ReadOnlyObjectWrapper<>(Widest.NONE);
  private final BooleanBinding canRename;
  private final BooleanBinding idle;

  private Callable<Renamer> folder;

  /** Made by the first look, and used by one piece of work at a time. */
  private volatile Renamer renamer;

  private Callable<FrameNames> requests;

  /** What lies in the folder now. */
  private record Found(
      Plan plan, List<PlanLine> lines, Widest widest, int nameless, Folder folder) {}

  private record Folder(List<Batch> batches, Optional<Interrupted> interrupted) {}

  /**
   * @param namesChanged runs on the interface thread when files got other names
   */
  RenamesModel(Tasks tasks, Texts texts, Consumer<Throwable> trouble, Runnable namesChanged) {
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
    this.namesChanged = namesChanged;
    filter.addListener(_ -> narrow());
    idle = Bindings.createBooleanBinding(() -> running.get().isEmpty(), running);
    canRename =
        Bindings.createBooleanBinding(
            () -> idle.get() && interrupted.get().isEmpty() && ready.get() > 0,
            idle,
            interrupted,
            ready);
  }

  /** The lines that the filter lets through: what needs a person first. */
  ObservableList<PlanLine> lines() {
    return lines;
  }

  /** The longest texts of all lines, whatever the filter lets through. */
  ReadOnlyObjectProperty<Widest> widest() {
    return widest.getReadOnlyProperty();
  }

  /** Words that a line must have somewhere: a state, a part of a name, a reason. */
  StringProperty filter() {
    return filter;
  }

  /** Files that would get another name. */
  ReadOnlyIntegerProperty ready() {
    return ready.getReadOnlyProperty();
  }

  /** Files that cannot get their name. */
  ReadOnlyIntegerProperty blocked() {
    return blocked.getReadOnlyProperty();
  }

  /** Files that have their name. */
  ReadOnlyIntegerProperty unchanged() {
    return unchanged.getReadOnlyProperty();
  }

  /** Frames that have no name yet. */
  ReadOnlyIntegerProperty nameless() {
    return nameless.getReadOnlyProperty();
  }

  /** The work under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** Whether nothing is under way. */
  BooleanBinding idle() {
    return idle;
  }

  /** Whether there is something to rename and nothing in its way. */
  BooleanBinding canRename() {
    return canRename;
  }

  /** What was renamed, latest first. */
  ObservableList<Batch> batches() {
    return batches;
  }

  /** What a crash left behind. */
  ReadOnlyObjectProperty<Optional<Interrupted>> interrupted() {
    return interrupted.getReadOnlyProperty();
  }

  /** How the last work ended. */
  ReadOnlyObjectProperty<Optional<RenameResult>> result() {
    return result.getReadOnlyProperty();
  }

  /** The plan that is shown. */
  ReadOnlyObjectProperty<Optional<Plan>> plan() {
    return plan.getReadOnlyProperty();
  }

  /**
   * Turns to a folder and shows what was renamed there, and what a crash left behind. The plan
   * waits for {@link #look}: many thousand names are made for a page that is looked at.
   *
   * @param folder opened in the background
   * @param requests the names that its files shall have; asked in the background, each time afresh
   */
  void open(Callable<Renamer> folder, Callable<FrameNames> requests) {
    this.folder = folder;
    this.renamer = null;
    this.requests = requests;
    result.set(Optional.empty());
    tasks.quietly(() -> batchesAndCrash(folder.call()), this::show, trouble);
  }

  /** Plans afresh; nothing is changed on disk. */
  void look() {
    if (folder == null || !idle.get()) {
      return;
    }
    begin(
        texts.get("renaming.looking"),
        _ -> {
          if (renamer == null) {
            renamer = folder.call();
          }
          var found = batchesAndCrash(renamer);
          // Between its epochs an interrupted batch leaves names that nothing should be planned on.
          var names =
              found.interrupted().isPresent()
                  ? new FrameNames(List.of(), List.of())
                  : requests.call();
          var fresh = renamer.plan(names.requests());
          var fitting = PlanLine.of(texts, fresh.renames(), names.leftOut());
          return new Found(fresh, fitting, Widest.of(fitting), names.leftOut().size(), found);
        },
        this::show);
  }

  /** Renames what is ready. */
  void rename() {
    var now = plan.get();
    if (!canRename.get() || now.isEmpty()) {
      return;
    }
    begin(
        texts.get("renaming.renaming", ready.get()),
        steps -> renamer.apply(now.get(), steps),
        outcome -> ended(outcome, "renaming.renamed"));
  }

  /** Whether a batch can be taken back now. */
  boolean canUndo(Batch batch) {
    return batch != null && batch.undoable() && idle.get() && interrupted.get().isEmpty();
  }

  /** Takes a batch back. */
  void undo(Batch batch) {
    if (!canUndo(batch)) {
      return;
    }
    begin(
        texts.get("renaming.undoing", batch.renames()),
        steps -> renamer.undo(batch.id(), steps),
        outcome -> ended(outcome, "renaming.undone"));
  }

  /** Puts in order what a crash left behind. */
  void recover() {
    if (!idle.get() || interrupted.get().isEmpty()) {
      return;
    }
    begin(texts.get("renaming.recovering"), _ -> renamer.recover(), this::recovered);
  }

  /** Asks the work under way to stop; what it did is taken back. */
  void stop() {
    running.get().ifPresent(Running::cancel);
  }

  /** Puts the last message away. */
  void putAway() {
    result.set(Optional.empty());
  }

  private <T> void begin(String title, Tasks.Work<T> work, Consumer<? super T> then) {
    var task =
        tasks.run(
            title,
            work,
            result -> {
              running.set(Optional.empty());
              then.accept(result);
            },
            failure -> {
              running.set(Optional.empty());
              trouble.accept(failure);
            });
    if (!task.finished().get()) {
      running.set(Optional.of(task));
    }
  }

  private static Folder batchesAndCrash(Renamer renamer) throws IOException {
    return new Folder(renamer.batches().reversed(), renamer.interrupted());
  }

  private void show(Found found) {
    plan.set(Optional.of(found.plan()));
    widest.set(found.widest());
    all.setAll(found.lines());
    ready.set(found.plan().ready());
    blocked.set(found.plan().blocked());
    unchanged.set(found.plan().unchanged());
    nameless.set(found.nameless());
    show(found.folder());
  }

  private void show(Folder found) {
    batches.setAll(found.batches());
    interrupted.set(found.interrupted());
  }

  private void ended(Outcome outcome, String done) {
    result.set(Optional.of(resultOf(outcome, done)));
    namesChanged.run();
    look();
  }

  private RenameResult resultOf(Outcome outcome, String done) {
    return switch (outcome) {
      case Outcome.Applied applied -> applied(applied, done);
      case Outcome.Nothing _ -> RenameResult.fine(texts.get("renaming.nothing"));
      case Outcome.Cancelled _ -> RenameResult.fine(texts.get("renaming.cancelled"));
      case Outcome.RolledBack back ->
          RenameResult.needs(
              texts.get("renaming.rolledBack", texts.sentence(back.problem())),
              texts.remedy(back.problem()));
      case Outcome.Halted halted ->
          RenameResult.needs(
              texts.get("renaming.halted", texts.sentence(halted.problem())),
              texts.remedy(halted.problem()));
      case Outcome.Refused refused ->
          RenameResult.needs(texts.sentence(refused.problem()), texts.remedy(refused.problem()));
    };
  }

  private RenameResult applied(Outcome.Applied applied, String done) {
    var sentence = texts.get(done, applied.done());
    var left =
        applied.renames().stream().filter(rename -> rename.status() == Status.SKIPPED).toList();
    if (!left.isEmpty()) {
      return RenameResult.needs(
          sentence
              + " "
              + texts.get("renaming.skipped", left.size(), texts.say(left.getFirst().said())),
          texts.say(left.getFirst().fix()));
    }
    return RenameResult.fine(
        applied.guarantee() == Guarantee.NATIVE
            ? sentence
            : sentence + " " + texts.say(applied.guarantee().said()));
  }

  private void recovered(Recovery recovery) {
    result.set(
        Optional.of(
            switch (recovery) {
              case Recovery.Nothing _ -> RenameResult.fine(texts.get("renaming.recoverNothing"));
              case Recovery.RolledBack back ->
                  RenameResult.fine(texts.get("renaming.recoverBack", back.renames()));
              case Recovery.Finished finished ->
                  RenameResult.fine(texts.get("renaming.recoverFinished", finished.renames()));
              case Recovery.Stuck stuck ->
                  new RenameResult(
                      true,
                      texts.get("renaming.recoverStuck", stuck.files().size()),
                      texts.get("renaming.recoverStuckRemedy"),
                      stuck.files());
              case Recovery.Refused refused ->
                  RenameResult.needs(
                      texts.sentence(refused.problem()), texts.remedy(refused.problem()));
            }));
    namesChanged.run();
    look();
  }

  private void narrow() {
    var words = TypedWords.of(filter.get()).words();
    lines.setPredicate(words.isEmpty() ? null : line -> line.matches(words));
  }
}
