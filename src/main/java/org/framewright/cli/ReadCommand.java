package org.framewright.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.framewright.base.PlainText;
import org.framewright.naming.Convention;
import org.framewright.naming.Reading;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Reads a name back. */
@Command(
    name = "read",
    description = "Shows what a name says, or why it is no name of the convention.",
    addMethodSubcommands = false)
final class ReadCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(paramLabel = "NAME", description = "The name, with its file ending or without.")
  private String name;

  @Option(
      names = "--by",
      required = true,
      paramLabel = "CONVENTION",
      description = "The convention's YAML file.")
  private Path file;

  @Option(names = "--kind", paramLabel = "KIND", description = "Read it as this kind of name only.")
  private String kind;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var convention = ConventionFiles.read(file);
    if (kind != null) {
      ConventionFiles.requireKind(convention, kind);
    }
    var reading = read(convention, name);
    int dot = name.lastIndexOf('.');
    if (reading instanceof Reading.None && dot > 0) {
      var stem = read(convention, name.substring(0, dot));
      // An ending is set aside where the rest is a name, or where only the ending was amiss.
      if (!(stem instanceof Reading.None none && none.position() < dot)) {
        reading = stem;
      }
    }
    return switch (reading) {
      case Reading.One one -> {
        if (output.json()) {
          output.write(document(one));
        } else {
          write(one);
        }
        yield ExitStatus.DONE.code();
      }
      case Reading.Several(List<Reading.One> readings) -> {
        if (output.json()) {
          output.write(Map.of("readings", readings.stream().map(ReadCommand::document).toList()));
        } else {
          readings.forEach(this::write);
        }
        output
            .err()
            .println("framewright: " + PlainText.line(name) + " can be read in more than one way");
        output.err().println("See: framewright check " + PlainText.line(file.toString()));
        yield ExitStatus.NEEDS_A_PERSON.code();
      }
      case Reading.None none -> {
        if (output.json()) {
          var document = new LinkedHashMap<String, Object>();
          document.put("kind", null);
          document.put("fields", Map.of());
          document.put("position", none.position());
          document.put("expected", none.expected());
          document.put("message", none.message());
          output.write(document);
        } else {
          output.err().println("framewright: " + PlainText.line(none.message()));
          var before = PlainText.line(name.substring(0, none.position()));
          output.err().println("  " + before + PlainText.line(name.substring(none.position())));
          output.err().println("  " + " ".repeat(before.length()) + "^");
        }
        yield ExitStatus.NEEDS_A_PERSON.code();
      }
    };
  }

  private Reading read(Convention convention, String text) {
    return kind == null ? convention.read(text) : convention.read(text, kind);
  }

  private void write(Reading.One one) {
    output.out().println("kind: " + one.kind());
    one.fields()
        .forEach((field, value) -> output.out().println(field + ": " + PlainText.line(value)));
  }

  private static Map<String, Object> document(Reading.One one) {
    var document = new LinkedHashMap<String, Object>();
    document.put("kind", one.kind());
    document.put("fields", one.fields());
    return document;
  }
}
