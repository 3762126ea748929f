package org.framewright.cli;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/**
 * Each command line of the guide is one that the program takes, and each command is in the guide.
 */
class GuideCommandsTest {
  private static final Pattern TYPED = Pattern.compile("(?m)^ {4,}framewright (.*)$");
  private static final Pattern NAMED = Pattern.compile("`framewright ([a-z-]+)[^`]*`");
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|(\\S+)");

  private final String guide;

  GuideCommandsTest() throws IOException {
    try (var files = Files.list(Path.of("docs/guide"))) {
      var text = new StringBuilder();
      for (var file : files.filter(one -> one.toString().endsWith(".md")).sorted().toList()) {
        text.append(Files.readString(file)).append('\n');
      }
      guide = text.toString();
    }
  }

  private static List<String> words(String typed) {
    return WORD.matcher(typed)
        .results()
        .map(found -> found.group(1) != null ? found.group(1) : found.group(2))
        .toList();
  }

  @Test
  void theProgramTakesEachCommandLine() throws Exception {
    var lines = TYPED.matcher(guide).results().map(found -> found.group(1)).toList();
    assertThat(lines).hasSizeGreaterThan(50);
    var refused = new ArrayList<String>();
    for (var line : lines) {
      var words = words(line);
      if (words.getFirst().startsWith("-")) {
        assertThat(words).as(line).isIn(List.of("--help"), List.of("--version"));
        continue;
      }
      assertThat(Commands.NAMES).as(line).contains(words.getFirst());
      try {
        ShellFiles.program()
            .setCaseInsensitiveEnumValuesAllowed(true)
            .parseArgs(words.toArray(String[]::new));
      } catch (CommandLine.ParameterException e) {
        refused.add(line + ": " + e.getMessage());
      }
    }
    assertThat(refused).isEmpty();
  }

  @Test
  void eachCommandIsSpokenOfAndNoOther() {
    var named = new TreeSet<String>();
    NAMED.matcher(guide).results().forEach(found -> named.add(found.group(1)));
    assertThat(named).isEqualTo(new TreeSet<>(Commands.NAMES));
  }
}
