package org.framewright.ui.handoff;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.framewright.handoff.PastHandOffs;
import org.framewright.handoff.PastHandOffs.Past;
import org.framewright.ui.look.Texts;
import org.framewright.ui.session.JobSession;
import org.framewright.ui.task.Newest;
import org.framewright.ui.task.Tasks;

/** The hand-offs of the job so far. */
final class EarlierModel {
  private final JobSession session;
  private final Texts texts;
  private final Consumer<Throwable> trouble;
  private final ObservableList<Past> all = FXCollections.observableArrayList();
  private final ObjectProperty<Past> chosen = new SimpleObjectProperty<>();
  private final ReadOnlyObjectWrapper<Optional<Remark>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Newest<JobSession, PastHandOffs> reading;

  EarlierModel(JobSession session, Tasks tasks, Texts texts, Consumer<Throwable> trouble) {
    this.session = session;
    this.texts = texts;
    this.trouble = trouble;
    this.reading = new Newest<>(tasks, of -> PastHandOffs.of(of.job()), this::show, this::failed);
  }

  /** The newest first. */
  ObservableList<Past> all() {
    return all;
  }

  /** The one that is chosen; none is null. */
  ObjectProperty<Past> chosen() {
    return chosen;
  }

  /** What is wrong with the records. */
  ReadOnlyObjectProperty<Optional<Remark>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** Reads the records. */
  void look() {
    reading.offer(session);
  }

  private void show(PastHandOffs past) {
    var before = Optional.ofNullable(chosen.get()).map(Past::number);
    if (!all.equals(past.all())) {
      all.setAll(past.all());
    }
    chosen.set(before.flatMap(past::of).or(() -> past.all().stream().findFirst()).orElse(null));
    problem.set(past.problems().stream().findFirst().map(one -> Remark.of(one, texts)));
  }

  private void failed(Throwable failure) {
    var foreseen = Remark.foreseen(failure);
    problem.set(foreseen.map(one -> Remark.of(one, texts)));
    if (foreseen.isEmpty()) {
      trouble.accept(failure);
    }
  }

  /** What one tells the retoucher of the one that is chosen; empty where there is no package. */
  String sentence() {
    return Optional.ofNullable(chosen.get())
        .filter(one -> one.state() == PastHandOffs.State.OUT)
        .map(one -> RetoucherWords.of(one, session.job().name(), texts))
        .orElse("");
  }
}
