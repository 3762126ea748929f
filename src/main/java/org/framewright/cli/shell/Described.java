package org.framewright.cli.shell;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * What a command says of itself.
 *
 * @param name the words that one types, as {@code framewright studio add}
 * @param synopsis what follows them, on one line
 * @param commands those that are called through it
 */
record Described(
    String name,
    String description,
    String synopsis,
    List<Option> options,
    List<Operand> operands,
    List<Described> commands) {
  /**
   * What an option or an operand takes.
   *
   * @param label as help shows it: {@code FILE}
   * @param words all there are, where they are few
   */
  record Value(String label, boolean file, List<String> words) {}

  /**
   * @param names the short one first
   * @param value absent for a switch
   * @param repeats whether it can be given more than once
   */
  record Option(List<String> names, Optional<Value> value, String description, boolean repeats) {}

  /** What is given without a name. */
  record Operand(Value value, String description, boolean repeats) {}

  /** A command with all that are called through it. */
  static Described of(CommandLine command) {
    var spec = command.getCommandSpec();
    return new Described(
        spec.qualifiedName(),
        plain(spec.usageMessage().description()),
        synopsis(command),
        spec.options().stream()
            .filter(option -> !option.hidden())
            .sorted(Comparator.comparing(option -> option.longestName().replaceAll("^-+", "")))
            .map(Described::option)
            .toList(),
        spec.positionalParameters().stream()
            .filter(operand -> !operand.hidden())
            .map(Described::operand)
            .toList(),
        command.getSubcommands().values().stream().map(Described::of).toList());
  }

  /** Itself, and all that are called through it, each before its own. */
  Stream<Described> all() {
    return Stream.concat(Stream.of(this), commands.stream().flatMap(Described::all));
  }

  /** The last of its words. */
  String word() {
    return name.substring(name.lastIndexOf(' ') + 1);
  }

  /** What it does, in its first sentence, without the full stop. */
  String summary() {
    int end = description.indexOf(". ");
    var sentence = end < 0 ? description : description.substring(0, end);
    return sentence.replaceFirst("\\.$", "");
  }

  private static Option option(OptionSpec option) {
    boolean takesValue = option.arity().max() > 0;
    return new Option(
        List.of(option.names()),
        takesValue ? Optional.of(value(option)) : Optional.empty(),
        plain(option.description()),
        option.isMultiValue());
  }

  private static Operand operand(PositionalParamSpec operand) {
    return new Operand(value(operand), plain(operand.description()), operand.arity().max() > 1);
  }

  private static Value value(ArgSpec arg) {
    var words = new ArrayList<String>();
    if (arg.completionCandidates() != null) {
      arg.completionCandidates().forEach(words::add);
    }
    boolean file = arg.typeInfo().getAuxiliaryTypes()[0] == Path.class;
    return new Value(arg.paramLabel(), file, List.copyOf(words));
  }

  private static String synopsis(CommandLine command) {
    var spec = command.getCommandSpec();
    int width = spec.usageMessage().width();
    spec.usageMessage().width(10_000);
    var line = command.getHelp().synopsis(0).replaceAll("\\s+", " ").strip();
    spec.usageMessage().width(width);
    return line.substring(spec.qualifiedName().length()).strip();
  }

  /** The text of a description, whose percent signs are doubled and whose lines may be several. */
  private static String plain(String[] description) {
    return String.join(" ", description).formatted().replaceAll("\\s+", " ").strip();
  }
}
