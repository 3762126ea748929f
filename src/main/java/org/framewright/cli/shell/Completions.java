package org.framewright.cli.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.framewright.base.Program;
import picocli.AutoComplete;
import picocli.CommandLine;

/** Files that complete commands, options and their values in a shell. */
public final class Completions {
  private Completions() {}

  /** Writes a file for each of bash, zsh and fish, under the name that the shell looks for. */
  public static void write(CommandLine program, Path folder) throws IOException {
    Files.createDirectories(folder);
    var described = Described.of(program);
    Files.writeString(
        folder.resolve(Program.NAME + ".bash"), AutoComplete.bash(Program.NAME, program));
    Files.writeString(folder.resolve("_" + Program.NAME), zsh(described));
    Files.writeString(folder.resolve(Program.NAME + ".fish"), fish(described));
  }

  private static String zsh(Described program) {
    return "#compdef framewright\n_framewright() {\n  local -a commands\n"
        + zsh(program, "  ")
        + "}\n_framewright \"$@\"\n";
  }

  /** What is offered behind the words of a command; its last word is the first that zsh sees. */
  private static String zsh(Described command, String indent) {
    var own =
        indent
            + "_arguments -s"
            + zshOptions(command, indent)
            + zshOperands(command, indent)
            + "\n";
    if (command.commands().isEmpty()) {
      return own;
    }
    var script = new StringBuilder();
    script.append(indent).append("if (( CURRENT == 2 )); then\n");
    script.append(indent).append("  commands=(\n");
    for (var one : command.commands()) {
      script.append(indent).append("    ");
      script.append(quoted(one.word() + ":" + zshText(one.summary()))).append('\n');
    }
    script.append(indent).append("  )\n");
    script.append(indent).append("  _describe -t commands command commands\n");
    script.append(indent).append("fi\n");
    script.append(indent).append("case ${words[2]} in\n");
    for (var one : command.commands()) {
      script.append(indent).append("  ").append(one.word()).append(")\n");
      script.append(indent).append("    if (( CURRENT > 2 )); then\n");
      script.append(indent).append("      shift words\n");
      script.append(indent).append("      (( CURRENT-- ))\n");
      script.append(zsh(one, indent + "      "));
      script.append(indent).append("    fi ;;\n");
    }
    script.append(indent).append("  *)\n").append(own.indent(4)).append(indent).append("    ;;\n");
    return script.append(indent).append("esac\n").toString();
  }

  private static String zshOptions(Described command, String indent) {
    return command.options().stream()
        .map(
            option -> {
              var names = option.names().stream().map(name -> zshName(name, option)).toList();
              boolean single = names.size() == 1;
              return " \\\n"
                  + indent
                  + "  "
                  + (option.repeats() ? "'*'" : single ? "" : quoted(exclusive(option)))
                  + (single ? names.getFirst() : "{" + String.join(",", names) + "}")
                  + quoted("[" + zshText(option.description()) + "]" + zshValue(option));
            })
        .collect(Collectors.joining());
  }

  /** Once one of its names was typed, the others are no longer offered. */
  private static String exclusive(Described.Option option) {
    return "(" + String.join(" ", option.names()) + ")";
  }

  /** A name with the sign for a value that is its own word or follows in the same one. */
  private static String zshName(String name, Described.Option option) {
    return option.value().isEmpty() ? name : name + (name.startsWith("--") ? "=" : "+");
  }

  private static String zshValue(Described.Option option) {
    return option
        .value()
        .map(value -> ":" + zshText(value.label()) + ":" + zshAction(value))
        .orElse("");
  }

  private static String zshOperands(Described command, String indent) {
    return command.operands().stream()
        .map(
            operand ->
                " \\\n"
                    + indent
                    + "  "
                    + quoted(
                        (operand.repeats() ? "*:" : ":")
                            + zshText(operand.value().label())
                            + ":"
                            + zshAction(operand.value())))
        .collect(Collectors.joining());
  }

  private static String zshAction(Described.Value value) {
    if (!value.words().isEmpty()) {
      return "(" + String.join(" ", value.words()) + ")";
    }
    return value.file() ? "_files" : " ";
  }

  /** Text within brackets or before a colon. */
  private static String zshText(String text) {
    return text.replaceAll("([\\\\\\[\\]:])", "\\\\$1");
  }

  private static String fish(Described program) {
    var script = new StringBuilder("complete -c framewright -f\n");
    fish(script, program, "__fish_use_subcommand");
    return script.toString();
  }

  /** What is offered where a condition of fish holds, which is that the command was typed. */
  private static void fish(StringBuilder script, Described command, String condition) {
    for (var one : command.commands()) {
      script.append(
          "complete -c framewright -n %s -a %s -d %s\n"
              .formatted(condition, one.word(), fishText(one.summary())));
    }
    options(script, command, condition);
    for (var operand : command.operands()) {
      if (!operand.value().words().isEmpty()) {
        script.append(
            "complete -c framewright -n %s -a %s\n"
                .formatted(condition, fishText(String.join(" ", operand.value().words()))));
      } else if (operand.value().file()) {
        script.append("complete -c framewright -n %s -F\n".formatted(condition));
      }
    }
    for (var one : command.commands()) {
      var words = one.name().substring(Program.NAME.length() + 1).split(" ", -1);
      var typed =
          Arrays.stream(words)
              .map("__fish_seen_subcommand_from "::concat)
              .collect(Collectors.joining("; and "));
      fish(script, one, "'" + typed + "'");
    }
  }

  private static void options(StringBuilder script, Described command, String condition) {
    for (var option : command.options()) {
      script.append("complete -c framewright -n ").append(condition);
      for (var name : option.names()) {
        script.append(name.startsWith("--") ? " -l " : " -s ").append(name.replaceAll("^-+", ""));
      }
      option
          .value()
          .ifPresent(
              value -> {
                script.append(value.file() ? " -r -F" : " -x");
                if (!value.words().isEmpty()) {
                  script.append(" -a ").append(fishText(String.join(" ", value.words())));
                }
              });
      script.append(" -d ").append(fishText(option.description())).append('\n');
    }
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "'\\''") + "'";
  }

  private static String fishText(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }
}
