package org.framewright.ui.naming;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import org.framewright.base.Text;
import org.framewright.naming.Built;
import org.framewright.naming.Convention;
import org.framewright.naming.FieldType;
import org.framewright.naming.Finding;

/**
 * What a text is as a convention.
 *
 * @param title the convention's own; empty while the text is none
 * @param findings what is so about it: errors first, then by their place in the text
 * @param examples one name of each kind, made of each field's example; empty while it is none
 */
record Checked(Optional<String> title, List<Finding> findings, List<Example> examples) {
  static final Checked NOTHING = new Checked(Optional.empty(), List.of(), List.of());

  /**
   * A name as the convention makes them.
   *
   * @param name the name, or why there is none
   * @param made whether it is one
   */
  record Example(String kind, String pattern, Text name, boolean made) {}

  /**
   * @param framesPlanned for each run of a counter; 0 if unknown
   */
  static Checked of(String text, String sourceName, long framesPlanned) {
    return switch (Convention.parse(text, sourceName)) {
      case Convention.Parsed.Faulty faulty ->
          new Checked(Optional.empty(), inOrder(faulty.findings()), List.of());
      case Convention.Parsed.Sound sound ->
          new Checked(
              Optional.of(sound.convention().title()),
              inOrder(sound.convention().check(framesPlanned)),
              examples(sound.convention()));
    };
  }

  private static List<Finding> inOrder(List<Finding> findings) {
    return findings.stream()
        .sorted(
            Comparator.comparing(Finding::severity)
                .thenComparingInt(Finding::line)
                .thenComparingInt(Finding::column))
        .toList();
  }

  private static List<Example> examples(Convention convention) {
    var values = new HashMap<String, String>();
    for (var field : convention.fields().values()) {
      if (field.type() != FieldType.FIXED) {
        values.put(field.name(), field.example());
      }
    }
    var examples = new ArrayList<Example>();
    for (var kind : convention.kinds().values()) {
      examples.add(
          switch (convention.build(kind.id(), values)) {
            case Built.Name name ->
                new Example(kind.id(), kind.pattern(), Text.of(name.text()), true);
            case Built.Refused refused ->
                new Example(
                    kind.id(),
                    kind.pattern(),
                    refused.findings().stream().findFirst().map(Finding::said).orElse(Text.NONE),
                    false);
          });
    }
    return List.copyOf(examples);
  }
}
