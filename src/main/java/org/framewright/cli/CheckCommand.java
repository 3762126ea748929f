package org.framewright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.Problem;
import org.framewright.handoff.spec.Specification;
import org.framewright.naming.Convention;
import org.framewright.naming.Finding;
import org.framewright.naming.Severity;
import org.framewright.naming.Witness;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Proves a convention sound, or shows what is not. */
@Command(
    name = "check",
    description =
        "Reports what is wrong with a convention, each fault with a proof; or with a delivery"
            + " specification.",
    addMethodSubcommands = false)
final class CheckCommand implements Callable<Integer> {
  @Mixin private Output output;

  @Parameters(paramLabel = "CONVENTION", description = "The YAML file.")
  private Path file;

  @Option(
      names = "--frames",
      paramLabel = "N",
      description = "Frames planned for each run of the counter.")
  private long frames;

  @Override
  public Integer call() throws IOException, CommandFailure {
    if (frames < 0) {
      throw CommandFailure.badInput("--frames is " + frames, "Give a number from 1 on.");
    }
    if (Specification.isMeant(file)) {
      return specification();
    }
    return switch (Convention.read(file)) {
      case Convention.Parsed.Faulty(List<Finding> findings) -> {
        write(file.toString(), findings);
        yield ExitStatus.BAD_INPUT.code();
      }
      case Convention.Parsed.Sound(Convention convention) -> {
        var findings = convention.check(frames);
        if (!output.json()) {
          names(convention);
        }
        write(convention.title(), findings);
        yield findings.stream().anyMatch(finding -> finding.severity() == Severity.ERROR)
            ? ExitStatus.NEEDS_A_PERSON.code()
            : ExitStatus.DONE.code();
      }
    };
  }

  private int specification() {
    return switch (Specification.read(file)) {
      case Specification.Parsed.Sound(Specification sound) -> {
        write(sound.title(), asked(sound), List.of());
        yield ExitStatus.DONE.code();
      }
      case Specification.Parsed.Faulty(List<Problem> problems) -> {
        write(file.toString(), Map.of(), problems);
        yield ExitStatus.BAD_INPUT.code();
      }
    };
  }

  private static Map<String, Map<String, String>> asked(Specification sound) {
    var asked = new LinkedHashMap<String, Map<String, String>>();
    sound
        .words()
        .forEach(
            (view, rules) -> {
              var words = new LinkedHashMap<String, String>();
              rules.forEach((rule, text) -> words.put(rule, text.english()));
              asked.put(view, words);
            });
    return asked;
  }

  private void write(String title, Map<String, Map<String, String>> asked, List<Problem> problems) {
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("specification", title);
      document.put("asked", asked);
      document.put(
          "findings",
          problems.stream()
              .map(
                  problem ->
                      Map.of(
                          "where", problem.where(),
                          "message", problem.what(),
                          "remedy", problem.remedy()))
              .toList());
      output.write(document);
      return;
    }
    var out = output.out();
    if (problems.isEmpty()) {
      out.println(PlainText.line(title));
    }
    asked.forEach(
        (view, rules) -> {
          if (!rules.isEmpty()) {
            out.println(
                view.isEmpty() ? "  of all:" : "  of the view " + PlainText.line(view) + ":");
            rules.forEach(
                (rule, words) ->
                    out.println(
                        "    " + rule + ": " + (words.isEmpty() ? "any" : PlainText.line(words))));
          }
        });
    for (var problem : problems) {
      out.println("error " + PlainText.line(problem.sentence()));
      out.println("  Remedy: " + PlainText.line(problem.remedy()));
    }
    out.println(
        problems.isEmpty()
            ? "No fault found: a picture can be as it asks."
            : PlainText.counted(problems.size(), "error"));
  }

  private void names(Convention convention) {
    var out = output.out();
    out.println(PlainText.line(convention.title()));
    out.println();
    convention
        .kinds()
        .forEach(
            (id, kind) -> {
              var longest = convention.longestName(id);
              out.println("  " + id + ": " + PlainText.line(kind.pattern()));
              out.println("    such as  " + shortened(convention.exampleName(id)));
              out.println(
                  "    longest  "
                      + shortened(longest)
                      + "  ("
                      + longest.getBytes(StandardCharsets.UTF_8).length
                      + " bytes without an ending)");
            });
    out.println();
  }

  private static String shortened(String name) {
    return PlainText.line(name.length() <= 80 ? name : name.substring(0, 76) + " ...");
  }

  private void write(String title, List<Finding> findings) {
    if (output.json()) {
      var document = new LinkedHashMap<String, Object>();
      document.put("convention", title);
      document.put("findings", findings.stream().map(ConventionFiles::document).toList());
      output.write(document);
      return;
    }
    var out = output.out();
    for (var finding : findings) {
      out.println(
          "%s %s, %s, line %d, column %d"
              .formatted(
                  finding.severity().word(),
                  finding.rule().id(),
                  PlainText.line(finding.where()),
                  finding.line(),
                  finding.column()));
      out.println("  " + PlainText.line(finding.message()));
      finding.witness().ifPresent(this::write);
      finding.remedy().ifPresent(remedy -> out.println("  Remedy: " + PlainText.line(remedy)));
    }
    out.println(
        findings.isEmpty()
            ? "No fault found: every name reads back in one way, and sorts and travels as it"
                + " should."
            : count(findings));
  }

  private void write(Witness witness) {
    if (!witness.first().isEmpty()) {
      output.out().println("  first:  " + values(witness.first()));
    }
    if (!witness.second().isEmpty()) {
      output.out().println("  second: " + values(witness.second()));
    }
    witness.names().forEach(name -> output.out().println("  name:   " + shortened(name)));
  }

  private static String values(Map<String, String> values) {
    return values.entrySet().stream()
        .map(entry -> entry.getKey() + "=" + PlainText.line(entry.getValue()))
        .collect(Collectors.joining(" "));
  }

  private static String count(List<Finding> findings) {
    var counts = new LinkedHashMap<String, Long>();
    for (var severity : Severity.values()) {
      long count = findings.stream().filter(f -> f.severity() == severity).count();
      if (count > 0) {
        counts.put(severity.word() + (count == 1 ? "" : "s"), count);
      }
    }
    return counts.entrySet().stream()
        .map(entry -> entry.getValue() + " " + entry.getKey())
        .collect(Collectors.joining(", "));
  }
}
