package org.framewright.ui.help;

import static org.framewright.AssertThat.assertThat;

import java.util.Locale;
import javafx.scene.input.KeyCode;
import org.framewright.ui.command.Keys;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.Test;

class KeyWordsTest {
  private static String in(Locale language, String key) {
    return new KeyWords(Texts.in(language)).written(key);
  }

  @Test
  void keysAreWrittenAsTheKeyboardsOfTheLanguageHaveThem() {
    assertThat(in(Locale.ENGLISH, "Ctrl+Shift+Z")).isEqualTo("Ctrl+Shift+Z");
    assertThat(in(Locale.GERMAN, "Ctrl+Shift+Z")).isEqualTo("Strg+Umschalt+Z");
    assertThat(in(Locale.GERMAN, "Space")).isEqualTo("Leertaste");
    assertThat(in(Locale.GERMAN, "Page up")).isEqualTo("Bild auf");
    assertThat(in(Locale.GERMAN, "F5")).isEqualTo("F5");
  }

  @Test
  void signsAreThoseOfTheAppsButtons() {
    var texts = Texts.in(Locale.ENGLISH);
    assertThat(in(Locale.ENGLISH, "Shift+Left"))
        .isEqualTo("Shift+" + Keys.plain(KeyCode.LEFT).getDisplayText());
    assertThat(in(Locale.ENGLISH, "Ctrl+-")).isEqualTo("Ctrl+\u2212");
    assertThat(in(Locale.ENGLISH, "+")).isEqualTo(Keys.text(Keys.plain(KeyCode.PLUS), texts));
    assertThat(in(Locale.ENGLISH, "Ctrl+=")).isEqualTo("Ctrl+=");
  }
}
