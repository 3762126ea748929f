package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OperatingSystemTest {
  /** The names are those that the runtimes of OpenJDK give [from memory]. */
  @ParameterizedTest
  @CsvSource({
    "Linux, LINUX",
    "Mac OS X, MACOS",
    "Darwin, MACOS",
    "Windows 11, WINDOWS",
    "Windows Server 2025, WINDOWS",
    "FreeBSD, OTHER",
    "'', OTHER"
  })
  void aSystemIsKnownByTheBeginningOfItsName(String name, OperatingSystem system) {
    assertThat(OperatingSystem.of(name)).isEqualTo(system);
  }
}
