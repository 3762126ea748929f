package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SequencedMap;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.naming.Built;
import org.framewright.naming.Finding;
import org.framewright.naming.Step;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Builds one name. */
@Command(
    name = "name",
    description = "Builds a name from values, and shows how people's text became legal text.",
    addMethodSubcommands = false)
final class NameCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(index = "0", paramLabel = "KIND", description = "The kind of name, such as frame.")
  private String kind;

  @Option(
      names = "--by",
      required = true,
      paramLabel = "CONVENTION",
      description = "The convention's YAML file.")
  private Path file;

  @Parameters(
      index = "1..*",
      arity = "0..*",
      paramLabel = "field=value",
      description = "The values: text, ISO 8601 dates, plain numbers.")
  private List<String> pairs = List.of();

  @Override
  public Integer call() throws IOException, CommandFailure {
    var convention = ConventionFiles.read(file);
    ConventionFiles.requireKind(convention, kind);
    var values = ConventionFiles.values(convention, pairs);
    return switch (convention.build(kind, values)) {
      case Built.Refused(List<Finding> findings) -> throw ConventionFiles.refused(findings);
      case Built.Name(String text, SequencedMap<String, String> settled, List<Step> steps) -> {
        if (output.json()) {
          var document = new LinkedHashMap<String, Object>();
          document.put("name", text);
          document.put("kind", kind);
          document.put("fields", settled);
          document.put("steps", steps.stream().map(NameCommand::document).toList());
          output.write(document);
        } else {
          steps.forEach(step -> output.err().println(step.description()));
          output.out().println(PlainText.line(text));
        }
        yield ExitStatus.DONE.code();
      }
    };
  }

  private static Map<String, String> document(Step step) {
    var document = new LinkedHashMap<String, String>();
    document.put("field", step.field());
    document.put("given", step.given());
    document.put("became", step.became());
    document.put("rule", step.rule());
    return document;
  }
}
