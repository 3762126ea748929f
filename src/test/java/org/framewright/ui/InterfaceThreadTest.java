package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What the interface thread is kept busy by, and what must happen nowhere else. */
class InterfaceThreadTest {
  private static final Path SOURCES = Path.of("src/main/java/org/framewright/ui");

  private static Set<String> filesWith(String pattern) throws IOException {
    var found = new TreeSet<String>();
    var wanted = Pattern.compile(pattern);
    try (var files = Files.walk(SOURCES)) {
      for (var file : files.filter(file -> file.toString().endsWith(".java")).toList()) {
        if (wanted.matcher(Files.readString(file)).find()) {
          found.add(file.getFileName().toString());
        }
      }
    }
    return found;
  }

  @Test
  void nothingMovesForLongerThanItTakesToSayIt() throws Exception {
    // An animation wakes the interface sixty times a second for as long as it runs. The board's
    // ends when the page is there, the foot line's when what was said has passed by.
    assertThat(filesWith("\\b(AnimationTimer|Timeline|\\w*Transition)\\("))
        .containsExactly("BoardView.java", "FootLine.java");
    assertThat(filesWith("ProgressIndicator|INDETERMINATE_PROGRESS")).isEmpty();
  }

  @Test
  void stylesAreGivenOnTheInterfaceThreadAlone() throws Exception {
    // The toolkit keeps what it found out about styles without a lock. These are the windows, and
    // what is measured in them.
    assertThat(filesWith("\\bnew Scene\\("))
        .containsExactly("ClientWindow.java", "Composition.java");
    assertThat(filesWith("\\bapplyCss\\("))
        .containsExactly(
            "DialogLayer.java", "FieldRow.java", "HelpSheet.java", "SettingsScreen.java");
  }
}
