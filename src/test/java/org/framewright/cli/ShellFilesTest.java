package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import org.framewright.base.Program;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

class ShellFilesTest {
  @TempDir private static Path home;

  @BeforeAll
  static void written() throws IOException {
    ShellFiles.write(home, "2026-11-25");
  }

  private static String manual(String page) throws IOException {
    return Files.readString(home.resolve("man/man1/" + page + ".1"));
  }

  @Test
  void everyCommandHasAPageWithAllItsOptions() throws IOException {
    var program = ShellFiles.program();
    for (var command : Commands.NAMES) {
      var page = manual("framewright-" + command);
      assertThat(page).contains("framewright\\-" + command.replace("-", "\\-") + " \\- ");
      for (var option : program.getSubcommands().get(command).getCommandSpec().options()) {
        for (var name : option.names()) {
          assertThat(page).contains("\\fB" + name.replace("-", "\\-") + "\\fR");
        }
      }
      assertThat(manual("framewright")).contains("\\fB" + command.replace("-", "\\-") + "\\fR\n");
    }
  }

  @Test
  void noLineOfTextIsTakenForAMacro() throws IOException {
    try (var pages = Files.list(home.resolve("man/man1"))) {
      for (var page : pages.toList()) {
        var macros =
            Files.readAllLines(page).stream()
                .filter(line -> line.startsWith(".") || line.startsWith("'"))
                .map(line -> line.split(" ", 2)[0])
                .collect(Collectors.toSet());
        assertThat(macros).isSubsetOf(".TH", ".SH", ".TP", ".B");
      }
    }
  }

  @Test
  void aPageSaysItsVersionAndTheDayOfTheRelease() throws IOException {
    assertThat(manual("framewright-day").lines().findFirst().orElseThrow())
        .isEqualTo(
            ".TH FRAMEWRIGHT-DAY 1 2026-11-25 \"framewright "
                + Program.VERSION
                + "\" \"User Commands\"");
  }

  @Test
  void theHelpThatIsPreparedIsWhatTheCommandLineSays() throws IOException {
    var out = new StringWriter();
    var line = Commands.neededFor(new String[] {"--help"}, null);
    line.setOut(new PrintWriter(out))
        .setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    line.execute("--help");
    assertThat(out.toString())
        .isEqualToNormalizingNewlines(Files.readString(home.resolve(Prepared.HELP)));
  }

  @Test
  void theProgramSaysTheVersionOfThePom() throws IOException {
    var pom = Files.readString(Path.of("pom.xml"));
    var version = pom.replaceFirst("(?s).*?<version>([^<-]+)(-SNAPSHOT)?</version>.*", "$1");
    assertThat(Program.VERSION).isEqualTo(version);
    assertThat(Prepared.answer(new String[] {"--version"}).orElseThrow().strip())
        .isEqualTo("framewright " + version);
  }

  @Test
  void completionsKnowEveryCommandAndOption() throws IOException {
    var program = ShellFiles.program();
    var zsh = Files.readString(home.resolve("completions/_framewright"));
    var fish = Files.readString(home.resolve("completions/framewright.fish"));
    for (var command : Commands.NAMES) {
      assertThat(zsh).contains("'" + command + ":");
      int own = zsh.indexOf("    " + command + ")\n");
      for (var option : program.getSubcommands().get(command).getCommandSpec().options()) {
        var name = option.longestName();
        assertThat(zsh.substring(own)).contains(name);
        assertThat(fish)
            .containsPattern(
                "seen_subcommand_from " + command + "'.* -l " + name.substring(2) + " ");
      }
    }
  }
}
