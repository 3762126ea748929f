package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.Test;

class TextsTest {
  private static final Pattern KEY =
      Pattern.compile("texts(?:\\(\\))?\\s*\\.get\\(\\s*\"([^\"]+)\"\\s*[,)]");
  private final Texts texts = Texts.in(Locale.ENGLISH);

  @Test
  void everyTextThatASourceAsksForIsThere() throws IOException {
    var missing = new TreeSet<String>();
    var asked = 0;
    try (var files = Files.walk(Path.of("src/main/java/org/framewright/ui"))) {
      for (var file : files.filter(Files::isRegularFile).toList()) {
        var matcher = KEY.matcher(Files.readString(file));
        while (matcher.find()) {
          asked++;
          if (!texts.has(matcher.group(1))) {
            missing.add(file.getFileName() + ": " + matcher.group(1));
          }
        }
      }
    }
    assertThat(asked).isGreaterThan(50);
    assertThat(missing).isEmpty();
  }

  @Test
  void everyStateHasItsWord() {
    for (var state : SetupState.values()) {
      assertThat(texts.has("state." + state.word())).as(state.word()).isTrue();
    }
  }

  @Test
  void numbersAreWordedByTheirCount() {
    assertThat(texts.get("lists.done", 1)).startsWith("1 setup of");
    assertThat(texts.get("lists.done", 12)).startsWith("12 setups of");
  }

  @Test
  void totalsLeaveOutWhatThereIsNoneOf() {
    assertThat(texts.get("board.totals", 2, 35, 0, 0)).isEqualTo("2 shot · 35 to shoot");
    assertThat(texts.get("board.totals", 2, 33, 1, 4))
        .isEqualTo("2 shot · 33 to shoot · 1 pickup · 4 dropped");
  }
}
