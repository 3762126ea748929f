package org.framewright.ui.command;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.base.OperatingSystem.LINUX;
import static org.framewright.base.OperatingSystem.MACOS;
import static org.framewright.base.OperatingSystem.WINDOWS;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import org.junit.jupiter.api.Test;

/** Keys that a Mac has elsewhere. Source of what is where: common practice, no source. */
class SystemKeysTest {
  @Test
  void pagesHaveFunctionKeysAndOnAMacDigitsFirst() {
    assertThat(Keys.page(0, LINUX)).containsExactly(Keys.plain(KeyCode.F2));
    assertThat(Keys.page(5, WINDOWS)).containsExactly(Keys.plain(KeyCode.F7));
    assertThat(Keys.page(6, LINUX))
        .as("F8 to F11 are the window's")
        .isEqualTo(List.of(Keys.plain(KeyCode.F12)));
    assertThat(Keys.page(7, LINUX)).containsExactly(Keys.shift(KeyCode.F2));
    assertThat(Keys.page(0, MACOS))
        .containsExactly(Keys.shortcut(KeyCode.DIGIT1), Keys.plain(KeyCode.F2));
  }

  @Test
  void optionWritesLettersOnAMacSoLettersHaveShiftAndCommandThere() {
    assertThat(Keys.alt(KeyCode.S, MACOS)).isEqualTo(Keys.shortcutShift(KeyCode.S));
    assertThat(Keys.alt(KeyCode.DIGIT1, MACOS)).isEqualTo(Keys.shortcutShift(KeyCode.DIGIT1));
    var down = new KeyCodeCombination(KeyCode.DOWN, KeyCombination.ALT_DOWN);
    assertThat(Keys.alt(KeyCode.DOWN, MACOS)).isEqualTo(down);
    assertThat(Keys.alt(KeyCode.S, LINUX))
        .isEqualTo(new KeyCodeCombination(KeyCode.S, KeyCombination.ALT_DOWN));
  }

  /** French and Czech keyboards write digits with Shift: common practice, no source. */
  @Test
  void aDigitIsWrittenWithShiftOrByTheOtherBlockOfKeysToo() {
    assertThat(Keys.digit(3))
        .containsExactly(
            Keys.plain(KeyCode.DIGIT3), Keys.plain(KeyCode.NUMPAD3), Keys.shift(KeyCode.DIGIT3));
  }

  @Test
  void theFullScreenOfAMacIsNotF11() {
    assertThat(Keys.fullScreen(LINUX)).containsExactly(Keys.plain(KeyCode.F11));
    assertThat(Keys.fullScreen(MACOS)).doesNotContain(Keys.plain(KeyCode.F11)).hasSize(1);
  }

  @Test
  void noKeyOfAMacMeansTwoThings() {
    var keys = new ArrayList<KeyCodeCombination>();
    for (int page = 0; page < 10; page++) {
      keys.addAll(Keys.page(page, MACOS));
    }
    keys.addAll(Keys.help(MACOS));
    keys.addAll(Keys.fullScreen(MACOS));
    keys.add(Keys.shortcut(KeyCode.F));
    keys.add(Keys.shortcutShift(KeyCode.O));
    keys.add(Keys.shortcutShift(KeyCode.Z));
    for (var letter : new KeyCode[] {KeyCode.R, KeyCode.S, KeyCode.E, KeyCode.P, KeyCode.F}) {
      keys.add(Keys.alt(letter, MACOS));
    }
    assertThat(keys).doesNotHaveDuplicates();
  }
}
