package org.framewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.Reader;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.framewright.copies.device.Volumes;
import org.framewright.ui.Launch;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The program's entry: {@code framewright COMMAND ...}. */
@Command(
    name = "framewright",
    description = "Names, shot list, renames and hand-off for the day of a commercial shoot.",
    mixinStandardHelpOptions = true,
    version = "framewright 0.1.0")
public final class Framewright implements Runnable {
  /** The app, as far as the command line knows it. */
  interface Window {
    boolean hasDisplay();

    /** Opens the app, with a job if one is given, and returns when it is closed. */
    void open(Optional<Path> job);
  }

  /** The commands, in the order in which help lists them. */
  static final List<String> COMMANDS =
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
          "report",
          "returns",
          "serve",
          "slates",
          "studio",
          "verify");

  private static final Window APP =
      new Window() {
        @Override
        public boolean hasDisplay() {
          return Launch.hasDisplay();
        }

        @Override
        public void open(Optional<Path> job) {
          Launch.open(job);
        }
      };

  private final Window window;
  private final BufferedReader input;
  private final Supplier<Volumes> volumes;
  @Spec private CommandSpec spec;

  private Framewright(Window window, BufferedReader input, Supplier<Volumes> volumes) {
    this.window = window;
    this.input = input;
    this.volumes = volumes;
  }

  /** The disks of this computer. */
  Volumes volumes() {
    return volumes.get();
  }

  /** What a person answers, for commands that ask. */
  BufferedReader input() {
    return input;
  }

  Window window() {
    return window;
  }

  @Override
  public void run() {
    if (window.hasDisplay()) {
      window.open(Optional.empty());
      return;
    }
    throw new CommandLine.ParameterException(
        spec.commandLine(), "Say what to do: framewright COMMAND.");
  }

  /** A command by its name; a switch, so that only the class of the one that is meant is loaded. */
  private static Optional<Class<?>> command(String name) {
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
      case "report" -> Optional.of(ReportCommand.class);
      case "returns" -> Optional.of(ReturnsCommand.class);
      case "serve" -> Optional.of(ServeCommand.class);
      case "slates" -> Optional.of(SlatesCommand.class);
      case "studio" -> Optional.of(StudioCommand.class);
      case "verify" -> Optional.of(VerifyCommand.class);
      default -> Optional.empty();
    };
  }

  /** Reflection over all commands takes longer than most of them: one that is named suffices. */
  private static void addCommands(CommandLine line, String[] args) {
    var named = args.length == 0 ? Optional.<Class<?>>empty() : command(args[0]);
    named.ifPresentOrElse(
        line::addSubcommand,
        () -> COMMANDS.forEach(name -> line.addSubcommand(command(name).orElseThrow())));
  }

  /** Runs one command and exits with its status. */
  public static void main(String[] args) {
    var out = TerminalText.to(System.out, TerminalText.charset(System.out.charset()));
    var err = TerminalText.to(System.err, TerminalText.charset(System.err.charset()));
    var answers = TerminalText.charset(TerminalText.typed());
    System.exit(run(APP, Path::of, new InputStreamReader(System.in, answers), out, err, args));
  }

  /** Runs one command with the given streams; returns the exit status of the contract. */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    return run(APP, out, err, args);
  }

  /** The same with another window than the app's. */
  static int run(Window window, PrintWriter out, PrintWriter err, String... args) {
    return run(window, Path::of, out, err, args);
  }

  /** The same on the file system that {@code paths} leads to. */
  static int run(
      Window window,
      CommandLine.ITypeConverter<Path> paths,
      PrintWriter out,
      PrintWriter err,
      String... args) {
    return run(window, paths, new InputStreamReader(System.in, UTF_8), out, err, args);
  }

  /** The same with the answers of a person. */
  static int run(
      Window window,
      CommandLine.ITypeConverter<Path> paths,
      Reader answers,
      PrintWriter out,
      PrintWriter err,
      String... args) {
    return run(window, paths, answers, Volumes::ofThisSystem, out, err, args);
  }

  /** The same on other disks. */
  static int run(
      Window window,
      CommandLine.ITypeConverter<Path> paths,
      Reader answers,
      Supplier<Volumes> volumes,
      PrintWriter out,
      PrintWriter err,
      String... args) {
    var plainOut = new PlainWriter(out);
    var plainErr = new PlainWriter(err);
    var line = new CommandLine(new Framewright(window, new BufferedReader(answers), volumes));
    addCommands(line, args); // first, since what follows is set for the commands that are there
    line.setOut(plainOut)
        .setErr(plainErr)
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .registerConverter(Path.class, paths)
        .setParameterExceptionHandler(Framewright::usage)
        .setExecutionExceptionHandler(Framewright::failed);
    try {
      return line.execute(args);
    } catch (StackOverflowError | OutOfMemoryError | LinkageError e) {
      return Failure.of(e).print(plainErr);
    } finally {
      plainOut.flush();
      plainErr.flush();
    }
  }

  private static int usage(CommandLine.ParameterException e, String[] args) {
    var line = e.getCommandLine();
    line.getErr()
        .println(
            "framewright: "
                + e.getMessage().replaceFirst("^Error: ", "").lines().findFirst().orElse(""));
    line.getErr().println("See: " + line.getCommandSpec().qualifiedName() + " --help");
    return ExitStatus.BAD_INPUT.code();
  }

  private static int failed(Exception e, CommandLine line, CommandLine.ParseResult parsed) {
    return Failure.of(e).print(line.getErr());
  }
}
