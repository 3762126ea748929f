package org.framewright.cli.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
    var all = Described.all(program);
    Files.writeString(
        folder.resolve(Program.NAME + ".bash"), AutoComplete.bash(Program.NAME, program));
    Files.writeString(folder.resolve("_" + Program.NAME), zsh(all));
    Files.writeString(folder.resolve(Program.NAME + ".fish"), fish(all));
  }

  private static String zsh(List<Described> all) {
    var script = new StringBuilder();
    script.append(
        """
        #compdef framewright
        _framewright() {
          local -a commands
          commands=(
        """);
    commands(all)
        .forEach(
            command ->
                script.append(
                    "    %s\n"
                        .formatted(quoted(command.name() + ":" + zshText(command.summary())))));
    script.append(
        "  )\n  if (( CURRENT == 2 )); then\n    _describe -t commands command commands\n");
    script
        .append("    _arguments")
        .append(zshOptions(all.getFirst()))
        .append("\n    return\n  fi\n");
    script.append(
        "  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n");
    commands(all)
        .forEach(
            command ->
                script
                    .append("    %s)\n      _arguments -s".formatted(command.name()))
                    .append(zshOptions(command))
                    .append(zshOperands(command))
                    .append(" ;;\n"));
    return script.append("  esac\n}\n_framewright \"$@\"\n").toString();
  }

  private static String zshOptions(Described command) {
    return command.options().stream()
        .map(
            option -> {
              var names = option.names().stream().map(name -> zshName(name, option)).toList();
              boolean single = names.size() == 1;
              return " \\\n        "
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

  private static String zshOperands(Described command) {
    return command.operands().stream()
        .map(
            operand ->
                " \\\n        "
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

  private static String fish(List<Described> all) {
    var script = new StringBuilder("complete -c framewright -f\n");
    for (var command : commands(all)) {
      script.append(
          "complete -c framewright -n __fish_use_subcommand -a %s -d %s\n"
              .formatted(command.name(), fishText(command.summary())));
    }
    options(script, all.getFirst(), "__fish_use_subcommand");
    for (var command : commands(all)) {
      var here = "'__fish_seen_subcommand_from " + command.name() + "'";
      options(script, command, here);
      for (var operand : command.operands()) {
        if (!operand.value().words().isEmpty()) {
          script.append(
              "complete -c framewright -n %s -a %s\n"
                  .formatted(here, fishText(String.join(" ", operand.value().words()))));
        } else if (operand.value().file()) {
          script.append("complete -c framewright -n %s -F\n".formatted(here));
        }
      }
    }
    return script.toString();
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

  private static List<Described> commands(List<Described> all) {
    return all.stream().filter(command -> !command.name().isEmpty()).toList();
  }

  private static String quoted(String text) {
    return "'" + text.replace("'", "'\\''") + "'";
  }

  private static String fishText(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }
}
