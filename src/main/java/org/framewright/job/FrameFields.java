package org.framewright.job;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.SequencedMap;
import java.util.Set;
import org.framewright.naming.Convention;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Kind;
import org.framewright.naming.Reserved;
import org.framewright.shotlist.Setup;

/**
 * Where the fields of a frame's name get their values. Each has one source: the job's own values;
 * the setup (the field {@code setup} is its code, {@code view} the view, any other the column of
 * the shot list that is headed like the field or its label); a choice may be said by the folder
 * that the frame lies in; a date is the frame's own, also where the job has one, since a job may
 * take days; a counter counts.
 */
final class FrameFields {
  /** The convention's kind of name that a frame has. */
  static final String KIND = Reserved.FRAME;

  /** The convention's kind of name that a slate has. */
  static final String SLATE = Reserved.SLATE;

  private static final String SETUP = Reserved.SETUP;

  private final Convention convention;
  private final Map<String, String> values;
  private final Kind kind;

  private final FieldColumns columns = new FieldColumns();

  /**
   * @param values the values that the job began with
   */
  FrameFields(Convention convention, Kind kind, Map<String, String> values) {
    this.convention = convention;
    this.kind = kind;
    this.values = values;
  }

  Set<String> names() {
    return kind.fields().keySet();
  }

  boolean isRequired(String name) {
    return kind.fields().get(name);
  }

  Optional<String> counter() {
    return kind.counter();
  }

  Field field(String name) {
    return convention.fields().get(name);
  }

  boolean isDate(String name) {
    return field(name).type() == FieldType.DATE;
  }

  Optional<String> ofJob(String name) {
    return Optional.ofNullable(values.get(name));
  }

  /** What a setup says for a field; nothing for the view, of which it may have several. */
  Optional<String> ofSetup(Setup setup, String field) {
    if (field.equals(SETUP)) {
      return Optional.of(setup.code());
    }
    if (field.equals(ViewCodes.FIELD)) {
      return Optional.empty();
    }
    return columns.value(setup, field(field));
  }

  /** People's values for the fields that do not depend on the frame; may be added to. */
  SequencedMap<String, String> ofPeople(Setup setup, Optional<String> view) {
    var given = new LinkedHashMap<String, String>();
    for (var name : names()) {
      if (isDate(name)) {
        continue; // When a frame was taken, the frame says best.
      }
      if (values.containsKey(name)) {
        given.put(name, values.get(name));
      } else if (name.equals(ViewCodes.FIELD)) {
        view.ifPresent(code -> given.put(name, choice(code)));
      } else {
        ofSetup(setup, name).ifPresent(text -> given.put(name, text));
      }
    }
    return given;
  }

  /**
   * A choice that nothing else says is said by the folder that the frame lies in, the nearest
   * first: cameras write into folders of their own, as do rooms.
   *
   * @param folder relative to the job
   */
  void addFromFolders(Path folder, Map<String, String> given) {
    for (var name : names()) {
      if (field(name).type() != FieldType.CHOICE || name.equals(ViewCodes.FIELD)) {
        continue;
      }
      for (var at = folder; at != null && !given.containsKey(name); at = at.getParent()) {
        var called = at.getFileName().toString();
        field(name).choices().keySet().stream()
            .filter(called::equalsIgnoreCase)
            .findFirst()
            .ifPresent(choice -> given.put(name, choice));
      }
    }
  }

  /** The convention's own code for a view that the list calls by its meaning, in any language. */
  String choice(String view) {
    return ViewCodes.choice(field(ViewCodes.FIELD).choices(), view).orElse(view);
  }
}
