package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class ThemeTest {
  @Test
  void aSystemSetToStrongContrastsGetsThemWhereNoLookWasChosen() {
    // The names are those of the toolkit's documentation, Platform.Preferences.
    assertThat(Theme.asked(Map.of("Windows.SPI.HighContrast", true))).isEqualTo(Theme.SUNLIGHT);
    assertThat(Theme.asked(Map.of("GTK.theme_name", "HighContrast"))).isEqualTo(Theme.SUNLIGHT);
    assertThat(Theme.asked(Map.of("GTK.theme_name", "HighContrastInverse")))
        .isEqualTo(Theme.SUNLIGHT);
  }

  @Test
  void anyOtherSystemGetsTheNeutralSurround() {
    assertThat(Theme.asked(Map.of())).isEqualTo(Theme.NEUTRAL);
    assertThat(Theme.asked(Map.of("Windows.SPI.HighContrast", false))).isEqualTo(Theme.NEUTRAL);
    assertThat(Theme.asked(Map.of("GTK.theme_name", "Adwaita"))).isEqualTo(Theme.NEUTRAL);
  }

  @Test
  void aLookThatWasChosenIsFoundByItsWord() {
    for (var theme : Theme.values()) {
      assertThat(Theme.of(theme.word())).isEqualTo(theme);
    }
  }
}
