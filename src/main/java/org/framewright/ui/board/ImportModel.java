package org.framewright.ui.board;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.IntegerBinding;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import org.framewright.base.PlainText;
import org.framewright.shotlist.ListChange;
import org.framewright.shotlist.ListReading;
import org.framewright.shotlist.ShotList;

/** A list that came in, against the list of the job: what differs, line by line. */
public final class ImportModel {
  /** How a line differs. */
  public enum Kind {
    ADDED,
    CHANGED,
    REMOVED,
    /** Gone from the new list, but work was done on it: it stays, whatever is accepted. */
    KEPT
  }

  /**
   * One difference.
   *
   * @param code the setup's
   * @param description in plain words
   * @param accepted whether it is to be taken; meaningless for one that is kept
   */
  public record Difference(Kind kind, String code, String description, BooleanProperty accepted) {}

  private final ShotList list;
  private final ListChange change;
  private final ListReading.Understood reading;
  private final List<Difference> differences = new ArrayList<>();
  private final IntegerBinding accepted;

  /** All that can be taken is taken at first. */
  public ImportModel(ListReading.Understood reading, ListChange change) {
    this.reading = reading;
    this.list = reading.list();
    this.change = change;
    change.added().forEach(setup -> add(Kind.ADDED, setup.code(), setup.title()));
    change
        .changed()
        .forEach(
            line -> add(Kind.CHANGED, line.after().code(), String.join("; ", line.descriptions())));
    change.removed().forEach(setup -> add(Kind.REMOVED, setup.code(), setup.title()));
    change.kept().forEach(setup -> add(Kind.KEPT, setup.code(), setup.title()));
    accepted =
        Bindings.createIntegerBinding(
            () -> acceptedCodes().size(),
            differences.stream().map(Difference::accepted).toArray(javafx.beans.Observable[]::new));
  }

  private void add(Kind kind, String code, String description) {
    differences.add(
        new Difference(kind, code, description, new SimpleBooleanProperty(kind != Kind.KEPT)));
  }

  /** Whether there is anything to take. */
  public boolean isEmpty() {
    return change.isEmpty();
  }

  /** Whether setups that both lists hold stand in another order. */
  public boolean reordered() {
    return change.reordered();
  }

  /** Everything that differs. */
  public List<Difference> differences() {
    return differences;
  }

  /** What the reader of the list remarks on. */
  public List<String> remarks() {
    return reading.remarks().stream()
        .map(remark -> PlainText.line(remark.problem().sentence()))
        .toList();
  }

  /** How many differences are to be taken. */
  public IntegerBinding accepted() {
    return accepted;
  }

  /** The new list. */
  public ShotList list() {
    return list;
  }

  /** The codes whose difference is to be taken. */
  public Set<String> acceptedCodes() {
    return differences.stream()
        .filter(line -> line.kind() != Kind.KEPT && line.accepted().get())
        .map(Difference::code)
        .collect(Collectors.toSet());
  }
}
