package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class FramewrightTest {
  private static Ran run(String... args) {
    var out = new StringWriter();
    var err = new StringWriter();
    int status = Framewright.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Ran(status, out.toString(), err.toString());
  }

  @Test
  void helpListsEveryCommand() {
    var help = run("--help").out();
    for (var command : Commands.NAMES) {
      assertThat(help).containsPattern("(?m)^  " + command + " +\\p{Lu}");
    }
  }

  @Test
  void everyCommandIsFoundByTheNameThatItsOwnHelpShows() {
    for (var command : Commands.NAMES) {
      var help = run(command, "--help");
      assertThat(help.status()).isZero();
      assertThat(help.out()).startsWith("Usage: framewright " + command + " ");
    }
  }

  @Test
  void aCommandThatIsMisspeltIsTold() {
    var run = run("chekc", "templates");
    assertThat(run.status()).isEqualTo(2);
    assertThat(run.err()).contains("chekc").contains("framewright --help");
  }

  @Test
  void helpOfACommandIsShownWhereTheOptionComesFirst() {
    assertThat(run("--help", "day").out()).startsWith("Usage: framewright");
  }
}
