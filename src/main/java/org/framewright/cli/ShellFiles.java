package org.framewright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.framewright.cli.shell.Completions;
import org.framewright.cli.shell.ManualPages;
import org.framewright.copies.device.Volumes;
import picocli.CommandLine;

/**
 * Writes what comes with the program but is made from its commands: manual pages, completions and
 * the help that {@link Prepared} answers with. Run when the program is packaged.
 */
final class ShellFiles {
  private ShellFiles() {}

  /**
   * Writes them all.
   *
   * @param args the program's folder, and when it was released, as {@code 2026-11-25T00:00:00Z}
   */
  public static void main(String[] args) throws IOException {
    write(Path.of(args[0]), args[1].substring(0, args[1].indexOf('T')));
  }

  static void write(Path home, String date) throws IOException {
    var program = program();
    ManualPages.write(program, date, home.resolve("man/man1"));
    Completions.write(program, home.resolve("completions"));
    Files.writeString(
        home.resolve(Prepared.HELP),
        program.getUsageMessage(CommandLine.Help.Ansi.OFF).replace(System.lineSeparator(), "\n"));
  }

  /** All commands as they describe themselves; none can be run. */
  static CommandLine program() {
    Framewright.Window none =
        new Framewright.Window() {
          @Override
          public boolean hasDisplay() {
            return false;
          }

          @Override
          public void open(Optional<Path> job) {
            throw new IllegalStateException("This only describes the commands.");
          }
        };
    var silent = new BufferedReader(Reader.nullReader());
    return Commands.all(new Framewright(none, silent, Volumes::ofThisSystem));
  }
}
