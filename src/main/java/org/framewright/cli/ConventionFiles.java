package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Witness;

/** Conventions as commands take them, and findings as commands report them. */
final class ConventionFiles {
  private ConventionFiles() {}

  /** Reads a convention that must be usable. */
  static Convention read(Path file) throws IOException, CommandFailure {
    return switch (Convention.read(file)) {
      case Convention.Parsed.Sound(Convention convention) -> convention;
      case Convention.Parsed.Faulty(List<Finding> findings) ->
          throw CommandFailure.badInput(
              "%s:%d:%d: %s"
                  .formatted(
                      PlainText.line(file.toString()),
                      findings.getFirst().line(),
                      findings.getFirst().column(),
                      PlainText.line(findings.getFirst().message())),
              findings.size() == 1
                  ? findings.getFirst().remedy().orElse("")
                  : "framewright check "
                      + PlainText.line(file.toString())
                      + " shows all "
                      + findings.size()
                      + " faults.");
    };
  }

  /** What findings say, in one line: what and its remedy. */
  static CommandFailure refused(List<Finding> findings) {
    return CommandFailure.badInput(
        findings.stream().map(Finding::message).collect(Collectors.joining("; ")),
        findings.stream().flatMap(f -> f.remedy().stream()).collect(Collectors.joining(" ")));
  }

  static Map<String, Object> document(Finding finding) {
    var document = new LinkedHashMap<String, Object>();
    document.put("rule", finding.rule().id());
    document.put("severity", finding.severity().word());
    document.put("where", finding.where());
    document.put("line", finding.line());
    document.put("column", finding.column());
    document.put("message", finding.message());
    document.put("witness", finding.witness().map(ConventionFiles::document).orElse(null));
    document.put("remedy", finding.remedy().orElse(null));
    return document;
  }

  private static Map<String, Object> document(Witness witness) {
    var document = new LinkedHashMap<String, Object>();
    document.put("first", witness.first());
    document.put("second", witness.second());
    document.put("names", witness.names());
    return document;
  }

  /** The values given as {@code field=value}. */
  static Map<String, String> values(Convention convention, List<String> pairs)
      throws CommandFailure {
    var values = new LinkedHashMap<String, String>();
    for (var pair : pairs) {
      int equals = pair.indexOf('=');
      if (equals <= 0) {
        throw CommandFailure.badInput(
            "“" + PlainText.line(pair) + "” is not field=value", "Write it such as client=NOVA.");
      }
      var field = pair.substring(0, equals);
      if (!convention.fields().containsKey(field)) {
        throw CommandFailure.badInput(
            "there is no field “" + PlainText.line(field) + "” in " + convention.source(),
            "Fields: " + String.join(", ", convention.fields().keySet()) + ".");
      }
      values.put(field, pair.substring(equals + 1));
    }
    return values;
  }

  /** Refuses a kind that the convention lacks. */
  static void requireKind(Convention convention, String kind) throws CommandFailure {
    if (!convention.kinds().containsKey(kind)) {
      throw CommandFailure.badInput(
          "there is no kind of name “" + PlainText.line(kind) + "” in " + convention.source(),
          "Kinds: " + String.join(", ", convention.kinds().keySet()) + ".");
    }
  }
}
