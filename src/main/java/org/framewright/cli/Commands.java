package org.framewright.cli;

import java.util.List;
import java.util.Optional;
import org.framewright.base.Program;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.UsageMessageSpec;

/** The commands of the program, by their names. */
final class Commands {
  /** In the order in which help lists them. */
  static final List<String> NAMES =
      List.of(
          "check",
          "name",
          "new-convention",
          "read",
          "open",
          "start",
          "list",
          "mark",
          "rename",
          "undo",
          "recover",
          "batches",
          "copy",
          "copies",
          "day",
          "deliver",
          "demo",
          "frames",
          "ready",
          "report",
          "returns",
          "serve",
          "slates",
          "studio",
          "verify");

  private static final List<String> HELP = List.of("--help", "-h");

  private Commands() {}

  /** A command by its name; a switch, so that only the class of the one that is meant is loaded. */
  private static Optional<Class<?>> named(String name) {
    return switch (name) {
      case "check" -> Optional.of(CheckCommand.class);
      case "name" -> Optional.of(NameCommand.class);
      case "new-convention" -> Optional.of(NewConventionCommand.class);
      case "read" -> Optional.of(ReadCommand.class);
      case "open" -> Optional.of(OpenCommand.class);
      case "start" -> Optional.of(StartCommand.class);
      case "list" -> Optional.of(ListCommand.class);
      case "mark" -> Optional.of(MarkCommand.class);
      case "rename" -> Optional.of(RenameCommand.class);
      case "undo" -> Optional.of(UndoCommand.class);
      case "recover" -> Optional.of(RecoverCommand.class);
      case "batches" -> Optional.of(BatchesCommand.class);
      case "copy" -> Optional.of(CopyCommand.class);
      case "copies" -> Optional.of(CopiesCommand.class);
      case "day" -> Optional.of(DayCommand.class);
      case "deliver" -> Optional.of(DeliverCommand.class);
      case "demo" -> Optional.of(DemoCommand.class);
      case "frames" -> Optional.of(FramesCommand.class);
      case "ready" -> Optional.of(ReadyCommand.class);
      case "report" -> Optional.of(ReportCommand.class);
      case "returns" -> Optional.of(ReturnsCommand.class);
      case "serve" -> Optional.of(ServeCommand.class);
      case "slates" -> Optional.of(SlatesCommand.class);
      case "studio" -> Optional.of(StudioCommand.class);
      case "verify" -> Optional.of(VerifyCommand.class);
      default -> Optional.empty();
    };
  }

  /** The program with all that it can do. */
  static CommandLine all(Framewright program) {
    var line = bare(program);
    NAMES.forEach(name -> add(named(name).orElseThrow(), line));
    return line;
  }

  /**
   * The program with as much of what it can do as these arguments ask for: reflection over all
   * options of all commands takes longer than most commands.
   */
  static CommandLine neededFor(String[] args, Framewright program) {
    var first = args.length == 0 ? "" : args[0];
    var command = named(first);
    if (command.isPresent()) {
      var line = bare(program);
      add(command.get(), line);
      return line;
    }
    return args.length == 1 && HELP.contains(first) ? described(program) : all(program);
  }

  /** Knows of each command what help says of it in the list of all. */
  private static CommandLine described(Framewright program) {
    var line = bare(program);
    for (var name : NAMES) {
      var description = named(name).orElseThrow().getAnnotation(Command.class).description();
      line.addSubcommand(
          name, CommandSpec.create().usageMessage(new UsageMessageSpec().description(description)));
    }
    return line;
  }

  private static CommandLine bare(Framewright program) {
    var spec = CommandSpec.wrapWithoutInspection(program);
    spec.name(Program.NAME);
    spec.usageMessage()
        .description("Names, shot list, renames and hand-off for the day of a commercial shoot.");
    return new CommandLine(withHelp(spec));
  }

  private static void add(Class<?> command, CommandLine line) {
    var made = new CommandLine(command);
    helpThroughout(made);
    line.addSubcommand(made);
  }

  private static void helpThroughout(CommandLine command) {
    withHelp(command.getCommandSpec());
    command.getSubcommands().values().forEach(Commands::helpThroughout);
  }

  /** What picocli's own mixin of these two options says, without the reflection over it. */
  private static CommandSpec withHelp(CommandSpec spec) {
    return spec.version(Framewright.VERSION)
        .addOption(
            OptionSpec.builder("-h", "--help")
                .usageHelp(true)
                .description("Show this help message and exit.")
                .build())
        .addOption(
            OptionSpec.builder("-V", "--version")
                .versionHelp(true)
                .description("Print version information and exit.")
                .build());
  }
}
