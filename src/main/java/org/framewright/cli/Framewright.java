package org.framewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.Reader;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Supplier;
import org.framewright.base.Program;
import org.framewright.copies.device.Volumes;
import org.framewright.ui.Launch;
import picocli.CommandLine;

/** The program's entry: {@code framewright COMMAND ...}. */
public final class Framewright implements Callable<Integer> {
  /** The app, as far as the command line knows it. */
  interface Window {
    boolean hasDisplay();

    /** Opens the app, with a job if one is given, and returns when it is closed. */
    void open(Optional<Path> job);
  }

  static final String VERSION = Program.NAME + " " + Program.VERSION;

  private static final Window APP =
      new Window() {
        @Override
        public boolean hasDisplay() {
          return Launch.hasDisplay();
        }

        @Override
        public void open(Optional<Path> job) {
          Launch.open(job);
          System.exit(ExitStatus.DONE.code()); // Java's desktop may have left threads that wait.
        }
      };

  private final Window window;
  private final BufferedReader input;
  private final Supplier<Volumes> volumes;

  Framewright(Window window, BufferedReader input, Supplier<Volumes> volumes) {
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

  /** Without a command: the app, where there is a display. */
  @Override
  public Integer call() throws CommandFailure {
    if (window.hasDisplay()) {
      window.open(Optional.empty());
      return ExitStatus.DONE.code();
    }
    throw CommandFailure.badInput(
        "Say what to do: framewright COMMAND.", "See: framewright --help");
  }

  /**
   * Runs one command and exits with its status. To exit without a fault it returns: {@link
   * System#exit} first looks for a logger, which takes as long as a short command.
   */
  public static void main(String[] args) {
    // Else picocli looks for a class of Groovy, in every jar.
    System.setProperty("picocli.disable.closures", "true");
    var out = TerminalText.to(System.out, TerminalText.charset(System.out.charset()));
    var err = TerminalText.to(System.err, TerminalText.charset(System.err.charset()));
    var answers = new InputStreamReader(System.in, TerminalText.typed());
    Thread.ofPlatform().daemon().start(Framewright::prepareNumbers);
    int status = run(APP, Path::of, answers, out, err, args);
    if (status != ExitStatus.DONE.code()) {
      System.exit(status);
    }
  }

  /**
   * Whatever reads YAML or JSON needs this class, and before anything else it works out powers of
   * five of 150,000 bits: that takes as long as the main thread takes to read the command line.
   */
  private static void prepareNumbers() {
    var _ = BigDecimal.ZERO;
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
    var answer = Prepared.answer(args);
    if (answer.isPresent()) {
      plainOut.print(answer.get());
      plainOut.flush();
      return ExitStatus.DONE.code();
    }
    var program = new Framewright(window, new BufferedReader(answers), volumes);
    var line = Commands.neededFor(args, program);
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
