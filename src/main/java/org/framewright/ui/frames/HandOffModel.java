package org.framewright.ui.frames;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import org.framewright.handoff.Delivery;
import org.framewright.handoff.HandOff;
import org.framewright.handoff.HandOffPlan;
import org.framewright.handoff.metadata.MetadataMode;
import org.framewright.handoff.metadata.MetadataOptions;
import org.framewright.handoff.metadata.Studio;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Running;
import org.framewright.ui.task.Tasks;

/** Hands the job's selects off: shows first what would go and what would not, then writes it. */
final class HandOffModel {
  private final JobSession session;
  private final Tasks tasks;
  private final Texts texts;
  private final Supplier<Studio.Reading> studio;
  private final Consumer<Throwable> trouble;
  private final ReadOnlyObjectWrapper<Optional<HandOffPlan>> plan =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ObjectProperty<Path> place = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<Optional<Path>> target =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Running>> running =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final ReadOnlyObjectWrapper<Optional<Path>> made =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final BooleanBinding ready;

  private record Prepared(HandOffPlan plan, int number) {}

  private int number = 1;

  /**
   * @param studio what the settings say of the studio
   */
  HandOffModel(
      JobSession session,
      Tasks tasks,
      Texts texts,
      Supplier<Studio.Reading> studio,
      Consumer<Throwable> trouble) {
    this.studio = studio;
    this.session = session;
    this.tasks = tasks;
    this.texts = texts;
    this.trouble = trouble;
    place.addListener(_ -> aim());
    ready =
        Bindings.createBooleanBinding(
            () ->
                target.get().isPresent()
                    && running.get().isEmpty()
                    && plan.get().filter(p -> !p.selects().isEmpty()).isPresent(),
            target,
            running,
            plan);
  }

  /** What would go, and what would not. */
  ReadOnlyObjectProperty<Optional<HandOffPlan>> plan() {
    return plan.getReadOnlyProperty();
  }

  /** The folder in which the package is made. */
  ObjectProperty<Path> place() {
    return place;
  }

  /** The package's folder to be. */
  ReadOnlyObjectProperty<Optional<Path>> target() {
    return target.getReadOnlyProperty();
  }

  /** The hand-off under way. */
  ReadOnlyObjectProperty<Optional<Running>> running() {
    return running.getReadOnlyProperty();
  }

  /** Whether it can be handed off now. */
  BooleanBinding ready() {
    return ready;
  }

  /** Finds out what would go of the selects; {@code then} runs when it is known. */
  void prepare(Runnable then) {
    var view = session.view().get();
    var job = session.job();
    prepare(() -> HandOff.of(job, view.scan(), view.tally()).selects(), then);
  }

  /** Finds out what would go of a client's list; {@code then} runs when it is known. */
  void prepare(ClientListModel.Named list, Runnable then) {
    prepare(() -> list.handOff().named(list.names()), then);
  }

  private void prepare(Callable<HandOffPlan> of, Runnable then) {
    var job = session.job();
    tasks.quietly(
        () -> new Prepared(of.call(), HandOff.nextNumber(job)),
        prepared -> {
          plan.set(Optional.of(prepared.plan()));
          number = prepared.number();
          aim();
          then.run();
        },
        trouble);
  }

  /**
   * Writes the package; {@code ended} gets how it ended, in words, and the package if there is one.
   */
  void deliver(Consumer<Ended> ended) {
    if (!ready.get()) {
      return;
    }
    switch (studio.get()) {
      case Studio.Reading.Sound sound -> deliver(sound.studio(), ended);
      case Studio.Reading.Faulty faulty ->
          ended.accept(
              new Ended(false, texts.sentence(faulty.problem()), texts.remedy(faulty.problem())));
    }
  }

  private void deliver(Studio said, Consumer<Ended> ended) {
    var metadata = new MetadataOptions(MetadataMode.SIDECAR, false, said);
    var handed = plan.get().orElseThrow();
    var to = target.get().orElseThrow();
    var view = session.view().get();
    var job = session.job();
    var over = new boolean[1];
    var task =
        tasks.run(
            texts.get("frames.handingOff", handed.selects().size()),
            steps ->
                HandOff.of(job, view.scan(), view.tally()).deliver(handed, to, metadata, steps),
            delivery -> {
              over[0] = true;
              running.set(Optional.empty());
              if (delivery instanceof Delivery.Delivered done) {
                made.set(Optional.of(done.folder()));
              }
              ended.accept(ended(delivery));
            },
            failure -> {
              over[0] = true;
              running.set(Optional.empty());
              trouble.accept(failure);
            });
    if (!over[0]) {
      running.set(Optional.of(task));
    }
  }

  /**
   * How a hand-off ended.
   *
   * @param done whether the package is there
   */
  record Ended(boolean done, String what, String remedy) {}

  /** The package that was made last since the job was opened, if there is one. */
  ReadOnlyObjectProperty<Optional<Path>> made() {
    return made.getReadOnlyProperty();
  }

  private Ended ended(Delivery delivery) {
    return switch (delivery) {
      case Delivery.Delivered done ->
          new Ended(
              true,
              texts.get("frames.handedOff", done.selects(), done.files(), done.folder().toString())
                  + remarks(delivery),
              "");
      case Delivery.Cancelled _ ->
          new Ended(false, texts.get("frames.handOffCancelled") + remarks(delivery), "");
      case Delivery.Refused refused ->
          new Ended(
              false,
              texts.sentence(refused.problem()),
              texts.remedy(refused.problem()) + remarks(delivery));
      case Delivery.Failed failed ->
          new Ended(
              false,
              texts.sentence(failed.problem()),
              texts.remedy(failed.problem()) + remarks(delivery));
    };
  }

  /** What was left of an earlier hand-off, a line each. */
  private String remarks(Delivery delivery) {
    return delivery.remarks().stream()
        .map(remark -> "\n" + texts.sentences(remark))
        .collect(Collectors.joining());
  }

  private void aim() {
    target.set(
        Optional.ofNullable(place.get())
            .map(parent -> parent.resolve(session.job().name() + "_hand-off_" + number)));
  }

  /** Where packages went last, or beside the job. */
  void startAt(Optional<Path> last) {
    tasks.quietly(
        () -> last.filter(Files::isDirectory).orElse(session.job().folder().getParent()),
        place::set,
        trouble);
  }
}
