package org.framewright.handoff;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.handoff.spec.Specification;
import org.framewright.handoff.verify.PayloadName;
import org.framewright.job.Job;
import org.framewright.naming.Built;
import org.framewright.naming.Finding;
import org.framewright.naming.Reading;
import org.framewright.naming.Reserved;

/**
 * The names under which pictures are delivered to the client: of the kind that the specification
 * says, else of the convention's kind for deliveries, else of that for what comes back, else those
 * of the selects.
 */
final class DeliveryNames {
  private final Job job;
  private final String kind;

  DeliveryNames(Job job, Optional<Specification> specification) {
    var kinds = job.convention().kinds();
    this.job = job;
    this.kind =
        specification
            .flatMap(Specification::name)
            .orElse(
                kinds.containsKey(Reserved.DELIVERY)
                    ? Reserved.DELIVERY
                    : kinds.containsKey(Reserved.RETOUCHED) ? Reserved.RETOUCHED : Reserved.SELECT);
  }

  sealed interface Naming {}

  /** A name without ending. */
  record Name(String text) implements Naming {}

  /** There is none. */
  record None(Text why, Text fix) implements Naming {}

  /**
   * Whether a select that was answered like this can be delivered: where the convention has names
   * for what comes back, one of these must have come.
   */
  boolean fit(Returns.State state) {
    return state == Returns.State.ANSWERED
        || (state == Returns.State.CHANGED
            && !job.convention().kinds().containsKey(Reserved.RETOUCHED));
  }

  /** The kind of name. */
  String kind() {
    return kind;
  }

  /**
   * The name of a picture.
   *
   * @param select the name of the select that it answers
   * @param original the frame's own name
   * @param file its path below the folder that came back
   */
  Naming of(String select, String original, String file) {
    var values = new LinkedHashMap<>(job.values());
    add(values, original.substring(original.lastIndexOf('/') + 1), Reserved.FRAME);
    add(values, select, Reserved.SELECT);
    add(values, stem(file), Reserved.RETOUCHED);
    return switch (job.convention().build(kind, values)) {
      case Built.Name name when PayloadName.isFileName(name.text()) -> new Name(name.text());
      case Built.Name name ->
          new None(
              Text.of("{0} is no name of a file", name.text()), Text.of("Check the convention."));
      case Built.Refused refused ->
          new None(
              refused.findings().stream()
                  .map(Finding::said)
                  .reduce((one, next) -> Text.of("{0}; {1}", one, next))
                  .orElse(Text.NONE),
              refused.findings().stream()
                  .flatMap(finding -> finding.fix().stream())
                  .findFirst()
                  .orElse(Text.of("Check the convention.")));
    };
  }

  private void add(Map<String, String> values, String name, String of) {
    if (job.convention().kinds().containsKey(of)
        && job.convention().read(name, of) instanceof Reading.One one) {
      values.putAll(one.fields());
    }
  }

  private static String stem(String file) {
    var name = file.substring(file.lastIndexOf('/') + 1);
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }
}
