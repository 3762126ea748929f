package org.framewright.ui.preferences;

import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.base.Problem;

/** One field of the form: what stands in it, and what is wrong with that. */
final class Entry {
  private final String id;
  private final StringProperty text = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Optional<Problem>> problem =
      new ReadOnlyObjectWrapper<>(Optional.empty());
  private final Runnable commit;
  private String shown = "";
  private Optional<Problem> shownProblem = Optional.empty();

  /**
   * @param id in the texts and in nodes' ids
   * @param commit looks at what was written, and keeps it if it holds
   */
  Entry(String id, Runnable commit) {
    this.id = id;
    this.commit = commit;
  }

  String id() {
    return id;
  }

  /** What stands in the field. */
  StringProperty text() {
    return text;
  }

  /** The same without what surrounds it. */
  String written() {
    return text.get().strip();
  }

  /** What is wrong with it. */
  ReadOnlyObjectProperty<Optional<Problem>> problem() {
    return problem.getReadOnlyProperty();
  }

  /** What was written is looked at, and kept if it holds. */
  void commit() {
    commit.run();
  }

  /** What is kept stands in the field. */
  void show(String kept, Optional<Problem> wrong) {
    shown = kept;
    shownProblem = wrong;
    text.set(kept);
    problem.set(wrong);
  }

  /** Whether what is kept stands in the field still, or again. */
  boolean isAsShown() {
    return written().equals(shown);
  }

  /** What is kept stands in the field, with what is wrong with that. */
  void restore() {
    show(shown, shownProblem);
  }

  /** What is wrong with what stands in the field. */
  void show(Optional<Problem> wrong) {
    problem.set(wrong);
  }
}
