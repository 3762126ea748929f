package org.framewright.cli.shell;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.framewright.base.Program;
import picocli.CommandLine;

/** Manual pages in the macros of man(7): {@code framewright.1}, {@code framewright-check.1} ... */
public final class ManualPages {
  private static final String EXIT_STATUS =
      """
      .TP
      .B 0
      Done, and no error was found.
      .TP
      .B 1
      Done, and something needs a person: an error finding, a rename that is blocked or was left out, a missing copy.
      .TP
      .B 2
      Bad input or usage; nothing was changed.
      .TP
      .B 3
      Refused for safety; nothing was changed.
      .TP
      .B 4
      Interrupted or failed half-way; the message says how to recover.
      """;

  private static final String ENVIRONMENT =
      """
      .TP
      .B JAVA_HOME
      The Java 25 to run on, where the program does not bring its own.
      .TP
      .B FRAMEWRIGHT_JAVA_OPTIONS
      More options for Java, for example \\-Xmx2g for more memory.
      """;

  private ManualPages() {}

  /**
   * Writes a page for the program and one for each command.
   *
   * @param date of the release, which the foot of a page shows
   */
  public static void write(CommandLine program, String date, Path folder) throws IOException {
    Files.createDirectories(folder);
    var all = Described.of(program).all().toList();
    for (var command : all) {
      Files.writeString(folder.resolve(page(command) + ".1"), text(command, all, date));
    }
  }

  private static String page(Described command) {
    return command.name().replace(' ', '-');
  }

  private static String text(Described command, List<Described> all, String date) {
    var page = new StringBuilder();
    page.append(
        ".TH %s 1 %s \"%s %s\" \"User Commands\"\n"
            .formatted(
                page(command).toUpperCase(Locale.ROOT), date, Program.NAME, Program.VERSION));
    section(page, "NAME").append(text(page(command) + " - " + command.summary())).append('\n');
    section(page, "SYNOPSIS")
        .append(".B %s\n".formatted(text(command.name())))
        .append(text(command.synopsis()))
        .append('\n');
    section(page, "DESCRIPTION").append(text(command.description())).append('\n');
    if (!command.commands().isEmpty()) {
      section(page, "COMMANDS");
      command
          .commands()
          .forEach(other -> item(page, "\\fB" + text(other.word()) + "\\fR", other.description()));
    }
    if (!command.operands().isEmpty()) {
      section(page, "OPERANDS");
      command
          .operands()
          .forEach(
              operand ->
                  item(
                      page,
                      "\\fI" + text(operand.value().label()) + "\\fR",
                      operand.description()));
    }
    section(page, "OPTIONS");
    command.options().forEach(option -> item(page, heading(option), option.description()));
    section(page, "EXIT STATUS").append(EXIT_STATUS);
    section(page, "ENVIRONMENT").append(ENVIRONMENT);
    section(page, "SEE ALSO");
    page.append(
        all.stream()
            .filter(
                other -> other.commands().contains(command) || command.commands().contains(other))
            .map(other -> "\\fB" + text(page(other)) + "\\fR(1)")
            .collect(Collectors.joining(",\n", "", "\n")));
    return page.toString();
  }

  private static StringBuilder section(StringBuilder page, String name) {
    return page.append(".SH ").append(name).append('\n');
  }

  private static void item(StringBuilder page, String heading, String text) {
    page.append(".TP\n").append(heading).append('\n').append(text(text)).append('\n');
  }

  private static String heading(Described.Option option) {
    var names =
        option.names().stream()
            .map(name -> "\\fB" + text(name) + "\\fR")
            .collect(Collectors.joining(", "));
    return names + option.value().map(value -> " \\fI" + text(value.label()) + "\\fR").orElse("");
  }

  /** Text that roff takes as it is; a line of it is never taken for a macro. */
  private static String text(String text) {
    var safe = text.replace("\\", "\\e").replace("-", "\\-");
    return safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe;
  }
}
