package org.framewright.ui.start;

import java.util.List;
import java.util.SequencedMap;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.framewright.base.Text;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;

/** One field of the convention on the form: what was typed, and what stands beside it. */
final class FieldEntry {
  private final Field field;
  private final boolean needed;
  private final boolean ofTheJob;
  private final List<String> recent;
  private final StringProperty text = new SimpleStringProperty("");
  private final ReadOnlyObjectWrapper<Beside> beside = new ReadOnlyObjectWrapper<>(Beside.NOTHING);

  /**
   * What stands beside a field.
   *
   * @param findings what is wrong with it
   * @param missing whether it is needed and empty
   * @param became what the text became, where it had to change; else empty
   * @param rules by which rules it changed, in order
   */
  record Beside(List<Finding> findings, boolean missing, String became, List<Text> rules) {
    static final Beside NOTHING = new Beside(List.of(), false, "", List.of());
  }

  /**
   * @param needed whether the job's name cannot be made without it
   * @param ofTheJob whether the job's own name or a folder shows it; else only names of frames do
   * @param recent what was typed here in earlier jobs, latest first
   */
  FieldEntry(Field field, boolean needed, boolean ofTheJob, List<String> recent) {
    this.field = field;
    this.needed = needed;
    this.ofTheJob = ofTheJob;
    this.recent = List.copyOf(recent);
  }

  String name() {
    return field.name();
  }

  String label() {
    return field.label();
  }

  FieldType type() {
    return field.type();
  }

  String example() {
    return field.example();
  }

  SequencedMap<String, String> choices() {
    return field.choices();
  }

  boolean needed() {
    return needed;
  }

  boolean ofTheJob() {
    return ofTheJob;
  }

  List<String> recent() {
    return recent;
  }

  /** What was typed. */
  StringProperty text() {
    return text;
  }

  ReadOnlyObjectProperty<Beside> beside() {
    return beside.getReadOnlyProperty();
  }

  void beside(Beside now) {
    beside.set(now);
  }
}
