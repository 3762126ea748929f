package org.framewright.renaming;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a volume takes as a name. Sources: NAME_MAX of Linux, 255 bytes; MS-FSCC 2.1.5.2, 255 UTF-16
 * units; Microsoft, "Naming Files, Paths, and Namespaces".
 */
class LegalNameTest {
  private static final Traits LINUX = Traits.of("ext4", false);
  private static final Traits WINDOWS = Traits.of("ntfs", true);

  private static boolean legal(String name, Traits volume) {
    return LegalName.trouble(name, volume).isEmpty();
  }

  @Test
  void linuxCountsBytesAndWindowsUnits() {
    assertThat(legal("a".repeat(255), LINUX)).isTrue();
    assertThat(legal("a".repeat(256), LINUX)).isFalse();
    assertThat(legal("é".repeat(127), LINUX)).isTrue();
    assertThat(legal("é".repeat(128), LINUX)).isFalse();
    assertThat(legal("é".repeat(255), WINDOWS)).isTrue();
    assertThat(legal("é".repeat(256), WINDOWS)).isFalse();
    assertThat(LegalName.trouble("é".repeat(128), LINUX).orElseThrow().english())
        .contains("256 bytes");
    assertThat(LegalName.trouble("é".repeat(256), WINDOWS).orElseThrow().english())
        .contains("256 UTF-16 units");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", ".", ".."})
  void someAreNoNames(String name) {
    assertThat(LegalName.trouble(name, LINUX).orElseThrow().english())
        .contains("is not a file name");
  }

  @Test
  void halfACharacterIsNoName() {
    assertThat(legal("camera \uD83D\uDCF7.jpg", LINUX)).isTrue();
    assertThat(legal("\uD83D\uDCF7", LINUX)).isTrue();
    for (var half : new String[] {"a\uD83D", "\uDCF7a", "\uD83Da", "\uDCF7\uD83D"}) {
      assertThat(LegalName.trouble(half, LINUX).orElseThrow().english())
          .contains("half of a character");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a<b",
        "a:b",
        "a\"b",
        "a|b",
        "a?b",
        "a*b",
        "a\u001fb",
        "a.",
        "a ",
        "CON",
        "con.jpg",
        "Lpt1"
      })
  void windowsForbidsWhatLinuxTakes(String name) {
    assertThat(legal(name, LINUX)).isTrue();
    assertThat(legal(name, WINDOWS)).isFalse();
  }

  @ParameterizedTest
  @ValueSource(strings = {"console", "com0", "a b", ".hidden", "lpt10.jpg"})
  void windowsTakesWhatIsNearlyForbidden(String name) {
    assertThat(legal(name, WINDOWS)).isTrue();
  }
}
