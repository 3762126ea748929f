package org.framewright.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What real shells and readers of manual pages make of the files; each is skipped where it is not.
 */
@Tag("slow")
class ShellsTest {
  @TempDir private static Path home;

  @BeforeAll
  static void written() throws IOException {
    ShellFiles.write(home, "2026-11-25");
  }

  private static String said(String program, String... words) throws Exception {
    assumeTrue(
        List.of("/bin/", "/usr/bin/", "/usr/local/bin/").stream()
            .anyMatch(bin -> Files.isExecutable(Path.of(bin + program))),
        "no " + program + " is here");
    var command = new java.util.ArrayList<>(List.of(program));
    command.addAll(List.of(words));
    var builder = new ProcessBuilder(command).directory(home.toFile()).redirectErrorStream(true);
    builder.environment().put("TERM", "dumb");
    var process = builder.start();
    process.getOutputStream().close();
    var said = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
    return said;
  }

  private static String bash(String... words) throws Exception {
    var line = String.join(" ", words);
    return said(
        "bash",
        "--norc",
        "-c",
        ". completions/framewright.bash; COMP_WORDS=(%s); COMP_CWORD=%d; COMP_LINE='%s'; COMP_POINT=%d; compopt() { :; }; _complete_framewright; echo \"${COMPREPLY[@]}\""
            .formatted(line, words.length - 1, line, line.length()));
  }

  @Test
  void bashCompletesACommandAndAnOption() throws Exception {
    assertThat(bash("framewright", "chec").strip()).isEqualTo("check");
    assertThat(bash("framewright", "mark", "--tak").strip()).isEqualTo("--take-back");
  }

  private static String fish(String line) throws Exception {
    return said(
        "fish",
        "--no-config",
        "-c",
        "source completions/framewright.fish; complete -C '" + line + "'");
  }

  @Test
  void fishCompletesACommandAnOptionAndAFile() throws Exception {
    assertThat(fish("framewright chec")).startsWith("check\tReports what is wrong");
    assertThat(fish("framewright mark --tak")).startsWith("--take-back\t");
    assertThat(fish("framewright check compl").strip()).isEqualTo("completions/");
  }

  @Test
  void zshCompletesACommandAnOptionAndAFile() throws Exception {
    Files.writeString(
        home.resolve("typed.zsh"),
        """
        zmodload zsh/zpty
        zpty z zsh -f -i
        zpty -w z "PS1=; fpath=($PWD/completions \\$fpath); autoload -Uz compinit; compinit -u -D; unsetopt beep; print -- begun"
        out=
        until [[ $out == *$'\\n'begun* ]] { zpty -r z line && out+=$line }
        typed() {
          out=
          zpty -w -n z "$1"$'\\t'
          repeat 100 { zpty -r -t z line && out+=$line; [[ $out == *"$2"* ]] && break; sleep 0.1 }
          print -r -- "$out"
          zpty -w -n z $'\\x15'
        }
        typed 'framewright chec' 'check '
        typed 'framewright mark --tak' '--take-back '
        typed 'framewright check compl' 'completions/'
        zpty -d z
        """);
    assertThat(said("zsh", "-f", "typed.zsh"))
        .contains("framewright check ", "mark --take-back ", "check completions/");
  }

  @Test
  void manualPagesAreReadWithoutAWarning() throws Exception {
    try (var pages = Files.list(home.resolve("man/man1"))) {
      for (var page : pages.toList()) {
        assertThat(said("groff", "-man", "-ww", "-z", page.toString())).isEmpty();
      }
    }
    assertThat(
            said("groff", "-man", "-Tascii", "-P-c", "-P-b", "-P-u", "man/man1/framewright-mark.1"))
        .contains("Ticks setups of the shot list", "--take-back", "EXIT STATUS");
  }
}
