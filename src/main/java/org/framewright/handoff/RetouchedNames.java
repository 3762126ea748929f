package org.framewright.handoff;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.framewright.job.Job;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.Field;
import org.framewright.naming.FieldType;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/** The names that retouched files have by a job's convention, and what they say. */
final class RetouchedNames {
  private static final int LONGEST_VERSION = 6;

  private final Job job;
  private final Convention convention;
  private final Optional<String> version;

  RetouchedNames(Job job) {
    this.job = job;
    this.convention = job.convention();
    this.version = versionField(convention);
  }

  /** The number that a retouched name has and its select has not. */
  private static Optional<String> versionField(Convention convention) {
    var retouched = convention.kinds().get(Reserved.RETOUCHED);
    var select = convention.kinds().get(Reserved.SELECT);
    if (retouched == null || select == null) {
      return Optional.empty();
    }
    return retouched.fields().keySet().stream()
        .filter(name -> !select.fields().containsKey(name))
        .filter(
            name -> {
              var field = convention.fields().get(name);
              return field != null
                  && (field.type() == FieldType.NUMBER || field.type() == FieldType.COUNTER);
            })
        .findFirst();
  }

  /** Whether the convention has such names. */
  boolean exist() {
    return convention.kinds().containsKey(Reserved.RETOUCHED);
  }

  /** The version that a name says, by its fields. */
  OptionalInt version(Map<String, String> fields) {
    var text = version.map(fields::get).orElse("");
    return text.matches("\\d{1," + LONGEST_VERSION + "}")
        ? OptionalInt.of(Integer.parseInt(text))
        : OptionalInt.empty();
  }

  /** The number of the first version. */
  int first() {
    return version
        .map(convention.fields()::get)
        .map(Field::start)
        .map(start -> (int) Math.max(1, Math.min(start, 999_999)))
        .orElse(1);
  }

  /**
   * The name of a version of a select, without ending; none where the convention makes none.
   *
   * @param original the frame's own name, which the retouched one may repeat
   */
  Optional<String> of(String select, String original, int number) {
    if (version.isEmpty()) {
      return Optional.empty();
    }
    var values = new LinkedHashMap<>(job.values());
    if (convention.kinds().containsKey(Reserved.FRAME)
        && convention.read(original.substring(original.lastIndexOf('/') + 1), Reserved.FRAME)
            instanceof Reading.One frame) {
      values.putAll(frame.fields());
    }
    if (!(convention.read(select, Reserved.SELECT) instanceof Reading.One one)) {
      return Optional.empty();
    }
    values.putAll(one.fields());
    values.put(version.get(), String.valueOf(number));
    return convention.build(Reserved.RETOUCHED, values) instanceof Built.Name name
        ? Optional.of(name.text())
        : Optional.empty();
  }
}
