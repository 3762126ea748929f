package org.framewright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.PlainText;
import org.framewright.base.SmallFiles;
import org.framewright.base.Text;
import org.framewright.naming.ExampleNames;
import org.framewright.naming.Proposal;
import org.framewright.naming.Proposal.Role;
import org.framewright.naming.ProposalDescription;
import org.framewright.naming.Severity;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Proposes a convention from names in use: asks on the terminal what the options do not say. */
@Command(
    name = "new-convention",
    description = {
      "Proposes a convention from names that a studio already uses, and reads each of them back by"
          + " it.",
      "Without names it asks for them, line by line, and for what their pieces are."
    },
    addMethodSubcommands = false)
final class NewConventionCommand implements Callable<Integer> {
  private static final int MOST_BYTES = 1 << 20;
  private static final Pattern CORRECTION = Pattern.compile("([0-9]{1,3})\\s*[= ]\\s*([a-z]+)");
  private static final String ROLES =
      Arrays.stream(Role.values()).map(Role::word).collect(Collectors.joining(", "));

  @Mixin private Output output;
  @ParentCommand private Framewright program;

  @Parameters(
      paramLabel = "NAME",
      arity = "0..*",
      description = "Names of frames as they are now, with their endings or without.")
  private List<String> names = List.of();

  @Option(
      names = "--names",
      paramLabel = "FILE",
      description = "A text file with such names, one a line.")
  private Path file;

  @Option(names = "--job", paramLabel = "NAME", description = "The name of a job's folder.")
  private String job;

  @Option(
      names = "--title",
      paramLabel = "TEXT",
      description = "What the convention is called.",
      defaultValue = "Our names")
  private String title;

  @Option(
      names = "--piece",
      paramLabel = "N=ROLE",
      description =
          "What a piece of the names is: date, client, title, setup, view, counter, version, text"
              + " or other.")
  private List<String> corrections = List.of();

  @Option(
      names = "--save",
      paramLabel = "FILE",
      description = "Where to save it. A file that exists is never replaced.")
  private Path save;

  @Override
  public Integer call() throws IOException, CommandFailure {
    var given = new ArrayList<>(names);
    if (file != null) {
      new String(SmallFiles.read(file, MOST_BYTES), StandardCharsets.UTF_8)
          .lines()
          .forEach(given::add);
    }
    boolean asks = given.isEmpty();
    var questions = new Questions(program.input());
    if (asks) {
      given.addAll(questions.names());
      job = job == null ? questions.job() : job;
    }
    var examples = ExampleNames.of(given);
    examples.remarks().forEach(remark -> output.err().println("Note: " + remark));
    var proposal = propose(examples);
    for (var correction : corrections) {
      proposal = corrected(proposal, correction);
    }
    if (asks) {
      proposal = questions.corrected(proposal);
      save = save == null ? questions.file() : save;
    }
    if (output.json()) {
      output.write(document(proposal));
    } else {
      ProposalDescription.of(proposal).forEach(output.out()::println);
    }
    if (save != null) {
      save(proposal);
    }
    return proposal.unread().isEmpty()
            && proposal.findings().stream().noneMatch(f -> f.severity() == Severity.ERROR)
        ? ExitStatus.DONE.code()
        : ExitStatus.NEEDS_A_PERSON.code();
  }

  private Proposal propose(ExampleNames examples) throws CommandFailure {
    return Proposal.of(title, examples.names(), Optional.ofNullable(job))
        .orElseThrow(() -> new CommandFailure(ExitStatus.BAD_INPUT, ProposalDescription.noNames()));
  }

  private static Proposal corrected(Proposal proposal, String text) throws CommandFailure {
    var correction = CORRECTION.matcher(text.strip().toLowerCase(Locale.ROOT));
    if (correction.matches()) {
      int piece = Integer.parseInt(correction.group(1));
      var role =
          Arrays.stream(Role.values())
              .filter(other -> other.word().equals(correction.group(2)))
              .findFirst();
      if (role.isPresent() && proposal.canBe(piece, role.get())) {
        return proposal.with(piece, role.get());
      }
      if (role.isPresent() && piece >= 1 && piece <= proposal.pieces().size()) {
        var other = proposal.pieces().get(piece - 1);
        throw CommandFailure.badInput(
            "piece %d, %s, is no %s"
                .formatted(piece, ProposalDescription.values(other), role.get().word()),
            "It can be " + ProposalDescription.choices(other) + ".");
      }
    }
    throw CommandFailure.badInput(
        "“" + PlainText.line(text) + "” does not say what a piece is",
        "Write a number from 1 to "
            + proposal.pieces().size()
            + ", = and one of "
            + ROLES
            + ", such as 2=client.");
  }

  private void save(Proposal proposal) throws IOException, CommandFailure {
    var refused = proposal.save(save);
    if (refused.isPresent()) {
      throw new CommandFailure(ExitStatus.REFUSED, refused.get());
    }
    output.err().println("Saved as " + PlainText.line(save.toString()));
  }

  private static Map<String, Object> document(Proposal proposal) {
    var document = new LinkedHashMap<String, Object>();
    document.put("convention", proposal.yaml());
    document.put(
        "pieces",
        proposal.pieces().stream()
            .map(
                piece -> {
                  var one = new LinkedHashMap<String, Object>();
                  one.put("piece", piece.number());
                  one.put("role", piece.role().word());
                  one.put("values", piece.values());
                  one.put("optional", piece.optional());
                  one.put("choices", piece.choices().stream().map(Role::word).toList());
                  one.put("question", piece.question().map(Text::english).orElse(null));
                  one.put("field", piece.field().orElse(null));
                  return one;
                })
            .toList());
    document.put("findings", proposal.findings().stream().map(ConventionFiles::document).toList());
    document.put(
        "unread",
        proposal.unread().stream()
            .map(
                unread -> {
                  var one = new LinkedHashMap<String, Object>();
                  one.put("name", unread.example());
                  one.put("why", unread.why());
                  return one;
                })
            .toList());
    return document;
  }

  /** What is asked on the terminal; the questions go to standard error. */
  private final class Questions {
    private final BufferedReader input;

    Questions(BufferedReader input) {
      this.input = input;
    }

    private String ask(String question) throws IOException {
      output.err().println(question);
      output.err().flush();
      var answer = input.readLine();
      return answer == null ? "" : answer.strip();
    }

    List<String> names() throws IOException {
      var given = new ArrayList<String>();
      var answer =
          ask("Names of frames as you have them now, one a line; an empty line after the last:");
      while (!answer.isEmpty() && given.size() < ExampleNames.MOST) {
        given.add(answer);
        var next = input.readLine();
        answer = next == null ? "" : next.strip();
      }
      return given;
    }

    String job() throws IOException {
      return ask("The name of a job's folder, or an empty line for one that begins with the date:");
    }

    Proposal corrected(Proposal first) throws IOException {
      var proposal = first;
      while (true) {
        ProposalDescription.pieces(proposal).forEach(output.err()::println);
        var answer = ask("An empty line if that is so; else a correction, such as 2=client:");
        if (answer.isEmpty()) {
          return proposal;
        }
        try {
          proposal = NewConventionCommand.corrected(proposal, answer);
        } catch (CommandFailure e) {
          output.err().println(e.problem().what() + ". " + e.problem().remedy());
        }
      }
    }

    Path file() throws IOException {
      var answer = ask("Where to save it, or an empty line to show it only:");
      return answer.isEmpty() ? null : Path.of(answer);
    }
  }
}
